//! A meter's word at the place, and its ground; beneath, the lights that are there.

use leptos::prelude::*;
use slantlight::light::daylight::ground::Surface;
use slantlight::plan::kit::{Facing, Metered, Reading};
use slantlight::plan::levels::rows;
use slantlight::project::document::Location;
use slantlight::project::edit::Edit;
use slantlight::units::{Lux, TStop};

use super::lights::Lights;
use super::shown::Lit;
use crate::app::parts::{Entry, NumberField, Segmented};

/// What a meter can face.
const FACINGS: [(Facing, &str); 2] = [(Facing::Sun, "the sun"), (Facing::Up, "straight up")];

/// Changes the location of the set-up.
pub(super) fn change(lit: Lit, change: impl FnOnce(&mut Location)) {
    let store = lit.shown.store;
    let project = store.desk.latest();
    let at = untrack(|| lit.shown.with(|set_up| set_up.at.clone())).flatten();
    if let Some(location) = at.and_then(|at| project.location(&at.location).cloned()) {
        let mut location = location;
        change(&mut location);
        store.edit(Edit::PutLocation(Box::new(location)));
    }
}

/// What `read` finds in the location; tracked.
pub(super) fn with<T>(lit: Lit, read: impl Fn(&Location) -> T) -> Option<T> {
    let at = lit.shown.with(|set_up| set_up.at.clone()).flatten()?;
    lit.shown.store.desk.with(|project| project.location(&at.location).map(read))
}

/// Readings, ground, lights.
#[component]
pub fn Readings(lit: Lit) -> impl IntoView {
    let ground = move || with(lit, |location| location.ground).unwrap_or_default();
    let choose = move |event| {
        let value = event_target_value(&event);
        if let Some(surface) = Surface::ALL.into_iter().find(|surface| surface.word() == value) {
            change(lit, |location| location.ground = surface);
        }
    };
    let option = move |surface: Surface| {
        view! { <option value=surface.word() selected=move || ground() == surface>{surface.word()}</option> }
    };
    view! {
        <section class="levels-place">
            <div class="section-head ruled"><h2>"At this place"</h2><span>{move || lit.corrected()}</span></div>
            <Meter lit=lit />
            <Kept lit=lit />
            <div class="field">
                <label for="ground">"Ground"</label>
                <select id="ground" on:change=choose>{Surface::ALL.map(option).collect_view()}</select>
            </div>
            <Lights lit=lit />
        </section>
    }
}

/// A reading, entered.
#[component]
fn Meter(lit: Lit) -> impl IntoView {
    let (in_stops, facing, number) = (RwSignal::new(0usize), RwSignal::new(0usize), RwSignal::new(0.0));
    let store = lit.shown.store;
    let add = move |_| {
        let says = number.get_untracked();
        if says <= 0.0 {
            return;
        }
        let camera = lit.subject.get_untracked().map(|subject| subject.camera).unwrap_or_default();
        let stop = Metered::Stop { t_stop: TStop::clamped(says), iso: camera.iso, shutter: camera.time() };
        let says = if in_stops.get_untracked() == 1 { stop } else { Metered::Lux(Lux::from_lux(says)) };
        let reading = Reading {
            id: store.fresh_id(),
            at: untrack(|| store.moment.to_the_minute()),
            sky: rows::wish_sky(lit.sky.get_untracked()),
            facing: FACINGS[facing.get_untracked()].0,
            says,
        };
        change(lit, |location| location.readings.push(reading));
        number.set(0.0);
    };
    view! {
        <Entry title="Enter a meter reading">
            <Segmented label="The meter says" names=vec!["lux".to_owned(), "T-stop of the camera set".to_owned()]
                chosen=in_stops on_choose=move |at: usize| in_stops.set(at) />
            <NumberField label="Reading, in the open" value=number limits=(0.0, 1e6) decimals=2
                on_change=move |to| number.set(to) />
            <Segmented label="It faces" names=FACINGS.map(|(_, word)| word.to_owned()).to_vec()
                chosen=facing on_choose=move |at: usize| facing.set(at) />
            <button type="button" class="button" on:click=add>"Scale by this reading"</button>
            <p class="soft whole-row">"Taken at the instant shown. It speaks for three hours before and after."</p>
        </Entry>
    }
}

/// Readings that are kept.
#[component]
fn Kept(lit: Lit) -> impl IntoView {
    let rows = move || {
        let zone = lit.shown.store.current_zone();
        let style = lit.shown.store.settings.get().clock;
        with(lit, |location| {
            let row = |one: &Reading| (one.id.clone(), rows::reading(one, &zone, style));
            location.readings.iter().map(row).collect::<Vec<_>>()
        })
    };
    let remove = move |id: &str| change(lit, |location| location.readings.retain(|one| one.id != id));
    let row = move |(id, says): (String, String)| removable(says, move || remove(&id));
    view! { <ul class="rows">{move || rows().unwrap_or_default().into_iter().map(row).collect_view()}</ul> }
}

/// A line that can be taken away.
fn removable(says: String, remove: impl Fn() + 'static) -> AnyView {
    let name = format!("Remove {says}");
    view! {
        <li class="row-and-button">
            <span>{says}</span>
            <button type="button" class="button small" aria-label=name on:click=move |_| remove()>"Remove"</button>
        </li>
    }
    .into_any()
}
