//! Which way the wall faces: slider, typed, or from the compass with the phone's edge along the wall.

use leptos::prelude::*;
use slantlight::place::aim::wall_at_left;
use slantlight::place::wall::COMPASS;
use slantlight::sky::declination::{Zone, declination};
use slantlight::units::{Bearing, Degrees};
use slantlight::words;

use super::from_sun;
use super::shown::Shown;
use crate::app::devices::orientation::Permission;
use crate::app::devices::{compass, orientation};
use crate::app::parts::{BearingSlider, NumberField};

/// Slider, compass, and how good the bearing is.
#[component]
pub fn Faces(shown: Shown) -> impl IntoView {
    let permission = RwSignal::new(None::<Permission>);
    let bearing = Signal::derive(move || shown.with(|room| room.wall_bearing.degrees()).unwrap_or_default());
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
                between=move || view! {
                    <button type="button" class="button grow" on:click=move |_| orientation::ask(move |answer| permission.set(Some(answer)))>
                        "Take from compass"
                    </button>
                }
            />
            {move || permission.get().map(|answer| match answer {
                Permission::Granted => view! { <Take shown=shown permission=permission /> }.into_any(),
                Permission::Refused => view! {
                    <p class="field-error" role="alert">
                        "This page may not read the compass. Allow motion sensors for it in the browser's settings, or tap the bearing above and type it."
                    </p>
                }.into_any(),
            })}
            <from_sun::FromTheSun shown=shown />
            <p class="soft">"Wall 1, seen from inside the room: the direction in which one looks out of it. True, not magnetic."</p>
            <div class="fields">
                <NumberField label="Bearing good to ±" unit="°" decimals=1 limits=(0.0, 45.0) value=good_to
                    on_change=move |degrees| shown.change(|room| room.bearing_uncertainty = Degrees::from_degrees(degrees)) />
            </div>
        </section>
    }
}

/// The compass, read while the phone lies along the wall.
#[component]
fn Take(shown: Shown, permission: RwSignal<Option<Permission>>) -> impl IntoView {
    let site = Signal::derive(move || shown.with_location(|location| location.site));
    let aim = compass::aimed(site);
    let faces = move || aim.get().map(|aim| wall_at_left(aim.corner.bearing));
    let readout = move || {
        match aim.get().zip(faces()) {
        Some((aim, faces)) => format!("{}, steady to {}", words::bearing(faces), words::degrees_fine(aim.spread)),
        None => "Waiting for the compass. If nothing comes, this device has none: tap the bearing above and type it.".to_owned(),
    }
    };
    let take = move |_| {
        if let Some(faces) = untrack(faces) {
            shown.change(|room| {
                room.wall_bearing = faces;
                room.bearing_uncertainty = COMPASS;
            });
            permission.set(None);
        }
    };
    let caution = move || site.get().and_then(|site| caution(site, shown.store.moment.today()));
    view! {
        <div class="card stack">
            <p>"Lay the phone flat with its left long edge along the wall, the screen up. Keep it away from steel, magnets and speakers."</p>
            <p class="huge" aria-live="off">{readout}</p>
            {move || caution().map(|sentence| view! { <p class="field-error">{sentence}</p> })}
            <div class="row">
                <button type="button" class="button grow" disabled=move || aim.with(Option::is_none) on:click=take>"Take it"</button>
                <button type="button" class="button grow" on:click=move |_| permission.set(None)>"Leave it"</button>
            </div>
        </div>
    }
}

/// What the magnetic field means for a compass here, where it matters.
fn caution(site: slantlight::place::site::Site, at: slantlight::units::Instant) -> Option<&'static str> {
    let found = declination(site, at);
    match found.zone {
        Zone::Blackout => {
            Some("So near a magnetic pole a compass is of no use. Type the bearing from a map.")
        }
        Zone::Caution => Some("So near a magnetic pole a compass is unreliable. Check the bearing on a map."),
        Zone::Ok if found.outside_years => {
            Some("The magnetic model is past its years: the bearing may be off by some tenths of a degree.")
        }
        Zone::Ok => None,
    }
}
