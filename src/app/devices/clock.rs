//! The phone's clock: now, told each minute while the page is seen, and between the minutes when somebody asks for it.
//!
//! Telling all who listen is what costs. The start script looks at the clock (`public/clock.js`), and has it told when
//! another minute has begun, when the time runs not on but elsewhere, when the page is seen again, and at the instants for
//! which somebody has asked to be woken.

use js_sys::Function;
use leptos::prelude::*;
use slantlight::units::Instant;
use wasm_bindgen::JsValue;

use super::bridge;

/// What the phone's clock says.
pub fn now() -> Instant {
    Instant::from_unix_millis(js_sys::Date::now() as i64)
}

/// The time as it is told, and the way to ask for more of it.
#[derive(Clone, Copy)]
pub struct Clock {
    /// When it was told last.
    pub time: ReadSignal<Instant>,
    /// Asks the start script.
    wake: StoredValue<Option<Function>, LocalStorage>,
}

impl Clock {
    /// Now, and ticking while the page is seen.
    pub fn ticking() -> Self {
        let (time, tell) = signal(now());
        Self { time, wake: StoredValue::new_local(bridge::watch_clock(move || tell.set(now()))) }
    }

    /// Asks to be told the time as soon as it is later than `at`. Ask again each time it is told.
    pub fn wake_after(self, at: Instant) {
        self.wake.with_value(|wake| {
            if let Some(wake) = wake {
                // It sets a timer, and refuses no number.
                drop(wake.call1(&JsValue::NULL, &(at.unix_millis() as f64).into()));
            }
        });
    }
}
