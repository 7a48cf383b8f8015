//! Dragging a handle along a line.
//!
//! Only the handle claims the touch and captures the pointer, so that a thumb that scrolls past moves nothing.
//! Where the thumb took the handle is remembered: the handle does not jump under it.

use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

/// A handle on a line, and whether it is held.
#[derive(Clone, Copy)]
pub struct Drag {
    /// The line.
    pub track: NodeRef<html::Div>,
    /// Where it was taken; `None` while nobody holds it.
    taken: StoredValue<Option<Taken>>,
}

/// A handle in somebody's hand.
#[derive(Clone, Copy)]
struct Taken {
    /// How far from its middle it was taken, in pixels.
    off: f64,
    /// Left end and width of the line on the screen, in pixels: measured once, since each measuring makes the browser lay
    /// the page out, and a line does not move while its handle is held.
    line: (f64, f64),
}

impl Drag {
    /// A handle that nobody holds.
    pub fn new() -> Self {
        Self { track: NodeRef::new(), taken: StoredValue::new(None) }
    }

    /// Takes the handle that stands at `share` of the line.
    pub fn take(self, event: &PointerEvent, share: f64) {
        let Some((left, width)) = self.line() else { return };
        if event.button() != 0 {
            return;
        }
        let handle = event.current_target().and_then(|target| target.dyn_into::<Element>().ok());
        if let Some(handle) = handle {
            // Refused only for a pointer that is gone already; then no move follows either.
            drop(handle.set_pointer_capture(event.pointer_id()));
        }
        let off = f64::from(event.client_x()) - (left + share * width);
        self.taken.set_value(Some(Taken { off, line: (left, width) }));
    }

    /// The share of the line to which the handle was moved, not cut at the ends; `None` while nobody holds it.
    pub fn moved(self, event: &PointerEvent) -> Option<f64> {
        let Taken { off, line: (left, width) } = self.taken.get_value()?;
        Some((f64::from(event.client_x()) - off - left) / width)
    }

    /// Whether somebody holds the handle.
    pub fn is_held(self) -> bool {
        self.taken.with_value(Option::is_some)
    }

    /// Lets go.
    pub fn let_go(self) {
        self.taken.set_value(None);
    }

    /// Left end and width of the line on the screen, in pixels.
    fn line(self) -> Option<(f64, f64)> {
        let place = self.track.get_untracked()?.get_bounding_client_rect();
        (place.width() > 0.0).then(|| (place.left(), place.width()))
    }
}
