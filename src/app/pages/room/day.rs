//! The day of the shown mark: line, date, facts, and in words when the sun reaches it and by which opening. Line and facts
//! follow each move of a finger; the words, which may have to look through a year, wait until it rests.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::draw::hours::Hours;
use slantlight::draw::scale::Scale;
use slantlight::light::in_room::InRoom;
use slantlight::place::zone::Zone;
use slantlight::plan::search::on_mark::{self, OnMark};
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Span};
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::settled::settled;
use crate::app::parts::{DayBox, DayLine, Fact, Facts};

/// Between the two directions of the sun that the drift is taken from.
const APART: Duration = Duration::from_minutes(1);

/// A date's hours and its sun on the mark.
#[derive(Clone, PartialEq)]
struct Light {
    zone: Arc<Zone>,
    hours: Hours,
    on_mark: OnMark,
}

/// All about the day.
#[component]
pub fn Day(shown: Shown) -> impl IntoView {
    let date = Memo::new(move |_| shown.date());
    let light = Memo::new(move |_| light_of(shown, date.get()));
    let follow = move || {
        light.track();
        shown.stage.track();
        shown.store.settings.track();
    };
    let say = move || sentence(shown, light);
    let sentence = settled(untrack(say), follow, say);
    view! {
        <section class="room-day">
            <p class="room-sentence" aria-live="polite">{sentence}</p>
            <Show when=move || light.with(Option::is_some)>
                <Line shown=shown light=light />
            </Show>
            <Facts facts=Signal::derive(move || facts(shown, light)) />
            <DateRow shown=shown />
        </section>
    }
}

/// `None` for a date that the zone left out.
fn light_of(shown: Shown, date: chrono::NaiveDate) -> Option<Light> {
    let zone = shown.zone();
    let day = zone.day(date)?;
    let sun = Sun::new(shown.with_location(|location| location.site)?);
    let up = on_mark::sun_up(&sun, &shown.skyline(), day);
    let on_mark = match shown.stage.get() {
        Some(Ok(stage)) => OnMark::on(&sun, &stage, date),
        _ => OnMark::default(),
    };
    Some(Light { hours: Hours::around(day, &up), zone, on_mark })
}

/// When the sun reaches the mark, or why that cannot be said.
fn sentence(shown: Shown, light: Memo<Option<Light>>) -> String {
    let stage = match shown.stage.get() {
        Some(Ok(stage)) => stage,
        Some(Err(why)) => return format!("This mark cannot be asked: {why}."),
        None => return "Add a mark, and when the sun reaches it stands here.".to_owned(),
    };
    let (sun, style) = (Sun::new(stage.site), shown.store.settings.get().clock);
    let say = |light: &Light| light.on_mark.sentence(&sun, &stage, shown.date(), style);
    light.with(|light| light.as_ref().map(say)).unwrap_or_default()
}

#[component]
fn Line(shown: Shown, light: Memo<Option<Light>>) -> impl IntoView {
    let style = move || shown.store.settings.get().clock;
    let hours = move || light.with(|light| light.as_ref().map(|light| light.hours));
    let scale = Signal::derive(move || hours().map_or(Scale::line(0.0, 24.0, 1.0), |hours| hours.scale()));
    let named = Signal::derive(move || {
        light
            .with(|light| light.as_ref().map(|light| light.hours.named(&light.zone, style())))
            .unwrap_or_default()
    });
    let boxes = Signal::derive(move || {
        light
            .with(|light| {
                let light = light.as_ref()?;
                Some(light.on_mark.spans.iter().map(|span| day_box(light, span, style())).collect::<Vec<_>>())
            })
            .unwrap_or_default()
    });
    let value = Signal::derive(move || {
        hours().map_or(0.0, |hours| hours.hour_of(shown.store.moment.to_the_minute()))
    });
    let say = move |hour: f64| {
        let at = hours().map(|hours| shown.zone().local(hours.at_hour(hour)).time());
        at.map(|time| words::clock(time, style())).unwrap_or_default()
    };
    let stand = move |hour: f64| {
        if let Some(hours) = untrack(hours) {
            shown.store.moment.stand_at(hours.at_hour(hour));
        }
    };
    view! { <DayLine label="Time of day" scale=scale hours=named boxes=boxes value=value say=say on_change=stand /> }
}

fn day_box(light: &Light, span: Span, style: words::Clock) -> DayBox {
    let local = |at| words::to_the_minute(light.zone.local(at)).time();
    let clock = words::clock_from_to(local(span.start()), local(span.end()), style);
    DayBox {
        from: light.hours.hour_of(span.start()),
        to: light.hours.hour_of(span.end()),
        name: format!("sun on the mark {clock}"),
    }
}

/// The date, with a day back and a day on.
#[component]
fn DateRow(shown: Shown) -> impl IntoView {
    let moment = shown.store.moment;
    let go = move |date: Option<chrono::NaiveDate>| {
        if let Some(date) = date {
            let zone = untrack(move || shown.zone());
            let at = untrack(move || moment.to_the_minute());
            moment.stand_at(zone.on_date(at, date));
        }
    };
    let date = move || untrack(move || shown.date());
    view! {
        <div class="date-row">
            <button type="button" class="button" aria-label="A day earlier" on:click=move |_| go(date().pred_opt())>"‹"</button>
            <label class="field">
                <span class="unseen">"Date"</span>
                <input type="date" prop:value=move || shown.date().to_string()
                    on:change=move |event| go(event_target_value(&event).parse().ok()) />
            </label>
            <button type="button" class="button" aria-label="A day later" on:click=move |_| go(date().succ_opt())>"›"</button>
        </div>
    }
}

/// Time, sun on the mark, drift, reach.
fn facts(shown: Shown, light: Memo<Option<Light>>) -> Vec<Fact> {
    let (at, units) = (shown.store.moment.to_the_minute(), shown.units());
    let local = shown.zone().local(at);
    let date = format!("{} {}", words::weekday(local.date()), words::date_short(local.date()));
    let mut facts = vec![Fact::new(words::clock(local.time(), shown.store.settings.get().clock), date)];
    if let Some(total) = light.with(|light| light.as_ref().map(|light| light.on_mark.total())) {
        facts.push(Fact::new(words::duration(total), "sun on mark"));
    }
    let suns = shown.sun_at(at).zip(shown.sun_at(at + APART));
    let found = suns.and_then(|(now, then)| shown.with(|room| InRoom::of(room, [now, then], APART)));
    let found = found.unwrap_or_default();
    let (drift, unit) =
        found.drift.map_or(("–".to_owned(), "drift"), |drift| words::per_minute(drift, units));
    let unit = if unit == "drift" { unit.to_owned() } else { format!("{unit} drift") };
    facts.push(Fact::new(drift, unit));
    let reach = found.reach.map_or("–".to_owned(), |reach| words::length(reach, units));
    facts.push(Fact::new(reach, "reach on floor"));
    facts
}
