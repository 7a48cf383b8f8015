//! Vibration and a short sound. Both work only while the page is seen, and the sound only after a tap has allowed it.

use js_sys::Reflect;
use leptos::prelude::window;
use wasm_bindgen::JsValue;

use super::js;

/// What the phone vibrates, milliseconds on and off.
const BUZZ: [f64; 5] = [400.0, 200.0, 400.0, 200.0, 800.0];

/// Pitches of the two tones, hertz, and how long each lasts, seconds. Our own choice: loud on small speakers.
const TONES: [f64; 2] = [880.0, 1320.0];
const TONE: f64 = 0.35;

/// A sound that a tap has allowed.
#[derive(Clone)]
pub struct Bell(Option<JsValue>);

impl Bell {
    /// Call from inside a tap: engines let no page sound that was never tapped. It sounds once, so that one knows.
    pub fn allowed() -> Self {
        let class = js::member(&js::global(), "AudioContext")
            .or_else(|| js::member(&js::global(), "webkitAudioContext"));
        let context = class.and_then(|class| js::construct(&class, &[]).ok());
        let bell = Self(context);
        bell.ring();
        bell
    }

    /// Vibrates and sounds. What the phone lacks is left out.
    pub fn ring(&self) {
        let navigator: JsValue = window().navigator().into();
        let pattern: js_sys::Array = BUZZ.iter().map(|part| JsValue::from(*part)).collect();
        drop(js::call(&navigator, "vibrate", &[pattern.into()]));
        let Some(context) = &self.0 else { return };
        // A context falls asleep with the page.
        drop(js::call(context, "resume", &[]));
        for (place, pitch) in TONES.iter().enumerate() {
            // An engine without oscillators stays silent.
            let _ = tone(context, *pitch, place as f64 * TONE);
        }
    }
}

/// One tone, so many seconds from now.
fn tone(context: &JsValue, pitch: f64, from_now: f64) -> Option<()> {
    let starts = js::number(context, "currentTime")? + from_now;
    let oscillator = js::call(context, "createOscillator", &[])?;
    let frequency = js::member(&oscillator, "frequency")?;
    Reflect::set(&frequency, &"value".into(), &pitch.into()).ok()?;
    js::call(&oscillator, "connect", &[js::member(context, "destination")?])?;
    drop(js::call(&oscillator, "start", &[starts.into()]));
    drop(js::call(&oscillator, "stop", &[(starts + TONE).into()]));
    Some(())
}
