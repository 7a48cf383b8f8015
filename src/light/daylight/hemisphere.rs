//! Sums over the sky's half-sphere.

use crate::maths;
use crate::units::{Vector, World};

/// Rings and sectors of the grid: every piece has the same solid angle (our choice; within 0.4 % for the skies of the standard).
const RINGS: usize = 24;
const SECTORS: usize = 48;

/// The integral of `function` over the directions above the horizon, steradians.
///
/// Midpoints of equal pieces: rings even in the sine of the height (Archimedes: equal solid angles), sectors even in bearing.
pub(in crate::light) fn sum(function: impl Fn(Vector<World>) -> f64) -> f64 {
    let turn = 2.0 * core::f64::consts::PI;
    let around: [(f64, f64); SECTORS] =
        core::array::from_fn(|sector| maths::sin_cos(turn * (sector as f64 + 0.5) / SECTORS as f64));
    let mut total = 0.0;
    for ring in 0..RINGS {
        let up = (ring as f64 + 0.5) / RINGS as f64;
        let flat = (1.0 - up * up).sqrt();
        for (east, north) in around {
            total += function(Vector::new(flat * east, flat * north, up));
        }
    }
    total * turn / (RINGS * SECTORS) as f64
}
