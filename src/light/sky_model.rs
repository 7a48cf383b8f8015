//! Skies whose light through an opening can be summed: overcast, uniform, and the standard's others.
//!
//! All is relative to the light on level ground outdoors from the whole of the same sky. The overcast sky is the
//! traditional one, `(1 + 2 sin h)/3` (Moon and Spencer 1942), which has a closed form, not the standard's type 1, which
//! is within 0.3 % of it on the level.

use super::daylight::Sky;
use super::daylight::cie_sky::CieSky;
use super::seen_sky::{integral, moments};
use crate::units::{Vector, World};

const PI: f64 = core::f64::consts::PI;

/// A sky, and the light on level ground under it, in units of its zenith's luminance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkyModel {
    pattern: Pattern,
    level: f64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Pattern {
    Uniform,
    Overcast,
    General(CieSky, Vector<World>),
}

impl SkyModel {
    /// Even all over: `π L` on the level.
    pub const UNIFORM: Self = Self { pattern: Pattern::Uniform, level: PI };

    /// Three times as bright in the zenith as at the horizon: `7π/9 L` on the level.
    pub const OVERCAST: Self = Self { pattern: Pattern::Overcast, level: 7.0 * PI / 9.0 };

    /// The standard's clear sky of low turbidity, type 12, with the sun towards a unit vector.
    pub fn clear(sun: Vector<World>) -> Self {
        Self::general(CieSky::CLEAR, sun)
    }

    /// The one for a sky of the app.
    pub fn of(sky: Sky, sun: Vector<World>) -> Self {
        match sky {
            Sky::Overcast => Self::OVERCAST,
            other => Self::general(CieSky::of(other), sun),
        }
    }

    /// Any type of the standard.
    pub fn general(sky: CieSky, sun: Vector<World>) -> Self {
        let pattern = Pattern::General(sky, sun);
        let (east, north) = (Vector::new(1.0, 0.0, 0.0), Vector::new(0.0, 1.0, 0.0));
        let rim = [east, north, -east, -north];
        let quarter = |at: usize| {
            let outline = [rim[at], rim[(at + 1) % 4], Vector::UP];
            Self { pattern, level: 1.0 }.through(&outline, Vector::UP)
        };
        Self { pattern, level: (0..4).map(quarter).sum() }
    }

    /// Light on a plane from a part of the sky, over the light on level ground from all of it. Corners must lie in front
    /// of the plane and not below the horizon.
    pub(super) fn through(&self, outline: &[Vector<World>], normal: Vector<World>) -> f64 {
        match self.pattern {
            Pattern::General(sky, sun) => {
                let light = integral(outline, &|way| sky.relative(way, sun) * normal.dot(way).max(0.0));
                light / self.level
            }
            Pattern::Uniform | Pattern::Overcast => self.in_closed_form(outline, normal).unwrap_or_default(),
        }
    }

    /// The same in any space whose z is up, for skies that have no bearing.
    pub(super) fn in_closed_form<S>(&self, outline: &[Vector<S>], normal: Vector<S>) -> Option<f64> {
        let light = match self.pattern {
            Pattern::Uniform => moments(outline, normal).even,
            Pattern::Overcast => {
                let found = moments(outline, normal);
                (found.even + 2.0 * found.graded) / 3.0
            }
            Pattern::General(..) => return None,
        };
        Some(light / self.level)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height};

    #[test]
    fn light_of_whole_skies() {
        // T-C7: type 1 2.450, type 12 under a sun 50° from the zenith 5.41.
        let sun = Vector::towards(Bearing::from_degrees(33.0), Height::clamped(40.0));
        assert!((SkyModel::general(CieSky::OVERCAST, sun).level - 2.450).abs() < 0.0005);
        assert!((SkyModel::clear(sun).level - 5.41).abs() < 0.005);
        assert!((SkyModel::general(CieSky::UNIFORM, sun).level / PI - 1.0).abs() < 1e-6);
    }

    #[test]
    fn the_skies_of_the_app() {
        let sun = Vector::towards(Bearing::from_degrees(33.0), Height::clamped(40.0));
        assert_eq!(SkyModel::of(Sky::Overcast, sun), SkyModel::OVERCAST);
        assert_eq!(SkyModel::of(Sky::Clear, sun), SkyModel::clear(sun));
    }
}
