//! The compass and the field it follows: magnetic bearings and flux densities.
//!
//! A magnetic bearing is a type of its own; it becomes a true [`Bearing`] only with a declination.

use super::angle::{Bearing, Degrees};

/// Direction on the ground, clockwise from **magnetic** north, as a compass shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MagneticBearing(Bearing);

impl MagneticBearing {
    /// From the degrees of a compass; any finite number is brought into [0, 360).
    pub fn from_degrees(degrees: f64) -> Self {
        Self(Bearing::from_degrees(degrees))
    }

    /// What a compass shows in the direction `bearing`.
    pub fn of(bearing: Bearing, declination: Degrees) -> Self {
        Self(bearing.turned(Degrees::from_degrees(-declination.degrees())))
    }

    /// In degrees, [0, 360).
    pub const fn degrees(self) -> f64 {
        self.0.degrees()
    }

    /// From true north: magnetic bearing plus declination, which is positive where magnetic north lies **east** of
    /// true north.
    ///
    /// Source: Bowditch, *The American Practical Navigator* (convention).
    ///
    /// ```
    /// use slantlight::units::{Degrees, MagneticBearing};
    /// let compass = MagneticBearing::from_degrees(93.0);
    /// assert_eq!(compass.to_true(Degrees::from_degrees(4.0)).degrees(), 97.0);
    /// ```
    pub fn to_true(self, declination: Degrees) -> Bearing {
        self.0.turned(declination)
    }
}

/// A magnetic flux density, nanoteslas.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Nanoteslas(f64);

impl Nanoteslas {
    /// From nanoteslas.
    pub const fn from_nanoteslas(nanoteslas: f64) -> Self {
        Self(nanoteslas)
    }

    /// In nanoteslas.
    pub const fn nanoteslas(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn east_declination_adds() {
        // Handbook T-A10.
        let to_true = |compass, east| {
            MagneticBearing::from_degrees(compass).to_true(Degrees::from_degrees(east)).degrees()
        };
        assert_eq!(to_true(93.0, 4.0), 97.0);
        assert_eq!(to_true(2.0, -5.0), 357.0);
    }

    proptest! {
        #[test]
        fn there_and_back(true_degrees in 0.0..360.0f64, declination in -180.0..180.0f64) {
            let (bearing, declination) = (Bearing::from_degrees(true_degrees), Degrees::from_degrees(declination));
            let back = MagneticBearing::of(bearing, declination).to_true(declination);
            prop_assert!(bearing.turn_to(back).degrees().abs() < 1e-9);
        }
    }
}
