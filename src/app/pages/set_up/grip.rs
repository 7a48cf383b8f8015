//! Frame, flag and mirror: what is at hand, and where each stands through the hold.

use leptos::prelude::*;
use slantlight::plan::grip::kit::GripKit;
use slantlight::plan::grip::words as grip_words;
use slantlight::plan::shot::words as shot_words;
use slantlight::units::{Bearing, Metres};

use super::day::{Day, NOWHERE};
use super::shown::Shown;
use crate::app::parts::{Fold, Hands, Lines, NumberField};

/// The grip's part.
#[component]
pub fn Grip(shown: Shown) -> impl IntoView {
    view! {
        <Fold label="Frame, flag, mirror">
            <Lines lines=Signal::derive(move || lines(shown)) />
            <div class="fields two">
                {field(shown, ("Frame wide", "m"), (0.1, 20.0), None, |k| k.frame_width.metres(), |k, n| k.frame_width = Metres::from_metres(n))}
                {field(shown, ("Frame high", "m"), (0.1, 20.0), None, |k| k.frame_height.metres(), |k, n| k.frame_height = Metres::from_metres(n))}
                {field(shown, ("Its middle over the face", "m"), (0.1, 20.0), None, |k| k.frame_above.metres(), |k, n| k.frame_above = Metres::from_metres(n))}
                {field(shown, ("Flag from the glass", "m"), (0.05, 20.0), None, |k| k.flag.metres(), |k, n| k.flag = Metres::from_metres(n))}
                {field(shown, ("Mirror wide", "m"), (0.05, 10.0), None, |k| k.mirror.metres(), |k, n| k.mirror = Metres::from_metres(n))}
                {field(shown, ("From mark to mirror", "°"), (0.0, 360.0), None, |k| k.bearing.degrees(), |k, n| k.bearing = Bearing::from_degrees(n))}
                {field(shown, ("Mark to mirror", "m"), (0.2, 200.0), None, |k| k.distance.metres(), |k, n| k.distance = Metres::from_metres(n))}
                {field(shown, ("Mirror over the face", "m"), (-20.0, 50.0), Some(Hands::PLUS_MINUS), |k| k.above.metres(), |k, n| k.above = Metres::from_metres(n))}
            </div>
            <p class="soft">"Weigh down every frame and let nobody stand under it in wind. A mirror blinds and burns: cover it while nobody aims it."</p>
        </Fold>
    }
}

fn field(
    shown: Shown,
    (label, unit): (&'static str, &'static str),
    limits: (f64, f64),
    hands: Option<Hands>,
    read: fn(&GripKit) -> f64,
    write: fn(&mut GripKit, f64),
) -> AnyView {
    let value = Signal::derive(move || shown.with(|set_up| read(&set_up.grip)).unwrap_or_default());
    let change = move |number: f64| shown.change(|set_up| write(&mut set_up.grip, number));
    match hands {
        Some(hands) => {
            view! { <NumberField label=label unit=unit limits=limits hands=hands value=value on_change=change /> }.into_any()
        }
        None => view! { <NumberField label=label unit=unit limits=limits value=value on_change=change /> }.into_any(),
    }
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
