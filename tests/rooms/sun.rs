//! Sun on points: the cones of the sky, the beams and the patches beside the ray, 10,000 times each.

use proptest::prelude::*;
use slantlight::light::patch::{Patch, Surface, beams, patches};
use slantlight::light::skylight::Inside;
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Height, InRoom, Metres, Vector, World};

use super::some;
use super::tracer::{P, leaves, to_room};

/// Rays beside the one in question: if they differ, it runs along an edge, where rounding decides.
const BESIDE: f64 = 1e-5;

fn sun(bearing: f64, height: f64) -> Vector<World> {
    Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
}

/// What the ray says, unless it runs along an edge.
fn traced(room: &Room, from: P, (bearing, height): (f64, f64)) -> Option<Option<usize>> {
    let by = |a: f64, b: f64| leaves(room, from, to_room(room, bearing + a, height + b));
    let here = by(0.0, 0.0);
    let around = [(BESIDE, BESIDE), (-BESIDE, BESIDE), (BESIDE, -BESIDE), (-BESIDE, -BESIDE)];
    around.iter().all(|(a, b)| by(*a, *b) == here).then_some(here)
}

/// Whether a point of its plane lies in a patch: every side turns about it the way the whole patch does.
fn holds(patch: &Patch, point: Vector<InRoom>) -> bool {
    let next = patch.outline.iter().cycle().skip(1);
    let turns: Vec<Vector<InRoom>> =
        patch.outline.iter().zip(next).map(|(a, b)| (*a - point).cross(*b - point)).collect();
    let whole = turns.iter().fold(Vector::new(0.0, 0.0, 0.0), |sum, turn| sum + *turn);
    turns.iter().all(|turn| turn.dot(whole) >= 0.0)
}

/// A point of a surface by shares of it: the floor, the ceiling, or a wall.
fn on_surface(room: &Room, which: usize, [x, y]: [f64; 2]) -> Option<(Surface, P)> {
    let top = room.ceiling.metres();
    if which >= 12 {
        let [x, y] = some::spot(room, [x, y])?;
        return Some(if which < 18 {
            (Surface::Floor, [x, y, 0.0])
        } else {
            (Surface::Ceiling, [x, y, top])
        });
    }
    let number = which % room.floor.len();
    let wall = room.wall(number)?;
    let at = wall.point(Metres::from_metres(x * wall.length.metres()), Metres::from_metres(y * top));
    Some((Surface::Wall(number), [at.x, at.y, at.z]))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]

    #[test]
    fn sun_on_a_point_is_what_the_ray_says(
        room in some::room(), shares in [0.0..1.0f64, 0.0..1.0f64], z in 0.05..0.95f64,
        bearing in 0.0..360.0f64, height in 0.5..89.0f64,
    ) {
        let Some([x, y]) = some::spot(&room, shares) else { return Ok(()) };
        let from = [x, y, z * room.ceiling.metres()];
        let Some(expected) = traced(&room, from, (bearing, height)) else { return Ok(()) };
        let point = Vector::new(from[0], from[1], from[2]);
        let inside = Inside { room: &room, line: &room.line_from(point) };
        let found = inside.sun(point, sun(bearing, height));
        prop_assert_eq!(found.first().map(|through| through.opening), expected, "by the sky");
        let to_sun = room.room_from_world(sun(bearing, height));
        let found = beams(&room, to_sun).into_iter().filter(|beam| beam.reaches(point)).map(|beam| beam.opening).min();
        prop_assert_eq!(found, expected, "by the beam");
    }

    #[test]
    fn a_point_in_a_patch_is_a_point_in_the_sun(
        room in some::room(), which in 0usize..19, shares in [0.0..1.0f64, 0.0..1.0f64],
        bearing in 0.0..360.0f64, height in -20.0..89.0f64,
    ) {
        let Some((surface, from)) = on_surface(&room, which, shares) else { return Ok(()) };
        let Some(expected) = traced(&room, from, (bearing, height)) else { return Ok(()) };
        let point = Vector::new(from[0], from[1], from[2]);
        let found = patches(&room, room.room_from_world(sun(bearing, height)));
        let lit = found.iter().filter(|patch| patch.surface == surface && holds(patch, point));
        prop_assert_eq!(lit.map(|patch| patch.opening).min(), expected, "{:?}", surface);
    }
}
