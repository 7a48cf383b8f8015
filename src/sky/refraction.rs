//! Refraction: how far the air lifts the sun.
//!
//! Shadows, beams and lenses follow the *apparent* sun; rise, set and twilight are defined by the airless one.
//! Low down the air itself differs from day to day by several minutes of arc, so nothing here is exact at the horizon.

use crate::maths;
use crate::units::{Degrees, Height, Vector, World};

/// Airless height below which nothing is lifted: the upper limb has left the level horizon (34′ of refraction and
/// 16′ of radius), and a sun that is not seen is not bent. Convention of NREL's algorithm (Reda and Andreas 2004).
pub(super) const SEEN_FROM: f64 = -0.833_37;

/// Airless height down to which searches may continue the formula: where it still grows. Our choice.
const EXTENDED_TO: f64 = -1.5;

/// Pressure and temperature to which both formulas are fitted, hPa and °C.
const FITTED_TO: (f64, f64) = (1010.0, 10.0);

/// Kelvins at 0 °C, as both formulas round it.
const ICE: f64 = 273.0;

/// Air at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    pressure_hpa: f64,
    temperature_c: f64,
}

impl Air {
    /// 1010 hPa and 10 °C, to which the formulas are fitted.
    pub const STANDARD: Self = Self { pressure_hpa: FITTED_TO.0, temperature_c: FITTED_TO.1 };

    /// From station pressure and temperature.
    pub const fn from_hpa_and_celsius(pressure_hpa: f64, temperature_c: f64) -> Self {
        Self { pressure_hpa, temperature_c }
    }

    /// Pressure at the station, hPa.
    pub const fn hpa(self) -> f64 {
        self.pressure_hpa
    }

    /// Temperature, °C.
    pub const fn celsius(self) -> f64 {
        self.temperature_c
    }

    /// Its refraction relative to the air of the fit.
    fn density(self) -> f64 {
        self.pressure_hpa / FITTED_TO.0 * (ICE + FITTED_TO.1) / (ICE + self.temperature_c)
    }
}

/// Refraction for an *airless* height: Saemundsson 1986, as in Meeus, *Astronomical Algorithms* (1998), chapter 16.
///
/// Good to about 0.1′ above the horizon; none below −0.83337°.
///
/// ```
/// use slantlight::{sky::refraction::{Air, saemundsson}, units::Height};
/// let lift = saemundsson(Height::clamped(10.0), Air::STANDARD);
/// assert!((lift.degrees() * 60.0 - 5.41).abs() < 0.01);
/// ```
pub fn saemundsson(airless: Height, air: Air) -> Degrees {
    let height = airless.degrees();
    if height < SEEN_FROM {
        return Degrees::from_degrees(0.0);
    }
    let angle = Degrees::from_degrees(height + 10.3 / (height + 5.11));
    minutes(1.02 / maths::tan(angle.radians()), air)
}

/// Refraction for an *apparent* height: Bennett 1982, as in Meeus, chapter 16. Good to 0.07′.
///
/// ```
/// use slantlight::{sky::refraction::{Air, bennett}, units::Height};
/// let lift = bennett(Height::clamped(0.0), Air::STANDARD);
/// assert!((lift.degrees() * 60.0 - 34.48).abs() < 0.01);
/// ```
pub fn bennett(apparent: Height, air: Air) -> Degrees {
    let height = apparent.degrees();
    let angle = Degrees::from_degrees(height + 7.31 / (height + 4.4));
    minutes(1.0 / maths::tan(angle.radians()), air)
}

/// The height that is seen, for an airless one.
pub fn apparent(airless: Height, air: Air) -> Height {
    Height::clamped(airless.degrees() + saemundsson(airless, air).degrees())
}

/// The lowest airless height that is seen at `apparent` or above: [`apparent`] turned round, to 1e-12°.
///
/// Between −0.83337° and what the air makes of it nothing is ever seen; limits in that gap lead to −0.83337°.
pub fn airless(apparent: Height, air: Air) -> Height {
    let wanted = apparent.degrees();
    if wanted < SEEN_FROM {
        return apparent;
    }
    // The lift changes by less than a sixth of a change in height, so each round gains a digit.
    let mut height = wanted;
    for _ in 0..20 {
        height = (wanted - saemundsson(Height::clamped(height.max(SEEN_FROM)), air).degrees()).min(90.0);
    }
    Height::clamped(height.max(SEEN_FROM))
}

/// A unit direction as it is seen.
pub fn lifted(airless: Vector<World>, air: Air) -> Vector<World> {
    let lift = saemundsson(airless.height(), air).radians();
    let flat = maths::hypot(airless.x, airless.y);
    if lift == 0.0 || flat == 0.0 {
        return airless;
    }
    let (sin, cos) = maths::sin_cos(lift);
    let along = cos - airless.z / flat * sin;
    Vector::new(airless.x * along, airless.y * along, airless.z * cos + flat * sin)
}

/// A direction as it is seen through standard air, of the same length, continued smoothly a little below the last
/// glimpse so that searches need not step over an edge.
pub(super) fn extended(airless: Vector<World>) -> Vector<World> {
    let length = airless.norm();
    let up = airless.z / length;
    let flat = (1.0 - up * up).max(1e-18).sqrt();
    let (sin, cos) = maths::sin_cos(extended_lift(up, flat));
    airless * (cos - up / flat * sin) + Vector::UP * (sin / flat * length)
}

/// Saemundsson's refraction in standard air for the sine and cosine of an airless height, radians, continued.
pub(super) fn extended_lift(sin: f64, cos: f64) -> f64 {
    let height = Degrees::from_radians(maths::atan2(sin, cos)).degrees().max(EXTENDED_TO);
    let angle = Degrees::from_degrees(height + 10.3 / (height + 5.11));
    minutes(1.02 / maths::tan(angle.radians()), Air::STANDARD).radians()
}

/// Minutes of arc in the air of the fit, in other air; the formulas' tiny negative value at the zenith becomes none.
fn minutes(minutes: f64, air: Air) -> Degrees {
    Degrees::from_degrees((minutes * air.density() / 60.0).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Bearing;
    use proptest::prelude::*;

    #[test]
    fn handbook_t_a5() {
        let table = [
            // Printed to a tenth: 34.44 before rounding.
            (-0.575, 34.44, None),
            (0.0, 28.98, Some(34.48)),
            (1.0, 21.74, Some(24.33)),
            (2.0, 16.93, Some(18.22)),
            (5.0, 9.67, Some(9.88)),
            (10.0, 5.41, Some(5.39)),
            (20.0, 2.74, Some(2.70)),
            (45.0, 1.01, Some(1.00)),
        ];
        for (height, by_saemundsson, by_bennett) in table {
            let height = Height::clamped(height);
            let minutes = saemundsson(height, Air::STANDARD).degrees() * 60.0;
            assert!((minutes - by_saemundsson).abs() < 0.02, "{height:?}: {minutes}");
            if let Some(expected) = by_bennett {
                let minutes = bennett(height, Air::STANDARD).degrees() * 60.0;
                assert!((minutes - expected).abs() < 0.02, "{height:?}: {minutes}");
            }
        }
    }

    #[test]
    fn limits_that_are_never_seen_lead_to_the_last_glimpse() {
        assert_eq!(airless(Height::clamped(-0.5), Air::STANDARD).degrees(), SEEN_FROM);
        assert_eq!(airless(Height::clamped(-4.0), Air::STANDARD).degrees(), -4.0);
        assert_eq!(airless(Height::clamped(90.0), Air::STANDARD).degrees(), 90.0);
    }

    proptest! {
        #[test]
        fn seen_heights_there_and_back(height in -0.833..89.9f64, hpa in 500.0..1050.0f64, celsius in -40.0..45.0f64) {
            let air = Air::from_hpa_and_celsius(hpa, celsius);
            let back = airless(apparent(Height::clamped(height), air), air);
            prop_assert!((back.degrees() - height).abs() < 1e-9);
        }

        #[test]
        fn lifting_keeps_bearing_and_length(bearing in 0.0..360.0f64, height in -20.0..90.0f64) {
            let from = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let to = lifted(from, Air::STANDARD);
            prop_assert!((to.norm() - 1.0).abs() < 1e-12);
            let seen = apparent(Height::clamped(height), Air::STANDARD);
            prop_assert!((to.height().degrees() - seen.degrees()).abs() < 1e-9);
            if height < 89.0 {
                prop_assert!(to.bearing().turn_to(Bearing::from_degrees(bearing)).degrees().abs() < 1e-9);
            }
        }
    }
}
