//! Light on level ground from high noon to deep twilight, one curve each.
//!
//! Three published curves for a clear sky, sun and sky together; they agree within a few tenths of a stop. The app
//! follows [`brown`], which has no steps. Below −8° moon and town may outshine them all: meter it.

use super::twilight_table::{BROWN, SEIDELMANN};
use crate::maths;
use crate::units::{Height, Lux};

/// Heights for which the curves were fitted, degrees.
const FITTED: (f64, f64) = (-18.0, 90.0);

/// Circular 171: the sun outside the air, and stars and airglow without sun or moon.
const SUN: Lux = Lux::from_lux(133_775.0);
const NIGHT_SKY: Lux = Lux::from_lux(0.0005);

/// Brown's charts, valid from −20° to 90°; held at their ends.
///
/// # Source
/// D. R. E. Brown, *Natural Illumination Charts* (US Navy, 1952), in the Chebyshev fit of the US Naval Observatory:
/// `log₁₀ E = Σ cₖ Tₖ(x)`, `x = (h − 35°)/55°`.
///
/// ```
/// # use slantlight::{light::daylight::twilight::brown, units::Height};
/// assert!((brown(Height::clamped(-6.0)).lux() - 3.47).abs() < 0.03);
/// ```
pub fn brown(sun: Height) -> Lux {
    let x = ((sun.degrees() - 35.0) / 55.0).max(-1.0);
    // Clenshaw's recurrence.
    let (mut one, mut two) = (0.0, 0.0);
    for coefficient in BROWN.iter().skip(1).rev() {
        (one, two) = (2.0 * x * one - two + coefficient, one);
    }
    Lux::from_lux(maths::pow(10.0, x * one - two + BROWN[0]))
}

/// The curve usually credited to P. K. Seidelmann (ed.), *Explanatory Supplement to the Astronomical Almanac* (1992), as
/// printed by D. Vallado, *Fundamentals of Astrodynamics and Applications* (2007), equation 5-9: six cubics, which
/// meet with steps of up to 1 %. Valid from −18° to 90°; held at its ends.
pub fn seidelmann(sun: Height) -> Lux {
    let height = sun.degrees().clamp(FITTED.0, FITTED.1);
    let band =
        SEIDELMANN.iter().find(|(from, _)| height >= *from).unwrap_or(&SEIDELMANN[SEIDELMANN.len() - 1]);
    Lux::from_lux(cubic_of_ninetieths(band.1, height))
}

/// `10^(Σ cᵢ (h/90°)ⁱ)`, the form of the *Supplement*'s curves for sun and moon.
pub(super) fn cubic_of_ninetieths(c: [f64; 4], height: f64) -> f64 {
    let x = height / 90.0;
    maths::pow(10.0, c[0] + x * (c[1] + x * (c[2] + x * c[3])))
}

/// Sun, sky and night sky in closed form; `sun` is the apparent height. Good to about −10°, too dark below.
///
/// # Source
/// P. M. Janiczek, J. A. DeYoung, *Computer Programs for Sun and Moon Illuminance*, US Naval Observatory Circular 171
/// (1987).
pub fn circular_171(sun: Height) -> Lux {
    SUN * height_factor(sun) + NIGHT_SKY
}

/// The factor of Circular 171 by apparent height, for sun and moon alike: 0.925 in the zenith.
pub(super) fn height_factor(light: Height) -> f64 {
    // Radius of the Earth in thicknesses of the air, as the source has it.
    const AIR: f64 = 753.661_56;
    let (sin, cos) = maths::sin_cos(light.radians());
    let slant = maths::cos(maths::asin(AIR * cos / (AIR + 1.0)));
    let mass = AIR * (slant - sin) + slant;
    let beam = sin * maths::exp(-0.21 * mass);
    let sky = 0.0289 * maths::exp(-0.042 * mass) * (1.0 + (light.degrees() + 90.0) * sin / 57.295_779_51);
    beam + sky
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twilight_of_the_handbook() {
        // T-C5: height, Brown, Circular 171 without its night sky (0 where it is not printed), lux; 1 %.
        let table = [
            (0.0, 757.0, 757.0),
            (-0.83, 452.0, 438.0),
            (-2.0, 192.0, 169.0),
            (-3.0, 81.0, 66.0),
            (-4.0, 30.7, 24.4),
            (-5.0, 10.7, 8.65),
            (-6.0, 3.47, 2.99),
            (-8.0, 0.356, 0.345),
            (-10.0, 0.0449, 0.0389),
            (-12.0, 0.008_43, 0.0044),
            (-15.0, 0.001_49, 0.0),
            (-18.0, 0.000_66, 0.0),
        ];
        for (height, by_brown, by_circular) in table {
            let sun = Height::clamped(height);
            let got = brown(sun).lux();
            assert!((got / by_brown - 1.0).abs() < 0.01, "{height}: {got} beside {by_brown}");
            if by_circular > 0.0 {
                let got = (circular_171(sun) - NIGHT_SKY).lux();
                assert!((got / by_circular - 1.0).abs() < 0.01, "{height}: {got} beside {by_circular}");
            }
        }
    }

    #[test]
    fn the_day_by_circular_171() {
        // T-C4, last column, kilolux.
        for (height, kilolux) in
            [(1.0, 1.24), (5.0, 4.09), (10.0, 11.1), (30.0, 51.3), (60.0, 102.9), (90.0, 123.8)]
        {
            let got = circular_171(Height::clamped(height)).kilolux();
            assert!((got / kilolux - 1.0).abs() < 0.01, "{height}: {got}");
        }
    }

    #[test]
    fn definitions_of_twilight_agree() {
        // American Meteorological Society, Glossary: 585–410 lx at rise and set, 3.5–2 lx at −6°, 0.008 lx at −12°,
        // 6e-4 lx at −18°.
        let at = |height| brown(Height::clamped(height)).lux();
        assert!((410.0..=585.0).contains(&at(-0.83)));
        assert!((2.0..=3.5).contains(&at(-6.0)));
        assert!((at(-12.0) / 0.008 - 1.0).abs() < 0.1 && (at(-18.0) / 6e-4 - 1.0).abs() < 0.15);
    }

    #[test]
    fn the_curves_are_of_one_family() {
        for height in -10..=90 {
            let sun = Height::clamped(f64::from(height));
            let stops = brown(sun).stops_over(seidelmann(sun)).stops();
            assert!(stops.abs() < 0.35, "{height}: {stops}");
        }
    }
}
