//! The day line of Now: slots as boxes, and a handle that travels in time.

use leptos::prelude::*;
use slantlight::draw::hours::Hours;
use slantlight::draw::scale::Scale;
use slantlight::units::Spans;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{DayBox, DayLine};

/// The line.
#[component]
pub fn Line(shown: Shown) -> impl IntoView {
    let hours = Memo::new(move |_| shown.with_day(|day| Hours::around(day.day, &day.up())));
    let scale =
        Signal::derive(move || hours.get().map_or(Scale::line(0.0, 24.0, 1.0), |hours| hours.scale()));
    let named = Signal::derive(move || {
        let named = hours.get().map(|hours| hours.named(&shown.zone(), shown.clock()));
        named.unwrap_or_default()
    });
    let boxes = Signal::derive(move || hours.get().map(|hours| boxes(shown, hours)).unwrap_or_default());
    let value = Signal::derive(move || {
        hours.get().map_or(0.0, |hours| hours.hour_of(shown.store.moment.to_the_minute()))
    });
    let say = move |hour: f64| {
        let time = hours.get().map(|hours| shown.zone().local(hours.at_hour(hour)).time());
        time.map(|time| words::clock(time, shown.clock())).unwrap_or_default()
    };
    let stand = move |hour: f64| {
        if let Some(hours) = hours.get_untracked() {
            shown.store.moment.stand_at(hours.at_hour(hour));
        }
    };
    view! { <DayLine label="Time of day" scale=scale hours=named boxes=boxes value=value say=say on_change=stand /> }
}

/// The slots of the set-up that is counted; without one, the sun above the skyline.
fn boxes(shown: Shown, hours: Hours) -> Vec<DayBox> {
    let clock = shown.clock();
    let boxes = shown.with_day(|day| {
        let (spans, name): (Spans, _) = match day.set_up() {
            Some(_) => (Spans::gather(day.ahead.slots().map(|(slot, _)| slot.span).collect()), "slot"),
            None => (day.up(), "sun"),
        };
        let within = spans.and(&day.day.into());
        let time = |at| words::to_the_minute(day.zone.local(at)).time();
        let one = |span: slantlight::units::Span| DayBox {
            from: hours.hour_of(span.start()),
            to: hours.hour_of(span.end()),
            name: format!("{name} {}", words::clock_from_to(time(span.start()), time(span.end()), clock)),
        };
        within.iter().map(one).collect()
    });
    boxes.unwrap_or_default()
}
