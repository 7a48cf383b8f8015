//! The mark in sentences: instant, day and year, anew once nothing has moved for a moment.

use leptos::prelude::*;
use slantlight::plan::in_room::tell;
use slantlight::sky::sun::Sun;
use slantlight::units::Duration;

use super::shown::Shown;
use crate::app::devices::settled::settled;

/// Between the two directions of the sun that the drift is taken from.
const APART: Duration = Duration::from_minutes(1);

/// The sentences.
#[component]
pub fn Story(shown: Shown) -> impl IntoView {
    // What the sentences follow: the mark's stage, the instant and the way of writing.
    let follow = move || {
        shown.stage.track();
        shown.store.settings.track();
        shown.store.moment.to_the_minute();
    };
    let told = settled(untrack(move || of_now(shown)), follow, move || {
        format!("{}\n{}", of_now(shown), of_the_day(shown))
    });
    view! { <p class="told">{told}</p> }
}

fn of_the_day(shown: Shown) -> String {
    let (Some(place), Some(mark)) = (shown.place(), shown.whole_mark()) else { return String::new() };
    let zone = shown.zone();
    let sun = Sun::new(place.stage.site);
    tell::of_the_day(&sun, &place, &mark, shown.date(), shown.style(&zone)).join("\n")
}

fn of_now(shown: Shown) -> String {
    let at = shown.store.moment.to_the_minute();
    let suns = shown.sun_at(at).zip(shown.sun_at(at + APART));
    let (Some((now, then)), Some(place), Some(mark)) = (suns, shown.place_today(), shown.whole_mark()) else {
        return String::new();
    };
    let lenses = shown.with(|room| shown.store.desk.with(|project| project.lenses_in(&room.id)));
    let mut said = tell::of_now(&place, &mark, [now, then], APART, shown.units());
    said.extend(tell::in_haze(&place, now, &lenses.unwrap_or_default()));
    said.join("\n")
}
