//! Now: where the sun stands at the instant that all rooms show, at the current location, and the hours of its day.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::units::Instant;
use slantlight::words;

use super::today::Day;
use crate::app::parts::{EmptyState, Facts, Frame, Picture};
use crate::app::store::Store;

/// The room of the present.
#[component]
pub fn Now() -> impl IntoView {
    let store = Store::here();
    let location = Memo::new(move |_| store.current_location());
    let title = Signal::derive(move || location.get().map_or("Now".to_owned(), |place| place.name.clone()));
    let subtitle = Signal::derive(move || stamp(store));
    let day = Day::shown(store);
    view! {
        <Frame title=title subtitle=subtitle>
            {move || day.get().map(|day| view! { <Sky day=day /> })}
            <Show when=move || day.with(Option::is_none)>
                <EmptyState says="The sun needs a place: with one, this page says where it stands.">
                    <a class="button" href=Route::Places.href()>"Add a place"</a>
                </EmptyState>
            </Show>
        </Frame>
    }
}

/// Strip, facts and hours of a day.
#[component]
fn Sky(day: Day) -> impl IntoView {
    let store = Store::here();
    let day = StoredValue::new(day);
    let clock = move || store.settings.get().clock;
    let at = move || store.moment.to_the_minute();
    let drawing = Signal::derive(move || day.with_value(|day| day.strip(at(), clock())));
    let hours = move || day.with_value(|day| with_now(day.hours(clock()), at(), store));
    view! {
        <div class="full-bleed"><Picture drawing=drawing /></div>
        <section class="stack">
            <Facts facts=Signal::derive(move || day.with_value(|day| day.at_instant(at()))) />
            {day.with_value(Day::polar).map(|sentence| view! { <p>{sentence}</p> })}
            <ol class="hours">{move || hours().into_iter().map(line).collect_view()}</ol>
            <p class="soft">
                "For a level horizon and a clear sky. What ends the light at a mark stands with its slots in Scenes."
            </p>
        </section>
    }
}

/// A line of the day.
struct Line {
    time: String,
    name: String,
    class: &'static str,
}

fn line(line: Line) -> impl IntoView {
    view! { <li class=line.class><time>{line.time}</time><span>{line.name}</span></li> }
}

/// The hours with the instant shown among them; earlier ones are softer.
fn with_now(hours: Vec<(Instant, String, &'static str)>, now: Instant, store: Store) -> Vec<Line> {
    let local = store.current_zone().local(now);
    let time = words::clock(local.time(), store.settings.get().clock);
    let name = if store.moment.is_now() { "now" } else { "the time chosen" };
    let split = hours.partition_point(|(at, ..)| *at <= now);
    let as_line = |class| {
        move |(_, time, name): (Instant, String, &'static str)| Line { time, name: name.to_owned(), class }
    };
    let mut past = hours;
    let coming = past.split_off(split);
    let mut lines: Vec<Line> = past.into_iter().map(as_line("past")).collect();
    lines.push(Line { time, name: name.to_owned(), class: "now" });
    lines.extend(coming.into_iter().map(as_line("")));
    lines
}

/// "Thu 11 Mar 2027, 17:28 UTC".
fn stamp(store: Store) -> String {
    let (zone, at) = (store.current_zone(), store.moment.to_the_minute());
    let local = zone.local(at);
    let time = words::clock(local.time(), store.settings.get().clock);
    format!("{}, {time} {}", words::date(local.date()), words::offset(zone.offset_at(at)))
}
