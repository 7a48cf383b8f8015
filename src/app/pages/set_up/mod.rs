//! A set-up: the light wanted, and when it comes.
//!
//! | file | shows |
//! |---|---|
//! | `shown` | the set-up of this page, and how it is changed |
//! | `wish` | ring, presets, sun on the mark, heights |
//! | `lens` | where the lens may look |
//! | `send` | the set-up in words, for a message |
//! | `looking` | the search, in slices |
//! | `slots` | the best slots, each with its reason, and save |
//! | `alike` | a copy of it, or the light of another |
//! | `face` | where the nose points, the light on the face |
//! | `frame` | sun, windows and shadows in the picture |
//! | `cutting` | match limit and hold, the scene's order, shot and reverse |
//! | `grip` | frame, flag and mirror over a hold |
//! | `travel` | a subject that moves along legs |
//! | `still` | a reference picture beside a ball |
//! | `day` | the day that these six speak of |
//! | `levels` | ratio, soft light, balance that the wish asks for |
//! | `details` | where, lens, dates, hours, sky, name, notes |

mod alike;
mod cutting;
mod day;
mod details;
mod face;
mod frame;
mod grip;
mod lens;
mod levels;
mod looking;
mod send;
pub mod shown;
pub mod slots;
mod still;
mod travel;
mod wish;

use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::project::route::Route;
use slantlight::units::Duration;
use slantlight::words;

use super::scenes::SceneList;
use crate::app::parts::{Caution, EmptyState, Frame, Slider};
use shown::Shown;

/// Minutes that a set-up may take. Our own choice.
const TAKES: Scale = Scale::line(5.0, 180.0, 5.0);

/// The page of a set-up.
#[component]
pub fn SetUpPage(id: String) -> impl IntoView {
    let shown = Shown::of(id);
    let back = (String::from("Scenes"), Route::Scenes.href());
    view! {
        <Frame
            title=Signal::derive(move || shown.title())
            subtitle=Signal::derive(move || shown.subtitle())
            back=back
            list=|| view! { <SceneList /> }
            more=move || view! { <Show when=move || shown.is_there()><Beneath shown=shown /></Show> }
        >
            <Show when=move || shown.is_there() fallback=Gone>
                <wish::WishPanel shown=shown />
                <LensAndTime shown=shown />
            </Show>
        </Frame>
    }
}

/// What goes with the wish: its slots, a caution, and what is seldom changed.
#[component]
fn Beneath(shown: Shown) -> impl IntoView {
    let looking = looking::Looking::of(shown);
    view! {
        <slots::Slots shown=shown looking=looking />
        <send::SendSetUp shown=shown looking=looking />
        <SunInLens shown=shown />
        <alike::Alike shown=shown />
        <face::Face shown=shown />
        <frame::InPicture shown=shown />
        <cutting::CutTogether shown=shown />
        <grip::Grip shown=shown />
        <travel::Moving shown=shown />
        <still::MatchStill shown=shown />
        <details::Details shown=shown />
    }
}

/// What stands in the place of a set-up that is not in the project.
#[component]
fn Gone() -> impl IntoView {
    view! {
        <EmptyState says="This set-up is not in the open project. It may have been removed, or belong to another project.">
            <a class="button" href=Route::Scenes.href()>"To the scenes"</a>
        </EmptyState>
    }
}

/// Where the lens looks, and how long the set-up takes.
#[component]
fn LensAndTime(shown: Shown) -> impl IntoView {
    let minutes = Signal::derive(move || shown.with(|set_up| f64::from(set_up.minutes)).unwrap_or_default());
    let take = move |minutes: f64| shown.drag(move |set_up| set_up.minutes = minutes as u32);
    view! {
        <lens::LensPanel shown=shown />
        <section>
            <Slider
                label="Set-up takes"
                scale=Signal::derive(|| TAKES)
                value=minutes
                say=|minutes: f64| words::duration(Duration::from_minutes(minutes as i64))
                on_move=take
                on_change=move |minutes| { take(minutes); shown.drop_it(); }
            />
        </section>
    }
}

/// The caution for wishes that put the sun before the lens.
#[component]
fn SunInLens(shown: Shown) -> impl IntoView {
    let near = move || shown.with(|set_up| set_up.wish.may_face_the_sun()).unwrap_or(false);
    view! {
        <Show when=near>
            <Caution>
                "Sun in or near the lens: never look at it through an optical finder. Frame on the monitor, cap the lens between takes. It burns eyes and sensors. Local rules and qualified people decide."
            </Caution>
        </Show>
    }
}
