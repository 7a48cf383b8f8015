//! Light of the moon on level ground under a clear sky.
//!
//! The full moon outshines its share of the disc: two days off full it has lost more than a stop.

use super::twilight::{cubic_of_ninetieths, height_factor};
use super::twilight_table::SEIDELMANN_MOON;
use crate::maths;
use crate::units::{Degrees, Height, Lux, Metres, Share};

/// Equatorial radius of the Earth (WGS 84), metres.
const EARTH_RADIUS: f64 = 6_378_137.0;

/// Horizontal parallax at the moon's mean distance, degrees (convention of the source).
const MEAN_PARALLAX: f64 = 0.951;

/// Moonlight by height, phase angle (0° full) and distance from the Earth's centre; none below −0.8°.
///
/// # Source
/// Usually credited to P. K. Seidelmann (ed.), *Explanatory Supplement to the Astronomical Almanac* (1992), as printed
/// by D. Vallado, *Fundamentals of Astrodynamics and Applications* (2007), equation 5-9.
///
/// ```
/// # use slantlight::{light::daylight::moonlight::seidelmann, units::{Degrees, Height, Metres}};
/// let mean = Metres::from_metres(384_400_000.0);
/// let full = seidelmann(Height::clamped(60.0), Degrees::default(), mean);
/// assert!((full.lux() - 0.216).abs() < 0.001);
/// ```
pub fn seidelmann(moon: Height, phase: Degrees, distance: Metres) -> Lux {
    let height = moon.degrees();
    let Some((_, curve)) = SEIDELMANN_MOON.iter().find(|(from, _)| height >= *from) else {
        return Lux::default();
    };
    let angle = phase.degrees();
    let fades = maths::pow(10.0, -8.68e-3 * angle - 2.2e-9 * angle * angle * angle * angle);
    let parallax = Degrees::from_radians(maths::asin((EARTH_RADIUS / distance.metres()).min(1.0)));
    let nearness = parallax.degrees() / MEAN_PARALLAX;
    Lux::from_lux(cubic_of_ninetieths(*curve, height) * fades * nearness * nearness)
}

/// Moonlight by apparent height and elongation from the sun (180° full).
///
/// # Source
/// P. M. Janiczek, J. A. DeYoung, US Naval Observatory Circular 171 (1987).
pub fn circular_171(moon: Height, elongation: Degrees) -> Lux {
    if moon.degrees() < -0.8 {
        return Lux::default();
    }
    let near_full = 1.0 - 0.005 * maths::cos(elongation.radians()) - 0.03 * moon.sin();
    Lux::from_lux(0.418 * relative(elongation).fraction() * height_factor(moon) / near_full)
}

/// Light of the moon at an elongation relative to that of the full moon (Circular 171).
pub fn relative(elongation: Degrees) -> Share {
    let angle = elongation.signed().abs().radians();
    let (sin, cos) = maths::sin_cos(angle);
    let glare = maths::exp(-3.343 / maths::pow(maths::tan(angle / 2.0), 0.632));
    Share::clamped(0.892 * glare + 0.0344 * (sin - angle * cos))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn light_of_the_phases() {
        // Handbook C4.
        let table = [
            (180.0, 1.0),
            (170.0, 0.542),
            (160.0, 0.394),
            (150.0, 0.304),
            (135.0, 0.213),
            (120.0, 0.150),
            (90.0, 0.066),
            (60.0, 0.020),
        ];
        for (elongation, light) in table {
            let got = relative(Degrees::from_degrees(elongation)).fraction();
            assert!((got - light).abs() < 0.0006, "{elongation}: {got}");
        }
    }

    #[test]
    fn full_moons() {
        // Handbook C4, lux.
        for (height, lux) in
            [(10.0, 0.035), (20.0, 0.096), (30.0, 0.16), (45.0, 0.25), (60.0, 0.33), (90.0, 0.40)]
        {
            let got = circular_171(Height::clamped(height), Degrees::from_degrees(180.0)).lux();
            assert!((got / lux - 1.0).abs() < 0.03, "{height}: {got}");
        }
    }

    #[test]
    fn no_moon_no_light() {
        assert_eq!(circular_171(Height::clamped(-3.0), Degrees::from_degrees(180.0)), Lux::default());
        let mean = Metres::from_metres(384_400_000.0);
        assert_eq!(seidelmann(Height::clamped(-3.0), Degrees::default(), mean), Lux::default());
        assert_eq!(relative(Degrees::default()).fraction(), 0.0);
    }
}
