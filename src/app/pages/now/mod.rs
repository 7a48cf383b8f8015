//! Now: what the light is doing at the location at hand, what is left of it, what comes next.
//!
//! The page is made once a day and place ([`shown::Shown`]). Each minute moves the sun; in the last minutes each second
//! moves the countdown alone, and all that only while the page is seen.

mod check;
mod cloud;
mod count;
mod day_line;
mod hours;
mod place;
mod shot;
mod shown;
mod strip;
mod watch;

use leptos::prelude::*;
use slantlight::words;

use crate::app::parts::{Facts, Frame};
use crate::app::store::Store;
use shown::Shown;

/// The room of the present.
#[component]
pub fn Now() -> impl IntoView {
    let shown = Shown::of(Store::here());
    let title = Signal::derive(move || shown.title());
    let subtitle = Signal::derive(move || stamp(shown));
    let there = Memo::new(move |_| shown.day.with(Option::is_some));
    view! {
        <Frame title=title subtitle=subtitle more=move || more(shown, there)>
            <Show when=move || there.get() fallback=place::Anywhere>
                <strip::HorizonStrip shown=shown />
                <section class="now-count">
                    <count::Count shown=shown />
                </section>
                <section class="stack">
                    <Facts facts=Signal::derive(move || shown.facts()) />
                    <day_line::Line shown=shown />
                </section>
            </Show>
        </Frame>
    }
}

/// What goes with the light: the hours of the day, and where all this is.
fn more(shown: Shown, there: Memo<bool>) -> AnyView {
    view! {
        <Show when=move || there.get()>
            <hours::Hours shown=shown />
            <section class="stack">
                <check::Check shown=shown />
                <cloud::Cloud shown=shown />
            </section>
            <shot::Shots shown=shown />
            <place::Where shown=shown />
            <watch::Watch shown=shown />
        </Show>
    }
    .into_any()
}

/// "Thu 11 Mar 2027, 17:28 UTC · lens 215°".
fn stamp(shown: Shown) -> String {
    let (zone, at) = (shown.zone(), shown.store.moment.to_the_minute());
    let local = zone.local(at);
    let time = words::clock(local.time(), shown.clock());
    let lens = shown.with_day(|day| Some(format!(" · lens {:.0}°", day.set_up()?.stage.lens.degrees())));
    let offset = words::offset(zone.offset_at(at));
    format!("{}, {time} {offset}{}", words::date(local.date()), lens.flatten().unwrap_or_default())
}
