//! Colour temperature, in kelvins and in mireds.
//!
//! Equal steps of mired look equal, and filters add mireds; kelvins do neither.

use core::ops::{Add, Neg, Sub};

use super::quantity::quantity;
use super::range::{OutOfRange, within};

/// Mireds times kelvins (convention: a mired is a millionth of a reciprocal kelvin).
const MILLION: f64 = 1e6;

/// Correlated colour temperatures that mean something, kelvins: a candle's glow to a sky bluer than any (our choice).
const RANGE: (f64, f64) = (500.0, 100_000.0);

/// A correlated colour temperature, kelvins, 500 to 100 000.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, serde::Serialize, serde::Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Kelvin(f64);

impl Kelvin {
    /// From kelvins.
    ///
    /// # Errors
    /// Outside 500 to 100 000, or not a number.
    pub fn from_kelvin(kelvin: f64) -> Result<Self, OutOfRange> {
        within("colour temperature", "K", kelvin, RANGE).map(Self)
    }

    /// From kelvins, brought to the nearer end when outside; for results and constants.
    pub const fn clamped(kelvin: f64) -> Self {
        if kelvin >= RANGE.1 {
            Self(RANGE.1)
        } else if kelvin >= RANGE.0 {
            Self(kelvin)
        } else {
            Self(RANGE.0)
        }
    }

    /// In kelvins.
    pub const fn kelvin(self) -> f64 {
        self.0
    }

    /// Its reciprocal, in mireds: higher is warmer.
    pub fn mired(self) -> Mired {
        Mired::from_mired(MILLION / self.0)
    }

    /// What a filter of strength `shift` makes of it: `T₂ = 10⁶/(10⁶/T₁ + ΔM)`.
    ///
    /// ```
    /// # use slantlight::units::{Kelvin, Mired};
    /// let filtered = Kelvin::clamped(5600.0).shifted(Mired::from_mired(159.0));
    /// assert!((filtered.kelvin() - 2962.0).abs() < 0.5);
    /// ```
    pub fn shifted(self, shift: Mired) -> Self {
        (self.mired() + shift).kelvin()
    }
}

impl TryFrom<f64> for Kelvin {
    type Error = OutOfRange;
    fn try_from(kelvin: f64) -> Result<Self, OutOfRange> {
        Self::from_kelvin(kelvin)
    }
}

impl From<Kelvin> for f64 {
    fn from(kelvin: Kelvin) -> Self {
        kelvin.0
    }
}

quantity! {
    /// A reciprocal colour temperature, or a shift of one; positive shifts are warmer.
    Mired, from_mired, mired, "mireds"
}

impl Mired {
    /// The colour temperature it stands for; shifts stand for none. Beyond the range of [`Kelvin`], its nearer end.
    pub fn kelvin(self) -> Kelvin {
        if self.mired() > 0.0 { Kelvin::clamped(MILLION / self.mired()) } else { Kelvin::clamped(RANGE.1) }
    }

    /// The shift that leads from one colour temperature to another.
    pub fn shift(from: Kelvin, to: Kelvin) -> Self {
        to.mired() - from.mired()
    }
}

impl Add for Mired {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::from_mired(self.mired() + other.mired())
    }
}

impl Sub for Mired {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::from_mired(self.mired() - other.mired())
    }
}

impl Neg for Mired {
    type Output = Self;
    fn neg(self) -> Self {
        Self::from_mired(-self.mired())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shifts_of_the_handbook() {
        // Handbook H6.
        let shifts = [
            (5500.0, 3200.0, 130.7),
            (5600.0, 3200.0, 133.9),
            (6500.0, 3200.0, 158.7),
            (3200.0, 5600.0, -133.9),
            (5600.0, 4300.0, 54.0),
            (7500.0, 5600.0, 45.2),
            (10_000.0, 5600.0, 78.6),
        ];
        for (from, to, shift) in shifts {
            let got = Mired::shift(Kelvin::clamped(from), Kelvin::clamped(to)).mired();
            assert!((got - shift).abs() < 0.051, "{from} to {to}: {got}");
        }
    }

    #[test]
    fn what_filters_make() {
        // Handbook T-H8.
        for (from, shift, to) in [
            (5600.0, 159.0, 2962.0),
            (6500.0, 159.0, 3196.0),
            (3200.0, -137.0, 5698.0),
            (5600.0, 64.0, 4122.0),
            (3200.0, -35.0, 3604.0),
        ] {
            let got = Kelvin::clamped(from).shifted(Mired::from_mired(shift)).kelvin();
            assert!((got - to).abs() < 0.51, "{from} {shift}: {got}");
        }
    }

    #[test]
    fn a_shift_beyond_all_colours_stays_a_colour() {
        assert_eq!(Kelvin::clamped(5600.0).shifted(Mired::from_mired(-500.0)).kelvin(), 100_000.0);
    }
}
