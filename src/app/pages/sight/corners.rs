//! Taking corners: along the phone's long edge, or typed.

use leptos::prelude::*;
use slantlight::place::aim::Aim;
use slantlight::place::opening::Corner;
use slantlight::units::{Bearing, Degrees, Height};
use slantlight::words;

use super::Sighting;
use crate::app::devices::compass;
use crate::app::parts::{BearingSlider, Hands, NumberField};

/// Takes the next corner.
#[component]
pub fn Take(sighting: Sighting) -> impl IntoView {
    let site = Signal::derive(move || sighting.here.site.get().map(|(site, _)| site));
    let aim = compass::aimed(site, sighting.store.compass_off.into());
    let has_sensor = move || aim.with(Option::is_some);
    view! {
        <Show when=has_sensor fallback=move || view! { <Typed sighting=sighting /> }>
            <Along sighting=sighting aim=aim />
            <details class="fold">
                <summary>"Type the numbers instead"</summary>
                <Typed sighting=sighting />
            </details>
        </Show>
    }
}

/// What comes next.
fn next(sighting: Sighting) -> &'static str {
    match sighting.corners.with(Vec::len) {
        0 => "first corner",
        1 => "opposite corner",
        _ => "third corner",
    }
}

/// Along the long edge.
#[component]
fn Along(sighting: Sighting, aim: ReadSignal<Option<Aim>>) -> impl IntoView {
    let corner = move || aim.get().map(|aim| aim.corner);
    let too_near = Memo::new(move |_| corner().is_some_and(|corner| sighting.is_near_the_sun(corner)));
    let readout = move || corner().map(direction_words).unwrap_or_default();
    let shaky = move || aim.get().is_some_and(|aim| aim.is_doubtful());
    let take = move |_| {
        if let Some(corner) = corner() {
            sighting.take(corner)
        }
    };
    view! {
        <section class="sight">
            <p>"Stand where the face will be. Look along the long edge of the phone to a corner of the opening, hold for a breath, and tap."</p>
            <p class="huge" aria-live="off">{readout}</p>
            <Show when=move || too_near.get()>
                <p class="field-error" role="alert">"The sun stands there. Do not look along the phone: wait, or type the numbers."</p>
            </Show>
            <Show when=shaky>
                <p class="soft">"The compass is not steady. Move the phone in a figure of eight, away from steel and speakers."</p>
            </Show>
            <button type="button" class="button primary wide" disabled=too_near on:click=take>
                {move || format!("Take the {}", next(sighting))}
            </button>
        </section>
    }
}

/// "251° WSW, 13.1° high".
fn direction_words(corner: Corner) -> String {
    let height = Degrees::from_degrees(corner.height.degrees());
    format!("{}, {} high", words::bearing(corner.bearing), words::degrees_fine(height))
}

/// By bearing slider and typed height.
#[component]
fn Typed(sighting: Sighting) -> impl IntoView {
    let (bearing, height) = (RwSignal::new(180.0), RwSignal::new(10.0));
    let corner = move || Corner {
        bearing: Bearing::from_degrees(bearing.get()),
        height: Height::clamped(height.get()),
    };
    view! {
        <section class="sight">
            <p>"From where the face will be: the bearing and the height of a corner of the opening, then of the opposite corner."</p>
            <BearingSlider
                label="Bearing of the corner"
                value=bearing
                say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
                on_move=move |degrees| bearing.set(degrees)
                on_change=move |degrees| bearing.set(degrees)
            />
            <NumberField label="Its height above the eye, down is minus" hands=Hands::PLUS_MINUS unit="°" decimals=1 limits=(-60.0, 85.0)
                value=height on_change=move |degrees| height.set(degrees) />
            <button type="button" class="button primary wide" on:click=move |_| sighting.take(corner())>
                {move || format!("Take the {}", next(sighting))}
            </button>
        </section>
    }
}
