//! A room: the sun in it, live, while the wall's bearing, the time or the date moves; and all of its measures.
//!
//! | file | shows |
//! |---|---|
//! | `shown` | the room of this page, its mark and its day, and how it is changed |
//! | `drawing` | the room from a corner or from above; marks and openings to drag |
//! | `day` | day line, date, facts, and when the sun reaches the mark |
//! | `faces` | the wall's bearing: slider, compass, how good it is |
//! | `openings`, `marks`, `sizes` | the measures |
//! | `story` | the mark's day, year and instant in sentences |
//! | `year` | the mark's sun over the year, by each opening |
//! | `chair` | the best place for a chair, and where to move it |
//! | `skylight` | the sky's light on front, cheeks, crown and floor |
//! | `from_sun`, `seen` | the wall's bearing from a graze, a patch or a shadow |
//! | `outside` | screens and skyline as seen from the room |
//! | `pacing` | the floor from walking round it |
//! | `faults` | what does not fit, in sentences |
//! | `told` | the wall by a patch that somebody else saw |

mod chair;
mod day;
mod drawing;
mod faces;
mod faults;
mod from_sun;
mod marks;
mod openings;
mod outside;
mod pacing;
mod seen;
mod shown;
mod sizes;
mod skylight;
mod story;
mod told;
mod year;

use leptos::prelude::*;
use slantlight::project::route::Route;

use super::places::PlaceList;
use crate::app::parts::{EmptyState, Frame};
use shown::Shown;

/// The page of a room.
#[component]
pub fn RoomPage(id: String) -> impl IntoView {
    let shown = Shown::of(id);
    let back = (String::from("Places"), Route::Places.href());
    view! {
        <Frame
            title=Signal::derive(move || shown.title())
            subtitle=Signal::derive(move || shown.subtitle())
            back=back
            list=|| view! { <PlaceList /> }
            more=move || view! { <Show when=move || shown.is_there()><Measures shown=shown /></Show> }
        >
            <Show when=move || shown.is_there() fallback=Gone>
                <drawing::RoomDrawing shown=shown />
                <day::Day shown=shown />
                <faces::Faces shown=shown />
                <story::Story shown=shown />
                <year::Year shown=shown />
                <super::projects::Steps />
                <faults::Faults shown=shown />
            </Show>
        </Frame>
    }
}

/// What is typed.
#[component]
fn Measures(shown: Shown) -> impl IntoView {
    view! {
        <openings::Openings shown=shown />
        <marks::Marks shown=shown />
        <chair::Chair shown=shown />
        <skylight::Skylight shown=shown />
        <outside::Outside shown=shown />
        <sizes::Sizes shown=shown />
    }
}

/// What stands in the place of a room that is not in the project.
#[component]
fn Gone() -> impl IntoView {
    view! {
        <EmptyState says="This room is not in the open project. It may have been removed, or belong to another project.">
            <a class="button" href=Route::Places.href()>"To the places"</a>
        </EmptyState>
    }
}
