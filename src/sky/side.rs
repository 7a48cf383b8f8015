//! One half-space of the sky, asked about the sun at an instant.

use super::refraction;
use super::turn::TURN;
use crate::place::cone::HalfSpace;
use crate::units::{Vector, World};

/// Bounds on the second derivative of [`Side::value`] a day squared: the Earth's turn for a swing of one, what the
/// declination adds, and the lift of refraction, which bends most at the horizon (2.9′ a square degree).
const TURN_BEND: f64 = TURN * TURN * 1.02;
const DECLINATION_BEND: f64 = 0.02;
const LIFT_BEND: f64 = TURN * TURN * 3.3;

/// A half-space, of the airless sky or of the sky as it is seen.
#[derive(Clone, Copy, Debug)]
pub(super) struct Side {
    pub(super) limit: HalfSpace,
    /// Whether standard air lifts the sun before it is asked.
    pub(super) lifted: bool,
}

impl Side {
    /// Not negative while the sun is inside; for an airless direction of any length near one.
    pub(super) fn value(&self, airless: Vector<World>) -> f64 {
        let seen = if self.lifted { refraction::extended(airless) } else { airless };
        self.value_of(airless, seen)
    }

    /// The same where it is known how the sun is seen.
    pub(super) fn value_of(&self, airless: Vector<World>, seen: Vector<World>) -> f64 {
        let HalfSpace { normal, least } = self.limit;
        normal.dot(if self.lifted { seen } else { airless }) - least * airless.norm()
    }

    /// A bound on the second derivative of the value a day squared, for a side in which the sun swings that much.
    pub(super) fn bend(&self, swing: f64) -> f64 {
        let turn = TURN_BEND * swing + DECLINATION_BEND;
        if self.lifted { turn + LIFT_BEND } else { turn }
    }
}
