//! From a call or a picture: where somebody in the room saw a corner of the sun's patch, and the wall's bearing by it.

use leptos::prelude::*;
use slantlight::light::told_patch::{NoWall, Told, WallFound, wall};
use slantlight::plan::told_words;
use slantlight::project::document::Location;
use slantlight::sky::sun::Sun;
use slantlight::units::{Degrees, Duration};

use super::shown::Shown;
use crate::app::parts::{Fold, Hands, Lines, NumberField};

/// How far the clock of a call is trusted. Our own choice.
const CLOCK: Duration = Duration::from_minutes(1);

/// Before anybody has told anything. A height of nought is one nobody told; how good a tape is, is our own choice.
const FIRST: Told = Told { depth: 0.0, right: 0.0, high: None, give: 0.05 };

/// What is said once the room stands so.
const TURNED: &str = "The room stands so now: the mark's day and year on this page go by this bearing.";

/// The fields, the answer, and the button that turns the room.
#[component]
pub fn FromACall(shown: Shown) -> impl IntoView {
    let told = RwSignal::new(FIRST);
    let number = RwSignal::new(1.0_f64);
    let turned = RwSignal::new("");
    let found = move || found(shown, told.get());
    let turn = move |_| {
        if let Ok(found) = found() {
            shown.change(|room| {
                let asked = number.get_untracked() as usize;
                if let Some(now) = room.bearing_of(asked.saturating_sub(1)) {
                    let by = now.turn_to(found.bearing);
                    room.wall_bearing = room.wall_bearing.turned(by);
                    room.bearing_uncertainty = Degrees::from_degrees(found.give.degrees().max(0.1));
                }
            });
            turned.set(TURNED);
        }
    };
    view! {
        <Fold label="From a call or a picture">
            <p class="soft">"Somebody in the room says where one corner of the sun's patch lies on the floor. Set the date and time of the call above; count in anything: metres, boards, sheets of paper."</p>
            <Lines lines=Signal::derive(move || vec![told_words::found(&found())]) />
            <div class="fields two">
                <NumberField label="Which wall" limits=(1.0, 12.0) decimals=0 value=Signal::derive(move || number.get())
                    on_change=move |n| number.set(n) />
                {field(told, "Patch corner from the wall", None, |t| t.depth, |t, n| t.depth = n)}
                {field(told, "Right of its window corner, looking out", Some(Hands::PLUS_MINUS), |t| t.right, |t, n| t.right = n)}
                {field(told, "Window corner over the floor, if known", None, |t| t.high.unwrap_or_default(), |t, n| t.high = (n > 0.0).then_some(n))}
                {field(told, "Each good to ±", None, |t| t.give, |t, n| t.give = n)}
            </div>
            <button type="button" class="button wide" on:click=turn>"Turn the room so"</button>
            <p role="status">{move || turned.get()}</p>
        </Fold>
    }
}

fn field(
    told: RwSignal<Told>,
    label: &'static str,
    hands: Option<Hands>,
    read: fn(&Told) -> f64,
    write: fn(&mut Told, f64),
) -> AnyView {
    let value = Signal::derive(move || told.with(read));
    let change = move |number: f64| told.update(|told| write(told, number));
    match hands {
        Some(hands) => {
            view! { <NumberField label=label limits=(-1000.0, 1000.0) hands=hands value=value on_change=change /> }.into_any()
        }
        None => view! { <NumberField label=label limits=(0.0, 1000.0) value=value on_change=change /> }.into_any(),
    }
}

fn found(shown: Shown, told: Told) -> Result<WallFound, NoWall> {
    let at = shown.store.moment.to_the_minute();
    let site = shown.with_location(|location: &Location| location.site).ok_or(NoWall::NoSun)?;
    let sun = Sun::new(site);
    wall(told, [sun.apparent(at - CLOCK), sun.apparent(at + CLOCK)])
}
