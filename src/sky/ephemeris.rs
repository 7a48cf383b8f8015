//! What the sun does for the Earth as a whole, kept: nodes of the full method, and between them days.
//!
//! Nodes stand [`SPACING`] days apart at 0 h UTC and hold the equation of time as an angle, the declination and the
//! parallax. Six-point Lagrange interpolation between them costs 1e-5° at most over 1950–2100. A [`Day`] is one UTC
//! day of the *turned* sun: with the Earth's rotation taken out, its direction moves so little that a parabola
//! through the day's start, middle and end holds it to 1e-6°. Both depend on no place, so one store serves all.
//! Outside 1950–2100 the same numbers are computed afresh each time.

use std::sync::OnceLock;

use super::blocks::Blocks;
use super::delta_t::Clock;
use super::solar;
use crate::maths;
use crate::units::{Degrees, Instant};

/// Milliseconds in a day.
pub(super) const DAY_MILLIS: i64 = 86_400_000;

/// Days between nodes. Our choice: every second day would be 30 times finer than the full method itself.
const SPACING: i64 = 4;

/// Days since 1970-01-01 of 1950-01-01 and 2101-01-01: what the stores have room for.
const DAYS: (i64, i64) = (-7305, 47_847);

/// Parallax at one astronomical unit, degrees (Reda and Andreas 2004, equation 33).
const PARALLAX: f64 = 8.794 / 3600.0;

/// The place-independent sun of 1950–2100.
#[derive(Debug)]
pub struct Ephemeris {
    nodes: Blocks<Node, 8>,
    days: Blocks<Day, 32>,
}

/// At 0 h UTC of a day, radians.
#[derive(Clone, Copy, Debug)]
struct Node([f64; 3]);

/// One UTC day: parabolas in the part of the day `x`, 0 to 1, each `[c0, c1, c2]`.
///
/// With the hour angle at Greenwich `θ(x) + 2πx`, the parabolas hold cos δ cos θ, cos δ sin θ and sin δ.
#[derive(Clone, Copy, Debug)]
pub(super) struct Day {
    pub(super) a: [f64; 3],
    pub(super) b: [f64; 3],
    pub(super) s: [f64; 3],
    /// Sine of the horizontal parallax.
    pub(super) parallax: f64,
}

impl Ephemeris {
    /// An empty store; [`Ephemeris::shared`] is the one to use, this is for timing it cold.
    pub fn new() -> Self {
        Self {
            nodes: Blocks::new(DAYS.0.div_euclid(SPACING) - 4, DAYS.1.div_euclid(SPACING) + 4),
            days: Blocks::new(DAYS.0 - 1, DAYS.1 + 1),
        }
    }

    /// The one store of this program.
    pub fn shared() -> &'static Self {
        static SHARED: OnceLock<Ephemeris> = OnceLock::new();
        SHARED.get_or_init(Self::new)
    }

    /// The UTC day that starts `number` days after 1970-01-01.
    pub(super) fn day(&self, number: i64) -> Day {
        self.days.get(number, |number| self.compute_day(number))
    }

    fn compute_day(&self, number: i64) -> Day {
        let moments = [0.0, 0.5, 1.0].map(|part| self.between_nodes(number, part));
        let vectors = moments.map(|[time, declination, _]| {
            let (sin_time, cos_time) = maths::sin_cos(time + core::f64::consts::PI);
            let (sin, cos) = maths::sin_cos(declination);
            [cos * cos_time, cos * sin_time, sin]
        });
        let part = |axis: usize| parabola(vectors.map(|vector| vector[axis]));
        Day { a: part(0), b: part(1), s: part(2), parallax: moments[1][2] }
    }

    /// Equation of time, declination, parallax at a part of a day.
    fn between_nodes(&self, number: i64, part: f64) -> [f64; 3] {
        let first = number.div_euclid(SPACING) - 2;
        let x = (number - first * SPACING) as f64 + part;
        let weights = lagrange(x / SPACING as f64);
        let mut sum = [0.0; 3];
        for (node, weight) in (first..).zip(weights) {
            let Node(values) = self.nodes.get(node, node_of);
            for (sum, value) in sum.iter_mut().zip(values) {
                *sum += weight * value;
            }
        }
        sum
    }
}

impl Default for Ephemeris {
    fn default() -> Self {
        Self::new()
    }
}

/// The full method at node `number`.
fn node_of(number: i64) -> Node {
    let instant = Instant::from_unix_millis(number.saturating_mul(SPACING * DAY_MILLIS));
    let sun = solar::geocentric(instant, Clock::at(instant));
    // At 0 h the mean sun is at 180°.
    let time = Degrees::from_degrees(sun.greenwich_hour_angle.degrees() - 180.0).signed();
    let parallax = Degrees::from_degrees(PARALLAX / sun.distance.au());
    Node([time.radians(), sun.declination.radians(), maths::sin(parallax.radians())])
}

/// Weights of six values at 0, 1, … 5 for a value at `x` between 2 and 3.
fn lagrange(x: f64) -> [f64; 6] {
    core::array::from_fn(|i| {
        let others = (0..6).filter(|j| *j != i).map(|j| j as f64);
        others.map(|j| (x - j) / (i as f64 - j)).product()
    })
}

/// Through values at 0, ½ and 1.
fn parabola([start, middle, end]: [f64; 3]) -> [f64; 3] {
    [start, 4.0 * middle - 3.0 * start - end, 2.0 * (start + end) - 4.0 * middle]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_parabola_goes_through_its_values() {
        let [c0, c1, c2] = parabola([1.0, 5.0, -2.0]);
        let at = |x: f64| c0 + x * (c1 + x * c2);
        assert_eq!([at(0.0), at(0.5), at(1.0)], [1.0, 5.0, -2.0]);
    }

    #[test]
    fn six_points_hold_a_quintic() {
        let quintic = |x: f64| ((((x - 1.0) * x + 2.0) * x - 3.0) * x + 1.0) * x - 7.0;
        let sum: f64 = lagrange(2.3).iter().enumerate().map(|(i, weight)| weight * quintic(i as f64)).sum();
        assert!((sum - quintic(2.3)).abs() < 1e-12);
    }

    #[test]
    fn days_join() {
        let store = Ephemeris::new();
        for number in [-7305, 0, 20_000, 20_001, 47_845] {
            let (today, tomorrow) = (store.day(number), store.day(number + 1));
            for (one, two) in [(today.a, tomorrow.a), (today.b, tomorrow.b), (today.s, tomorrow.s)] {
                assert!((one[0] + one[1] + one[2] - two[0]).abs() < 1e-14);
            }
        }
    }
}
