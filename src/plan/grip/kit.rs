//! The grip's frame, flag and mirror at a set-up: their sizes, and where they are meant to stand.

use serde::{Deserialize, Serialize};

use crate::light::cover::Cloth;
use crate::units::{Bearing, Metres};

/// What is at hand, and where it goes. What a file does not say is as usual.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct GripKit {
    /// The diffusion frame, along the ground.
    #[serde(rename = "frame_width_m")]
    pub frame_width: Metres,
    /// The diffusion frame, up its slope.
    #[serde(rename = "frame_height_m")]
    pub frame_height: Metres,
    /// Its middle above the face.
    #[serde(rename = "frame_above_m")]
    pub frame_above: Metres,
    /// The flag's distance from the front glass.
    #[serde(rename = "flag_m")]
    pub flag: Metres,
    /// Side of the mirror.
    #[serde(rename = "mirror_m")]
    pub mirror: Metres,
    /// From the mark to the mirror.
    #[serde(rename = "mirror_bearing_deg")]
    pub bearing: Bearing,
    /// How far.
    #[serde(rename = "mirror_distance_m")]
    pub distance: Metres,
    /// The mirror's middle above the face; below is negative.
    #[serde(rename = "mirror_above_m")]
    pub above: Metres,
}

impl Default for GripKit {
    /// Our own choice: what a small crew has.
    fn default() -> Self {
        let metres = Metres::from_metres;
        Self {
            frame_width: metres(2.4),
            frame_height: metres(2.4),
            frame_above: metres(1.5),
            flag: metres(1.0),
            mirror: metres(1.0),
            bearing: Bearing::default(),
            distance: metres(6.0),
            above: metres(0.0),
        }
    }
}

impl GripKit {
    /// Whether nobody has changed it.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }

    /// The diffusion frame.
    pub const fn frame(&self) -> Cloth {
        Cloth { width: self.frame_width, height: self.frame_height }
    }
}
