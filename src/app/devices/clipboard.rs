//! The clipboard. Call from inside a tap.

use leptos::prelude::window;
use wasm_bindgen::JsValue;

use super::js;

/// Copies `text`; tells `then` whether it worked.
pub fn copy(text: &str, then: impl FnOnce(bool) + 'static) {
    match clipboard().and_then(|clipboard| js::call(&clipboard, "writeText", &[text.into()])) {
        Some(promised) => js::after(promised, |outcome| then(outcome.is_ok())),
        None => then(false),
    }
}

/// Reads text, if the browser and the person allow it.
pub fn paste(then: impl FnOnce(Option<String>) + 'static) {
    match clipboard().and_then(|clipboard| js::call(&clipboard, "readText", &[])) {
        Some(promised) => js::after(promised, |outcome| then(outcome.ok().and_then(|text| text.as_string()))),
        None => then(None),
    }
}

/// Whether text can be read at all; where not, a field to paste into does it.
pub fn can_paste() -> bool {
    clipboard().is_some_and(|clipboard| js::member(&clipboard, "readText").is_some())
}

/// The clipboard exists only on secure pages.
fn clipboard() -> Option<JsValue> {
    js::member(&window().navigator().into(), "clipboard")
}
