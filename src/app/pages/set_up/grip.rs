//! Frame, flag and mirror: what is at hand, and where each stands through the hold.

use leptos::prelude::*;
use slantlight::plan::grip::kit::GripKit;
use slantlight::plan::grip::words as grip_words;
use slantlight::plan::shot::words as shot_words;
use slantlight::units::{Bearing, Metres};

use super::day::{Day, NOWHERE, number};
use super::shown::Shown;
use crate::app::parts::{Fold, LengthField, Lines};

/// The grip's part.
#[component]
pub fn Grip(shown: Shown) -> impl IntoView {
    view! {
        <Fold label="Frame, flag, mirror">
            <Lines lines=Signal::derive(move || lines(shown)) />
            <div class="fields two">
                {length(shown, "Frame wide", (0.1, 20.0), |kit| &mut kit.frame_width)}
                {length(shown, "Frame high", (0.1, 20.0), |kit| &mut kit.frame_height)}
                {length(shown, "Its middle over the face", (0.1, 20.0), |kit| &mut kit.frame_above)}
                {length(shown, "Flag from the glass", (0.05, 20.0), |kit| &mut kit.flag)}
                {length(shown, "Mirror wide", (0.05, 10.0), |kit| &mut kit.mirror)}
                {number(shown, ("From mark to mirror", "°"), (0.0, 360.0),
                    |s| s.grip.bearing.degrees(), |s, to| s.grip.bearing = Bearing::from_degrees(to))}
                {length(shown, "Mark to mirror", (0.2, 200.0), |kit| &mut kit.distance)}
                {length(shown, "Mirror over the face, minus for under it", (-20.0, 50.0), |kit| &mut kit.above)}
            </div>
            <p class="soft">"Weigh down every frame, and take it down in wind. A mirror blinds and burns: cover it while nobody aims it."</p>
        </Fold>
    }
}

/// A length that `at` finds in what is at hand.
fn length(
    shown: Shown,
    label: &'static str,
    limits: (f64, f64),
    at: fn(&mut GripKit) -> &mut Metres,
) -> AnyView {
    let units = Signal::derive(move || shown.store.settings.get().units);
    let value = Signal::derive(move || {
        let mut kit = shown.with(|set_up| set_up.grip).unwrap_or_default();
        *at(&mut kit)
    });
    let change = move |to: Metres| shown.change(|set_up| *at(&mut set_up.grip) = to);
    view! { <LengthField label=label units=units limits=limits value=value on_change=change /> }.into_any()
}

fn lines(shown: Shown) -> Vec<String> {
    let Some(day) = Day::of(shown) else { return vec![NOWHERE.to_owned()] };
    let Some(hold) = shot_words::chosen(&day.met, day.at) else {
        return vec!["No light as wished on this day: tap a slot above, and it stands here.".to_owned()];
    };
    let kit = shown.with(|set_up| set_up.grip).unwrap_or_default();
    let settings = shown.store.settings.get();
    grip_words::lines(&day.sun, &day.stage, &kit, hold, (settings.clock, settings.units))
}
