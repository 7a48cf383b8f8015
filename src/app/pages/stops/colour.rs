//! The colour of a lamp: as white light, with its Duv where a meter has said it, as x and y, or by the hue it is set to.

use leptos::prelude::*;
use slantlight::plan::kit::LampColour;
use slantlight::units::{Degrees, Kelvin};

use crate::app::parts::{Hands, NumberField, Segmented};

const KINDS: [&str; 4] = ["white", "with Duv", "x, y", "hue"];

/// The fields.
#[component]
pub fn ColourFields(
    colour: Signal<LampColour>,
    #[prop(into)] on_change: Callback<LampColour>,
) -> impl IntoView {
    let by_hue = RwSignal::new(false);
    let kind = Signal::derive(move || match colour.get() {
        LampColour::White { duv: None, .. } => 0,
        LampColour::White { .. } => 1,
        LampColour::Xy { .. } => 2 + usize::from(by_hue.get()),
    });
    let choose = move |kind: usize| {
        by_hue.set(kind == 3);
        let now = colour.get_untracked();
        on_change.run(if kind < 2 { now.as_white(kind == 1) } else { now.as_xy() });
    };
    let number = move |read: fn(LampColour) -> f64| Signal::derive(move || read(colour.get()));
    let set = move |place: usize, to: f64| {
        let changed = match colour.get_untracked() {
            LampColour::White { duv, .. } if place == 0 => {
                LampColour::White { cct: Kelvin::clamped(to), duv }
            }
            LampColour::White { cct, .. } => LampColour::White { cct, duv: Some(to) },
            LampColour::Xy { y, .. } if place == 0 => LampColour::Xy { x: to, y },
            LampColour::Xy { x, .. } => LampColour::Xy { x, y: to },
        };
        on_change.run(changed);
    };
    let white = move || kind.get() < 2;
    view! {
        <Segmented label="Its colour" names=KINDS.map(str::to_owned).to_vec() chosen=kind on_choose=choose />
        <Show when=white>
            <NumberField label="Colour temperature" unit="K" limits=(1000.0, 20_000.0) decimals=0
                value=number(|one| one.temperature().map_or(5600.0, Kelvin::kelvin)) on_change=move |to| set(0, to) />
        </Show>
        <Show when=move || kind.get() == 1>
            <NumberField label="Duv, positive is greenish" limits=(-0.05, 0.05) decimals=4 hands=Hands::PLUS_MINUS
                value=number(|one| if let LampColour::White { duv: Some(duv), .. } = one { duv } else { 0.0 })
                on_change=move |to| set(1, to) />
        </Show>
        <Show when=move || kind.get() == 2>
            <NumberField label="x" limits=(0.01, 0.8) decimals=4 value=number(|one| one.chromaticity().x()) on_change=move |to| set(0, to) />
            <NumberField label="y" limits=(0.01, 0.9) decimals=4 value=number(|one| one.chromaticity().y()) on_change=move |to| set(1, to) />
        </Show>
        <Show when=move || kind.get() == 3>
            <NumberField label="Hue: 0 red, 120 green, 240 blue" unit="°" limits=(0.0, 360.0) decimals=0
                value=number(|one| one.hue().degrees())
                on_change=move |to| on_change.run(LampColour::of_hue(Degrees::from_degrees(to))) />
        </Show>
    }
}
