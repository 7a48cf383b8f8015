//! The home screen: the offer to put the app there, where the browser makes one, and whether this is the app there.
//!
//! On some phones the app there has a storage of its own, and does not see what was kept in the browser.

use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::js;

/// Whether this is the app on the home screen, and no tab of the browser.
pub fn is_app() -> bool {
    let window = js::global();
    let asked = js::call(&window, "matchMedia", &["(display-mode: standalone)".into()]);
    let is_true = |answer: Option<JsValue>| answer.is_some_and(|answer| answer.is_truthy());
    is_true(asked.and_then(|query| js::member(&query, "matches")))
        || is_true(js::path(&window, &["navigator", "standalone"]))
}

/// A browser's offer, kept until a tap takes it up.
#[derive(Clone, Copy)]
pub struct Offer(RwSignal<Option<JsValue>, LocalStorage>);

impl Offer {
    /// Listens for the offer, for the life of the app.
    pub fn listen() -> Self {
        let offer = RwSignal::new_local(None);
        window_event_listener_untyped("beforeinstallprompt", move |event| {
            event.prevent_default();
            offer.set(Some(event.into()));
        });
        window_event_listener_untyped("appinstalled", move |_| offer.set(None));
        Self(offer)
    }

    /// Whether there is an offer to take up.
    pub fn is_there(self) -> bool {
        self.0.with(Option::is_some)
    }

    /// Takes it up; call from inside a tap. A browser makes the same offer only once.
    pub fn take(self) {
        if let Some(event) = self.0.get_untracked() {
            js::call(&event, "prompt", &[]);
            self.0.set(None);
        }
    }
}
