//! Shares of a whole: lit parts, reflectances, transmittances, dimming.

use serde::{Deserialize, Serialize};

use super::range::{OutOfRange, within};

/// A share of a whole, 0 to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Share(f64);

impl Share {
    /// Nothing of it.
    pub const NONE: Self = Self(0.0);
    /// All of it.
    pub const WHOLE: Self = Self(1.0);

    /// From a fraction of one.
    ///
    /// # Errors
    /// Outside 0 to 1, or not a number.
    pub fn from_fraction(fraction: f64) -> Result<Self, OutOfRange> {
        within("share", "%", fraction * 100.0, (0.0, 100.0)).map(|_| Self(fraction))
    }

    /// From a fraction of one, brought to the nearer end when outside; for results and constants.
    pub const fn clamped(fraction: f64) -> Self {
        if fraction >= 1.0 {
            Self(1.0)
        } else if fraction >= 0.0 {
            Self(fraction)
        } else {
            Self(0.0)
        }
    }

    /// As a fraction of one.
    pub const fn fraction(self) -> f64 {
        self.0
    }

    /// As a percentage.
    pub const fn percent(self) -> f64 {
        self.0 * 100.0
    }
}

impl TryFrom<f64> for Share {
    type Error = OutOfRange;
    fn try_from(fraction: f64) -> Result<Self, OutOfRange> {
        Self::from_fraction(fraction)
    }
}

impl From<Share> for f64 {
    fn from(share: Share) -> Self {
        share.0
    }
}
