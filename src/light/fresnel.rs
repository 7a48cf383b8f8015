//! Mirror images in clear surfaces: how much light is thrown back by water and glass.
//!
//! Fresnel's equations for light that is not polarised (any textbook of optics; exact for smooth, clear surfaces).

use crate::maths;
use crate::units::{Degrees, Share};

/// How much slower light is in a clear medium than in air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RefractiveIndex(f64);

impl RefractiveIndex {
    /// Water in visible light (fact, 20 °C).
    pub const WATER: Self = Self(1.333);
    /// Window glass.
    pub const GLASS: Self = Self(1.526);
}

/// What a surface throws back of the two polarisations: across the plane of incidence and in it.
pub fn polarised(medium: RefractiveIndex, incidence: Degrees) -> (Share, Share) {
    let (sin, cos) = maths::sin_cos(incidence.radians().clamp(0.0, core::f64::consts::FRAC_PI_2));
    let n = medium.0;
    let inside = (1.0 - (sin / n) * (sin / n)).sqrt();
    let square = |share: f64| Share::clamped(share * share);
    (square((cos - n * inside) / (cos + n * inside)), square((inside - n * cos) / (inside + n * cos)))
}

/// What a surface throws back of plain light: 2 % of water looked at straight, all of it at a grazing angle.
///
/// ```
/// # use slantlight::{light::fresnel::{RefractiveIndex, reflectance}, units::Degrees};
/// let at = |degrees| reflectance(RefractiveIndex::WATER, Degrees::from_degrees(degrees)).fraction();
/// assert!((at(0.0) - 0.0204).abs() < 1e-4 && at(80.0) > 0.34 && at(90.0) > 0.999);
/// ```
pub fn reflectance(medium: RefractiveIndex, incidence: Degrees) -> Share {
    let (across, along) = polarised(medium, incidence);
    Share::clamped((across.fraction() + along.fraction()) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn at_brewsters_angle_one_polarisation_is_gone() {
        let brewster = Degrees::from_radians(maths::atan(1.333));
        assert!(polarised(RefractiveIndex::WATER, brewster).1.fraction() < 1e-12);
    }

    proptest! {
        #[test]
        fn flatter_is_brighter(degrees in 0.0..89.0f64) {
            let at = |degrees| polarised(RefractiveIndex::GLASS, Degrees::from_degrees(degrees)).0.fraction();
            prop_assert!(at(degrees + 1.0) > at(degrees));
        }
    }
}
