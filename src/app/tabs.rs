//! The five rooms, at the foot of a phone, at the side of a wide screen.

use leptos::prelude::*;

use super::router::Router;
use slantlight::project::route::Route;

/// A room: where it leads, its name, its icon as one path on a 24 × 24 field.
struct Room {
    route: Route,
    name: &'static str,
    icon: &'static str,
}

static ROOMS: [Room; 5] = [
    // A low sun on the horizon.
    Room { route: Route::Now, name: "Now", icon: "M2 16h20M7 16a5 5 0 0 1 10 0M12 5v3" },
    // A house with its door.
    Room { route: Route::Places, name: "Places", icon: "M4 21V9.5L12 3l8 6.5V21zM9.5 21v-6h5v6" },
    // A frame with its slate.
    Room { route: Route::Scenes, name: "Scenes", icon: "M3 5h18v14H3zM3 10h18" },
    // A leaf of the calendar.
    Room { route: Route::Days, name: "Days", icon: "M4 5h16v16H4zM4 10h16M8 2.5V7M16 2.5V7M15 15h1.5" },
    // Three levels.
    Room { route: Route::Stops, name: "Stops", icon: "M5 21V11M12 21V3M19 21v-6" },
];

/// Links to the five rooms.
#[component]
pub fn Tabs() -> impl IntoView {
    let router = Router::here();
    let tab = move |room: &'static Room| {
        let here = move || (room_of(&router.route()) == room.route).then_some("page");
        view! {
            <li>
                <a href=room.route.href() aria-current=here>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d=room.icon /></svg>
                    <span>{room.name}</span>
                </a>
            </li>
        }
    };
    view! {
        <nav class="tabs" aria-label="Rooms">
            <ul>{ROOMS.iter().map(tab).collect_view()}</ul>
        </nav>
    }
}

/// The room a screen belongs to.
fn room_of(route: &Route) -> Route {
    match route {
        Route::Start | Route::Demo | Route::Now | Route::Projects | Route::About => Route::Now,
        Route::Places | Route::Recce { .. } | Route::Location(_) | Route::Room(_) | Route::Sight => {
            Route::Places
        }
        Route::Scenes
        | Route::ShotList
        | Route::LightingPlan(_)
        | Route::SetUp(_)
        | Route::Year(_)
        | Route::OnlyHere(_) => Route::Scenes,
        Route::Days => Route::Days,
        Route::Stops => Route::Stops,
    }
}
