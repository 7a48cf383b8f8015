//! The sky's light beside a sum over 40,000 rays: even in bearing and in the sine of the height, each shifted in its cell so
//! that no edge runs along a row. What the sum may be off follows from how many cells lie on the rim of what is seen.

use proptest::prelude::*;
use slantlight::light::sky_model::SkyModel;
use slantlight::light::skylight::{Facing, Inside};
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Height, Vector};

use super::some;
use super::tracer::{P, leaves, to_room};

const STEPS: usize = 200;

/// The golden section: shifts that never fall into step.
const SHIFT: f64 = 0.618_033_988_749_894_9;

/// A cell on the rim is right by half a cell at most, evenly spread: its standard deviation, and how many of them a sum may
/// be off.
const CELL: f64 = 0.289;
const SIGMAS: f64 = 6.0;

/// Light of an even and of the overcast sky on a plane, over that on level ground, and how far it may be off.
fn summed(room: &Room, from: P, facing: (f64, f64)) -> ([f64; 2], f64) {
    let normal = to_room(room, facing.0, facing.1);
    let mut sums = [0.0; 2];
    let mut lit = vec![[false; STEPS]; STEPS];
    for (ring, row) in lit.iter_mut().enumerate() {
        for (sector, is_lit) in row.iter_mut().enumerate() {
            let shift = |number: usize| (number as f64 * SHIFT).fract();
            let up = (ring as f64 + shift(sector)) / STEPS as f64;
            let bearing = 360.0 * (sector as f64 + shift(ring)) / STEPS as f64;
            let way = to_room(room, bearing, up.asin().to_degrees());
            let cos: f64 = (0..3).map(|axis| way[axis] * normal[axis]).sum();
            if cos > 0.0 && leaves(room, from, way).is_some() {
                *is_lit = true;
                sums = [sums[0] + cos, sums[1] + cos * (1.0 + 2.0 * up) / 3.0];
            }
        }
    }
    let piece = 2.0 * core::f64::consts::PI / (STEPS * STEPS) as f64;
    let level = 7.0 * core::f64::consts::PI / 9.0;
    let rim = CELL * SIGMAS * (rim(&lit) as f64).sqrt() * piece / level;
    ([sums[0] * piece / core::f64::consts::PI, sums[1] * piece / level], rim + piece)
}

/// Changes from one cell to the next, along rings and across them.
fn rim(lit: &[[bool; STEPS]]) -> usize {
    let along = lit.iter().map(|ring| (0..STEPS).filter(|at| ring[*at] != ring[(at + 1) % STEPS]).count());
    let across = lit.windows(2).map(|rings| (0..STEPS).filter(|at| rings[0][*at] != rings[1][*at]).count());
    along.sum::<usize>() + across.sum::<usize>()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn the_sky_component_is_the_sum_over_rays(
        room in some::room(), shares in [0.0..1.0f64, 0.0..1.0f64], z in 0.1..0.7f64,
        bearing in 0.0..360.0f64, tilt in -30.0..90.0f64,
    ) {
        let Some([x, y]) = some::spot(&room, shares) else { return Ok(()) };
        let from = [x, y, z * room.ceiling.metres()];
        let point = Vector::new(from[0], from[1], from[2]);
        let normal = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(tilt));
        let inside = Inside { room: &room, line: &room.line_from(point) };
        let (expected, rim) = summed(&room, from, (bearing, tilt));
        for (sky, expected) in [SkyModel::UNIFORM, SkyModel::OVERCAST].iter().zip(expected) {
            let found = inside.sky_bare(Facing { at: point, normal }, sky).ratio();
            prop_assert!((found - expected).abs() <= rim, "{} is not {} within {}", found, expected, rim);
        }
    }
}
