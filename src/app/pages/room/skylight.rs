//! The sky's light at the shown mark: front, cheeks, crown, floor, as shares of the light outdoors.

use leptos::prelude::*;
use slantlight::place::aperture::face;
use slantlight::plan::in_room::{light_here, story};
use slantlight::units::Bearing;

use super::shown::Shown;
use crate::app::parts::NumberField;

/// The fold.
#[component]
pub fn Skylight(shown: Shown) -> impl IntoView {
    let (looks, is_open) = (RwSignal::new(None::<f64>), RwSignal::new(false));
    let bearing =
        move || looks.get().or_else(|| shown.with(|room| room.wall_bearing.degrees())).unwrap_or_default();
    let text =
        move || if is_open.get() { said(shown, Bearing::from_degrees(bearing())) } else { String::new() };
    view! {
        <details class="fold" on:toggle=move |_| is_open.update(|open| *open = !*open)>
            <summary>"Skylight at the mark"</summary>
            <div class="stack">
                <div class="fields">
                    <NumberField label="The face looks to" unit="°" decimals=0 limits=(0.0, 360.0) value=Signal::derive(bearing) on_change=move |to| looks.set(Some(to)) />
                </div>
                <p class="told">{text}</p>
                <p class="soft">"Of the light on open level ground, through glass and bars, from the sky alone: the sun and the ground outside come on top. The clear sky is the one with the sun where it is now."</p>
            </div>
        </details>
    }
}

fn said(shown: Shown, looks: Bearing) -> String {
    let (Some(place), Some(mark)) = (shown.place_today(), shown.whole_mark()) else {
        return "Add a mark first.".to_owned();
    };
    let sun = shown.sun_at(shown.store.moment.to_the_minute());
    let planes = light_here::planes(&place, face(&mark), looks, sun);
    let mut lines: Vec<String> = planes.iter().map(story::plane).collect();
    let ground = shown.with_location(|location| location.ground.reflectance()).unwrap_or_default();
    lines.push(story::bounced(light_here::bounced(&place, face(&mark), ground)));
    lines.join("\n")
}
