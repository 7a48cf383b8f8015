//! The address of a screen: the part behind `#`, so that any static host and the service worker serve it and
//! the back button works everywhere.
//!
//! When it changes, the new page's title takes the focus and each page stands where it was scrolled to last.

use std::collections::HashMap;

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use slantlight::project::route::Route;
use wasm_bindgen::JsCast;
use web_sys::{FocusOptions, HtmlElement, ScrollBehavior, ScrollToOptions};

/// Where the app is.
#[derive(Clone, Copy)]
pub struct Router {
    route: Memo<Route>,
}

impl Router {
    /// Follows the address, for the life of the app. Call once, at its root.
    pub fn provide() -> Self {
        let (fragment, set_fragment) = signal(fragment());
        let scrolled = StoredValue::new(HashMap::<String, f64>::new());
        window_event_listener_untyped("hashchange", move |_| {
            let here = self::fragment();
            let before = fragment.get_untracked();
            scrolled.update_value(|scrolled| {
                scrolled.insert(before, scroll_height());
            });
            let height = scrolled.with_value(|scrolled| scrolled.get(&here).copied()).unwrap_or(0.0);
            set_fragment.set(here);
            request_animation_frame(move || arrive(height));
        });
        let router = Self { route: Memo::new(move |_| Route::parse(&fragment.get())) };
        provide_context(router);
        router
    }

    /// Where the app is; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// The screen shown; tracked.
    pub fn route(self) -> Route {
        self.route.get()
    }
}

/// Goes to a screen; the back button leads back.
pub fn go(route: &Route) {
    // Fails only for an address that cannot be parsed; ours can.
    drop(window().location().set_hash(&route.href()));
}

/// Goes to a screen in place of this one, which the back button shall not find again.
pub fn go_instead(route: &Route) {
    // Fails only for an address that cannot be parsed; ours can.
    drop(window().location().replace(&route.href()));
}

/// The page that stands here is a new one, though the address is not.
pub fn arrive_again() {
    request_animation_frame(move || arrive(0.0));
}

/// Moves the focus to the page without touching the address, which belongs to the screens.
pub fn skip_to_page(event: MouseEvent) {
    event.prevent_default();
    focus("#page");
}

/// The new page is there: its title takes the focus, and it stands where it stood.
fn arrive(height: f64) {
    focus("main h1");
    let place = ScrollToOptions::new();
    place.set_top(height);
    place.set_behavior(ScrollBehavior::Instant);
    window().scroll_to_with_scroll_to_options(&place);
}

fn focus(selector: &str) {
    let found = document().query_selector(selector).ok().flatten();
    if let Some(element) = found.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        let quietly = FocusOptions::new();
        quietly.set_prevent_scroll(true);
        // What cannot take the focus leaves it where it is.
        drop(element.focus_with_options(&quietly));
    }
}

fn scroll_height() -> f64 {
    window().scroll_y().unwrap_or(0.0)
}

fn fragment() -> String {
    window().location().hash().unwrap_or_default()
}

/// The whole address of a screen, to be sent to somebody.
pub fn link(route: &Route) -> String {
    let here = window().location().href().unwrap_or_default();
    let page = here.split(['#', '?']).next().unwrap_or_default();
    format!("{page}{}", route.href())
}
