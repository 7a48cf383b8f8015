//! Where Now is: the location of the project that is nearest to the phone, or the point where the phone is.

use leptos::prelude::*;
use slantlight::project::at_hand;
use slantlight::project::route::Route;
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::geolocation;
use crate::app::parts::{EmptyState, Notes, SectionHead};
use crate::app::store::Store;

/// What stands here before any place is known.
#[component]
pub fn Anywhere() -> impl IntoView {
    view! {
        <EmptyState says="The sun needs a place: with one, this page says where it stands and how long it stays.">
            <WhereIAm />
            <a class="button" href=Route::Places.href()>"Paste a place"</a>
        </EmptyState>
    }
}

/// Which place it is, which set-up is counted, and the way to others.
#[component]
pub fn Where(shown: Shown) -> impl IntoView {
    let store = shown.store;
    let sentence = move || {
        let site = shown.site().map(words::position).unwrap_or_default();
        format!("{site} · {}", shown.zone().name())
    };
    let names = move || {
        let option = |one: &slantlight::project::at_hand::AtHand| (one.id.clone(), one.name.clone());
        shown.with_day(|day| day.at_hand.iter().map(option).collect::<Vec<_>>()).unwrap_or_default()
    };
    let current = move || shown.with_day(|day| day.set_up().map(|one| one.id.clone())).flatten();
    let option = move |(id, name): (String, String)| {
        let chosen = current().as_deref() == Some(&id);
        view! { <option value=id selected=chosen>{name}</option> }
    };
    let several = Memo::new(move |_| shown.with_day(|day| day.at_hand.len() > 1).unwrap_or(false));
    view! {
        <section class="stack">
            <SectionHead title="Where and what" ruled=true />
            <Show when=move || several.get()>
                <label class="field">
                    <span>"Set-up that is counted"</span>
                    <select on:change=move |event| stand_by(store, &event_target_value(&event))>
                        {move || names().into_iter().map(option).collect_view()}
                    </select>
                </label>
            </Show>
            <p class="soft">{sentence}</p>
            <div class="row">
                <WhereIAm />
                <Show when=move || store.here.with(Option::is_some) && store.current_location().is_some()>
                    <button type="button" class="button grow" on:click=move |_| store.here.set(None)>"Back to the project"</button>
                </Show>
            </div>
        </section>
    }
}

/// Counts another set-up of the place, and stays at the place.
fn stand_by(store: Store, id: &str) {
    let location = untrack(|| store.current_location());
    store.stand_by(id);
    if let Some(location) = location {
        store.visit(&location.id);
    }
}

/// Finds the phone; the nearest location of the project is shown, or the point itself.
#[component]
fn WhereIAm() -> impl IntoView {
    let (store, notes) = (Store::here(), Notes::here());
    let asking = RwSignal::new(false);
    let word = move || if asking.get() { "Asking the phone" } else { "Where am I?" };
    let ask = move |_| {
        asking.set(true);
        geolocation::locate(move |found| {
            asking.set(false);
            match found {
                Ok(fix) => stand_at(store, notes, fix),
                Err(why) => notes.say(why.sentence()),
            }
        });
    };
    view! { <button type="button" class="button grow" disabled=move || asking.get() on:click=ask>{word}</button> }
}

fn stand_at(store: Store, notes: Notes, fix: geolocation::Fix) {
    let project = store.desk.latest();
    match at_hand::nearest(&project, &fix.site) {
        Some(location) => {
            store.here.set(None);
            store.visit(&location.id);
            notes.say(format!("You are at {}.", location.name));
        }
        None => {
            store.here.set(Some(fix.site));
            let units = store.settings.get_untracked().units;
            notes.say(format!(
                "No location of the project is near: this is for where you are, {}.",
                words::accuracy(fix.accuracy, units)
            ));
        }
    }
}
