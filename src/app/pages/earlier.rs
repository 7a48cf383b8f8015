//! Earlier versions of the open project, as this browser laid them aside, and the way back to each.

use std::sync::Arc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::filed::Filed;
use slantlight::words;

use super::called::contents;
use crate::app::devices::clock;
use crate::app::parts::Notes;
use crate::app::store::Store;

/// A fold that looks for them when it is opened.
#[component]
pub fn Earlier() -> impl IntoView {
    let (store, notes) = (Store::here(), Notes::here());
    let found = RwSignal::new(None::<Vec<Filed>>);
    let look = move |_| {
        let id = store.desk.latest().id.clone();
        spawn_local(async move { found.set(Some(store.desk.keeper.versions(&id).await)) });
    };
    view! {
        <details class="fold" on:toggle=look>
            <summary>"Earlier versions"</summary>
            <p class="soft">
                "One of each day you worked, and one from before each time it was sent or put together with another. They lie in this browser only."
            </p>
            {move || match found.get() {
                None => ().into_any(),
                Some(found) if found.is_empty() => view! { <p>"None yet."</p> }.into_any(),
                Some(found) => found.into_iter().map(|one| row(store, notes, one)).collect_view().into_any(),
            }}
        </details>
    }
}

fn row(store: Store, notes: Notes, one: Filed) -> impl IntoView {
    let age = words::ago(clock::now() - one.written);
    let sub = contents(&one.project);
    let bring_back = move |_| bring_back(store, notes, &one);
    view! {
        <button type="button" class="list-row as-row" on:click=bring_back>
            <span class="row-text">
                <span class="row-title">{format!("Bring back: {age}")}</span>
                <span class="row-sub">{sub}</span>
            </span>
        </button>
    }
}

/// The version takes the place of the project; the state that was is one step of undo away.
fn bring_back(store: Store, notes: Notes, version: &Filed) {
    if store.replace(Arc::clone(&version.project), "bring back an earlier version") {
        notes.say_with("The earlier version is back.", "Undo", move || {
            store.desk.undo();
        });
    }
}
