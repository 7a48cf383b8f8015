//! Patches against the worked examples T-D1 to T-D5 of the handbook (CALC: textbook solar geometry), and laws.

use super::*;
use crate::place::opening::{Opening, Overhang};
use crate::units::{Bearing, Height, World};
use proptest::prelude::*;

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

/// A room whose wall 0 faces 240° and holds a window 1.2 wide from 0.9 to 2.4, far from the corners.
fn room(bearing: f64, depth: f64) -> Room {
    let size = [m(40.0), m(depth), m(3.4)];
    let mut room = Room::rectangle("r", "room", size, Bearing::from_degrees(bearing));
    room.openings.push(Opening::rectangle("o", "window", 0, [m(20.0), m(0.9), m(1.2), m(1.5)]));
    room
}

fn sun(bearing: f64, height: f64) -> Vector<World> {
    Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
}

fn lit(room: &Room, bearing: f64, height: f64) -> Vec<Patch> {
    patches(room, room.room_from_world(sun(bearing, height)))
}

fn near(found: f64, printed: f64, to: f64) {
    assert!((found - printed).abs() <= to, "{found} is not {printed}");
}

fn bounds(patch: &Patch, part: fn(&Vector<InRoom>) -> f64) -> (f64, f64) {
    let parts = patch.outline.iter().map(part);
    parts.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), part| (low.min(part), high.max(part)))
}

#[test]
fn t_d1_the_floor() {
    let found = lit(&room(240.0, 10.0), 261.01, 40.02);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].surface, Surface::Floor);
    near(found[0].area(), 2.00, 0.005);
    let (sill, head) = bounds(&found[0], |point| point.y);
    near(sill, 1.001, 0.001);
    near(head, 2.669, 0.001);
    // q grows towards bearing N + 90, against our x; edges of the window at 20.0 and 21.2.
    let (left, right) = bounds(&found[0], |point| point.x);
    near(left, 20.0 + 0.384, 0.001);
    near(right, 21.2 + 1.025, 0.001);
    near(reach(&room(240.0, 10.0), &found).unwrap().metres(), 2.669, 0.001);
}

#[test]
fn t_d1_the_wall_behind() {
    let found = lit(&room(240.0, 1.5), 261.01, 40.02);
    let wall = found.iter().find(|patch| patch.surface == Surface::Wall(2)).unwrap();
    let (low, high) = bounds(wall, |point| point.z);
    near(low, 0.0, 1e-9);
    near(high, 1.05, 0.005);
    near(bounds(wall, |point| point.x).0, 20.0 + 0.576, 0.001);
    assert!(lit(&room(240.0, 3.0), 261.01, 40.02).iter().all(|patch| patch.surface == Surface::Floor));
}

#[test]
fn t_d2_low_sun() {
    // T-D2.
    // The printed height is good to 0.005°, which is 0.004 m out here; the print itself to 0.005 m.

    near(reach(&room(240.0, 20.0), &lit(&room(240.0, 20.0), 293.42, 10.57)).unwrap().metres(), 7.67, 0.009);
    let found = lit(&room(240.0, 4.0), 293.42, 10.57);
    let wall = found.iter().find(|patch| patch.surface == Surface::Wall(2)).unwrap();
    near(bounds(wall, |point| point.z).1, 1.15, 0.005);
    near(bounds(wall, |point| point.x).0, 20.0 + 5.39, 0.005);
}

#[test]
fn t_d3_the_walls_thickness() {
    // T-D3.
    let mut thick = room(240.0, 10.0);
    thick.openings[0].reveal = m(0.25);
    let clear = |bearing: f64, height: f64| {
        let beams = beams(&thick, thick.room_from_world(sun(bearing, height)));
        let mouth = &beams[0].clear;
        ((mouth[1] - mouth[0]).norm(), (mouth[3] - mouth[0]).norm())
    };
    near(clear(261.01, 40.02).0, 1.104, 0.0005);
    near(clear(261.01, 40.02).1, 1.275, 0.0005);
    near(clear(300.0, 20.0).0, 0.767, 0.0005);
}

#[test]
fn t_d4_an_overhang() {
    // T-D4.
    let mut shaded = room(240.0, 10.0);
    shaded.openings[0].overhang = Some(Overhang { depth: m(0.6), above: m(0.2) });
    let beams = beams(&shaded, shaded.room_from_world(sun(261.01, 40.02)));
    near(2.4 - beams[0].clear[2].z, 0.340, 0.0005);
}

#[test]
fn no_sun_from_behind_the_wall_or_through_a_curtain() {
    assert!(lit(&room(240.0, 10.0), 60.0, 30.0).is_empty());
    let mut covered = room(240.0, 10.0);
    covered.openings[0].covered = true;
    assert!(lit(&covered, 240.0, 30.0).is_empty());
}

#[test]
fn a_sun_below_the_opening_lights_the_ceiling() {
    let found = lit(&room(240.0, 20.0), 240.0, -8.0);
    assert!(found.iter().any(|patch| patch.surface == Surface::Ceiling));
}

proptest! {
    #[test]
    fn turning_room_and_sun_together_changes_nothing(
        bearing in 150.0..330.0f64, height in 3.0..70.0f64, turn in 0.0..360.0f64,
    ) {
        let (one, two) = (lit(&room(240.0, 6.0), bearing, height), lit(&room(240.0 + turn, 6.0), bearing + turn, height));
        prop_assert_eq!(one.len(), two.len());
        for (a, b) in one.iter().zip(&two) {
            prop_assert!(a.surface == b.surface && (a.area() - b.area()).abs() < 1e-7);
        }
    }

    #[test]
    fn all_light_that_comes_in_falls_somewhere(
        bearing in 165.0..315.0f64, height in 2.0..80.0f64, reveal in 0.0..0.4f64,
    ) {
        // Seen from the sun, the patches together are as large as the clear rectangle.
        let mut room = room(240.0, 5.0);
        room.openings[0].reveal = m(reveal);
        let to_sun = room.room_from_world(sun(bearing, height));
        let seen = |outline: &[Vector<InRoom>], facing: Vector<InRoom>| area(outline) * facing.dot(to_sun).abs();
        let through: f64 = beams(&room, to_sun)
            .iter()
            .map(|beam| seen(&beam.clear, room.wall(0).unwrap().outward))
            .sum();
        let landed: f64 = patches(&room, to_sun)
            .iter()
            .map(|patch| match patch.surface {
                Surface::Wall(n) => seen(&patch.outline, room.wall(n).unwrap().outward),
                Surface::Floor | Surface::Ceiling => seen(&patch.outline, Vector::UP),
            })
            .sum();
        prop_assert!((through - landed).abs() < 1e-5, "{} {}", through, landed);
    }

    #[test]
    fn a_point_in_the_patch_is_in_the_beam(bearing in 200.0..280.0f64, height in 15.0..60.0f64) {
        let room = room(240.0, 30.0);
        let to_sun = room.room_from_world(sun(bearing, height));
        let patch = &patches(&room, to_sun)[0];
        let middle = patch.outline.iter().fold(Vector::new(0.0, 0.0, 0.0), |sum, point| sum + *point)
            * (1.0 / patch.outline.len() as f64);
        let beam = &beams(&room, to_sun)[0];
        prop_assert!(beam.reaches(middle));
        prop_assert!(!beam.reaches(middle + Vector::new(6.0, 0.0, 0.0)));
    }

    #[test]
    fn the_beam_agrees_with_the_sky_seen_from_a_point(
        bearing in 160.0..320.0f64, height in 5.0..70.0f64, reveal in 0.0..0.4f64, depth in 0.0..0.8f64,
        (x, y, z) in (18.0..23.0f64, 0.3..4.0f64, 0.1..2.2f64),
    ) {
        // The other way round, by code of its own: what the opening lets onto the point.
        let mut room = room(240.0, 10.0);
        room.openings[0].reveal = m(reveal);
        room.openings[0].overhang = Some(Overhang { depth: m(depth), above: m(0.1) });
        let (point, direction) = (Vector::new(x, y, z), sun(bearing, height));
        let sky = crate::place::aperture::cones(&room, &room.openings[0], point, Default::default());
        prop_assume!(sky.iter().flat_map(|sky| &sky.sides).all(|side| side.normal.dot(direction).abs() > 1e-9));
        let reached = beams(&room, room.room_from_world(direction)).iter().any(|beam| beam.reaches(point));
        prop_assert_eq!(reached, sky.iter().any(|sky| sky.contains(direction)));
    }
}
