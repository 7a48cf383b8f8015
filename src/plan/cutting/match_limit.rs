//! How far the light may change within a scene that is cut together.

use serde::{Deserialize, Serialize};

use crate::units::{Degrees, Mired, Share, Stops};

/// Limits between any two takes of a scene.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MatchLimit {
    /// How much longer the longer shadow may be than the shorter one.
    #[serde(rename = "shadow_share")]
    pub shadow: Share,
    /// How far the light's bearing may turn.
    #[serde(rename = "class_angle_deg")]
    pub class_angle: Degrees,
    /// How far the ratio of lit to shadow side may change.
    #[serde(rename = "ratio_stops")]
    pub ratio: Stops,
    /// How far the light's colour may change.
    #[serde(rename = "colour_mired")]
    pub colour: Mired,
}

impl Default for MatchLimit {
    /// Handbook I2, common practice without a source.
    fn default() -> Self {
        Self {
            shadow: Share::clamped(0.20),
            class_angle: Degrees::from_degrees(15.0),
            ratio: Stops::from_stops(0.7),
            colour: Mired::from_mired(25.0),
        }
    }
}

impl MatchLimit {
    /// Whether nobody has changed it.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}
