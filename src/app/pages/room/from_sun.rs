//! The wall's bearing from the sun itself: choose what was seen, type it, compare, take it.

use leptos::prelude::*;
use slantlight::light::wall_bearing::turned_to;
use slantlight::place::room::Room;
use slantlight::plan::in_room::story;

use super::seen::Seen;
use super::shown::Shown;
use crate::app::parts::{Fold, LengthField, NumberField, Segmented};

/// What can be typed for places on the floor, metres.
const PLACES: (f64, f64) = (-100.0, 100.0);

/// The fold.
#[component]
pub fn FromTheSun(shown: Shown) -> impl IntoView {
    let seen = Seen::new();
    let answer = move || match seen.found(shown) {
        Some((wall, found)) => {
            let said = shown.with(|room| room.bearing_of(wall)).flatten();
            said.map(|said| story::bearing(&found, wall, said, shown.units())).unwrap_or_default()
        }
        None => "Nothing follows from this yet: is the sun up at the time shown, and are the measures typed?"
            .to_owned(),
    };
    let take = move |_| {
        let turned = untrack(move || {
            let (wall, found) = seen.found(shown)?;
            shown.with(|room| turned_to(room, wall, found))?
        });
        if let Some(turned) = turned {
            shown.change(|room| *room = turned);
        }
    };
    let names = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>();
    view! {
        <Fold label="Bearing from the sun, without a compass">
            <div class="fields">
                <Segmented label="What I see at the time shown above" names=names(&["graze", "patch", "shadow"])
                    chosen=seen.way on_choose=move |to| seen.way.set(to) />
                {move || match seen.way.get() {
                    0 => graze(seen, names(&["begins", "ceases"])).into_any(),
                    1 => patch(shown, seen, names(&["upper left", "upper right", "lower left", "lower right"])).into_any(),
                    _ => shadow(shown, seen).into_any(),
                }}
                <p class="whole-row" role="status">{answer}</p>
                <button type="button" class="button" on:click=take>"Take this bearing"</button>
            </div>
        </Fold>
    }
}

/// The sun comes onto the wall, or leaves it.
fn graze(seen: Seen, names: Vec<String>) -> impl IntoView {
    view! {
        <p class="soft whole-row">"The moment at which the sun begins or ceases to graze the outside of a wall; inside, its first or last ray through an opening. Watch the wall or the floor, never the sun."</p>
        <Segmented label="The sun on the wall" names=names chosen=seen.graze on_choose=move |to| seen.graze.set(to) />
        <NumberField label="Wall" decimals=0 limits=(1.0, 12.0) value=seen.wall on_change=move |to| seen.wall.set(to) />
        <NumberField label="Seen to ±" unit="min" decimals=1 limits=(0.0, 60.0) value=seen.watch on_change=move |to| seen.watch.set(to) />
    }
}

/// The corner of a patch, by two tapes.
fn patch(shown: Shown, seen: Seen, names: Vec<String>) -> impl IntoView {
    let openings = Memo::new(move |_| {
        let all = |room: &Room| room.openings.iter().map(|opening| opening.name.clone()).collect::<Vec<_>>();
        shown.with(all).unwrap_or_default()
    });
    let options = move || {
        let option =
            |(place, name): (usize, String)| view! { <option value=place.to_string()>{name}</option> };
        openings.get().into_iter().enumerate().map(option).collect_view()
    };
    let choose = move |event| seen.opening.set(event_target_value(&event).parse().unwrap_or_default());
    view! {
        <p class="soft whole-row">"Where the light of one corner of an opening lies on the floor now. Measure along the opening's wall from its first corner (at the right, seen from inside), and from the wall into the room."</p>
        <label class="field"><span>"Opening"</span><select on:change=choose>{options}</select></label>
        <Segmented label="Its corner, seen from inside" names=names chosen=seen.corner on_choose=move |to| seen.corner.set(to) />
        {tapes(shown, seen, "Along the wall", "From the wall into the room")}
    }
}

/// The shadow of something upright.
fn shadow(shown: Shown, seen: Seen) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    view! {
        <p class="soft whole-row">"From the foot of anything upright to the tip of its shadow: along a wall (to the left, seen from inside, is more) and into the room; minus for the other way."</p>
        <NumberField label="Wall" decimals=0 limits=(1.0, 12.0) value=seen.wall on_change=move |to| seen.wall.set(to) />
        {tapes(shown, seen, "Tip, along the wall", "Tip, into the room")}
        <LengthField label="Height of it, if known" value=seen.height units=units limits=(0.0, 50.0) on_change=move |to| seen.height.set(to) />
    }
}

fn tapes(shown: Shown, seen: Seen, along: &str, into: &str) -> impl IntoView + use<> {
    let units = Signal::derive(move || shown.units());
    view! {
        <LengthField label=along value=seen.along units=units limits=PLACES on_change=move |to| seen.along.set(to) />
        <LengthField label=into value=seen.into units=units limits=PLACES on_change=move |to| seen.into.set(to) />
        <LengthField label="Tape good to ±" value=seen.tape units=units limits=(0.0, 1.0) on_change=move |to| seen.tape.set(to) />
    }
}
