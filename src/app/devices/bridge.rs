//! The start script: a newer version that waits, what is given to us from outside, the clock, the failure page.
//!
//! The start script looks after the service worker and tells us by `window.slantlight`.

use js_sys::Function;
use leptos::prelude::*;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::File;

use super::js;

/// The start script's small object.
const BRIDGE: &str = "slantlight";

/// Whether a newer version waits, as a signal.
pub fn waiting() -> ReadSignal<bool> {
    let is_waiting = || flag("updateWaiting");
    let (waiting, set_waiting) = signal(is_waiting());
    window_event_listener_untyped("slantlight-update", move |_| set_waiting.set(is_waiting()));
    waiting
}

/// Lets the newer version in and reloads this tab, no other; flush the project first.
pub fn let_in() {
    if let Some(bridge) = bridge() {
        js::call(&bridge, "update", &[]);
    }
}

/// What comes from outside.
pub enum Received {
    /// A text that another app shared, or that was pasted on the first screen.
    Text(String),
    /// A file that was chosen on the first screen.
    File(File),
}

/// Hands on what was received before the app was there, and whatever comes later; each once.
pub fn on_received(take: impl Fn(Received) + 'static) {
    let take_what_is_there = move || {
        if let Some(received) = received() {
            take(received);
        }
    };
    take_what_is_there();
    window_event_listener_untyped("slantlight-received", move |_| take_what_is_there());
}

fn received() -> Option<Received> {
    let bridge = bridge()?;
    let received = js::member(&bridge, "received")?;
    // A plain object of the start script takes any member.
    drop(js_sys::Reflect::set(&bridge, &"received".into(), &JsValue::NULL));
    received.as_string().map(Received::Text).or_else(|| received.dyn_into().ok().map(Received::File))
}

/// Has the start script look at the clock, and call `tell` whenever that is news. Returns what asks it to, once it is later
/// than an instant (milliseconds since 1970).
pub fn watch_clock(tell: impl Fn() + 'static) -> Option<Function> {
    let tell = Closure::<dyn Fn()>::new(tell).into_js_value();
    js::call(&bridge()?, "watchClock", &[tell])?.dyn_into().ok()
}

/// Name of this build.
pub fn build() -> String {
    bridge().and_then(|bridge| js::text(&bridge, "build")).unwrap_or_else(|| "development".to_owned())
}

/// Tells the start script that the app stands there, so that the cover may go.
pub fn arrived() {
    if let Some(bridge) = bridge() {
        js::call(&bridge, "arrived", &[]);
    }
}

/// Shows the start script's failure page.
pub fn fail(report: &str) {
    if let Some(bridge) = bridge() {
        js::call(&bridge, "failed", &[report.into()]);
    }
}

/// Shows the same page, when a part of the app did not come.
pub fn fail_to_load(report: &str) {
    if let Some(bridge) = bridge() {
        js::call(&bridge, "failed", &[report.into(), "load".into()]);
    }
}

/// Tells the start script that all parts have come: the worker may begin.
pub fn settled() {
    if let Some(bridge) = bridge() {
        js::call(&bridge, "settled", &[]);
    }
}

fn flag(name: &str) -> bool {
    bridge().and_then(|bridge| js::member(&bridge, name)).is_some_and(|flag| flag.is_truthy())
}

fn bridge() -> Option<JsValue> {
    js::member(&js::global(), BRIDGE)
}
