//! Keeps the screen awake while a page is shown, where the browser allows it.
//!
//! A lock ends whenever the page is hidden; it is taken again when the page is seen.

use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::{js, visibility};

/// Whether the screen stays awake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Awake {
    /// Nobody asked for it.
    Asleep,
    /// It stays awake.
    Held,
    /// The browser has no such lock, or refused it (a low battery is a usual reason).
    Refused,
}

/// Holds the screen awake while `wanted` says so, until the owner of the calling component goes.
pub fn hold(wanted: Signal<bool>) -> ReadSignal<Awake> {
    let (state, set_state) = signal(Awake::Asleep);
    let lock = StoredValue::new_local(None::<JsValue>);
    let let_go = move || {
        if let Some(lock) = lock.try_update_value(Option::take).flatten() {
            // What it promises needs no waiting for.
            drop(js::call(&lock, "release", &[]));
        }
    };
    let take = move || {
        let navigator: JsValue = window().navigator().into();
        let asked =
            js::member(&navigator, "wakeLock").and_then(|api| js::call(&api, "request", &["screen".into()]));
        let Some(promised) = asked else { return set_state.set(Awake::Refused) };
        js::after(promised, move |outcome| {
            // The page may have gone meanwhile.
            set_state.try_set(if outcome.is_ok() { Awake::Held } else { Awake::Refused });
            if let Ok(sentinel) = outcome {
                lock.try_set_value(Some(sentinel));
            }
        });
    };
    let hold_or_not = move || {
        let_go();
        if wanted.get_untracked() { take() } else { set_state.set(Awake::Asleep) }
    };
    Effect::new(move |_| {
        wanted.track();
        hold_or_not();
    });
    let listener = window_event_listener_untyped("visibilitychange", move |_| {
        if visibility::is_seen() {
            hold_or_not();
        }
    });
    on_cleanup(move || {
        listener.remove();
        let_go();
    });
    state
}
