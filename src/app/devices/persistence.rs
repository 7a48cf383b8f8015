//! Asking the browser not to throw our storage away.
//!
//! Some engines delete a site's storage after a week without a visit unless it is persistent or installed.

use leptos::prelude::window;
use wasm_bindgen::JsValue;

use super::js;

/// Whether storage is safe from the browser's own cleaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Persistence {
    /// It is.
    Granted,
    /// It was refused; the browser may clear it when space is short or after days without a visit.
    Refused,
    /// This browser does not say.
    Unknown,
}

/// Asks for persistent storage.
pub async fn ask() -> Persistence {
    let Some(storage) = storage() else { return Persistence::Unknown };
    read(js::call(&storage, "persist", &[])).await
}

/// What was granted before, without asking.
pub async fn granted() -> Persistence {
    let Some(storage) = storage() else { return Persistence::Unknown };
    read(js::call(&storage, "persisted", &[])).await
}

async fn read(promised: Option<JsValue>) -> Persistence {
    let Some(promised) = promised else { return Persistence::Unknown };
    match js::settled(promised).await.map(|answer| answer.is_truthy()) {
        Ok(true) => Persistence::Granted,
        Ok(false) => Persistence::Refused,
        Err(_) => Persistence::Unknown,
    }
}

fn storage() -> Option<JsValue> {
    js::member(&window().navigator().into(), "storage")
}
