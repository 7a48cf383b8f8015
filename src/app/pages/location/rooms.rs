//! Rooms of the location: open one, add one from a size to begin with.

use leptos::prelude::*;
use slantlight::place::room::Room;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::start::{self, ROOM_SIZES};
use slantlight::units::{Bearing, Metres};
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{BearingSlider, Chips, EmptyState, LengthField, ListRow, SectionHead};
use crate::app::router;

/// Sizes of a room that can be typed, metres. Our own choice.
const SIZES: (f64, f64) = (0.3, 200.0);

/// The list.
#[component]
pub fn Rooms(shown: Shown) -> impl IntoView {
    let rooms = Memo::new(move |_| shown.with(|place| place.rooms.clone()).unwrap_or_default());
    let row = move |room: Room| {
        let href = Route::Room(room.id.clone()).href();
        view! { <li><ListRow href=href title=room.name.clone() sub=summary(&room, shown.units()) /></li> }
    };
    view! {
        <section>
            <SectionHead title="Rooms" ruled=true />
            <ul class="rows">{move || rooms.get().into_iter().map(row).collect_view()}</ul>
            <Show when=move || rooms.with(Vec::is_empty)>
                <EmptyState says="No room yet. Add one, then say which way its window wall faces.">""</EmptyState>
            </Show>
            <details class="fold">
                <summary>"Add a room"</summary>
                <AddRoom shown=shown />
            </details>
        </section>
    }
}

/// "8.0 × 6.0 × 3.4 m · faces 248° WSW · 2 openings".
fn summary(room: &Room, units: words::Units) -> String {
    let sizes = room.rectangle_sizes().map(|[width, depth]| {
        format!("{} · ", words::sizes(&[width, depth, room.ceiling], units, words::length))
    });
    let openings = match room.openings.len() {
        0 => "no opening yet".to_owned(),
        1 => "1 opening".to_owned(),
        many => format!("{many} openings"),
    };
    format!("{}faces {} · {openings}", sizes.unwrap_or_default(), words::bearing(room.wall_bearing))
}

#[component]
fn AddRoom(shown: Shown) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let sizes = RwSignal::new(ROOM_SIZES[0].sizes);
    let bearing = RwSignal::new(180.0);
    let chosen = move || ROOM_SIZES.iter().position(|one| one.sizes == sizes.get());
    let choose = move |place: usize| {
        if let Some(one) = ROOM_SIZES.get(place) {
            sizes.set(one.sizes);
        }
    };
    let field = move |label: &'static str, axis: usize| {
        view! {
            <LengthField label=label value=Signal::derive(move || sizes.get()[axis]) units=units limits=SIZES
                on_change=move |to: Metres| sizes.update(|sizes| sizes[axis] = to) />
        }
    };
    let add = move |_| {
        let (id, mark) = (shown.store.fresh_id(), shown.store.fresh_id());
        let Some(location) = shown.with(|place| place.id.clone()) else { return };
        let project = shown.store.desk.latest();
        let Some(place) = project.location(&location) else { return };
        let faces = Bearing::from_degrees(bearing.get_untracked());
        let room = start::room([&id, &mark], &place.rooms, sizes.get_untracked(), faces);
        if shown.store.edit(Edit::PutRoom { location, room: Box::new(room) }) {
            router::go(&Route::Room(id));
        }
    };
    view! {
        <div class="stack">
            <Chips
                label="Size to begin with"
                names=Signal::stored(ROOM_SIZES.map(|one| one.name.to_owned()).to_vec())
                chosen=Signal::derive(chosen)
                on_choose=choose
            />
            <div class="fields">
                {field("Width along the window wall", 0)}
                {field("Depth", 1)}
                {field("Ceiling", 2)}
            </div>
            <BearingSlider
                label="Window wall faces"
                value=bearing
                say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
                on_move=move |degrees| bearing.set(degrees)
                on_change=move |degrees| bearing.set(degrees)
            />
            <button type="button" class="button primary wide" on:click=add>"Add this room"</button>
        </div>
    }
}
