//! Places: every location with its rooms, and the ways to add one.

mod add;

use leptos::prelude::*;
use slantlight::place::room::Room;
use slantlight::project::document::Location;
use slantlight::project::find;
use slantlight::project::route::Route;
use slantlight::words::{self, Units};

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
    let lines = Memo::new(move |_| {
        let units = store.settings.get().units;
        store.desk.with(|project| {
            project.locations.iter().flat_map(|place| lines_of(place, units)).collect::<Vec<_>>()
        })
    });
    // The list is made anew only when other rows are in it; what a row says follows by itself.
    let routes = Memo::new(move |_| {
        lines.with(|lines| lines.iter().map(|line| line.route.clone()).collect::<Vec<_>>())
    });
    let row = move |(place, route): (usize, Route)| {
        let said = move |read: fn(&Line) -> &str| {
            Signal::derive(move || {
                lines.with(|lines| lines.get(place).map_or(String::new(), |line| read(line).to_owned()))
            })
        };
        let (href, is_inside) = (route.href(), matches!(route, Route::Room(_)));
        let here = Signal::derive(move || match &route {
            Route::Location(id) => store.current_location().is_some_and(|current| &current.id == id),
            room => router.route() == *room,
        });
        view! {
            <li class:row-inside=is_inside>
                <ListRow href=href title=said(|line| &line.title) sub=said(|line| &line.sub) here=here />
            </li>
        }
    };
    view! { <ul class="rows">{move || routes.get().into_iter().enumerate().map(row).collect_view()}</ul> }
}

/// A location or one of its rooms, as a row.
#[derive(Clone, PartialEq)]
struct Line {
    route: Route,
    title: String,
    sub: String,
}

fn lines_of(place: &Location, units: Units) -> Vec<Line> {
    let head = Line {
        route: Route::Location(place.id.clone()),
        title: named(&place.name),
        sub: format!("{} · {}", words::position(place.site), contents(place)),
    };
    let room = |room: &Room| {
        let sizes = room.rectangle_sizes();
        let size = sizes.map(|sizes| format!("{} · ", words::sizes(&sizes, units, words::length)));
        let (faces, openings) = (words::bearing(room.wall_bearing), counted(room.openings.len(), "opening"));
        Line {
            route: Route::Room(room.id.clone()),
            title: named(&room.name),
            sub: format!("{}faces {faces} · {openings}", size.unwrap_or_default()),
        }
    };
    core::iter::once(head).chain(place.rooms.iter().map(room)).collect()
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
        some => words::count(some, what),
    }
}
