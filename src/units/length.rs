//! Lengths.

use serde::{Deserialize, Serialize};

/// Metres in a foot (exact, international foot).
const FOOT: f64 = 0.3048;

/// A length or position along an axis, metres, any finite size and sign.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Metres(f64);

impl Metres {
    /// From metres.
    pub const fn from_metres(metres: f64) -> Self {
        Self(metres)
    }

    /// From international feet.
    pub fn from_feet(feet: f64) -> Self {
        Self(feet * FOOT)
    }

    /// In metres.
    pub const fn metres(self) -> f64 {
        self.0
    }

    /// In international feet.
    pub fn feet(self) -> f64 {
        self.0 / FOOT
    }
}
