//! What is set on a camera, and what it cannot do.

use serde::{Deserialize, Serialize};

use crate::light::exposure::Settings;
use crate::light::exposure::film::Film;
use crate::units::{Degrees, Density, FrameRate, Iso, Kelvin, Metres, ShutterTime, TStop};

/// Settings of a camera.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct CameraSettings {
    /// Sensor or film speed.
    pub iso: Iso,
    /// Frames in a second.
    #[serde(rename = "frame_rate_fps")]
    pub rate: FrameRate,
    /// How far the shutter is open.
    #[serde(rename = "shutter_deg")]
    pub shutter: Degrees,
    /// Whether the shutter is built so and cannot be set.
    pub shutter_is_fixed: bool,
    /// T-stop that is set.
    pub t_stop: TStop,
    /// Widest opening of the slowest lens that will be used.
    pub slowest_lens: TStop,
    /// Neutral density before the lens.
    pub nd: Density,
    /// What sensor or stock is balanced to.
    #[serde(rename = "balance_k")]
    pub balance: Kelvin,
    /// How film runs; `None` for a sensor.
    #[serde(with = "gauge", skip_serializing_if = "Option::is_none")]
    pub film: Option<Film>,
    /// Film in a load.
    #[serde(rename = "load_m")]
    pub load: Metres,
}

impl Default for CameraSettings {
    /// A sensor at 24 frames and 180°, balanced to daylight.
    fn default() -> Self {
        Self {
            iso: Iso::clamped(400.0),
            rate: FrameRate::clamped(24.0),
            shutter: Degrees::from_degrees(180.0),
            shutter_is_fixed: false,
            t_stop: TStop::clamped(2.8),
            slowest_lens: TStop::clamped(2.0),
            nd: Density::default(),
            balance: Kelvin::clamped(5600.0),
            film: None,
            load: Metres::from_feet(400.0),
        }
    }
}

impl CameraSettings {
    /// How long a frame is exposed.
    pub fn time(&self) -> ShutterTime {
        ShutterTime::of_angle(self.shutter, self.rate)
    }

    /// As `light` computes with them.
    pub fn exposure(&self) -> Settings {
        Settings { t_stop: self.t_stop, iso: self.iso, time: self.time(), filter: self.nd }
    }

    /// Whether nothing was said about the camera.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}

/// Names of the gauges in a file.
mod gauge {
    use serde::{Deserialize, Deserializer, Serializer};

    use crate::light::exposure::film::Film;

    const NAMES: [(&str, Film); 6] = [
        ("super-8", Film::Super8),
        ("16-mm", Film::Mm16),
        ("35-mm-4-perf", Film::Mm35FourPerf),
        ("35-mm-3-perf", Film::Mm35ThreePerf),
        ("35-mm-2-perf", Film::Mm35TwoPerf),
        ("65-mm-5-perf", Film::Mm65FivePerf),
    ];

    pub(super) fn serialize<S: Serializer>(film: &Option<Film>, to: S) -> Result<S::Ok, S::Error> {
        match NAMES.iter().find(|(_, one)| Some(*one) == *film) {
            Some((name, _)) => to.serialize_str(name),
            None => to.serialize_none(),
        }
    }

    pub(super) fn deserialize<'a, D: Deserializer<'a>>(from: D) -> Result<Option<Film>, D::Error> {
        let Some(name) = Option::<String>::deserialize(from)? else { return Ok(None) };
        let film = NAMES.iter().find(|(one, _)| *one == name).map(|(_, film)| *film);
        film.map(Some).ok_or_else(|| serde::de::Error::custom("this is no gauge of film"))
    }
}
