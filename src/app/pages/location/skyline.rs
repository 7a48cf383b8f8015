//! The skyline: rows of bearing and height, all the way round, typed or pasted; without rows the level horizon.

use leptos::prelude::*;
use slantlight::place::aim::Aim;
use slantlight::place::skyline::{BadLine, Point, Skyline, Trouble};
use slantlight::units::{Bearing, Degrees, Height};
use slantlight::words;

use super::horizon::Horizon;
use super::shown::Shown;
use crate::app::pages::from_compass::FromCompass;
use crate::app::parts::{Area, EmptyState, Hands, NumberField, SectionHead};

/// Lines that are wrong, said at a time. Our own choice.
const SHOWN: usize = 5;

/// The rows, and one to add.
#[component]
pub fn SkylineRows(shown: Shown) -> impl IntoView {
    let points = Memo::new(move |_| shown.with(|place| place.skyline.points().to_vec()).unwrap_or_default());
    let beside = Signal::derive(move || match points.with(Vec::len) {
        0 => String::new(),
        1 => "1 point".to_owned(),
        many => format!("{many} points"),
    });
    let count = Memo::new(move |_| points.with(Vec::len));
    let row = move |place: usize| view! { <Row shown=shown points=points place=place /> };
    view! {
        <section>
            <SectionHead title="Skyline" beside=beside ruled=true />
            <Horizon shown=shown />
            <Show when=move || count.get() == 0>
                <EmptyState says="No skyline yet: the horizon counts as level. Add what stands in the sun's way, by bearing and height.">""</EmptyState>
            </Show>
            <ul class="rows">{move || (0..count.get()).map(row).collect_view()}</ul>
            <FromCompass
                word="Sight a point along the phone"
                site=Signal::derive(move || shown.with(|place| place.site))
                says="Look along the phone's long edge, from its bottom to its top, at the upper edge of what blocks the sky."
                say=direction
                on_take=move |aim: Aim| change(shown, |points| points.push(Point { bearing: aim.corner.bearing, height: aim.corner.height }))
                by_eye=true
            />
            <AddPoint shown=shown />
            <Paste shown=shown />
        </section>
    }
}

/// "251° WSW, 13.1° high".
fn direction(aim: Aim) -> String {
    let height = Degrees::from_degrees(aim.corner.height.degrees());
    format!("{}, {} high", words::bearing(aim.corner.bearing), words::degrees_fine(height))
}

/// Puts other points in the place of the skyline's.
fn change(shown: Shown, change: impl FnOnce(&mut Vec<Point>)) {
    shown.change(|place| place.skyline = place.skyline.changed(change));
}

#[component]
fn Row(shown: Shown, points: Memo<Vec<Point>>, place: usize) -> impl IntoView {
    let read = move |read: fn(&Point) -> f64| {
        Signal::derive(move || points.with(|points| points.get(place).map(read)).unwrap_or_default())
    };
    let set = move |set: &dyn Fn(&mut Point)| {
        change(shown, |points| points.get_mut(place).map(set).unwrap_or_default())
    };
    let remove = move |_| {
        let take = move |points: &mut Vec<Point>| {
            if place < points.len() {
                points.remove(place);
            }
        };
        shown.change_with_undo(
            |place| place.skyline = place.skyline.changed(take),
            "Point removed".to_owned(),
        );
    };
    view! {
        <li class="skyline-row">
            <NumberField label="Bearing" unit="°" decimals=1 limits=(0.0, 360.0) value=read(|point| point.bearing.degrees())
                on_change=move |to| set(&|point| point.bearing = Bearing::from_degrees(to)) />
            <NumberField label="Height" hands=Hands::PLUS_MINUS unit="°" decimals=1 limits=(-30.0, 89.0) value=read(|point| point.height.degrees())
                on_change=move |to| set(&|point| point.height = Height::clamped(to)) />
            <button type="button" class="button small" aria-label="Remove this point" on:click=remove>"Remove"</button>
        </li>
    }
}

#[component]
fn AddPoint(shown: Shown) -> impl IntoView {
    let (bearing, height) = (RwSignal::new(180.0), RwSignal::new(5.0));
    let add = move |_| {
        let point = Point {
            bearing: Bearing::from_degrees(bearing.get_untracked()),
            height: Height::clamped(height.get_untracked()),
        };
        change(shown, |points| points.push(point));
    };
    view! {
        <details class="fold">
            <summary>"Add a point"</summary>
            <div class="fields">
                <NumberField label="Bearing, true" unit="°" decimals=1 limits=(0.0, 360.0) value=bearing on_change=move |to| bearing.set(to) />
                <NumberField label="Height above the horizon" hands=Hands::PLUS_MINUS unit="°" decimals=1 limits=(-30.0, 89.0) value=height on_change=move |to| height.set(to) />
                <button type="button" class="button wide" on:click=add>"Add this point"</button>
            </div>
        </details>
    }
}

/// Two columns from a table or a survey; they take the place of the skyline, or join it.
#[component]
fn Paste(shown: Shown) -> impl IntoView {
    let (text, wrong) = (RwSignal::new(String::new()), RwSignal::new(Vec::<BadLine>::new()));
    let take = move |joins: bool| match Skyline::from_columns(&text.get_untracked()) {
        Ok(read) => {
            wrong.set(Vec::new());
            text.set(String::new());
            let says = format!("{} taken in", words::count(read.points().len(), "point"));
            let put = move |points: &mut Vec<Point>| {
                if !joins {
                    points.clear();
                }
                points.extend(read.points());
            };
            shown.change_with_undo(|place| place.skyline = place.skyline.changed(put), says);
        }
        Err(lines) => wrong.set(lines),
    };
    let line = |line: &BadLine| view! { <li class="field-error">{sentence(line)}</li> };
    let nothing = move || text.with(|text| text.trim().is_empty());
    view! {
        <details class="fold">
            <summary>"Paste two columns"</summary>
            <div class="stack">
                <Area label="Bearing and height in degrees, a point a line: 120; 4.5" value=text
                    on_input=move |typed| { text.set(typed); wrong.set(Vec::new()) } />
                <div role="alert"><ul class="stack">{move || wrong.with(|lines| lines.iter().take(SHOWN).map(line).collect_view())}</ul></div>
                <div class="row">
                    <button type="button" class="button grow" disabled=nothing on:click=move |_| take(true)>"Add them"</button>
                    <button type="button" class="button grow" disabled=nothing on:click=move |_| take(false)>"Replace all"</button>
                </div>
            </div>
        </details>
    }
}

/// What is wrong with a line, and what to do.
fn sentence(line: &BadLine) -> String {
    let start = format!("Line {}, “{}”", line.line, line.text);
    match line.trouble {
        Trouble::Columns(count) => {
            format!("{start}: {count} columns. Write bearing and height, like 120; 4.5.")
        }
        Trouble::NotANumber => format!("{start}: these are not two numbers. Write them like 120; 4.5."),
        Trouble::Bearing(_) => format!("{start}: a bearing is −180° to 360°."),
        Trouble::Height(_) => format!("{start}: a height is −90° to 90°."),
    }
}
