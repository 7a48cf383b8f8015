//! Keeping the screen awake. The lock falls when the page is hidden and is taken again when it is seen.

use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::{js, visibility};

/// Keeps the screen awake while `wanted` says so, for the life of the app.
pub fn follow(wanted: Signal<bool>) {
    let lock = StoredValue::new_local(None::<JsValue>);
    Effect::new(move |_| if wanted.get() { take(lock) } else { release(lock) });
    visibility::on_change(move |seen| {
        if seen && wanted.get_untracked() {
            take(lock);
        }
    });
}

/// Whether the browser has such locks.
pub fn is_there() -> bool {
    js::member(&window().navigator().into(), "wakeLock").is_some()
}

fn take(lock: StoredValue<Option<JsValue>, LocalStorage>) {
    let locks = js::member(&window().navigator().into(), "wakeLock");
    if let Some(promised) = locks.and_then(|locks| js::call(&locks, "request", &["screen".into()])) {
        js::after(promised, move |outcome| lock.set_value(outcome.ok()));
    }
}

fn release(lock: StoredValue<Option<JsValue>, LocalStorage>) {
    if let Some(held) = lock.try_update_value(Option::take).flatten() {
        js::call(&held, "release", &[]);
    }
}
