//! Where the phone is.

use leptos::prelude::window;
use slantlight::place::site::Site;
use slantlight::units::{Latitude, Longitude, Metres};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::PositionOptions;

use super::js;

/// How long the phone may look for itself. Our own choice: a cold receiver indoors takes about half a minute.
const PATIENCE_MS: u32 = 30_000;

/// A position with its accuracy (radius of 68 % confidence in most engines).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Where; the elevation is 0 when the phone does not know it.
    pub site: Site,
    /// How exact.
    pub accuracy: Metres,
}

/// Why there is no position.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFix {
    /// The person, the system or the site's settings said no.
    Refused,
    /// The phone cannot find its position here.
    NotFound,
    /// It took too long.
    TooSlow,
    /// This browser has no positions.
    Missing,
}

impl NoFix {
    /// What is wrong and what to do next.
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Refused => {
                "This page is not allowed to ask where the phone is. Allow location for this page in the browser's settings, or paste the coordinates."
            }
            Self::NotFound => {
                "The phone cannot find its position here. Step outside or to a window and try again, or paste the coordinates."
            }
            Self::TooSlow => {
                "Finding the position took too long. Try again under open sky, or paste the coordinates."
            }
            Self::Missing => "This browser cannot tell where it is. Paste the coordinates instead.",
        }
    }
}

/// Asks once where the phone is. The first time, the browser asks the person.
pub fn locate(then: impl FnOnce(Result<Fix, NoFix>) + Clone + 'static) {
    let Ok(geolocation) = window().navigator().geolocation() else {
        return then(Err(NoFix::Missing));
    };
    let (good, bad) = (then.clone(), then.clone());
    let found = Closure::once_into_js(move |position: JsValue| good(read(&position).ok_or(NoFix::NotFound)));
    let failed = Closure::once_into_js(move |error: JsValue| bad(Err(reason(&error))));
    let options = PositionOptions::new();
    options.set_enable_high_accuracy(true);
    options.set_timeout(PATIENCE_MS);
    let asked = geolocation.get_current_position_with_error_callback_and_options(
        found.unchecked_ref(),
        Some(failed.unchecked_ref()),
        &options,
    );
    if asked.is_err() {
        then(Err(NoFix::Missing));
    }
}

/// The browser's position in our own words.
fn read(position: &JsValue) -> Option<Fix> {
    let coordinates = js::member(position, "coords")?;
    Some(Fix {
        site: Site {
            latitude: Latitude::from_degrees(js::number(&coordinates, "latitude")?).ok()?,
            longitude: Longitude::from_degrees(js::number(&coordinates, "longitude")?).ok()?,
            elevation: Metres::from_metres(js::number(&coordinates, "altitude").unwrap_or(0.0)),
        },
        accuracy: Metres::from_metres(js::number(&coordinates, "accuracy")?),
    })
}

/// The standard's codes: 1 refused, 2 not available, 3 too slow.
fn reason(error: &JsValue) -> NoFix {
    match js::number(error, "code") {
        Some(1.0) => NoFix::Refused,
        Some(3.0) => NoFix::TooSlow,
        _ => NoFix::NotFound,
    }
}
