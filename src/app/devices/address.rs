//! The page's own address: where links to it lead, and what somebody else's link has put behind its `#`.

use leptos::prelude::{window, window_event_listener_untyped};
use wasm_bindgen::JsValue;

/// The address without `?` and `#`.
pub fn base() -> String {
    let location = window().location();
    location.origin().unwrap_or_default() + &location.pathname().unwrap_or_default()
}

/// Gives each fragment that begins with `#` and `mark` to `then`, now and whenever one comes, and takes it out of the
/// address, so that neither a reload nor a copied address repeats it.
pub fn take_fragments(mark: &'static str, then: impl Fn(String) + 'static) {
    let take = move || {
        let fragment = window().location().hash().unwrap_or_default();
        if fragment.trim_start_matches('#').starts_with(mark) {
            clear();
            then(fragment);
        }
    };
    take();
    window_event_listener_untyped("hashchange", move |_| take());
}

fn clear() {
    if let Ok(history) = window().history() {
        // Refused only for another origin's address; this is our own.
        drop(history.replace_state_with_url(&JsValue::NULL, "", Some(&base())));
    }
}
