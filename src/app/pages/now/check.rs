//! Check with a shadow: the phone is laid along one, and the sun's known bearing sets the compass right here.
//!
//! Nobody looks at the sun. What is found holds for this phone at this place until the page is closed.

use leptos::prelude::*;
use slantlight::place::aim::{Aim, ShadowCheck, check_by_shadow};
use slantlight::units::Degrees;
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::clock;
use crate::app::pages::from_compass::FromCompass;
use crate::app::parts::Notes;

/// The button, and what was found.
#[component]
pub fn Check(shown: Shown) -> impl IntoView {
    let (store, notes) = (shown.store, Notes::here());
    let off = store.compass_off;
    let take = move |aim: Aim| {
        let now = clock::now();
        let sun = untrack(move || shown.with_day(|day| day.sun_at(now)));
        let Some(found) = sun.map(|sun| check_by_shadow(&aim, (sun.bearing(), sun.height()))) else { return };
        if let ShadowCheck::Turn(more) = found {
            off.update(|off| *off = Degrees::from_degrees(off.degrees() + more.degrees()));
        }
        notes.say(sentence(found));
    };
    let known = move || {
        (off.get() != Degrees::default()).then(|| view! {
        <div class="row">
            <p class="soft grow">{format!("The compass is set right by {} here.", words::degrees_fine(off.get()))}</p>
            <button type="button" class="button small" on:click=move |_| off.set(Degrees::default())>"Forget it"</button>
        </div>
    })
    };
    view! {
        <FromCompass
            word="Check with a shadow"
            site=Signal::derive(move || shown.site())
            says="Find the shadow of something upright on level ground. Lay the phone flat along it, its top away from the sun."
            say=|aim: Aim| words::bearing(aim.corner.bearing)
            on_take=take
        />
        {known}
    }
}

/// What was found and what to do.
fn sentence(found: ShadowCheck) -> String {
    match found {
        ShadowCheck::Turn(off) if off.abs().degrees() < 1.0 => {
            "The compass is right here, within a degree.".to_owned()
        }
        ShadowCheck::Turn(off) => {
            format!(
                "The compass was off by {} here. Bearings taken now are set right.",
                words::degrees_fine(off)
            )
        }
        ShadowCheck::NoShadow => {
            "There is no sun to throw a shadow now. Check again when it is up.".to_owned()
        }
        ShadowCheck::TooHigh => {
            "The sun is too high: its shadows are too short to point along. Check again later.".to_owned()
        }
        ShadowCheck::Shaky => {
            "The phone was not still. Lay it down, wait two seconds, and take it again.".to_owned()
        }
        ShadowCheck::Absurd(off) => format!(
            "That is {} off: more than a compass errs. Is the phone's top away from the sun, and is there steel near?",
            words::degrees(off)
        ),
    }
}
