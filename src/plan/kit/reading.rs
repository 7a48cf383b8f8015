//! A meter's word at a place and an hour: the model is scaled by it.

use serde::{Deserialize, Serialize};

use crate::light::exposure::{IncidentConstant, Settings};
use crate::plan::wish::Sky;
use crate::units::{Bearing, Density, Instant, Iso, Lux, ShutterTime, TStop};

/// What the meter faced, in the open at the location.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Facing {
    /// The sun.
    #[default]
    Sun,
    /// The zenith: the light on level ground.
    Up,
    /// A level direction.
    Bearing(Bearing),
}

/// What it said.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Metered {
    /// Lux.
    Lux(Lux),
    /// Settings of a camera, by a flat disc.
    Stop {
        /// T-stop.
        t_stop: TStop,
        /// Film speed.
        iso: Iso,
        /// Shutter time.
        #[serde(rename = "shutter_s")]
        shutter: ShutterTime,
    },
}

/// One reading.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// Stable within the project.
    pub id: String,
    /// When.
    pub at: Instant,
    /// What the sky was like.
    #[serde(default)]
    pub sky: Sky,
    /// What the meter faced.
    #[serde(default)]
    pub facing: Facing,
    /// What it said.
    pub says: Metered,
}

impl Metered {
    /// In lux.
    ///
    /// ```
    /// # use slantlight::{plan::kit::Metered, units::{Degrees, FrameRate, Iso, ShutterTime, TStop}};
    /// let shutter = ShutterTime::of_angle(Degrees::from_degrees(180.0), FrameRate::clamped(24.0));
    /// let says = Metered::Stop { t_stop: TStop::clamped(2.8), iso: Iso::clamped(800.0), shutter };
    /// assert!((says.light().lux() - 117.6).abs() < 0.05);
    /// ```
    pub fn light(self) -> Lux {
        match self {
            Self::Lux(lux) => lux,
            Self::Stop { t_stop, iso, shutter } => {
                Settings { t_stop, iso, time: shutter, filter: Density::default() }
                    .light(IncidentConstant::FLAT)
            }
        }
    }
}
