//! Phase: how much of a round subject the lens sees lit.
//!
//! Phase angle is 0° for light from behind the lens and 180° for light into it.

use crate::maths;
use crate::units::{Degrees, Vector, World};

/// Angle at the subject between the camera and the light. Source: handbook B1, `cos φ = −s·v`.
pub fn phase(light: Vector<World>, lens: Vector<World>) -> Degrees {
    light.angle_to(-lens)
}

/// Angle between the light and the lens axis: small when the sun is in or near the frame. Source: handbook B1.
pub fn off_axis(light: Vector<World>, lens: Vector<World>) -> Degrees {
    light.angle_to(lens)
}

/// Share of a sphere's visible disc that is lit, 0 to 1.
///
/// Source: Explanatory Supplement (phases of the planets), `k = (1 + cos φ)/2`; exact for a sphere in parallel light.
///
/// ```
/// # use slantlight::{light::phase::lit_share, units::Degrees};
/// assert!((lit_share(Degrees::from_degrees(120.0)) - 0.25).abs() < 1e-12);
/// ```
pub fn lit_share(phase: Degrees) -> f64 {
    (1.0 + maths::cos(phase.radians())) / 2.0
}

/// Light of a matt sphere towards the lens, relative to frontal light, 0 to 1.
///
/// Source: handbook B3 (Lambert sphere), `P = (sin φ + (π − φ) cos φ)/π`, φ in 0 to π.
pub fn lambert_share(phase: Degrees) -> f64 {
    let (sin, cos) = maths::sin_cos(phase.radians());
    (sin + (core::f64::consts::PI - phase.radians()) * cos) / core::f64::consts::PI
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height};

    fn to(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    /// T-B3: φ, k, P to three decimals.
    #[allow(clippy::approx_constant, reason = "the table as printed")]
    const TABLE: [(f64, f64, f64); 9] = [
        (0.0, 1.0, 1.0),
        (30.0, 0.933, 0.881),
        (45.0, 0.854, 0.755),
        (60.0, 0.75, 0.609),
        (90.0, 0.5, 0.318),
        (120.0, 0.25, 0.109),
        (135.0, 0.146, 0.048),
        (150.0, 0.067, 0.015),
        (180.0, 0.0, 0.0),
    ];

    #[test]
    fn lit_share_and_brightness_as_in_the_handbook() {
        for (phase, k, p) in TABLE {
            let phase = Degrees::from_degrees(phase);
            assert!((lit_share(phase) - k).abs() <= 0.001, "{phase:?}");
            assert!((lambert_share(phase) - p).abs() <= 0.001, "{phase:?}");
        }
    }

    #[test]
    fn phase_as_in_the_handbook() {
        // T-B1, T-B2, printed to a tenth of a degree.
        let (light, lens) = (to(261.0, 40.0), to(20.0, 0.0));
        assert!((phase(light, lens).degrees() - 68.2).abs() < 0.06);
        assert!((off_axis(light, lens).degrees() - 111.8).abs() < 0.06);
        assert!((off_axis(to(254.21, 13.79), to(254.21, 0.0)).degrees() - 13.8).abs() < 0.06);
    }
}
