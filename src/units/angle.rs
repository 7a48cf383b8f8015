//! Angles of the edges, in degrees: plain angle, bearing, height, latitude, longitude.
//!
//! Degrees are turned into radians and vectors here and nowhere else.

use serde::{Deserialize, Serialize};

use super::range::{OutOfRange, within};
use super::vector::{Vector, World};
use crate::maths;

/// Radians in a degree.
const RADIANS: f64 = core::f64::consts::PI / 180.0;

/// A plain angle or difference of angles, degrees, any finite size.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Degrees(f64);

impl Degrees {
    /// From degrees.
    pub const fn from_degrees(degrees: f64) -> Self {
        Self(degrees)
    }

    /// From radians.
    pub fn from_radians(radians: f64) -> Self {
        Self(radians / RADIANS)
    }

    /// In degrees.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// In radians.
    pub fn radians(self) -> f64 {
        self.0 * RADIANS
    }

    /// The same angle in (−180, 180].
    pub fn signed(self) -> Self {
        let positive = wrap_360(self.0);
        Self(if positive > 180.0 { positive - 360.0 } else { positive })
    }

    /// The same angle in [0, 360).
    pub fn positive(self) -> Self {
        Self(wrap_360(self.0))
    }

    /// Without its sign.
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }
}

/// Direction on the ground, clockwise from **true** north, degrees in [0, 360).
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Bearing(f64);

impl Bearing {
    /// From degrees; any finite number is brought into [0, 360).
    ///
    /// # Panics
    /// Never: what is not a number reads as north; text is checked before it comes here.
    pub fn from_degrees(degrees: f64) -> Self {
        Self(wrap_360(degrees))
    }

    /// In degrees, [0, 360).
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// In radians, [0, 2π).
    pub fn radians(self) -> f64 {
        self.0 * RADIANS
    }

    /// Turned clockwise by `angle`.
    pub fn turned(self, angle: Degrees) -> Self {
        Self::from_degrees(self.0 + angle.degrees())
    }

    /// The opposite bearing.
    pub fn reversed(self) -> Self {
        self.turned(Degrees::from_degrees(180.0))
    }

    /// Clockwise angle from here to `other`, in (−180, 180].
    pub fn turn_to(self, other: Self) -> Degrees {
        Degrees::from_degrees(other.0 - self.0).signed()
    }

    /// Level unit vector towards this bearing.
    pub fn level(self) -> Vector<World> {
        let (sin, cos) = maths::sin_cos(self.radians());
        Vector::new(sin, cos, 0.0)
    }
}

impl TryFrom<f64> for Bearing {
    type Error = OutOfRange;
    fn try_from(degrees: f64) -> Result<Self, OutOfRange> {
        within("bearing", "°", degrees, (-360.0, 720.0)).map(Self::from_degrees)
    }
}

impl From<Bearing> for f64 {
    fn from(bearing: Bearing) -> Self {
        bearing.0
    }
}

/// Angle above the horizon, degrees in −90 ..= 90.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Height(f64);

impl Height {
    /// From degrees.
    ///
    /// # Errors
    /// Outside −90 to 90, or not a number.
    pub fn from_degrees(degrees: f64) -> Result<Self, OutOfRange> {
        within("height", "°", degrees, (-90.0, 90.0)).map(Self)
    }

    /// From degrees, brought to the nearer end of −90 ..= 90 when outside; for sliders and constants.
    pub const fn clamped(degrees: f64) -> Self {
        if degrees >= 90.0 {
            Self(90.0)
        } else if degrees >= -90.0 {
            Self(degrees)
        } else {
            Self(-90.0)
        }
    }

    /// In degrees.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// In radians.
    pub fn radians(self) -> f64 {
        self.0 * RADIANS
    }

    /// Sine of the height: the up part of a unit vector.
    pub fn sin(self) -> f64 {
        maths::sin(self.radians())
    }
}

impl TryFrom<f64> for Height {
    type Error = OutOfRange;
    fn try_from(degrees: f64) -> Result<Self, OutOfRange> {
        Self::from_degrees(degrees)
    }
}

impl From<Height> for f64 {
    fn from(height: Height) -> Self {
        height.0
    }
}

/// Geographic latitude, degrees north positive, −90 ..= 90.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Latitude(f64);

impl Latitude {
    /// From degrees north.
    ///
    /// # Errors
    /// Outside −90 to 90, or not a number.
    pub fn from_degrees(degrees: f64) -> Result<Self, OutOfRange> {
        within("latitude", "°", degrees, (-90.0, 90.0)).map(Self)
    }

    /// In degrees, north positive.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// In radians, north positive.
    pub fn radians(self) -> f64 {
        self.0 * RADIANS
    }
}

impl TryFrom<f64> for Latitude {
    type Error = OutOfRange;
    fn try_from(degrees: f64) -> Result<Self, OutOfRange> {
        Self::from_degrees(degrees)
    }
}

impl From<Latitude> for f64 {
    fn from(latitude: Latitude) -> Self {
        latitude.0
    }
}

/// Geographic longitude, degrees east positive, −180 ..= 180.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Longitude(f64);

impl Longitude {
    /// From degrees east.
    ///
    /// # Errors
    /// Outside −180 to 180, or not a number.
    pub fn from_degrees(degrees: f64) -> Result<Self, OutOfRange> {
        within("longitude", "°", degrees, (-180.0, 180.0)).map(Self)
    }

    /// In degrees, east positive.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// In radians, east positive.
    pub fn radians(self) -> f64 {
        self.0 * RADIANS
    }
}

impl TryFrom<f64> for Longitude {
    type Error = OutOfRange;
    fn try_from(degrees: f64) -> Result<Self, OutOfRange> {
        Self::from_degrees(degrees)
    }
}

impl From<Longitude> for f64 {
    fn from(longitude: Longitude) -> Self {
        longitude.0
    }
}

/// `degrees` in [0, 360); not a number becomes 0.
fn wrap_360(degrees: f64) -> f64 {
    let wrapped = degrees.rem_euclid(360.0);
    // A tiny negative number rounds up to 360 itself.
    if wrapped < 360.0 { wrapped } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn north_comes_from_both_sides() {
        assert_eq!(Bearing::from_degrees(360.0).degrees(), 0.0);
        assert_eq!(Bearing::from_degrees(-1e-18).degrees(), 0.0);
        assert_eq!(Bearing::from_degrees(f64::NAN).degrees(), 0.0);
        assert_eq!(Bearing::from_degrees(350.0).turn_to(Bearing::from_degrees(10.0)).degrees(), 20.0);
    }

    #[test]
    fn east_is_ninety() {
        let east = Bearing::from_degrees(90.0).level();
        assert!((east.x - 1.0).abs() < 1e-15 && east.y.abs() < 1e-15);
    }

    #[test]
    fn bounds_are_named() {
        let message = Latitude::from_degrees(91.0).unwrap_err().to_string();
        assert_eq!(message, "latitude 91 ° is outside -90 to 90 °");
        assert!(Height::from_degrees(f64::NAN).is_err());
    }

    proptest! {
        #[test]
        fn turning_there_and_back_changes_nothing(from in 0.0..360.0f64, to in 0.0..360.0f64) {
            let (a, b) = (Bearing::from_degrees(from), Bearing::from_degrees(to));
            let back = a.turned(a.turn_to(b));
            prop_assert!(back.turn_to(b).degrees().abs() < 1e-9);
        }

        #[test]
        fn signed_and_positive_are_the_same_angle(degrees in -1e4..1e4f64) {
            let angle = Degrees::from_degrees(degrees);
            let apart = (angle.signed().degrees() - angle.positive().degrees()).rem_euclid(360.0);
            prop_assert!(!(1e-8..=360.0 - 1e-8).contains(&apart));
        }
    }
}
