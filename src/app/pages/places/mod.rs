//! Places: every location with its rooms, and the ways to add one.

mod add;

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::place::room::Room;
use slantlight::project::document::Location;
use slantlight::project::find;
use slantlight::project::route::Route;
use slantlight::words;

use crate::app::parts::{EmptyState, Frame, ListRow};
use crate::app::router::Router;
use crate::app::store::Store;

/// The room of the places.
#[component]
pub fn Places() -> impl IntoView {
    let store = Store::here();
    let count = Memo::new(move |_| store.desk.with(|project| project.locations.len()));
    let subtitle = Signal::derive(move || match count.get() {
        0 => "where you shoot".to_owned(),
        many => counted(many, "location"),
    });
    view! {
        <Frame title="Places" subtitle=subtitle>
            <PlaceList />
            <Show when=move || count.get() == 0>
                <EmptyState says="No place yet. Add the first one: with it, every page says where the sun stands.">""</EmptyState>
            </Show>
            <add::Add />
        </Frame>
    }
}

/// Every location with its rooms; also the list beside a location or a room on wide screens.
#[component]
pub fn PlaceList() -> impl IntoView {
    let store = Store::here();
    let router = Router::here();
    let places = Memo::new(move |_| store.desk.with(|project| project.locations.clone()));
    let rows = move || places.get().into_iter().map(|place| rows_of(store, router, place)).collect_view();
    view! { <ul class="rows">{rows}</ul> }
}

fn rows_of(store: Store, router: Router, place: Arc<Location>) -> impl IntoView {
    let id = place.id.clone();
    let here = Signal::derive(move || store.current_location().is_some_and(|current| current.id == id));
    let sub = format!("{} · {}", words::position(place.site), contents(&place));
    let rooms = place.rooms.iter().map(|room| room_row(store, router, room)).collect_view();
    view! {
        <li><ListRow href=Route::Location(place.id.clone()).href() title=named(&place.name) sub=sub here=here /></li>
        {rooms}
    }
}

fn room_row(store: Store, router: Router, room: &Room) -> impl IntoView + use<> {
    let route = Route::Room(room.id.clone());
    let href = route.href();
    let here = Signal::derive(move || router.route() == route);
    let openings = counted(room.openings.len(), "opening");
    let faces = words::bearing(room.wall_bearing);
    let sizes = room.rectangle_sizes();
    let sub = Signal::derive(move || {
        let units = store.settings.get().units;
        let size = sizes.map(|sizes| format!("{} · ", words::sizes(&sizes, units, words::length)));
        format!("{}faces {faces} · {openings}", size.clone().unwrap_or_default())
    });
    view! { <li class="row-inside"><ListRow href=href title=named(&room.name) sub=sub here=here /></li> }
}

/// "2 rooms · 5 marks".
fn contents(place: &Location) -> String {
    format!("{} · {}", counted(place.rooms.len(), "room"), counted(find::marks(place).count(), "mark"))
}

/// A name, or that there is none.
fn named(name: &str) -> String {
    if name.trim().is_empty() { "without a name".to_owned() } else { name.to_owned() }
}

fn counted(count: usize, what: &str) -> String {
    match count {
        0 => format!("no {what}"),
        1 => format!("1 {what}"),
        many => format!("{many} {what}s"),
    }
}
