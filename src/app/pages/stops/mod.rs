//! Stops: how bright each side of the current set-up's subject is at the instant shown, and what to change.
//!
//! | file | shows |
//! |---|---|
//! | `shown` | the subject and its sheet, as memos |
//! | `print` | the sheet as it stands: ball, sides, answers, colours, notes |
//! | `day` | the time, and the curves of the day |
//! | `camera` | the cameras, and what is set on them |
//! | `kit` | what is brought, and what stands here |
//! | `piece` | a piece of the kit, with all that is known of it |
//! | `colour` | the colour of a lamp, to be typed |
//! | `reading` | a meter's word at the place, and its ground |
//! | `lights` | lights that are there |

mod camera;
mod colour;
mod day;
mod kit;
mod lights;
mod piece;
mod print;
mod reading;
mod shown;

use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::light::daylight::Sky;
use slantlight::plan::levels::rows;
use slantlight::project::route::Route;

use crate::app::parts::{EmptyState, Frame, NumberField, Segmented, Slider};
use crate::app::store::Store;
use shown::Lit;

/// Ratios that can be wished, in thirds of a stop; nothing is no wish.
const RATIO: Scale = Scale::line(0.0, 5.0, 1.0 / 3.0);

/// The room of light levels.
#[component]
pub fn Stops() -> impl IntoView {
    let store = Store::here();
    let id = Memo::new(move |_| store.current_set_up());
    move || {
        match id.get() {
        Some(id) => view! { <OfSetUp id=id /> }.into_any(),
        None => view! {
            <Frame title="Light levels">
                <EmptyState says="Levels are those of a set-up: with one, this page says how bright each side of the subject is.">
                    <a class="button" href=Route::Scenes.href()>"To the scenes"</a>
                </EmptyState>
            </Frame>
        }
        .into_any(),
    }
    }
}

/// The levels of a set-up.
#[component]
fn OfSetUp(id: String) -> impl IntoView {
    let lit = Lit::of(id);
    view! {
        <Frame
            title="Light levels"
            subtitle=Signal::derive(move || lit.subtitle())
            more=move || view! { <Beneath lit=lit /> }
        >
            <section class="levels" aria-live="off">{move || print::head(lit)}</section>
            <Show when=move || lit.sheet.with(Option::is_some) fallback=move || view! { <Missing lit=lit /> }>
                <Wished lit=lit />
                <section class="levels-answers">{move || print::answers(lit)}</section>
                <day::Day lit=lit />
            </Show>
        </Frame>
    }
}

/// What goes with the levels.
#[component]
fn Beneath(lit: Lit) -> impl IntoView {
    view! {
        <Show when=move || lit.sheet.with(Option::is_some)>
            <camera::Cameras lit=lit />
            <kit::Kit lit=lit />
            <section class="levels-colours">{move || print::colours(lit)}</section>
            <section class="levels-notes">
                {move || print::notes(lit)}
                <NumberField label="A wetted floor stays wet for (0: it is not wetted)" unit="min" limits=(0.0, 600.0) decimals=0
                    value=Signal::derive(move || f64::from(lit.shown.with(|set_up| set_up.rig.wet_minutes).flatten().unwrap_or_default()))
                    on_change=move |to: f64| lit.shown.change(move |set_up| set_up.rig.wet_minutes = (to >= 1.0).then_some(to as u16)) />
            </section>
            <reading::Readings lit=lit />
        </Show>
    }
}

/// What stands here until the set-up has a place.
#[component]
fn Missing(lit: Lit) -> impl IntoView {
    let to = move || lit.shown.with(|set_up| Route::SetUp(set_up.id.clone()).href()).unwrap_or_default();
    view! {
        <EmptyState says="The light needs a place: say in the set-up where its subject stands, and the levels are here.">
            <a class="button" href=to>"To the set-up"</a>
        </EmptyState>
    }
}

/// The ratio wished, and the sky.
#[component]
fn Wished(lit: Lit) -> impl IntoView {
    let wished =
        Signal::derive(move || lit.shown.with(|set_up| set_up.rig.wanted_stops()).unwrap_or_default());
    let set = move |stops: f64| lit.shown.drag(move |set_up| set_up.rig.set_wanted_stops(stops));
    let sky =
        Signal::derive(move || Sky::ALL.iter().position(|sky| *sky == lit.sky.get()).unwrap_or_default());
    view! {
        <section>
            <Slider
                label="Ratio wanted"
                scale=Signal::stored(RATIO)
                value=wished
                say=|stops: f64| rows::ratio_wanted(stops)
                on_move=set
                on_change=move |stops| { set(stops); lit.shown.drop_it(); }
            />
        </section>
        <section>
            <Segmented
                label="Sky"
                names=Sky::ALL.map(|sky| sky.word().to_owned()).to_vec()
                chosen=sky
                on_choose=move |at: usize| lit.sky.set(Sky::ALL[at])
            />
        </section>
    }
}
