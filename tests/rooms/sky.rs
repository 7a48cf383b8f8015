//! The sky's light beside a sum over 40,000 rays: even in bearing and in the sine of the height.

use proptest::prelude::*;
use slantlight::light::sky_model::SkyModel;
use slantlight::light::skylight::{Facing, Inside};
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Height, Vector};

use super::some;
use super::tracer::{P, leaves, to_room};

const STEPS: usize = 200;

/// Light of an even and of the overcast sky on a plane, over that on level ground.
fn summed(room: &Room, from: P, facing: (f64, f64)) -> [f64; 2] {
    let normal = to_room(room, facing.0, facing.1);
    let mut sums = [0.0; 2];
    for ring in 0..STEPS {
        let up = (ring as f64 + 0.5) / STEPS as f64;
        for sector in 0..STEPS {
            let bearing = 360.0 * (sector as f64 + 0.5) / STEPS as f64;
            let way = to_room(room, bearing, up.asin().to_degrees());
            let cos: f64 = (0..3).map(|axis| way[axis] * normal[axis]).sum();
            if cos > 0.0 && leaves(room, from, way).is_some() {
                sums = [sums[0] + cos, sums[1] + cos * (1.0 + 2.0 * up) / 3.0];
            }
        }
    }
    let piece = 2.0 * core::f64::consts::PI / (STEPS * STEPS) as f64;
    [sums[0] * piece / core::f64::consts::PI, sums[1] * piece / (7.0 * core::f64::consts::PI / 9.0)]
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
        let expected = summed(&room, from, (bearing, tilt));
        for (sky, expected) in [SkyModel::UNIFORM, SkyModel::OVERCAST].iter().zip(expected) {
            let found = inside.sky_bare(Facing { at: point, normal }, sky).ratio();
            // Rays on the rim of what is seen: about their number times the light of one.
            let rim = 0.03 * expected.sqrt() * 0.2 + 2e-4;
            prop_assert!((found - expected).abs() <= rim, "{} is not {}", found, expected);
        }
    }
}
