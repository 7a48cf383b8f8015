//! One file per page, and the one table that leads from an address to a page.

mod about;
pub mod as_link;
mod awaited;
mod called;
mod days;
mod earlier;
mod from_compass;
pub mod here;
pub mod incoming;
mod lighting_plan;
mod location;
mod mark_fold;
mod merging;
mod now;
mod paste;
mod places;
mod projects;
mod recce;
mod room;
mod scenes;
mod set_up;
mod shot_list;
mod sight;
mod start;
mod stops;
pub mod today;
mod year;

use leptos::prelude::*;

use slantlight::project::route::Route;

use super::second::Second;

/// The page at an address. Those that a first visit waits for are here, the others in [the second part](super::second).
pub fn page(route: Route) -> AnyView {
    match route {
        Route::Start => view! { <start::Start /> }.into_any(),
        Route::Demo => view! { <start::Demo /> }.into_any(),
        Route::Scenes => view! { <scenes::Scenes /> }.into_any(),
        _ => match Second::here().there() {
            Some(table) => (table.page)(route),
            None => view! { <awaited::Awaited /> }.into_any(),
        },
    }
}

/// The same for all others.
pub fn page_of_second(route: Route) -> AnyView {
    match route {
        Route::About => view! { <about::About /> }.into_any(),
        Route::Days => view! { <days::Days /> }.into_any(),
        Route::Stops => view! { <stops::Stops /> }.into_any(),
        Route::ShotList => view! { <shot_list::ShotListPage /> }.into_any(),
        Route::Places => view! { <places::Places /> }.into_any(),
        Route::Location(id) => view! { <location::LocationPage id=id /> }.into_any(),
        Route::Recce { location, name } => recce::recce(location, name),
        Route::Room(id) => view! { <room::RoomPage id=id /> }.into_any(),
        Route::Sight => view! { <sight::Sight /> }.into_any(),
        Route::LightingPlan(id) => lighting_plan::lighting_plan(id),
        Route::Year(id) => view! { <year::YearPage id=id /> }.into_any(),
        Route::OnlyHere(id) => year::only_here_page(id),
        Route::SetUp(id) => view! { <set_up::SetUpPage id=id /> }.into_any(),
        Route::Projects => view! { <projects::Projects /> }.into_any(),
        // Those of the first part never come here.
        Route::Now | Route::Start | Route::Demo | Route::Scenes => view! { <now::Now /> }.into_any(),
    }
}

/// The sheets that any page may open, in the second part.
pub fn sheets() -> AnyView {
    view! {
        <incoming::IncomingSheets />
        <as_link::LinkSheet />
    }
    .into_any()
}
