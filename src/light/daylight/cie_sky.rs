//! How bright each part of the sky is, relative to its zenith: the standard skies.
//!
//! CIE S 011/E:2003 (ISO 15469:2004), *Spatial distribution of daylight – CIE standard general sky*:
//! `L/Lz = f(χ) φ(Z) / (f(Zs) φ(0))`. Fifteen types; those kept here are named by their number. Relative only: the amount of
//! light comes from a model of [`super`].

use super::{Sky, hemisphere};
use crate::maths;
use crate::units::{Vector, World};

const HALF_TURN: f64 = core::f64::consts::PI;

/// One of the standard's types, by its five numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CieSky {
    /// Gradation from zenith to horizon.
    gradation: (f64, f64),
    /// The bright ring about the sun.
    ring: (f64, f64, f64),
}

impl CieSky {
    /// Type 1: overcast, three times as bright in the zenith as at the horizon.
    pub const OVERCAST: Self = Self { gradation: (4.0, -0.70), ring: (0.0, -1.0, 0.0) };
    /// Type 5: uniform.
    pub const UNIFORM: Self = Self { gradation: (0.0, -1.0), ring: (0.0, -1.0, 0.0) };
    /// Type 7: partly cloudy, bright about the sun.
    pub const PARTLY_CLOUDY: Self = Self { gradation: (0.0, -1.0), ring: (5.0, -2.5, 0.30) };
    /// Type 12: clear, clean air.
    pub const CLEAR: Self = Self { gradation: (-1.0, -0.32), ring: (10.0, -3.0, 0.45) };
    /// Type 14: cloudless, hazy.
    pub const HAZY: Self = Self { gradation: (-1.0, -0.15), ring: (16.0, -3.0, 0.30) };

    /// The type that stands for one of the app's skies (our choice).
    pub const fn of(sky: Sky) -> Self {
        match sky {
            Sky::Clear => Self::CLEAR,
            Sky::Hazy => Self::HAZY,
            Sky::Broken => Self::PARTLY_CLOUDY,
            Sky::Overcast => Self::OVERCAST,
        }
    }

    /// Luminance towards `point` relative to the zenith's, with the sun at `sun`; both are unit vectors. Below the
    /// horizon there is no sky. A sun below the horizon counts as on it.
    pub fn relative(self, point: Vector<World>, sun: Vector<World>) -> f64 {
        self.under(sun).relative(point)
    }

    /// The sky under one sun, to be asked for many points.
    pub fn under(self, sun: Vector<World>) -> UnderSun {
        let square_on = self.square_on();
        let zenith = self.indicatrix(sun.z.clamp(0.0, 1.0), square_on) * self.grades(1.0);
        UnderSun { sky: self, sun, square_on, zenith }
    }

    /// Light on level ground of a sky whose zenith has a luminance of one: its integral, by the cosine to the upright.
    ///
    /// ```
    /// # use slantlight::{light::daylight::cie_sky::CieSky, units::Vector};
    /// let even = CieSky::UNIFORM.on_level_ground(Vector::UP);
    /// assert!((even - core::f64::consts::PI).abs() < 1e-9);
    /// ```
    pub fn on_level_ground(self, sun: Vector<World>) -> f64 {
        let under = self.under(sun);
        hemisphere::sum(|point| under.relative(point) * point.z)
    }

    /// φ of the standard, by the sine of the height.
    pub(super) fn grades(self, up: f64) -> f64 {
        let (a, b) = self.gradation;
        // At the horizon the exponential is nothing.
        if up > 0.0 { 1.0 + a * maths::exp(b / up) } else { 1.0 }
    }

    /// The exponential of the bright ring a quarter turn from the sun.
    pub(super) fn square_on(self) -> f64 {
        maths::exp(self.ring.1 * HALF_TURN / 2.0)
    }

    /// f of the standard, by the cosine of the angle from the sun; `square_on` is its exponential a quarter turn away.
    pub(super) fn indicatrix(self, cos: f64, square_on: f64) -> f64 {
        let (c, d, e) = self.ring;
        1.0 + c * (maths::exp(d * maths::acos(cos)) - square_on) + e * cos * cos
    }
}

/// A sky and its sun, with what is the same for every point of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnderSun {
    sky: CieSky,
    sun: Vector<World>,
    square_on: f64,
    zenith: f64,
}

impl UnderSun {
    /// As [`CieSky::relative`].
    pub fn relative(&self, point: Vector<World>) -> f64 {
        if point.z < 0.0 {
            return 0.0;
        }
        let cos = point.dot(self.sun).clamp(-1.0, 1.0);
        self.sky.indicatrix(cos, self.square_on) * self.sky.grades(point.z) / self.zenith
    }
}

#[cfg(test)]
mod tests {
    use super::super::hemisphere;
    use super::*;
    use crate::units::{Bearing, Height};

    fn to(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn one_point_of_the_sky() {
        // T-C6: sun 30° and point 45° from the zenith, opposite bearings.
        let (sun, point) = (to(0.0, 60.0), to(180.0, 45.0));
        assert!((CieSky::OVERCAST.relative(point, sun) - 0.832_58).abs() < 5e-6);
        assert!((CieSky::CLEAR.relative(point, sun) - 0.454_45).abs() < 5e-6);
    }

    #[test]
    fn light_of_whole_skies() {
        // T-C7: Eh/Lz of type 1 2.450, of a uniform sky π, of type 12 under a sun 50° from the zenith 5.41.
        let level = |sky: CieSky, sun| hemisphere::sum(|point| sky.relative(point, sun) * point.z);
        let sun = to(0.0, 40.0);
        assert!((level(CieSky::OVERCAST, sun) - 2.450).abs() < 0.003);
        assert!((level(CieSky::UNIFORM, sun) - HALF_TURN).abs() < 0.003);
        assert!((level(CieSky::CLEAR, sun) - 5.41).abs() < 0.01);
    }

    #[test]
    fn traditional_overcast_on_a_wall() {
        // Handbook C5: `L/Lz = (1 + 2 sin γ)/3` gives 7π/9 on the level and 0.396 of that on a wall.
        let sky = |point: Vector<World>| if point.z < 0.0 { 0.0 } else { (1.0 + 2.0 * point.z) / 3.0 };
        let level = hemisphere::sum(|point| sky(point) * point.z);
        let wall = hemisphere::sum(|point| sky(point) * point.x.max(0.0));
        // The grid is good to 0.4 %.
        assert!((level / (7.0 * HALF_TURN / 9.0) - 1.0).abs() < 0.004, "{level}");
        let exact = 3.0 / 14.0 + 4.0 / (7.0 * HALF_TURN);
        assert!((exact - 0.396).abs() < 0.0005);
        assert!((wall / level / exact - 1.0).abs() < 0.004, "{}", wall / level);
    }
}
