//! Haze: how bright a shaft of light looks from where the lens stands, and what haze takes away.
//!
//! Brightness by single scattering; worth one and a half stops, so the app says more or less, not how much. Nothing here
//! says that haze is safe to breathe.

use crate::maths;
use crate::units::{Degrees, Luminance, Lux, Metres, Stops};

/// Whole sphere, steradians.
const SPHERE: f64 = 4.0 * core::f64::consts::PI;

/// How far droplets throw light onward: 0 evenly, towards 1 all of it ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asymmetry(f64);

impl Asymmetry {
    /// Fine smoke (Mie theory, as remembered: 0.5 to 0.7).
    pub const SMOKE: Self = Self(0.6);
    /// Haze for the stage, droplets of ½ to 2 µm (0.7 to 0.85).
    pub const HAZE: Self = Self(0.8);
    /// Mist and cloud (0.85 to 0.9).
    pub const MIST: Self = Self(0.88);

    /// From g; brought into −0.99 to 0.99.
    pub const fn from_g(g: f64) -> Self {
        Self(if g > 0.99 {
            0.99
        } else if g > -0.99 {
            g
        } else {
            -0.99
        })
    }
}

/// What a metre of haze scatters out of a beam, or takes from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extinction(f64);

impl Extinction {
    /// From a share lost in a very short metre, 1/m.
    pub const fn from_per_metre(per_metre: f64) -> Self {
        Self(per_metre)
    }

    /// From how far one sees (meteorological optical range, where 5 % of contrast is left): `2.996/σ`.
    pub fn from_optical_range(range: Metres) -> Self {
        Self(-maths::log(0.05) / range.metres())
    }

    /// How far one sees.
    pub fn optical_range(self) -> Metres {
        Metres::from_metres(-maths::log(0.05) / self.0)
    }

    /// What a way through it costs: `1.4427 σ d`, negative.
    pub fn loss(self, way: Metres) -> Stops {
        Stops::from_stops(-core::f64::consts::LOG2_E * self.0 * way.metres())
    }
}

/// Share of scattered light thrown into a direction, per steradian, by the angle between the way the light travels and the
/// way to the lens: 0° for light into the lens, 180° for light from behind it.
///
/// # Source
/// L. G. Henyey, J. L. Greenstein, Astrophys. J. 93 (1941) 70: `(1 − g²)/(4π (1 + g² − 2g cos θ)^1.5)`. Least trustworthy
/// within 30° of the light, where real droplets are sharper.
///
/// ```
/// # use slantlight::{light::haze::{Asymmetry, scattered}, units::Degrees};
/// assert!((scattered(Asymmetry::HAZE, Degrees::from_degrees(30.0)) - 0.2233).abs() < 5e-5);
/// ```
pub fn scattered(haze: Asymmetry, angle: Degrees) -> f64 {
    let g = haze.0;
    let spread = 1.0 + g * g - 2.0 * g * maths::cos(angle.radians());
    (1.0 - g * g) / (SPHERE * maths::pow(spread, 1.5))
}

/// How much brighter a shaft looks than from the side, by the phase angle of the light at the subject (0° frontal, 180° into
/// the lens, as in [`super::phase`]).
pub fn gain_over_side(haze: Asymmetry, phase: Degrees) -> Stops {
    let angle = Degrees::from_degrees(180.0 - phase.degrees());
    let side = scattered(haze, Degrees::from_degrees(90.0));
    Stops::from_factor(scattered(haze, angle) / side)
}

/// A shaft of light in haze.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shaft {
    /// Light across the beam.
    pub light: Lux,
    /// Kind of haze.
    pub haze: Asymmetry,
    /// How thick it is.
    pub extinction: Extinction,
    /// How far the line of sight runs in the beam.
    pub depth: Metres,
    /// How far the beam is from the lens.
    pub distance: Metres,
}

impl Shaft {
    /// Luminance of the shaft towards the lens: `E σ p(θ) s e^(−σd)`, θ from the phase angle.
    pub fn luminance(&self, phase: Degrees) -> Luminance {
        let angle = Degrees::from_degrees(180.0 - phase.degrees());
        let along = self.extinction.0 * self.depth.metres() * scattered(self.haze, angle);
        let left = self.extinction.loss(self.distance).factor();
        Luminance::from_candelas_per_square_metre(self.light.lux() * along * left)
    }
}

#[cfg(test)]
mod tests {
    use super::super::daylight::hemisphere;
    use super::*;
    use crate::units::Share;

    #[test]
    fn the_table_of_the_handbook() {
        // T-E1: g, then angle, times brighter than from the side, stops.
        let table = [
            (
                0.7,
                [
                    (10.0, 49.0, 5.6),
                    (20.0, 25.0, 4.6),
                    (30.0, 12.4, 3.6),
                    (45.0, 5.1, 2.4),
                    (60.0, 2.6, 1.4),
                    (135.0, 0.47, -1.1),
                    (180.0, 0.37, -1.4),
                ],
            ),
            (
                0.8,
                [
                    (10.0, 129.0, 7.0),
                    (20.0, 42.0, 5.4),
                    (30.0, 16.4, 4.0),
                    (45.0, 5.8, 2.5),
                    (60.0, 2.7, 1.4),
                    (135.0, 0.46, -1.1),
                    (180.0, 0.36, -1.5),
                ],
            ),
            (
                0.9,
                [
                    (10.0, 337.0, 8.4),
                    (20.0, 60.0, 5.9),
                    (30.0, 19.0, 4.3),
                    (45.0, 6.2, 2.6),
                    (60.0, 2.8, 1.5),
                    (135.0, 0.45, -1.2),
                    (180.0, 0.36, -1.5),
                ],
            ),
        ];
        for (g, angles) in table {
            let haze = Asymmetry::from_g(g);
            for (angle, times, stops) in angles {
                let got = gain_over_side(haze, Degrees::from_degrees(180.0 - angle));
                assert!((got.factor() / times - 1.0).abs() < 0.025, "{g} {angle}: {}", got.factor());
                assert!((got.stops() - stops).abs() < 0.0501, "{g} {angle}: {}", got.stops());
            }
        }
        for (angle, p) in [(0.0, 3.581), (30.0, 0.2233), (90.0, 0.013_64), (180.0, 0.004_91)] {
            let got = scattered(Asymmetry::HAZE, Degrees::from_degrees(angle));
            assert!((got / p - 1.0).abs() < 0.001, "{angle}: {got}");
        }
    }

    #[test]
    fn no_light_is_lost_in_scattering() {
        let haze = Asymmetry::from_g(0.5);
        let both = hemisphere::sum(|to| {
            scattered(haze, Degrees::from_radians(maths::acos(to.z)))
                + scattered(haze, Degrees::from_radians(maths::acos(-to.z)))
        });
        assert!((both - 1.0).abs() < 0.002, "{both}");
    }

    #[test]
    fn a_shaft_against_a_wall() {
        // T-E2: 50 kilolux, 0.02 /m, 0.6 m deep, g 0.8, right before the lens.
        let shaft = Shaft {
            light: Lux::from_lux(50_000.0),
            haze: Asymmetry::HAZE,
            extinction: Extinction::from_per_metre(0.02),
            depth: Metres::from_metres(0.6),
            distance: Metres::default(),
        };
        let at = |angle: f64| shaft.luminance(Degrees::from_degrees(180.0 - angle));
        for (angle, luminance, half_digit) in [(30.0, 134.0, 0.5), (90.0, 8.2, 0.05), (150.0, 3.3, 0.05)] {
            assert!(
                (at(angle).candelas_per_square_metre() - luminance).abs() < half_digit,
                "{:?}",
                at(angle)
            );
        }
        let wall = Luminance::of_matt(Lux::from_lux(100.0), Share::clamped(0.4));
        assert!((at(30.0).stops_over(wall).stops() - 3.4).abs() < 0.05);
        assert!((at(90.0).stops_over(wall).stops() + 0.6).abs() < 0.05);
    }

    #[test]
    fn extinction_of_the_handbook() {
        // E3: σ, range, loss over 10 m.
        for (per_metre, range, stops) in
            [(0.005, 600.0, 0.07), (0.01, 300.0, 0.14), (0.03, 100.0, 0.43), (0.1, 30.0, 1.4)]
        {
            let haze = Extinction::from_per_metre(per_metre);
            assert!((haze.optical_range().metres() / range - 1.0).abs() < 0.005);
            assert!(
                (haze.loss(Metres::from_metres(10.0)).stops() + stops).abs()
                    < if stops > 1.0 { 0.05 } else { 0.005 }
            );
            let back = Extinction::from_optical_range(haze.optical_range());
            assert!((back.0 / per_metre - 1.0).abs() < 1e-12);
        }
    }
}
