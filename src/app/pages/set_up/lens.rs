//! Where the lens may look: one bearing, a range, or wherever the background is good.

use leptos::prelude::*;
use slantlight::place::aim::Aim;
use slantlight::plan::wish::lens::LensChoice;
use slantlight::project::route::Route;
use slantlight::units::Bearing;
use slantlight::words;

use super::shown::Shown;
use crate::app::pages::from_compass::FromCompass;
use crate::app::parts::{BearingSlider, NumberField, Segmented};

/// The choice, the bearing it looks to now, and what the choice needs.
#[component]
pub fn LensPanel(shown: Shown) -> impl IntoView {
    let bearing =
        Signal::derive(move || shown.with(|set_up| set_up.lens.bearing.degrees()).unwrap_or_default());
    let turn =
        move |degrees: f64| shown.drag(move |set_up| set_up.lens.bearing = Bearing::from_degrees(degrees));
    let choice = Memo::new(move |_| shown.with(|set_up| set_up.lens.choice).unwrap_or_default());
    let choose = move |place: usize| {
        shown.change(|set_up| {
            set_up.lens.choice = match place {
                0 => LensChoice::Fixed,
                1 => LensChoice::around(set_up.lens.bearing),
                _ => LensChoice::AnyGoodBackground,
            };
        });
    };
    view! {
        <section>
            <BearingSlider
                label="Lens bearing"
                value=bearing
                say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
                on_move=turn
                on_change=move |degrees| { turn(degrees); shown.drop_it(); }
            />
            <FromCompass
                site=Signal::derive(move || shown.with_standing(|standing| standing.location.site))
                says="Stand where the camera will be and point the phone's long edge at the subject."
                say=|aim: Aim| words::bearing(aim.corner.bearing)
                on_take=move |aim: Aim| shown.change(|set_up| {
                    set_up.lens.bearing = aim.corner.bearing;
                    set_up.lens.bearing_uncertainty = aim.good_to();
                })
            />
            <div class="spaced">
                <Segmented
                    label="The lens is"
                    names=["fixed", "free in a range", "on any good background"].map(String::from).to_vec()
                    chosen=Signal::derive(move || place_of(choice.get()))
                    on_choose=choose
                />
            </div>
            {move || match place_of(choice.get()) {
                0 => ().into_any(),
                1 => view! { <Range shown=shown choice=choice /> }.into_any(),
                _ => view! { <p class="soft">{move || behind(shown)}</p> }.into_any(),
            }}
        </section>
    }
}

/// In the order of the screen.
const fn place_of(choice: LensChoice) -> usize {
    match choice {
        LensChoice::Fixed => 0,
        LensChoice::Range { .. } => 1,
        LensChoice::AnyGoodBackground => 2,
    }
}

/// First and last bearing of a range.
#[component]
fn Range(shown: Shown, choice: Memo<LensChoice>) -> impl IntoView {
    let end = move |first: bool| {
        Signal::derive(move || match choice.get() {
            LensChoice::Range { from_deg, to_deg } => (if first { from_deg } else { to_deg }).degrees(),
            _ => 0.0,
        })
    };
    let set = move |first: bool, degrees: f64| {
        let to = Bearing::from_degrees(degrees);
        shown.change(|set_up| {
            if let LensChoice::Range { from_deg, to_deg } = &mut set_up.lens.choice {
                *(if first { from_deg } else { to_deg }) = to;
            }
        });
    };
    view! {
        <div class="fields two">
            <NumberField label="From" unit="°" decimals=0 limits=(0.0, 360.0) value=end(true) on_change=move |to| set(true, to) />
            <NumberField label="Clockwise to" unit="°" decimals=0 limits=(0.0, 360.0) value=end(false) on_change=move |to| set(false, to) />
        </div>
    }
}

/// What is known of the backgrounds, with the way to them.
fn behind(shown: Shown) -> impl IntoView {
    let known = shown.with_standing(|standing| {
        let all = &standing.location.backgrounds;
        (all.iter().any(|one| one.good), all.is_empty(), Route::Location(standing.location.id.clone()).href())
    });
    known.map(|(any_good, none, address)| {
        let sentence = match (any_good, none) {
            (true, _) => "It looks only where the background is good. ",
            (false, false) => "It looks anywhere but where the background is not to be seen. ",
            (false, true) => "No background is marked yet, so that it looks anywhere. ",
        };
        view! { {sentence} <a href=address>"Backgrounds"</a> }
    })
}
