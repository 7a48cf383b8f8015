//! Which way a phone points, from the angles of its sensors.
//!
//! The frame is that of the W3C's "Device Orientation and Motion", section "Device orientation": x to the right of the
//! screen in its natural position, y to its top, z out of it; alpha, beta and gamma turn about z, then the new x, then
//! the new y (intrinsic Z-X′-Y″), from x east, y north, z up. North here is what the sensor takes for north: mostly
//! the magnetic one, so whoever asks adds the declination. Steadiness and calibration are here; reading the sensors
//! is not.

use crate::maths;
use crate::units::{Bearing, Degrees, Height, MagneticBearing, Vector, World};

/// Above this the phone points so steeply that its bearing means little. Our choice.
const STEEP: f64 = 80.0;

/// Readings whose mean vector is shorter than this point nowhere together. Our choice: a spread of 123°.
const NOWHERE: f64 = 0.1;

/// How a phone is held.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Attitude {
    /// About the axis out of the screen.
    pub alpha: Degrees,
    /// About the screen's width.
    pub beta: Degrees,
    /// About the screen's height.
    pub gamma: Degrees,
}

/// Where a phone's edge points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sight {
    /// From the sensor's north; `None` when it points almost straight up or down.
    pub bearing: Option<MagneticBearing>,
    /// Above the horizon.
    pub height: Height,
}

impl Attitude {
    /// Along the long edge, from the bottom of the phone to its top: what one sights along.
    ///
    /// However the picture is turned on the screen, the edge stays where it is.
    ///
    /// ```
    /// # use slantlight::{place::heading::Attitude, units::Degrees};
    /// let [alpha, beta, gamma] = [90.0, 30.0, 0.0].map(Degrees::from_degrees);
    /// let sight = Attitude { alpha, beta, gamma }.long_edge();
    /// // Alpha counts anticlockwise: the top points west, thirty degrees up.
    /// assert!((sight.bearing.unwrap().degrees() - 270.0).abs() < 1e-9);
    /// assert!((sight.height.degrees() - 30.0).abs() < 1e-9);
    /// ```
    pub fn long_edge(&self) -> Sight {
        Sight::along(self.axes()[1])
    }

    /// Towards the top of the picture, which is turned by `screen` (0°, 90°, 180°, 270° clockwise on the phone).
    pub fn top_of_picture(&self, screen: Degrees) -> Sight {
        let (sin, cos) = maths::sin_cos(screen.radians());
        let [right, top, _] = self.axes();
        Sight::along(right * sin + top * cos)
    }

    /// The phone's x, y and z in the world.
    pub fn axes(&self) -> [Vector<World>; 3] {
        let (sin_a, cos_a) = maths::sin_cos(self.alpha.radians());
        let (sin_b, cos_b) = maths::sin_cos(self.beta.radians());
        let (sin_c, cos_c) = maths::sin_cos(self.gamma.radians());
        let right = Vector::new(
            cos_c * cos_a - sin_b * sin_c * sin_a,
            cos_c * sin_a + sin_b * sin_c * cos_a,
            -cos_b * sin_c,
        );
        let top = Vector::new(-sin_a * cos_b, cos_a * cos_b, sin_b);
        [right, top, right.cross(top)]
    }
}

impl Sight {
    fn along(direction: Vector<World>) -> Self {
        let height = direction.height();
        let level = height.degrees().abs() <= STEEP;
        let bearing = level.then(|| MagneticBearing::from_degrees(direction.bearing().degrees()));
        Self { bearing, height }
    }
}

/// Where several readings point together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Together {
    /// Circular mean.
    pub mean: Bearing,
    /// Circular standard deviation.
    pub spread: Degrees,
}

/// Mean and spread of bearings; `None` without readings, or when they point all round.
///
/// Source: K. V. Mardia, Statistics of Directional Data, 1972, section 2.3: the mean of unit vectors, and
/// √(−2 ln R) of its length R.
pub fn together(readings: &[Bearing]) -> Option<Together> {
    let sum = readings.iter().fold(Vector::new(0.0, 0.0, 0.0), |sum, reading| sum + reading.level());
    let length = (sum * (1.0 / readings.len() as f64)).norm();
    if readings.is_empty() || length <= NOWHERE {
        return None;
    }
    let ln = maths::log2(length.min(1.0)) * core::f64::consts::LN_2;
    // Not below nought, and no minus nought either.
    let spread = Degrees::from_radians((-2.0 * ln).max(0.0).sqrt());
    Some(Together { mean: sum.bearing(), spread })
}

/// How much the compass reads too little: the phone was pointed along a shadow, away from a sun of known bearing.
///
/// Turn a reading clockwise by it to set it right. Nobody has to look at the sun for that.
pub fn residual(along_shadow: Bearing, sun: Bearing) -> Degrees {
    along_shadow.turn_to(sun.reversed())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A rotation matrix about an axis by Rodrigues' formula: no closed form, no order of angles.
    fn rotation(axis: [f64; 3], degrees: f64) -> [[f64; 3]; 3] {
        let (sin, cos) = maths::sin_cos(Degrees::from_degrees(degrees).radians());
        let cross = [[0.0, -axis[2], axis[1]], [axis[2], 0.0, -axis[0]], [-axis[1], axis[0], 0.0]];
        let mut turned = [[0.0; 3]; 3];
        for row in 0..3 {
            for column in 0..3 {
                let one = if row == column { cos } else { 0.0 };
                turned[row][column] = one + sin * cross[row][column] + (1.0 - cos) * axis[row] * axis[column];
            }
        }
        turned
    }

    fn apply(matrix: [[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
        [0, 1, 2].map(|row| (0..3).map(|column| matrix[row][column] * v[column]).sum())
    }

    /// Turns the phone step by step, each time about an axis it has by then.
    fn step_by_step(alpha: f64, beta: f64, gamma: f64) -> [[f64; 3]; 3] {
        let mut axes = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        for (about, degrees) in [(2, alpha), (0, beta), (1, gamma)] {
            let turn = rotation(axes[about], degrees);
            axes = axes.map(|axis| apply(turn, axis));
        }
        axes
    }

    fn attitude(alpha: f64, beta: f64, gamma: f64) -> Attitude {
        let [alpha, beta, gamma] = [alpha, beta, gamma].map(Degrees::from_degrees);
        Attitude { alpha, beta, gamma }
    }

    proptest! {
        #[test]
        fn axes_are_those_of_the_rotations(
            alpha in 0.0..360.0f64, beta in -180.0..180.0f64, gamma in -90.0..90.0f64,
        ) {
            let expected = step_by_step(alpha, beta, gamma);
            for (got, expected) in attitude(alpha, beta, gamma).axes().iter().zip(expected) {
                let expected = Vector::new(expected[0], expected[1], expected[2]);
                prop_assert!((*got - expected).norm() < 1e-12, "{got:?} {expected:?}");
            }
        }

        #[test]
        fn rolling_the_phone_moves_no_sight(
            alpha in 0.0..360.0f64, beta in -79.0..79.0f64, gamma in -90.0..90.0f64,
        ) {
            let sight = attitude(alpha, beta, gamma).long_edge();
            let expected = Bearing::from_degrees(-alpha);
            let got = Bearing::from_degrees(sight.bearing.unwrap().degrees());
            prop_assert!(got.turn_to(expected).degrees().abs() < 1e-9);
            prop_assert!((sight.height.degrees() - beta).abs() < 1e-9);
        }

        #[test]
        fn the_mean_turns_with_its_readings(readings in proptest::collection::vec(-30.0..30.0f64, 1..20), by in 0.0..360.0f64) {
            let of = |by: f64| {
                let turned: Vec<_> = readings.iter().map(|r| Bearing::from_degrees(r + by)).collect();
                together(&turned).unwrap()
            };
            let (here, there) = (of(0.0), of(by));
            prop_assert!((here.mean.turn_to(there.mean).positive().degrees() - by).abs() < 1e-6
                || (here.mean.turn_to(there.mean).positive().degrees() - by).abs() > 360.0 - 1e-6);
            prop_assert!((here.spread.degrees() - there.spread.degrees()).abs() < 1e-5);
        }
    }

    #[test]
    fn a_turned_picture_has_another_top() {
        // Flat on the table, the top to the north; with the picture turned by 90° its top is the phone's right edge.
        let flat = attitude(0.0, 0.0, 0.0);
        let tops = [0.0, 90.0, 180.0, 270.0].map(|screen| {
            flat.top_of_picture(Degrees::from_degrees(screen)).bearing.unwrap().degrees().round() % 360.0
        });
        assert_eq!(tops, [0.0, 90.0, 180.0, 270.0]);
    }

    #[test]
    fn straight_up_has_no_bearing() {
        let up = attitude(10.0, 90.0, 0.0).long_edge();
        assert_eq!(up.bearing, None);
        assert!((up.height.degrees() - 90.0).abs() < 1e-6);
    }

    #[test]
    fn readings_about_north_are_averaged_over_it() {
        let readings = [350.0, 355.0, 5.0, 10.0].map(Bearing::from_degrees);
        let Together { mean, spread } = together(&readings).unwrap();
        assert!(mean.turn_to(Bearing::default()).degrees().abs() < 1e-9);
        // The plain standard deviation of -10, -5, 5, 10.
        assert!((spread.degrees() - 62.5f64.sqrt()).abs() < 0.1, "{spread:?}");
        assert_eq!(together(&[]), None);
        assert_eq!(together(&[0.0, 120.0, 240.0].map(Bearing::from_degrees)), None);
    }

    #[test]
    fn the_shadow_tells_what_the_compass_is_off_by() {
        let (pointed, sun) = (Bearing::from_degrees(352.0), Bearing::from_degrees(179.0));
        let off = residual(pointed, sun);
        assert_eq!(off.degrees(), 7.0);
        assert_eq!(pointed.turned(off), sun.reversed());
    }
}
