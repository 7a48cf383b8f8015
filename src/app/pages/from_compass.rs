//! A direction taken with the phone: along its long edge, averaged over two seconds, with its spread.
//!
//! Used for lenses, walls, skylines and the check by a shadow. What the phone lacks or refuses is said, and that it can
//! be typed instead. With heights it is a sighting by eye, and near the sun it refuses.

use leptos::prelude::*;
use slantlight::place::aim::Aim;
use slantlight::place::site::Site;
use slantlight::plan::search::through_window::sun_in_sight;
use slantlight::sky::declination::{Zone, declination};
use slantlight::sky::sun::Sun;
use slantlight::units::{Degrees, Instant, Vector};
use slantlight::words;

use crate::app::devices::compass;
use crate::app::devices::orientation::{self, Permission};
use crate::app::parts::Caution;
use crate::app::store::Store;

/// A button, and once it is tapped what the phone reads.
#[component]
pub fn FromCompass(
    /// Where this is: magnetic north differs by place.
    #[prop(into)]
    site: Signal<Option<Site>>,
    /// How to hold the phone.
    says: &'static str,
    /// What is read, in words: "251° WSW".
    say: fn(Aim) -> String,
    /// Called with what was taken.
    #[prop(into)]
    on_take: Callback<Aim>,
    /// The word on the button.
    #[prop(default = "Take from compass")]
    word: &'static str,
    /// Whether one looks along the phone, so that the sun must be kept off.
    #[prop(optional)]
    by_eye: bool,
) -> impl IntoView {
    let permission = RwSignal::new(None::<Permission>);
    let card = move || {
        permission.get().map(|answer| match answer {
        Permission::Granted => {
            view! { <Reading site=site says=says say=say on_take=on_take by_eye=by_eye permission=permission /> }.into_any()
        }
        Permission::Refused => view! {
            <p class="field-error" role="alert">
                "This page is not allowed to read the compass. Allow motion sensors for it in the browser's settings, or type the numbers."
            </p>
        }
        .into_any(),
    })
    };
    view! {
        // The sensors must be asked for in the tap itself.
        <button type="button" class="button wide spaced" on:click=move |_| orientation::ask(move |answer| permission.set(Some(answer)))>{word}</button>
        {card}
    }
}

/// The reading, and whether it can be believed.
#[component]
fn Reading(
    site: Signal<Option<Site>>,
    says: &'static str,
    say: fn(Aim) -> String,
    on_take: Callback<Aim>,
    by_eye: bool,
    permission: RwSignal<Option<Permission>>,
) -> impl IntoView {
    let store = Store::here();
    let aim = compass::aimed(site, store.compass_off.into());
    let readout = move || aim.get().map(say);
    let steady = move || aim.get().map_or_else(nothing_yet, |aim| exactness(aim, store.compass_off.get()));
    let too_near =
        Memo::new(move |_| by_eye && aim.get().is_some_and(|aim| is_near_the_sun(site, store, aim)));
    let trouble = move || {
        let doubtful = aim.get().is_some_and(|aim| aim.is_doubtful());
        let pole = || site.get().and_then(|site| near_a_pole(site, store.moment.today()));
        match (too_near.get(), doubtful) {
            (true, _) => {
                Some("The sun stands there. Do not look along the phone: wait, or type the numbers.")
            }
            (_, true) => Some(
                "The compass is not steady. Move the phone in a figure of eight, away from steel and speakers, and try again.",
            ),
            _ => pole(),
        }
    };
    let take = move |_| {
        if let Some(aim) = aim.get_untracked() {
            permission.set(None);
            on_take.run(aim);
        }
    };
    view! {
        <div class="card stack">
            <p>{says} " Keep it away from steel, magnets and speakers, and hold it still for two seconds."</p>
            <p class="huge" aria-live="off">{readout}</p>
            <p class="soft">{steady}</p>
            {move || trouble().map(|sentence| view! { <p class="field-error" role="alert">{sentence}</p> })}
            <div class="row">
                <button type="button" class="button grow" disabled=move || too_near.get() || aim.with(Option::is_none) on:click=take>"Take it"</button>
                <button type="button" class="button grow" on:click=move |_| permission.set(None)>"Leave it"</button>
            </div>
            {by_eye.then(|| view! {
                <Caution>"Never sight the sun itself, and never look at it along the phone: eye damage is painless and can be permanent."</Caution>
            })}
        </div>
    }
}

fn nothing_yet() -> String {
    "Waiting for the compass. If nothing comes, this device has none: type the numbers instead.".to_owned()
}

/// "steady to 0.4° · the phone says ± 10° · set right by a shadow, +3.0°".
fn exactness(aim: Aim, off: Degrees) -> String {
    let mut words = format!("steady to {}", words::degrees_fine(aim.spread));
    if let Some(stated) = aim.stated {
        words += &format!(" · the phone says ± {}", words::degrees(stated));
    }
    if off != Degrees::default() {
        words += &format!(" · set right by a shadow, {}", words::degrees_fine(off));
    }
    words
}

/// Whether the sun stands near where the phone points; tracked.
fn is_near_the_sun(site: Signal<Option<Site>>, store: Store, aim: Aim) -> bool {
    let Some(site) = site.get() else { return false };
    let light = Sun::new(site).apparent(store.moment.clock.get());
    sun_in_sight(light, Vector::towards(aim.corner.bearing, aim.corner.height))
}

/// What the magnetic field means for a compass here, where it matters.
fn near_a_pole(site: Site, at: Instant) -> Option<&'static str> {
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
