//! Whether the page is seen, and the moment it stops being seen: the last sure chance to save.

use leptos::prelude::*;
use web_sys::VisibilityState;

/// Whether the page is seen now.
pub fn is_seen() -> bool {
    document().visibility_state() == VisibilityState::Visible
}

/// Calls `then` whenever the page is hidden or seen again, for the life of the app.
pub fn on_change(then: impl Fn(bool) + 'static) {
    window_event_listener_untyped("visibilitychange", move |_| then(is_seen()));
}

/// Calls `then` when the page is hidden or left, for the life of the app.
pub fn on_leaving(then: impl Fn() + Clone + 'static) {
    let hidden = then.clone();
    on_change(move |seen| {
        if !seen {
            hidden();
        }
    });
    window_event_listener_untyped("pagehide", move |_| then());
}
