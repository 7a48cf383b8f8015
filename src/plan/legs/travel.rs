//! A subject that moves: legs of a way, and a lens mounted on what moves.

use serde::{Deserialize, Serialize};

use crate::units::{Bearing, Degrees, Duration, Metres, Speed};

/// A way and the lens on it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Travel {
    /// From the heading clockwise to where the lens looks: 0 ahead, 180 back at what comes behind.
    #[serde(rename = "mount_deg")]
    pub mount: Degrees,
    /// The legs in order.
    #[serde(default)]
    pub legs: Vec<Leg>,
}

/// A straight part of the way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Leg {
    /// Where it leads, true.
    #[serde(rename = "heading_deg")]
    pub heading: Bearing,
    /// How long it is.
    #[serde(rename = "length_m")]
    pub length: Metres,
    /// How fast it is gone.
    #[serde(rename = "speed_m_s")]
    pub speed: Speed,
}

/// Longest that a leg is taken to last, seconds: no day has light for longer. Our own choice.
const LONGEST: f64 = 2.0 * 86_400.0;

/// Which way a leg is gone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// As it is written.
    Out,
    /// From its end to its start.
    Back,
}

impl Leg {
    /// How long it takes; a leg nobody moves along takes no time.
    pub fn takes(&self) -> Duration {
        let seconds = self.length.metres() / self.speed.metres_per_second();
        if seconds.is_finite() { Duration::from_seconds(seconds.min(LONGEST)) } else { Duration::ZERO }
    }

    /// Where one heads who goes it `way`.
    pub fn heading(&self, way: Way) -> Bearing {
        match way {
            Way::Out => self.heading,
            Way::Back => self.heading.reversed(),
        }
    }
}
