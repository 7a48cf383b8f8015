//! Cut together: the scene's match limit, how long takes match, the order of its set-ups, shot and reverse.

use leptos::prelude::*;
use slantlight::plan::cutting::match_limit::MatchLimit;
use slantlight::project::cutting;
use slantlight::project::edit::Edit;
use slantlight::project::shoot::matching::{self, Bound};
use slantlight::project::shoot::typing::{Field, typed};
use slantlight::units::{Degrees, Mired, Share, Stops};

use super::day::NOWHERE;
use super::shown::Shown;
use crate::app::parts::{Fold, Lines, NumberField};

/// The limit and what it allows on the day of the instant shown.
#[component]
pub fn CutTogether(shown: Shown) -> impl IntoView {
    view! {
        <Fold label="Cut together, shot and reverse">
            <Lines lines=Signal::derive(move || lines(shown)) />
            <h3>"Any two takes of this scene"</h3>
            <div class="fields two">
                {limit(shown, ("Shadow longer by", "%"), (1.0, 100.0), |m| m.shadow.percent(), |m, n| m.shadow = Share::clamped(n / 100.0))}
                {limit(shown, ("Light turned by", "°"), (1.0, 180.0), |m| m.class_angle.degrees(), |m, n| m.class_angle = Degrees::from_degrees(n))}
                {limit(shown, ("Ratio changed by", "stops"), (0.1, 10.0), |m| m.ratio.stops(), |m, n| m.ratio = Stops::from_stops(n))}
                {limit(shown, ("Colour changed by", "mired"), (1.0, 500.0), |m| m.colour.mired(), |m, n| m.colour = Mired::from_mired(n))}
            </div>
            {in_the_plan(shown)}
        </Fold>
    }
}

/// Whether the plan of days keeps to the limits, and the button that changes it.
fn in_the_plan(shown: Shown) -> AnyView {
    let store = shown.store;
    let bound = Memo::new(move |_| {
        let id = shown.with_scene(|scene| scene.id.clone())?;
        store.desk.with(|project| Some(project.shoot.bound(project.scene(&id)?)))
    });
    let change = move |_| {
        let Some(id) = shown.with_scene(|scene| scene.id.clone()) else { return };
        let project = store.desk.latest();
        let word = if bound.get_untracked() == Some(Bound::AsShot) { "no" } else { "yes" };
        if let Ok(shoot) = typed(&project, &Field::Match(id), word) {
            store.edit(Edit::SetShoot { label: "bind a scene", shoot: Box::new(shoot) });
        }
    };
    let word = move || {
        if bound.get() == Some(Bound::AsShot) { "Let the plan be free" } else { "Let the plan keep to them" }
    };
    view! {
        <p class="soft">{move || bound.get().map(matching::words)}</p>
        <button type="button" class="button wide" on:click=change>{word}</button>
    }
    .into_any()
}

/// One number of the scene's match limit.
fn limit(
    shown: Shown,
    (label, unit): (&'static str, &'static str),
    limits: (f64, f64),
    read: fn(&MatchLimit) -> f64,
    write: fn(&mut MatchLimit, f64),
) -> AnyView {
    let value =
        Signal::derive(move || shown.with_scene(|scene| read(&scene.match_limit)).unwrap_or_default());
    let change = move |number: f64| {
        let Some(id) = shown.with_scene(|scene| scene.id.clone()) else { return };
        let scene = shown.store.desk.latest().scene(&id).cloned();
        if let Some(mut scene) = scene {
            write(&mut scene.match_limit, number);
            shown.store.edit(Edit::PutScene(Box::new(scene)));
        }
    };
    view! { <NumberField label=label unit=unit limits=limits value=value on_change=change /> }.into_any()
}

fn lines(shown: Shown) -> Vec<String> {
    let store = shown.store;
    let found = shown.stage.get().ok().and_then(|stage| {
        let id = shown.with(|set_up| set_up.id.clone())?;
        let settings = store.settings.get();
        let date = stage.zone.date(store.moment.to_the_minute());
        store.desk.with(|project| {
            cutting::lines(project, &id, (&stage.zone, date), (settings.clock, settings.units))
        })
    });
    found.unwrap_or_else(|| vec![NOWHERE.to_owned()])
}
