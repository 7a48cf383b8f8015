//! The skyline: rows of bearing and height, all the way round; without rows the level horizon.

use leptos::prelude::*;
use slantlight::place::skyline::{Point, Skyline};
use slantlight::units::{Bearing, Height};

use super::shown::Shown;
use crate::app::parts::{EmptyState, NumberField, SectionHead};

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
            <Show when=move || count.get() == 0>
                <EmptyState says="No skyline yet: the horizon counts as level. Add what stands in the sun's way, by bearing and height.">""</EmptyState>
            </Show>
            <ul class="rows">{move || (0..count.get()).map(row).collect_view()}</ul>
            <AddPoint shown=shown />
        </section>
    }
}

/// Puts other points in the place of the skyline's.
fn change(shown: Shown, change: impl FnOnce(&mut Vec<Point>)) {
    shown.change(|place| {
        let mut points = place.skyline.points().to_vec();
        change(&mut points);
        place.skyline = Skyline::new(points);
    });
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
        change(shown, |points| {
            if place < points.len() {
                points.remove(place);
            }
        });
    };
    view! {
        <li class="skyline-row">
            <NumberField label="Bearing" unit="°" decimals=1 limits=(0.0, 360.0) value=read(|point| point.bearing.degrees())
                on_change=move |to| set(&|point| point.bearing = Bearing::from_degrees(to)) />
            <NumberField label="Height" unit="°" decimals=1 limits=(-30.0, 89.0) value=read(|point| point.height.degrees())
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
                <NumberField label="Height above the horizon" unit="°" decimals=1 limits=(-30.0, 89.0) value=height on_change=move |to| height.set(to) />
                <button type="button" class="button wide" on:click=add>"Add this point"</button>
            </div>
        </details>
    }
}
