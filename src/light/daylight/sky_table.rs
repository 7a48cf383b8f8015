//! The standard's skies by table: [`super::cie_sky`] within 0.03 %, for a search that asks for thousands of points of
//! thousands of skies.
//!
//! What takes the time there, two exponentials and an arc cosine a point and a whole sky an hour, depends on one number
//! each: on the sine of the point's height, on the angle from the sun, on the sun's height.

use std::sync::OnceLock;

use super::cie_sky::CieSky;
use super::{Sky, hemisphere};
use crate::maths;
use crate::units::{Height, Vector, World};

/// Steps of the tables (our choice: some 1e-4 of the luminance with straight lines between them, beside the sun too).
const POINTS: usize = 512;

/// Steps of the sun's height: one degree each from nadir to zenith.
const DEGREES: usize = 180;

/// A sky, ready to be asked often.
#[derive(Clone, Debug)]
pub struct SkyTable {
    /// φ of the standard by the sine of the height.
    grades: Vec<f64>,
    /// f of the standard by the length of the chord between the unit vectors to the sun and the point, which runs evenly
    /// beside the sun, where the cosine hardly changes.
    ring: Vec<f64>,
    /// Light on level ground by the sun's height, all luminances in the standard's own unit.
    level: Vec<f64>,
}

impl SkyTable {
    /// That of a sky, made when it is first asked for.
    pub fn of(sky: Sky) -> &'static Self {
        static TABLES: [OnceLock<SkyTable>; Sky::ALL.len()] = [const { OnceLock::new() }; Sky::ALL.len()];
        TABLES[sky as usize].get_or_init(|| Self::new(CieSky::of(sky)))
    }

    fn new(sky: CieSky) -> Self {
        let even = |at: usize| at as f64 / POINTS as f64;
        let grades = (0..=POINTS).map(|at| sky.grades(even(at))).collect();
        let cosine = |chord: f64| 1.0 - chord * chord / 2.0;
        let square_on = sky.square_on();
        let ring = (0..=POINTS).map(|at| sky.indicatrix(cosine(2.0 * even(at)), square_on)).collect();
        let mut table = Self { grades, ring, level: Vec::new() };
        table.level = (0..=DEGREES)
            .map(|degree| {
                let sun = Height::clamped(degree as f64 - 90.0);
                let (up, along) = maths::sin_cos(sun.radians());
                let sun = Vector::new(0.0, along, up);
                hemisphere::sum(|point| table.luminance(point, sun) * point.z)
            })
            .collect();
        table
    }

    /// Luminance towards `point` with the sun at `sun`, both unit vectors, in a unit of its own: only its share in
    /// [`Self::on_level_ground`] says anything. None below the horizon.
    pub fn luminance(&self, point: Vector<World>, sun: Vector<World>) -> f64 {
        if point.z < 0.0 {
            return 0.0;
        }
        let chord = (2.0 - 2.0 * point.dot(sun)).max(0.0).sqrt();
        read(&self.ring, chord / 2.0) * read(&self.grades, point.z)
    }

    /// Light on level ground in the same unit.
    ///
    /// ```
    /// # use slantlight::{light::daylight::{Sky, sky_table::SkyTable}, units::{Height, Vector}};
    /// let even = SkyTable::of(Sky::Overcast);
    /// let up = even.luminance(Vector::UP, Vector::UP);
    /// // Type 1: 2.450 times the zenith's luminance.
    /// assert!((even.on_level_ground(Height::clamped(20.0)) / up - 2.450).abs() < 0.003);
    /// ```
    pub fn on_level_ground(&self, sun: Height) -> f64 {
        read(&self.level, (sun.degrees() + 90.0) / DEGREES as f64)
    }
}

/// A table's value at a share of its way, on the straight line between its steps.
fn read(table: &[f64], share: f64) -> f64 {
    let steps = table.len() - 1;
    let along = share.clamp(0.0, 1.0) * steps as f64;
    let step = (along as usize).min(steps - 1);
    let rest = along - step as f64;
    table[step] * (1.0 - rest) + table[step + 1] * rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Bearing;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_is_the_standards_sky(
            sky in prop::sample::select(&Sky::ALL), bearing in 0.0..360.0f64, height in 0.0..90.0f64, sun in -18.0..90.0f64,
        ) {
            let to = |bearing, height| Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let (point, sun, exact, table) = (to(bearing, height), to(0.0, sun), CieSky::of(sky), SkyTable::of(sky));
            let share = table.luminance(point, sun) / table.on_level_ground(sun.height());
            let wanted = exact.relative(point, sun) / exact.on_level_ground(sun);
            prop_assert!((share / wanted - 1.0).abs() < 3e-4, "{} {}", share, wanted);
        }
    }
}
