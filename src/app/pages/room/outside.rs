//! What stands outside: upright screens near by, and the room's own skyline.

use leptos::prelude::*;
use slantlight::place::outside::Screen;
use slantlight::place::skyline::Skyline;
use slantlight::project::start;
use slantlight::units::{Bearing, Metres};
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{Area, Entry, LengthField, NumberField, SectionHead, TextField};

/// Sizes that can be typed, metres. Our own choice.
const DISTANCES: (f64, f64) = (0.5, 5000.0);
const HEIGHTS: (f64, f64) = (-100.0, 1000.0);

/// The list of screens, and the skyline.
#[component]
pub fn Outside(shown: Shown) -> impl IntoView {
    let count = Memo::new(move |_| shown.with(|room| room.screens.len()).unwrap_or_default());
    let add = move |_| {
        let id = shown.store.fresh_id();
        shown.change(|room| {
            let screen = start::screen(&id, room);
            room.screens.push(screen);
        });
    };
    view! {
        <section>
            <SectionHead title="Outside" beside=Signal::stored("as seen from this room".to_owned()) ruled=true />
            {move || (0..count.get()).map(|place| view! { <ScreenFold shown=shown place=place /> }).collect_view()}
            <p class="spaced"><button type="button" class="button wide" on:click=add>"Add a house front"</button></p>
            <Line shown=shown />
        </section>
    }
}

/// "12.0 m off · 218° to 278° · top at 8.0 m".
fn summary(screen: &Screen, units: words::Units) -> String {
    let say = |length| words::length(length, units);
    let (from, to) = (words::bearing(screen.from), words::bearing(screen.to));
    format!("{} off · {from} to {to} · top at {}", say(screen.distance), say(screen.height))
}

#[component]
fn ScreenFold(shown: Shown, place: usize) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let with = move |read: &dyn Fn(&Screen) -> String| {
        shown.with(|room| room.screens.get(place).map(read)).flatten().unwrap_or_default()
    };
    let name = Signal::derive(move || with(&|screen| screen.name.clone()));
    let sub = Signal::derive(move || with(&|screen| summary(screen, units.get())));
    let change = move |change: &dyn Fn(&mut Screen)| {
        shown.change(|room| room.screens.get_mut(place).map(change).unwrap_or_default());
    };
    let number = move |read: fn(&Screen) -> f64| {
        Signal::derive(move || {
            shown.with(|room| room.screens.get(place).map(read)).flatten().unwrap_or_default()
        })
    };
    let length = move |read: fn(&Screen) -> f64| {
        let number = number(read);
        Signal::derive(move || Metres::from_metres(number.get()))
    };
    let remove = move |_| shown.change(|room| drop(room.screens.remove(place)));
    view! {
        <Entry title=name sub=sub>
            <TextField label="Name" value=name on_change=move |text: String| change(&|screen| screen.name.clone_from(&text)) />
            <LengthField label="Distance from the room's middle" value=length(|s| s.distance.metres()) units=units limits=DISTANCES
                on_change=move |to| change(&|screen| screen.distance = to) />
            <NumberField label="Left end, bearing" unit="°" decimals=1 limits=(0.0, 360.0) value=number(|s| s.from.degrees())
                on_change=move |to| change(&|screen| screen.from = Bearing::from_degrees(to)) />
            <NumberField label="Right end, bearing" unit="°" decimals=1 limits=(0.0, 360.0) value=number(|s| s.to.degrees())
                on_change=move |to| change(&|screen| screen.to = Bearing::from_degrees(to)) />
            <LengthField label="Top above the room's floor" value=length(|s| s.height.metres()) units=units limits=HEIGHTS
                on_change=move |to| change(&|screen| screen.height = to) />
            <button type="button" class="button" on:click=remove>"Remove it"</button>
        </Entry>
    }
}

/// The skyline as two columns.
#[component]
fn Line(shown: Shown) -> impl IntoView {
    let (text, wrong) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let points = move || match shown.with(|room| room.skyline.points().len()).unwrap_or_default() {
        0 => "Skyline from the room".to_owned(),
        many => format!("Skyline from the room: {many} points"),
    };
    let take =
        move |_| match text.with_untracked(|text| (text.trim().is_empty(), Skyline::from_columns(text))) {
            (true, _) => put(shown, wrong, Skyline::default()),
            (_, Ok(line)) => put(shown, wrong, line),
            (_, Err(lines)) => {
                let first = lines
                    .first()
                    .map(|line| format!("Line {} is not a bearing and a height, like 120; 4.5.", line.line));
                wrong.set(first.unwrap_or_default());
            }
        };
    view! {
        <details class="fold">
            <summary>{points}</summary>
            <div class="stack">
                <Area label="Bearing and height in degrees, a point a line: 120; 4.5. Empty for none." value=text on_input=move |typed| text.set(typed) />
                <p class="field-error" role="alert">{wrong}</p>
                <button type="button" class="button wide" on:click=take>"Take it"</button>
            </div>
        </details>
    }
}

fn put(shown: Shown, wrong: RwSignal<String>, line: Skyline) {
    wrong.set(String::new());
    shown.change(|room| room.skyline = line);
}
