//! How the phone is held: raw angles of its compass and tilt sensors.
//!
//! Readings without numbers (desktops, refused sensors) are left out. What the angles mean is worked out by
//! the library.

use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::js;

/// The event of engines that say their heading is measured from north.
const ABSOLUTE: &str = "deviceorientationabsolute";

/// The event all engines have.
const PLAIN: &str = "deviceorientation";

/// One reading, degrees, in the standard's frame (Z-X'-Y'').
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// About the axis out of the screen.
    pub alpha: f64,
    /// About the screen's width.
    pub beta: f64,
    /// About the screen's height.
    pub gamma: f64,
    /// Magnetic heading of the phone's top edge, where the engine gives one; else `alpha` counts from
    /// magnetic north.
    pub compass_heading: Option<f64>,
    /// How exact that heading is, where the engine says so.
    pub compass_accuracy: Option<f64>,
    /// How far the picture is turned on the screen.
    pub screen_angle: f64,
}

/// Whether the sensors may be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Permission {
    /// They may.
    Granted,
    /// The person or the system said no.
    Refused,
}

/// Asks for the sensors where an engine wants to be asked; call from inside a tap.
pub fn ask(then: impl FnOnce(Permission) + 'static) {
    let asked = js::member(&js::global(), "DeviceOrientationEvent")
        .and_then(|class| js::call(&class, "requestPermission", &[]));
    match asked {
        None => look_up(then),
        Some(promised) => js::after(promised, |outcome| {
            let granted = outcome.is_ok_and(|answer| answer.as_string().as_deref() == Some("granted"));
            then(if granted { Permission::Granted } else { Permission::Refused });
        }),
    }
}

/// Engines that need not be asked may have been told no in their settings; those that do not say let us try.
fn look_up(then: impl FnOnce(Permission) + 'static) {
    let sensor = js::object(&[("name", "magnetometer".into())]);
    let asked = js::path(&js::global(), &["navigator", "permissions"])
        .and_then(|permissions| js::call(&permissions, "query", &[sensor]));
    match asked {
        None => then(Permission::Granted),
        Some(promised) => js::after(promised, |outcome| {
            let refused = outcome.is_ok_and(|found| js::text(&found, "state").as_deref() == Some("denied"));
            then(if refused { Permission::Refused } else { Permission::Granted });
        }),
    }
}

/// Reads the sensors until the owner of the calling component goes.
pub fn watch(then: impl Fn(Reading) + Clone + 'static) {
    for event in [ABSOLUTE, PLAIN] {
        let then = then.clone();
        let listener = window_event_listener_untyped(event, move |event| {
            if let Some(reading) = read(&event.into()) {
                then(reading);
            }
        });
        on_cleanup(move || listener.remove());
    }
}

/// A reading that is measured from north and has all its numbers.
fn read(event: &JsValue) -> Option<Reading> {
    let compass_heading = js::number(event, "webkitCompassHeading");
    let from_north = js::member(event, "absolute").is_some_and(|absolute| absolute.is_truthy());
    (from_north || compass_heading.is_some()).then_some(())?;
    Some(Reading {
        alpha: js::number(event, "alpha")?,
        beta: js::number(event, "beta")?,
        gamma: js::number(event, "gamma")?,
        compass_heading,
        compass_accuracy: js::number(event, "webkitCompassAccuracy").filter(|accuracy| *accuracy >= 0.0),
        screen_angle: screen_angle(),
    })
}

/// 0 upright, 90 or 270 on its side.
fn screen_angle() -> f64 {
    js::path(&js::global(), &["screen", "orientation"])
        .and_then(|orientation| js::number(&orientation, "angle"))
        .or_else(|| js::number(&js::global(), "orientation"))
        .unwrap_or(0.0)
}
