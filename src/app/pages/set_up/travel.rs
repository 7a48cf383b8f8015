//! A moving subject: the legs of its way, the lens mounted on it, and the light of each leg.

use leptos::prelude::*;
use slantlight::plan::legs::travel::{Leg, Travel};
use slantlight::plan::legs::words::{self as legs_words, Told};
use slantlight::project::document::SetUp;
use slantlight::units::{Bearing, Degrees, Metres, Speed};

use super::day::{Day, NOWHERE, number};
use super::shown::Shown;
use crate::app::parts::{Caution, Fold, Lines};

/// Legs, mount and what light they have.
#[component]
pub fn Moving(shown: Shown) -> impl IntoView {
    let told = Memo::new(move |_| told(shown));
    let count = Memo::new(move |_| {
        shown.with(|set_up| set_up.travel.as_ref().map_or(0, |way| way.legs.len())).unwrap_or(0)
    });
    view! {
        <Fold label="Moving subject">
            <Lines lines=Signal::derive(move || told.get().lines) />
            <Show when=move || { count.get() > 0 }>
                <Caution>
                    "Moving vehicle: no free driving at speed by somebody who also acts. Trailer or permit, traffic control, seat belts, nobody outside the vehicle. Local law and qualified people decide."
                </Caution>
                <Show when=move || told.get().blinds>
                    <Caution>"In some of this light a low sun stands ahead and blinds who drives."</Caution>
                </Show>
                {number(shown, ("Lens from the heading, clockwise", "°"), (0.0, 360.0),
                    |s| s.travel.as_ref().map_or(0.0, |way| way.mount.degrees()), |s, n| way(s).mount = Degrees::from_degrees(n))}
            </Show>
            {move || (0..count.get()).map(|leg| fields(shown, leg)).collect_view()}
            <button type="button" class="button wide" on:click=move |_| shown.change(add)>"Add a leg"</button>
        </Fold>
    }
}

/// The fields of one leg.
fn fields(shown: Shown, leg: usize) -> AnyView {
    let field = move |name: &'static str,
                      unit: &'static str,
                      limits: (f64, f64),
                      read: fn(&Leg) -> f64,
                      write: fn(&mut Leg, f64)| {
        let value = Signal::derive(move || {
            let found =
                shown.with(|set_up| set_up.travel.as_ref().and_then(|way| way.legs.get(leg)).map(read));
            found.flatten().unwrap_or_default()
        });
        let change = move |number: f64| {
            shown.change(|set_up| {
                way(set_up).legs.iter_mut().skip(leg).take(1).for_each(|leg| write(leg, number))
            });
        };
        let label = format!("Leg {} {name}", leg + 1);
        view! { <crate::app::parts::NumberField label=label unit=unit limits=limits value=value on_change=change /> }
    };
    let remove = move |_| {
        shown.change(|set_up| {
            let legs = &mut way(set_up).legs;
            legs.truncate(legs.len().max(1));
            if leg < legs.len() {
                legs.remove(leg);
            }
            if legs.is_empty() {
                set_up.travel = None;
            }
        });
    };
    view! {
        <div class="fields two">
            {field("heading", "°", (0.0, 360.0), |leg| leg.heading.degrees(), |leg, n| leg.heading = Bearing::from_degrees(n))}
            {field("length", "m", (1.0, 1e6), |leg| leg.length.metres(), |leg, n| leg.length = Metres::from_metres(n))}
            {field("speed", "km/h", (0.1, 1000.0), |leg| leg.speed.km_per_hour(), |leg, n| leg.speed = Speed::from_km_per_hour(n))}
            <button type="button" class="button" on:click=remove>{format!("Remove leg {}", leg + 1)}</button>
        </div>
    }
    .into_any()
}

/// The way of a set-up, to be changed.
fn way(set_up: &mut SetUp) -> &mut Travel {
    set_up.travel.get_or_insert_with(Travel::default)
}

/// A first leg leads where the lens looks; each further one goes on as the last. Our own choice of length and speed.
fn add(set_up: &mut SetUp) {
    let heading = set_up.lens.bearing;
    let first = Leg { heading, length: Metres::from_metres(1000.0), speed: Speed::from_km_per_hour(30.0) };
    let legs = &mut way(set_up).legs;
    legs.push(legs.last().copied().unwrap_or(first));
}

fn told(shown: Shown) -> Told {
    let say = |line: &str| Told { lines: vec![line.to_owned()], blinds: false };
    let Some(travel) = shown.with(|set_up| set_up.travel.clone()).flatten() else {
        return say(
            "A way made of straight legs, with the lens fixed on what moves: each leg and way gets its own light.",
        );
    };
    let Some(day) = Day::of(shown) else { return say(NOWHERE) };
    let date = day.zone().date(day.at);
    legs_words::told(&day.sun, &day.stage, &travel, (date, shown.store.settings.get().clock))
}
