//! Ids that nobody else has made.

use leptos::prelude::window;
use wasm_bindgen::JsValue;

use super::js;

/// A new id: random, 16 characters; two phones do not make the same one.
pub fn fresh() -> String {
    let crypto = js::member(&JsValue::from(window()), "crypto");
    let random = crypto.and_then(|crypto| js::call(&crypto, "randomUUID", &[])).and_then(|id| id.as_string());
    let long = random.unwrap_or_else(from_the_clock);
    long.chars().filter(char::is_ascii_alphanumeric).take(16).collect()
}

/// For pages that are not secure, which have no random ids: the time to the microsecond and a number.
fn from_the_clock() -> String {
    format!(
        "{:08x}{:016x}",
        (js_sys::Math::random() * f64::from(u32::MAX)) as u32,
        (js_sys::Date::now() * 1000.0) as u64
    )
}
