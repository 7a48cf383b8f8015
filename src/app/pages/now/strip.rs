//! The horizon strip: the sun is dragged along its path to another hour. The day line does the same for keys.

use leptos::html;
use leptos::prelude::*;
use slantlight::draw::Point;
use slantlight::draw::strip::Strip;
use slantlight::draw::window::{Spot, Window};
use slantlight::project::day_at::DayAt;
use web_sys::PointerEvent;

use super::shown::Shown;
use crate::app::parts::Picture;

/// How the strip was taken: what it showed then, and where the finger was and the sun on the paper.
#[derive(Clone, Copy)]
struct Taken {
    window: Window,
    finger: f64,
    sun: Point,
}

/// The strip.
#[component]
pub fn HorizonStrip(shown: Shown) -> impl IntoView {
    let node = NodeRef::<html::Div>::new();
    let taken = StoredValue::new(None::<Taken>);
    let drawing =
        Signal::derive(move || shown.strip().as_ref().map(Strip::draw).unwrap_or(Strip::default().draw()));
    let take = move |event: PointerEvent| {
        let Some(strip) = untrack(move || shown.strip()).filter(|_| event.button() == 0) else { return };
        let Some(element) = node.get_untracked() else { return };
        // Refused only for a pointer that is gone already; then no move follows either.
        drop(element.set_pointer_capture(event.pointer_id()));
        let window = strip.window();
        let sun = strip.now.map_or(Point::default(), |spot| window.place(spot));
        taken.set_value(Some(Taken { window, finger: f64::from(event.client_x()), sun }));
    };
    let pull = move |event: PointerEvent| {
        let (Some(held), Some(element)) = (taken.get_value(), node.get_untracked()) else { return };
        let wide = element.get_bounding_client_rect().width().max(1.0);
        let x = held.sun.x + (f64::from(event.client_x()) - held.finger) * Strip::WIDTH / wide;
        let Spot { bearing, .. } = held.window.at(Point::new(x, held.sun.y));
        let near = untrack(move || shown.store.moment.to_the_minute());
        let there = untrack(move || shown.with_day(|day: &DayAt| day.at_bearing(bearing, near)));
        if let Some(at) = there.flatten() {
            shown.store.moment.stand_at(at);
        }
    };
    let drop_it = move |_| taken.set_value(None);
    view! {
        <div
            class="full-bleed now-strip"
            node_ref=node
            on:pointerdown=take
            on:pointermove=pull
            on:pointerup=drop_it
            on:pointercancel=drop_it
        >
            <Picture drawing=drawing />
        </div>
    }
}
