//! A location: where it is, what is there, what stands around it.
//!
//! | file | shows |
//! |---|---|
//! | `shown` | the location of this page, and how it is changed |
//! | `rooms`, `marks` | what can be stood on |
//! | `only_here` | where the camera may stand over a span that is fixed |
//! | `position` | name, coordinates, zone, notes, remove |
//! | `horizon` | what blocks the sky, with the day's sun |
//! | `skyline` | what blocks the sky, far off |
//! | `blockers` | what blocks it near by, seen anew from each mark |
//! | `scout` | what is known of it, and what to ask |
//! | `beside` | another location beside this one, on a desk |
//! | `photographs` | what it looked like |
//! | `backgrounds` | what may be seen behind the subject, and what not |

mod backgrounds;
mod beside;
mod blockers;
mod horizon;
mod marks;
mod only_here;
mod photographs;
mod position;
mod rooms;
mod scout;
mod shown;
mod skyline;

use leptos::prelude::*;
use slantlight::project::route::Route;

use super::places::PlaceList;
use crate::app::parts::{EmptyState, Frame};
use shown::Shown;

/// The page of a location.
#[component]
pub fn LocationPage(id: String) -> impl IntoView {
    let (beside, own) = (RwSignal::new(String::new()), id.clone());
    let shown = Shown::of(id);
    let back = (String::from("Places"), Route::Places.href());
    let title = move || shown.with(|place| place.name.clone()).unwrap_or_else(|| "Place".to_owned());
    view! {
        <Frame
            title=Signal::derive(title)
            subtitle=Signal::derive(move || shown.subtitle())
            back=back
            list=|| view! { <PlaceList /> }
            more=move || view! {
                {beside::choice(shown, &own, beside)}
                {move || match beside.get() {
                    id if id.is_empty() => view! { <Show when=move || shown.is_there()><Around shown=shown /></Show> }.into_any(),
                    id => beside::other(id),
                }}
            }
        >
            <Show when=move || shown.is_there() fallback=Gone>
                <rooms::Rooms shown=shown />
                <marks::Marks shown=shown />
                <only_here::OnlyHere shown=shown />
                <position::Position shown=shown />
            </Show>
        </Frame>
    }
}

/// What stands around it.
#[component]
fn Around(shown: Shown) -> impl IntoView {
    view! {
        <skyline::SkylineRows shown=shown />
        <blockers::Blockers shown=shown />
        <backgrounds::Backgrounds shown=shown />
        <scout::ScoutSheet shown=shown />
        {photographs::photographs(shown)}
        <position::NotesAndEnd shown=shown />
    }
}

/// What stands in the place of a location that is not in the project.
#[component]
fn Gone() -> impl IntoView {
    view! {
        <EmptyState says="This place is not in the open project. It may have been removed, or belong to another project.">
            <a class="button" href=Route::Places.href()>"To the places"</a>
        </EmptyState>
    }
}
