//! What happened: the set-up is marked as shot at this instant, with a note and what the meter said.

use leptos::prelude::*;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::taken::{READINGS, Taken};
use slantlight::units::{Instant, Lux};
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{NumberField, SectionHead, TextField};
use crate::app::router;

/// The button, and the shots of the set-up.
#[component]
pub fn Shots(shown: Shown) -> impl IntoView {
    let store = shown.store;
    let set_up = Memo::new(move |_| shown.with_day(|day| day.set_up().map(|one| one.id.clone())).flatten());
    let shots = Memo::new(move |_| {
        shown.with_day(|day| day.set_up().map(|one| one.shots.clone())).flatten().unwrap_or_default()
    });
    let ids =
        Memo::new(move |_| shots.with(|shots| shots.iter().map(|one| one.id.clone()).collect::<Vec<_>>()));
    let name =
        move || shown.with_day(|day| day.set_up().map(|one| one.name.clone())).flatten().unwrap_or_default();
    let mark = move |_| {
        // What a person marks is the instant of the tap, not the minute that the page shows.
        let at = store.moment.of_the_tap();
        if let Some(set_up) = set_up.get_untracked() {
            let shot = Taken { id: store.fresh_id(), at, note: String::new(), illuminance: None };
            store.edit_with_undo(Edit::PutShot { set_up, shot }, format!("{} marked as shot", untrack(name)));
        }
    };
    let row = move |id: String| view! { <One shown=shown shots=shots id=id /> };
    view! {
        <Show when=move || set_up.with(Option::is_some)>
            <section class="stack">
                <SectionHead title="What happened" ruled=true />
                <button type="button" class="button wide" on:click=mark>{move || format!("{} is shot", name())}</button>
                <ul class="rows">{move || ids.get().into_iter().rev().map(row).collect_view()}</ul>
            </section>
        </Show>
    }
}

/// One shot: its time, note, reading, and the way to the same light again.
#[component]
fn One(shown: Shown, shots: Memo<Vec<Taken>>, id: String) -> impl IntoView {
    let store = shown.store;
    let id = StoredValue::new(id);
    let shot = Memo::new(move |_| {
        shots.with(|shots| shots.iter().find(|one| id.with_value(|id| one.id == *id)).cloned())
    });
    let read = move |read: fn(&Taken) -> f64| {
        Signal::derive(move || shot.with(|shot| shot.as_ref().map(read)).unwrap_or_default())
    };
    let note = Signal::derive(move || {
        shot.with(|shot| shot.as_ref().map(|shot| shot.note.clone())).unwrap_or_default()
    });
    let when = move || shot.with(|shot| shot.as_ref().map(|shot| stamp(shown, shot.at))).unwrap_or_default();
    let change = move |change: &dyn Fn(&mut Taken)| {
        let Some(set_up) = set_up_of(shown) else { return };
        // From the latest root, not the one on the screen: two changes may come within one frame.
        let project = store.desk.latest();
        let shots = project.set_up(&set_up).map(|(_, one)| one.shots.as_slice()).unwrap_or_default();
        if let Some(mut shot) = shots.iter().find(|one| id.with_value(|id| one.id == *id)).cloned() {
            change(&mut shot);
            store.edit(Edit::PutShot { set_up, shot });
        }
    };
    let remove = move |_| {
        if let Some(set_up) = set_up_of(shown) {
            store.edit_with_undo(Edit::RemoveShot { set_up, shot: id.get_value() }, "Shot removed");
        }
    };
    let again = move |_| {
        if let (Some(at), Some(set_up)) =
            (shot.with_untracked(|shot| shot.as_ref().map(|shot| shot.at)), set_up_of(shown))
        {
            store.moment.stand_at(at);
            router::go(&Route::Year(set_up));
        }
    };
    view! {
        <li class="fields">
            <p class="row-title">{when}</p>
            <TextField label="Note" value=note on_change=move |text: String| change(&|shot| shot.note = text.clone()) />
            <NumberField label="Meter, incident light on the face; 0 for none" unit="lx" decimals=1 limits=(0.0, READINGS.1)
                value=read(|shot| shot.illuminance.map_or(0.0, Lux::lux))
                on_change=move |lux: f64| change(&|shot| shot.illuminance = (lux >= READINGS.0).then(|| Lux::from_lux(lux))) />
            <div class="row">
                <button type="button" class="button grow" on:click=again>"Same light again"</button>
                <button type="button" class="button grow" on:click=remove>"Remove this shot"</button>
            </div>
        </li>
    }
}

/// Id of the set-up that is counted.
fn set_up_of(shown: Shown) -> Option<String> {
    untrack(move || shown.with_day(|day| day.set_up().map(|one| one.id.clone()))).flatten()
}

/// "Thu 11 Mar 2027, 17:41".
fn stamp(shown: Shown, at: Instant) -> String {
    let local = shown.zone().local(at);
    format!("{}, {}", words::date(local.date()), words::clock(local.time(), shown.clock()))
}
