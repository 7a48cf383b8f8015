//! Vectors that name their space.
//!
//! A `Vector<World>` and a `Vector<InRoom>` cannot be mixed; only a room's own turn takes one to the other.

use core::marker::PhantomData;
use core::ops::{Add, Mul, Neg, Sub};

use super::angle::{Bearing, Degrees, Height};
use crate::maths;

/// The world: x east, y north, z up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum World {}

/// A room: x along wall 1 from corner 0 to corner 1, y into the room, z up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InRoom {}

/// Three numbers in the space `S`: a direction (length one, pointing *to* the light) or a position in metres.
#[derive(Debug, PartialEq)]
pub struct Vector<S> {
    /// First part.
    pub x: f64,
    /// Second part.
    pub y: f64,
    /// Up.
    pub z: f64,
    space: PhantomData<S>,
}

// Written out because a derive would ask `S` to be `Copy` as well.
impl<S> Clone for Vector<S> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<S> Copy for Vector<S> {}

impl<S> Vector<S> {
    /// From its three parts.
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z, space: PhantomData }
    }

    /// Straight up.
    pub const UP: Self = Self::new(0.0, 0.0, 1.0);

    /// Scalar product.
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product, right-handed.
    pub fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// Length.
    pub fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The unit vector along this one; `None` for a vector of no length.
    pub fn unit(self) -> Option<Self> {
        let norm = self.norm();
        (norm > 0.0 && norm.is_finite()).then(|| self * (1.0 / norm))
    }

    /// Angle to `other`; good near 0° and 180° too.
    pub fn angle_to(self, other: Self) -> Degrees {
        Degrees::from_radians(maths::atan2(self.cross(other).norm(), self.dot(other)))
    }
}

impl Vector<World> {
    /// Unit vector towards a bearing and a height.
    pub fn towards(bearing: Bearing, height: Height) -> Self {
        let (up, flat) = maths::sin_cos(height.radians());
        let (east, north) = maths::sin_cos(bearing.radians());
        Self::new(east * flat, north * flat, up)
    }

    /// Turned clockwise (seen from above) about the vertical.
    pub fn turned(self, angle: Degrees) -> Self {
        let (sin, cos) = maths::sin_cos(angle.radians());
        Self::new(self.x * cos + self.y * sin, self.y * cos - self.x * sin, self.z)
    }

    /// Bearing of this direction; north for straight up or down.
    pub fn bearing(self) -> Bearing {
        Bearing::from_degrees(Degrees::from_radians(maths::atan2(self.x, self.y)).degrees())
    }

    /// Height of this direction above the horizon, whatever its length.
    pub fn height(self) -> Height {
        Height::clamped(Degrees::from_radians(maths::atan2(self.z, maths::hypot(self.x, self.y))).degrees())
    }
}

impl<S> Add for Vector<S> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}

impl<S> Sub for Vector<S> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl<S> Neg for Vector<S> {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x, -self.y, -self.z)
    }
}

impl<S> Mul<f64> for Vector<S> {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn direction_there_and_back(bearing in 0.0..360.0f64, height in -89.0..89.0f64) {
            let to = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            prop_assert!((to.norm() - 1.0).abs() < 1e-14);
            prop_assert!(to.bearing().turn_to(Bearing::from_degrees(bearing)).degrees().abs() < 1e-10);
            prop_assert!((to.height().degrees() - height).abs() < 1e-10);
        }

        #[test]
        fn turning_a_direction_turns_its_bearing(
            bearing in 0.0..360.0f64, height in -89.0..89.0f64, angle in -400.0..400.0f64,
        ) {
            let bearing = Bearing::from_degrees(bearing);
            let turned = Vector::towards(bearing, Height::clamped(height)).turned(Degrees::from_degrees(angle));
            let expected = bearing.turned(Degrees::from_degrees(angle));
            prop_assert!(turned.bearing().turn_to(expected).degrees().abs() < 1e-10);
            prop_assert!((turned.height().degrees() - height).abs() < 1e-10);
        }
    }
}
