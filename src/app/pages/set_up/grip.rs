//! Frame, flag and mirror: what is at hand, and where each stands through the hold.

use leptos::prelude::*;
use slantlight::plan::grip_words::{self, Kit};
use slantlight::plan::shot_words;
use slantlight::units::{Bearing, Metres};

use super::day::{Day, NOWHERE};
use super::shown::Shown;
use crate::app::parts::{Fold, Hands, Lines, NumberField};

/// The grip's part. What is typed here is for now, and is not kept in the project.
#[component]
pub fn Grip(shown: Shown) -> impl IntoView {
    let kit = RwSignal::new(Kit::default());
    view! {
        <Fold label="Frame, flag, mirror">
            <Lines lines=Signal::derive(move || lines(shown, kit.get())) />
            <div class="fields two">
                {field(kit, ("Frame wide", "m"), (0.1, 20.0), None, |k| k.frame.width.metres(), |k, n| k.frame.width = Metres::from_metres(n))}
                {field(kit, ("Frame high", "m"), (0.1, 20.0), None, |k| k.frame.height.metres(), |k, n| k.frame.height = Metres::from_metres(n))}
                {field(kit, ("Its middle over the face", "m"), (0.1, 20.0), None, |k| k.rise.metres(), |k, n| k.rise = Metres::from_metres(n))}
                {field(kit, ("Flag from the glass", "m"), (0.05, 20.0), None, |k| k.flag.metres(), |k, n| k.flag = Metres::from_metres(n))}
                {field(kit, ("Mirror wide", "m"), (0.05, 10.0), None, |k| k.mirror.metres(), |k, n| k.mirror = Metres::from_metres(n))}
                {field(kit, ("From mark to mirror", "°"), (0.0, 360.0), None, |k| k.bearing.degrees(), |k, n| k.bearing = Bearing::from_degrees(n))}
                {field(kit, ("Mark to mirror", "m"), (0.2, 200.0), None, |k| k.distance.metres(), |k, n| k.distance = Metres::from_metres(n))}
                {field(kit, ("Mirror over the face", "m"), (-20.0, 50.0), Some(Hands::PLUS_MINUS), |k| k.above.metres(), |k, n| k.above = Metres::from_metres(n))}
            </div>
            <p class="soft">"Weigh down every frame and let nobody stand under it in wind. A mirror blinds and burns: cover it while nobody aims it."</p>
        </Fold>
    }
}

fn field(
    kit: RwSignal<Kit>,
    (label, unit): (&'static str, &'static str),
    limits: (f64, f64),
    hands: Option<Hands>,
    read: fn(&Kit) -> f64,
    write: fn(&mut Kit, f64),
) -> AnyView {
    let value = Signal::derive(move || kit.with(read));
    let change = move |number: f64| kit.update(|kit| write(kit, number));
    match hands {
        Some(hands) => {
            view! { <NumberField label=label unit=unit limits=limits hands=hands value=value on_change=change /> }.into_any()
        }
        None => view! { <NumberField label=label unit=unit limits=limits value=value on_change=change /> }.into_any(),
    }
}

fn lines(shown: Shown, kit: Kit) -> Vec<String> {
    let Some(day) = Day::of(shown) else { return vec![NOWHERE.to_owned()] };
    let Some(hold) = shot_words::chosen(&day.met, day.at) else {
        return vec!["No light as wished on this day: tap a slot above, and it stands here.".to_owned()];
    };
    let settings = shown.store.settings.get();
    grip_words::lines(&day.sun, &day.stage, &kit, hold, (settings.clock, settings.units))
}
