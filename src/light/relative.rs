//! Directions as the lens sees them.
//!
//! Lens frame: x camera right, y the way the lens looks, z up across the picture. A level lens that looks north has
//! the world's own axes. Roll is not here: the camera stands upright.

use crate::units::{Bearing, Degrees, Vector, World};

/// The space of a lens: x camera right, y the way it looks, z up across its picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InLens {}

/// A lens: where it looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LensFrame {
    right: Vector<World>,
    ahead: Vector<World>,
    up: Vector<World>,
}

impl LensFrame {
    /// A lens that looks to a bearing, tilted up (positive) or down. Tilt within ±90°.
    pub fn new(bearing: Bearing, tilt: Degrees) -> Self {
        let level = bearing.level();
        let right = bearing.turned(Degrees::from_degrees(90.0)).level();
        let (rise, run) = crate::maths::sin_cos(tilt.radians());
        let ahead = level * run + Vector::UP * rise;
        Self { right, ahead, up: right.cross(ahead) }
    }

    /// The way it looks.
    pub fn ahead(&self) -> Vector<World> {
        self.ahead
    }

    /// Camera right.
    pub fn right(&self) -> Vector<World> {
        self.right
    }

    /// Up across the picture.
    pub fn up(&self) -> Vector<World> {
        self.up
    }

    /// A direction of the world, as the lens sees it.
    ///
    /// ```
    /// # use slantlight::{light::relative::LensFrame, units::{Bearing, Degrees, Height, Vector}};
    /// let south = LensFrame::new(Bearing::from_degrees(180.0), Degrees::default());
    /// let west = Vector::towards(Bearing::from_degrees(270.0), Height::clamped(0.0));
    /// assert!((south.sees(west).x - 1.0).abs() < 1e-12);
    /// ```
    pub fn sees(&self, direction: Vector<World>) -> Vector<InLens> {
        Vector::new(direction.dot(self.right), direction.dot(self.ahead), direction.dot(self.up))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Height;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn turning_lens_and_light_together_changes_nothing(
            lens in 0.0..360.0f64, bearing in 0.0..360.0f64, height in -30.0..90.0f64,
            tilt in -60.0..60.0f64, turn in 0.0..360.0f64,
        ) {
            let seen = |by: f64| {
                let lens = LensFrame::new(Bearing::from_degrees(lens + by), Degrees::from_degrees(tilt));
                lens.sees(Vector::towards(Bearing::from_degrees(bearing + by), Height::clamped(height)))
            };
            prop_assert!((seen(0.0) - seen(turn)).norm() < 1e-12);
            prop_assert!((seen(turn).norm() - 1.0).abs() < 1e-12);
        }

        #[test]
        fn it_agrees_with_the_angle_off_the_lens(lens in 0.0..360.0f64, off in -179.0..179.0f64) {
            use crate::light::class::light_bearing;
            let lens = Bearing::from_degrees(lens);
            let light = light_bearing(Degrees::from_degrees(off), lens).level();
            let seen = LensFrame::new(lens, Degrees::default()).sees(light);
            let (sin, cos) = crate::maths::sin_cos(Degrees::from_degrees(off).radians());
            prop_assert!((seen.x - sin).abs() < 1e-12 && (seen.y + cos).abs() < 1e-12);
        }
    }

    #[test]
    fn a_lens_tilted_up_sees_a_level_light_lower() {
        let lens = LensFrame::new(Bearing::from_degrees(90.0), Degrees::from_degrees(10.0));
        let seen = lens.sees(Bearing::from_degrees(90.0).level());
        assert!(seen.z < -0.17 && seen.y > 0.98);
    }
}
