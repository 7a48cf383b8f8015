//! Which way the wall faces: slider, typed, or from the compass with the phone's edge along the wall.

use leptos::prelude::*;
use slantlight::place::aim::{Aim, wall_at_left};
use slantlight::units::{Bearing, Degrees};
use slantlight::words;

use super::shown::Shown;
use super::{from_sun, told};
use crate::app::pages::from_compass::FromCompass;
use crate::app::parts::{BearingSlider, NumberField};

/// Slider, compass, and how good the bearing is.
#[component]
pub fn Faces(shown: Shown) -> impl IntoView {
    let bearing =
        Signal::derive(move || shown.with_live(|room| room.wall_bearing.degrees()).unwrap_or_default());
    let good_to =
        Signal::derive(move || shown.with(|room| room.bearing_uncertainty.degrees()).unwrap_or_default());
    let turn = move |degrees: f64| shown.drag(move |room| room.wall_bearing = Bearing::from_degrees(degrees));
    view! {
        <section class="room-faces">
            <BearingSlider
                label="Wall faces"
                value=bearing
                say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
                on_move=turn
                on_change=move |degrees| { turn(degrees); shown.let_go(); }
                large=true
            />
            <FromCompass
                site=Signal::derive(move || shown.with_location(|location| location.site))
                says="Lay the phone flat with its left long edge along the wall, the screen up."
                say=|aim: Aim| words::bearing(wall_at_left(aim.corner.bearing))
                on_take=move |aim: Aim| shown.change(|room| {
                    room.wall_bearing = wall_at_left(aim.corner.bearing);
                    room.bearing_uncertainty = aim.good_to();
                })
            />
            <from_sun::FromTheSun shown=shown />
            <told::FromACall shown=shown />
            <p class="soft">"Wall 1, seen from inside the room: the direction in which one looks out of it. True, not magnetic."</p>
            <div class="fields">
                <NumberField label="Bearing good to ±" unit="°" decimals=1 limits=(0.0, 45.0) value=good_to
                    on_change=move |degrees| shown.change(|room| room.bearing_uncertainty = Degrees::from_degrees(degrees)) />
            </div>
        </section>
    }
}
