//! What a meter is calibrated to.
//!
//! ISO 2720:1974 leaves a range: C 240 to 400 for flat receptors, 320 to 540 for domes, K 10.6 to 13.4 (ranges as quoted
//! by J. Conrad, *Exposure Metering*; the standard itself is to be looked up before any claim of compliance). A dome reads
//! 0.40 stop more than a disc set to the same C would, so an answer says which of the two it is for.

use serde::{Deserialize, Serialize};

/// C of the standard: lux × seconds × ISO for T1.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct IncidentConstant(f64);

impl IncidentConstant {
    /// A flat disc, aimed at the light (the value most makers choose).
    pub const FLAT: Self = Self(250.0);
    /// A dome, aimed at the lens (between the 320 and 340 that makers choose).
    pub const DOME: Self = Self(330.0);

    /// Another one; what is not above zero becomes that of the disc.
    pub const fn from_number(number: f64) -> Self {
        if number > 0.0 && number < f64::INFINITY { Self(number) } else { Self::FLAT }
    }

    /// As a number.
    pub const fn number(self) -> f64 {
        self.0
    }
}

impl Default for IncidentConstant {
    fn default() -> Self {
        Self::FLAT
    }
}

/// K of the standard: candelas on a square metre × seconds × ISO for T1.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ReflectedConstant(f64);

impl ReflectedConstant {
    /// The value most makers choose.
    pub const USUAL: Self = Self(12.5);

    /// Another one; what is not above zero becomes the usual one.
    pub const fn from_number(number: f64) -> Self {
        if number > 0.0 && number < f64::INFINITY { Self(number) } else { Self::USUAL }
    }

    /// As a number.
    pub const fn number(self) -> f64 {
        self.0
    }
}

impl Default for ReflectedConstant {
    fn default() -> Self {
        Self::USUAL
    }
}
