//! Cut together: the scene's match limit, how long takes match, the order of its set-ups, shot and reverse.

use leptos::prelude::*;
use slantlight::plan::cutting::Match;
use slantlight::plan::cutting::gauge::ByLevels;
use slantlight::plan::cutting::match_limit::MatchLimit;
use slantlight::plan::cutting::reverse::{both, reverse_of};
use slantlight::plan::cutting::words as say;
use slantlight::plan::levels::subject::sky_of;
use slantlight::project::edit::Edit;
use slantlight::project::shoot::matching::{self, Bound};
use slantlight::project::shoot::typing::{Field, typed};
use slantlight::project::{cutting, levels};
use slantlight::units::{Degrees, Mired, Share, Stops};

use super::day::{Day, NOWHERE};
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
    let found = Day::of(shown).and_then(|day| {
        let limit = shown.with_scene(|scene| scene.match_limit)?;
        let settings = shown.store.settings.get();
        let id = shown.with(|set_up| set_up.id.clone())?;
        let subject =
            shown.store.desk.with(|project| levels::of_set_up(project, &id, day.zone().clone())).ok()?;
        let gauge = ByLevels::new(&day.sun, &subject, sky_of(day.stage.wish.sky));
        let held = Match { sun: &day.sun, gauge: &gauge, limit };
        let mut lines = vec![say::hold(&held, &day.met, &day.stage, settings.clock)];
        lines.extend(order(shown, &held, &day)?);
        lines.extend(reverse(shown, &day)?);
        Some(lines)
    });
    found.unwrap_or_else(|| vec![NOWHERE.to_owned()])
}

fn order(shown: Shown, held: &Match<'_>, day: &Day) -> Option<Vec<String>> {
    let settings = shown.store.settings.get();
    let scene = shown.with_scene(|scene| scene.id.clone())?;
    let at = shown.with(|set_up| set_up.at.clone())??;
    let date = day.zone().date(day.at);
    let parts = shown.store.desk.with(|project| cutting::parts(project, &scene, (&at, day.zone()), date));
    Some(say::order(held, &parts, day.whole, (&day.stage, settings.clock, settings.units)))
}

fn reverse(shown: Shown, day: &Day) -> Option<Vec<String>> {
    let id = shown.with(|set_up| set_up.id.clone())?;
    let others = shown.store.desk.with(|project| cutting::other_marks(project, &id, day.zone()));
    let (names, stages): (Vec<String>, Vec<_>) = others.into_iter().unzip();
    let (shot, across) = (day.stage.looking(day.stage.lens), reverse_of(&day.stage));
    let found = both(&day.sun, [&shot, &across], &stages, day.zone().date(day.at));
    Some(say::reverse(&found, &names, &day.stage, shown.store.settings.get().clock))
}
