//! The hours of the day with now among them; what has been is softer.

use leptos::prelude::*;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::SectionHead;

/// A line of the day.
#[derive(Clone, PartialEq)]
struct Line {
    time: String,
    says: String,
    class: &'static str,
}

/// The list. A minute changes one time in it; it is made anew only when another line has passed.
#[component]
pub fn Hours(shown: Shown) -> impl IntoView {
    let passed = Memo::new(move |_| {
        let now = shown.store.moment.to_the_minute();
        shown.with_day(|day| day.lines.partition_point(|one| one.at <= now)).unwrap_or_default()
    });
    let lines = Memo::new(move |_| with_now(shown, passed.get()));
    let now =
        move || words::clock(shown.zone().local(shown.store.moment.to_the_minute()).time(), shown.clock());
    let line = move |line: Line| {
        let time = if line.class == NOW { now.into_any() } else { line.time.into_any() };
        view! { <li class=line.class><time>{time}</time><span>{line.says}</span></li> }
    };
    view! {
        <section class="stack">
            <SectionHead title="The day" beside=Signal::derive(move || beside(shown)) />
            {move || shown.with_day(|day| day.polar()).flatten().map(|sentence| view! { <p>{sentence}</p> })}
            <ol class="hours">{move || lines.get().into_iter().map(line).collect_view()}</ol>
        </section>
    }
}

/// Class of the line of the instant shown.
const NOW: &str = "now";

/// "for a level horizon", where nobody has entered another.
fn beside(shown: Shown) -> String {
    let level = shown.with_day(|day| day.skyline.is_level()).unwrap_or_default();
    (if level { "level horizon, clear sky" } else { "clear sky" }).to_owned()
}

/// The lines with the instant shown among them, after so many that have passed.
fn with_now(shown: Shown, passed: usize) -> Vec<Line> {
    let (clock, is_now) = (shown.clock(), shown.store.moment.is_now());
    let lines = shown.with_day(|day| {
        let line = |(place, one): (usize, &slantlight::project::agenda::Line)| {
            let class = if place < passed { "past" } else { "" };
            Line { time: day.time_of(one, clock), says: one.says.clone(), class }
        };
        let mut lines: Vec<Line> = day.lines.iter().enumerate().map(line).collect();
        let set_up = day.set_up().map(|one| format!(" · {}", one.name)).unwrap_or_default();
        let says = format!("{}{set_up}", if is_now { "now" } else { "the time chosen" });
        lines.insert(passed.min(lines.len()), Line { time: String::new(), says, class: NOW });
        lines
    });
    lines.unwrap_or_default()
}
