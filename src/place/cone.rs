//! Parts of the sky as half-spaces.
//!
//! A half-space is every direction `s` with `n·s ≥ c`; a convex part of the sky is a list of them that
//! must all hold; any other part is a union of convex ones. An opening seen from a mark, a wish's arc and
//! its heights are all of this form, so that asking "is the light in it" is a few products and no trigonometry.

use crate::maths;
use crate::units::{Bearing, Degrees, Height, Vector, World};

/// All directions `s` with `normal · s ≥ least`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HalfSpace {
    /// Unit vector.
    pub normal: Vector<World>,
    /// Smallest scalar product allowed, −1 to 1; 0 for a plane through the eye.
    pub least: f64,
}

impl HalfSpace {
    /// The side of a plane through the eye to which `normal` points.
    pub const fn beside(normal: Vector<World>) -> Self {
        Self { normal, least: 0.0 }
    }

    /// Height of its edge at a bearing, for the sky above a plane through the eye.
    pub fn edge_at(&self, bearing: Bearing) -> Height {
        let (normal, level) = (self.normal, bearing.level());
        let rise = -(normal.x * level.x + normal.y * level.y);
        Height::clamped(Degrees::from_radians(maths::atan2(rise, normal.z)).degrees())
    }

    /// Whether `direction` (length one) is in it.
    pub fn contains(&self, direction: Vector<World>) -> bool {
        self.normal.dot(direction) >= self.least
    }
}

/// A convex part of the sky: every half-space must hold. Without any it is the whole sphere.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cone {
    /// What must hold.
    pub sides: Vec<HalfSpace>,
}

impl Cone {
    /// Whether `direction` (length one) is in it.
    pub fn contains(&self, direction: Vector<World>) -> bool {
        self.sides.iter().all(|side| side.contains(direction))
    }
}
