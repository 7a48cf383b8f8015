//! The answer: when the sun comes through, how sure that is, and what makes it surer.

use leptos::prelude::*;
use slantlight::plan::search::through_window::{self, Through};
use slantlight::plan::stage::Stage;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::spot::Spot;
use slantlight::project::stage::NotReady;
use slantlight::sky::sun::Sun;
use slantlight::units::Bearing;
use slantlight::words;

use super::{Sighting, corners};
use crate::app::pages::here;
use crate::app::parts::BearingSlider;
use crate::app::router;

/// What is known once two corners are taken.
#[derive(Clone, PartialEq)]
struct Known {
    stage: Stage,
    today: Through,
    tomorrow: Through,
}

/// The answer and what can be done with it.
#[component]
pub fn Answer(sighting: Sighting) -> impl IntoView {
    let known = Memo::new(move |_| sighting.spot().map(|spot| work_out(sighting, &spot)));
    let says = move || match known.get() {
        None => "Where is this? With a place the answer stands here.".to_owned(),
        Some(Err(NotReady::Sighting { error, .. })) => format!("No opening: {error}. Begin again."),
        Some(Err(why)) => format!("No answer: {why}. Begin again."),
        Some(Ok(known)) => sentence(sighting, &known),
    };
    let later = move || known.get().and_then(Result::ok).and_then(|known| today(sighting, &known));
    let needs_third =
        move || sighting.wall.with(Option::is_none) && sighting.corners.with(|corners| corners.len() < 3);
    let can_save = move || known.with(|known| matches!(known, Some(Ok(_))));
    view! {
        <section class="sight">
            <p class="answer" role="status">{says}</p>
            <p>{later}</p>
            <Show when=can_save>
                <button type="button" class="button primary wide" on:click=move |_| save_new(sighting)>"Save this window"</button>
                <SaveThere sighting=sighting />
            </Show>
            <Wall sighting=sighting />
            <Show when=needs_third>
                <details class="fold">
                    <summary>"Take a third corner"</summary>
                    <corners::Take sighting=sighting />
                </details>
            </Show>
            <button type="button" class="button wide" on:click=move |_| sighting.begin_again()>"Begin again"</button>
        </section>
    }
}

fn work_out(sighting: Sighting, spot: &Spot) -> Result<Known, NotReady> {
    let zone = sighting.store.zones.of_the_phone();
    let stage = spot.stage((*zone).clone())?;
    let sun = Sun::new(spot.site);
    let now = zone.date(sighting.store.moment.today());
    let next = now.succ_opt().unwrap_or(now);
    Ok(Known {
        today: through_window::through(&sun, &stage, now),
        tomorrow: through_window::through(&sun, &stage, next),
        stage,
    })
}

/// "Tomorrow 15:54–18:14, ± 25 min".
fn sentence(sighting: Sighting, known: &Known) -> String {
    let clock = sighting.store.settings.get().clock;
    words::capital(&through_window::words(&known.tomorrow, &known.stage, "tomorrow", clock))
}

/// Today's spans, where there are any.
fn today(sighting: Sighting, known: &Known) -> Option<String> {
    let clock = sighting.store.settings.get().clock;
    let that_day = matches!(known.today, Through::ThatDay(_));
    that_day.then(|| words::capital(&through_window::words(&known.today, &known.stage, "today", clock)))
}

/// The wall's bearing makes the answer exact.
#[component]
fn Wall(sighting: Sighting) -> impl IntoView {
    let shown = Signal::derive(move || {
        let middle = || {
            sighting.corners.with(|corners| corners.first().map_or(0.0, |corner| corner.bearing.degrees()))
        };
        sighting.wall.get().map_or_else(middle, Bearing::degrees)
    });
    let set = move |degrees: f64| sighting.wall.set(Some(Bearing::from_degrees(degrees)));
    let known = move || {
        if sighting.wall.with(Option::is_some) || sighting.corners.with(|corners| corners.len() > 2) {
            "The wall is known: the ± is that of the bearing alone."
        } else {
            "Two corners do not fix a window. Say which way its wall faces, and the ± shrinks."
        }
    };
    view! {
        <BearingSlider
            label="The wall faces"
            value=shown
            say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
            on_move=set
            on_change=set
        />
        <p class="soft">{known}</p>
    }
}

/// Keeps the window at the location that all rooms show, where there is one.
#[component]
fn SaveThere(sighting: Sighting) -> impl IntoView {
    let location = move || {
        let found = sighting.store.current_location()?;
        Some((found.id.clone(), found.name.clone()))
    };
    let button = move |(id, name): (String, String)| {
        view! {
            <button type="button" class="button wide" on:click=move |_| save_at(sighting, id.clone())>
                {format!("Save it at {name}")}
            </button>
        }
    };
    view! { {move || location().map(button)} }
}

/// Keeps the window at a new location here.
fn save_new(sighting: Sighting) {
    let Some(spot) = sighting.spot() else { return };
    if let Some(id) = here::add(sighting.store, spot.site, spot.accuracy) {
        save_at(sighting, id);
    }
}

/// Keeps the window with a new mark of a location.
fn save_at(sighting: Sighting, id: String) {
    let Some(spot) = sighting.spot() else { return };
    let store = sighting.store;
    let project = store.desk.latest();
    let Some(location) = project.location(&id) else { return };
    let mark = spot.mark(&store.fresh_id(), &store.fresh_id(), location);
    if store.edit(Edit::PutMark { location: id.clone(), room: None, mark }) {
        router::go(&Route::Location(id));
    }
}
