//! The room itself: name, floor, ceiling, its end.

use leptos::prelude::*;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::units::{Metres, Share};

use super::pacing;
use super::shown::Shown;
use crate::app::parts::{Fold, LengthField, NumberField, SectionHead, TextField};
use crate::app::router;

/// Sizes of a room that can be typed, metres. Our own choice.
const SIZES: (f64, f64) = (0.3, 200.0);
const CORNERS: (f64, f64) = (-200.0, 200.0);

/// Name, floor, ceiling, remove.
#[component]
pub fn Sizes(shown: Shown) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let name = Signal::derive(move || shown.with(|room| room.name.clone()).unwrap_or_default());
    let ceiling = Signal::derive(move || shown.with(|room| room.ceiling).unwrap_or_default());
    let gives_back =
        Signal::derive(move || shown.with(|room| room.reflectance.percent()).unwrap_or_default());
    let is_rectangle =
        Memo::new(move |_| shown.with(|room| room.rectangle_sizes().is_some()).unwrap_or(true));
    let remove = move |_| {
        let ids = shown.with_location(|location| location.id.clone()).zip(shown.with(|room| room.id.clone()));
        if let Some((location, room)) = ids {
            let says = format!("{} removed", name.get_untracked());
            router::go(&Route::Location(location));
            shown.store.edit_with_undo(Edit::RemoveRoom(room), says);
        }
    };
    view! {
        <section>
            <SectionHead title="Room" />
            <div class="fields">
                <TextField label="Name" value=name on_change=move |text| shown.change(|room| room.name = text) />
                <LengthField label="Ceiling" value=ceiling units=units limits=SIZES on_change=move |to| shown.change(|room| room.ceiling = to) />
                <NumberField label="Walls, floor and ceiling give back" unit="%" decimals=0 limits=(0.0, 95.0) value=gives_back
                    on_change=move |percent| shown.change(|room| room.reflectance = Share::clamped(percent / 100.0)) />
                <Show when=move || is_rectangle.get()>
                    <Rectangle shown=shown />
                </Show>
            </div>
            <Fold label="Corners of the floor"><Corners shown=shown /></Fold>
            <pacing::Pacing shown=shown />
            <p class="spaced"><button type="button" class="button wide" on:click=remove>"Remove this room"</button></p>
        </section>
    }
}

#[component]
fn Rectangle(shown: Shown) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let sizes = move || shown.with(|room| room.rectangle_sizes()).flatten().unwrap_or_default();
    let set = move |change: &dyn Fn(&mut [Metres; 2])| {
        shown.change(|room| {
            if let Some(mut sizes) = room.rectangle_sizes() {
                change(&mut sizes);
                *room = room.with_rectangle(sizes);
            }
        });
    };
    view! {
        <LengthField label="Width along wall 1" value=Signal::derive(move || sizes()[0]) units=units limits=SIZES
            on_change=move |to| set(&|sizes| sizes[0] = to) />
        <LengthField label="Depth" value=Signal::derive(move || sizes()[1]) units=units limits=SIZES
            on_change=move |to| set(&|sizes| sizes[1] = to) />
    }
}

/// Every corner, counter-clockwise; the first is the origin, the second lies along wall 1.
#[component]
fn Corners(shown: Shown) -> impl IntoView {
    let count = Memo::new(move |_| shown.with(|room| room.floor.len()).unwrap_or_default());
    view! {
        <p class="soft">"Anticlockwise seen from above, from the first corner of wall 1: along that wall, and into the room."</p>
        <ol class="stack">{move || (0..count.get()).map(|corner| view! { <Corner shown=shown corner=corner /> }).collect_view()}</ol>
    }
}

#[component]
fn Corner(shown: Shown, corner: usize) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let at = move |axis: usize| {
        Signal::derive(move || {
            shown.with(|room| room.floor.get(corner).map(|spot| spot[axis])).flatten().unwrap_or_default()
        })
    };
    let set = move |axis: usize, to: Metres| {
        shown.change(|room| {
            if let Some(spot) = room.floor.get_mut(corner) {
                spot[axis] = to;
            }
        });
    };
    let number = corner + 1;
    let add = move |_| {
        shown.change(|room| {
            if let Some(more) = room.with_corner_in(corner) {
                *room = more
            }
        })
    };
    let remove = move |_| {
        shown.change(|room| {
            if let Some(fewer) = room.without_corner(corner) {
                *room = fewer
            }
        })
    };
    let field = move |axis: usize, label: String| {
        view! { <LengthField label=label value=at(axis) units=units limits=CORNERS on_change=move |to| set(axis, to) /> }
    };
    view! {
        <li class="corner">
            {(corner > 0).then(|| field(0, format!("Corner {number}, along")))}
            {(corner > 1).then(|| field(1, format!("Corner {number}, in")))}
            {(corner == 0).then_some("Corner 1 is where both are 0.")}
            <button type="button" class="button small" on:click=add aria-label=format!("Add a corner in wall {number}")>"Add after"</button>
            {(corner > 1).then(|| view! {
                <button type="button" class="button small" aria-label=format!("Remove corner {number}") on:click=remove>"Remove"</button>
            })}
        </li>
    }
}
