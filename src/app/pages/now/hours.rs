//! The hours of the day with now among them; what has been is softer.

use leptos::prelude::*;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::SectionHead;

/// A line of the day.
struct Line {
    time: String,
    says: String,
    class: &'static str,
}

/// The list.
#[component]
pub fn Hours(shown: Shown) -> impl IntoView {
    let line =
        |line: Line| view! { <li class=line.class><time>{line.time}</time><span>{line.says}</span></li> };
    view! {
        <section class="stack">
            <SectionHead title="The day" beside=Signal::derive(move || beside(shown)) />
            {move || shown.with_day(|day| day.polar()).flatten().map(|sentence| view! { <p>{sentence}</p> })}
            <ol class="hours">{move || with_now(shown).into_iter().map(line).collect_view()}</ol>
        </section>
    }
}

/// "for a level horizon", where nobody has entered another.
fn beside(shown: Shown) -> String {
    let level = shown.with_day(|day| day.skyline.is_level()).unwrap_or_default();
    (if level { "level horizon, clear sky" } else { "clear sky" }).to_owned()
}

/// The lines with the instant shown among them.
fn with_now(shown: Shown) -> Vec<Line> {
    let (now, clock) = (shown.store.moment.to_the_minute(), shown.clock());
    let is_now = shown.store.moment.is_now();
    let lines = shown.with_day(|day| {
        let line = |one: &slantlight::project::agenda::Line| {
            let class = if one.at <= now { "past" } else { "" };
            Line { time: day.time_of(one, clock), says: one.says.clone(), class }
        };
        let mut lines: Vec<Line> = day.lines.iter().map(line).collect();
        let split = day.lines.partition_point(|one| one.at <= now);
        let set_up = day.set_up().map(|one| format!(" · {}", one.name)).unwrap_or_default();
        let says = format!("{}{set_up}", if is_now { "now" } else { "the time chosen" });
        let time = words::clock(day.zone.local(now).time(), clock);
        lines.insert(split, Line { time, says, class: "now" });
        lines
    });
    lines.unwrap_or_default()
}
