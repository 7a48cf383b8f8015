//! Laws of light in rooms, each for 10,000 made-up ones.

use proptest::prelude::*;
use slantlight::light::patch::{Patch, Surface, beams, patches};
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Degrees, Height, InRoom, Vector, World};

use super::some;

fn sun(bearing: f64, height: f64) -> Vector<World> {
    Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
}

fn lit(room: &Room, sun: Vector<World>) -> Vec<Patch> {
    patches(room, room.room_from_world(sun))
}

fn area(patches: &[Patch]) -> f64 {
    patches.iter().map(Patch::area).sum()
}

/// Area of an outline as the sun sees it.
fn seen(outline: &[Vector<InRoom>], sun: Vector<InRoom>) -> f64 {
    let from = outline[0];
    let twice = outline.windows(2).map(|pair| (pair[0] - from).cross(pair[1] - from).dot(sun));
    (twice.sum::<f64>() / 2.0).abs()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]

    #[test]
    fn turning_room_and_sun_together_changes_nothing(
        room in some::room(), bearing in 0.0..360.0f64, height in 1.0..85.0f64, turn in 0.0..360.0f64,
    ) {
        let mut turned = room.clone();
        let by = Degrees::from_degrees(turn);
        turned.wall_bearing = turned.wall_bearing.turned(by);
        for screen in &mut turned.screens {
            (screen.from, screen.to) = (screen.from.turned(by), screen.to.turned(by));
        }
        let (one, other) = (lit(&room, sun(bearing, height)), lit(&turned, sun(bearing + turn, height)));
        prop_assert!((area(&one) - area(&other)).abs() < 1e-5, "{} {}", area(&one), area(&other));
    }

    #[test]
    fn closing_an_opening_never_adds_light(
        room in some::room(), bearing in 0.0..360.0f64, height in 1.0..85.0f64, which in 0usize..4,
    ) {
        let open = lit(&room, sun(bearing, height));
        let mut closed = room.clone();
        let which = which % room.openings.len();
        closed.openings[which].covered = true;
        let left = lit(&closed, sun(bearing, height));
        prop_assert!(left.iter().all(|patch| patch.opening != which));
        let rest: f64 = open.iter().filter(|patch| patch.opening != which).map(Patch::area).sum();
        prop_assert!((area(&left) - rest).abs() < 1e-12);
    }

    #[test]
    fn all_light_that_comes_in_falls_somewhere(
        room in some::room(), bearing in 0.0..360.0f64, height in 1.0..85.0f64,
    ) {
        let to_sun = room.room_from_world(sun(bearing, height));
        let through: f64 = beams(&room, to_sun).iter().map(|beam| seen(&beam.clear, to_sun)).sum();
        let landed: f64 = lit(&room, sun(bearing, height)).iter().map(|patch| seen(&patch.outline, to_sun)).sum();
        // Slivers under a square millimetre are left out, some on each surface.
        prop_assert!((through - landed).abs() < 1e-4, "{} {}", through, landed);
    }

    #[test]
    fn a_patch_that_nothing_clips_is_the_opening_projected(
        width in 0.3..2.0f64, sill in 0.2..1.5f64, tall in 0.3..1.5f64, turn in -60.0..60.0f64, height in 20.0..80.0f64,
    ) {
        let m = slantlight::units::Metres::from_metres;
        let mut room = Room::rectangle("r", "r", [m(60.0), m(40.0), m(4.0)], Bearing::from_degrees(77.0));
        let sizes = [30.0, sill, width, tall].map(m);
        room.openings.push(slantlight::place::opening::Opening::rectangle("o", "o", 0, sizes));
        let found = lit(&room, sun(77.0 + turn, height));
        prop_assert_eq!(found.len(), 1);
        prop_assert_eq!(found[0].surface, Surface::Floor);
        // Handbook D1: W (z2 − z1) cos γ / tan h.
        let expected = width * tall * turn.to_radians().cos() / height.to_radians().tan();
        prop_assert!((found[0].area() - expected).abs() < 1e-9 * expected.max(1.0));
    }
}
