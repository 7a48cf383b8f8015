//! The sky through openings against the handbook's examples, the plain window's closed form, and laws.

use super::*;
use crate::light::sky_component::FromPoint;
use crate::place::skyline::Point;
use crate::units::{Bearing, Height, Metres};
use proptest::prelude::*;

fn m<const N: usize>(sizes: [f64; N]) -> [Metres; N] {
    sizes.map(Metres::from_metres)
}

/// A window 2 m wide in wall 0, the middle of it before x = 5.
fn room(sill: f64, height: f64) -> Room {
    let mut room = Room::rectangle("r", "r", m([10.0, 8.0, 4.0]), Bearing::from_degrees(130.0));
    room.openings.push(Opening::rectangle("o", "o", 0, m([4.0, sill, 2.0, height])));
    room
}

fn table(x: f64, y: f64) -> Facing {
    Facing { at: Vector::new(x, y, 0.8), normal: Vector::UP }
}

fn bare(room: &Room, facing: Facing, sky: &SkyModel) -> f64 {
    Inside { room, line: &Skyline::default() }.sky_bare(facing, sky).ratio()
}

#[test]
fn t_c9_a_window_from_the_tables_height_up() {
    let room = room(0.8, 1.5);
    for (distance, percent) in [(1.0, 14.25), (2.0, 3.87), (3.0, 1.36), (4.0, 0.59)] {
        let found = 100.0 * bare(&room, table(5.0, distance), &SkyModel::OVERCAST);
        assert!((found - percent).abs() < 0.0051, "{distance}: {found}");
    }
    assert!((bare(&room, table(5.0, 2.0), &SkyModel::UNIFORM) - 2.0 * 0.025_344).abs() < 1e-6);
    // Worked: 13.8 klx outdoors, glass and frame 0.61: 326 lx.
    let lux = 13_800.0 * 0.61 * bare(&room, table(5.0, 2.0), &SkyModel::OVERCAST);
    assert!((lux - 326.0).abs() < 0.6, "{lux}");
}

#[test]
fn t_c10_a_sill_above_the_table() {
    let found = bare(&room(1.0, 1.5), table(5.0, 2.0), &SkyModel::OVERCAST);
    assert!((100.0 * found - 4.63).abs() < 0.0051, "{found}");
}

#[test]
fn t_c11_a_face_before_the_window() {
    // Sill 0.6 below and head 0.9 above the eye: the sky's part of the view factor is 0.1104.
    let room = room(0.9, 1.5);
    let facing = Facing { at: Vector::new(5.0, 2.0, 1.5), normal: Bearing::from_degrees(130.0).level() };
    let found = bare(&room, facing, &SkyModel::UNIFORM);
    assert!((found - 0.1104).abs() < 5e-5, "{found}");
    // Overcast, worked: 10 klx, 0.612: 403 lx.
    let lux = 10_000.0 * 0.612 * bare(&room, facing, &SkyModel::OVERCAST);
    assert!((lux - 403.0).abs() < 0.6, "{lux}");
}

#[test]
fn glass_bars_and_cover_take_their_share() {
    let mut room = room(0.8, 1.5);
    let line = Skyline::default();
    let total = |room: &Room| {
        let all = Inside { room, line: &line }.sky(table(5.0, 2.0), &SkyModel::OVERCAST);
        all.iter().map(|through| through.light).sum::<SkyShare>().ratio()
    };
    let open = total(&room);
    room.openings[0].transmittance = 0.89;
    assert!((total(&room) / open - 0.89 * 0.91).abs() < 1e-12);
    room.openings[0].transmittance = 1.0;
    room.openings[0].set_panes(3, 3);
    let share = total(&room) / open;
    assert!(share > 0.85 && share < 0.95, "{share}");
    room.openings[0].covered = true;
    assert_eq!(total(&room), 0.0);
}

#[test]
fn the_sun_comes_through_glass_aslant() {
    let mut room = room(0.8, 1.5);
    room.openings[0].transmittance = 0.78;
    let (line, at) = (Skyline::default(), Vector::new(5.0, 2.0, 1.0));
    let sun = |bearing, height| {
        let sun = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
        Inside { room: &room, line: &line }.sun(at, sun)
    };
    let straight = sun(130.0, 5.0);
    assert_eq!((straight.len(), straight[0].opening), (1, 0));
    assert!((straight[0].light.fraction() - 0.78).abs() < 0.001);
    assert_eq!(sun(310.0, 5.0), []);
    assert_eq!(sun(130.0, -1.0), [], "below the horizon");
}

#[test]
fn a_skyline_takes_what_is_below_it() {
    let (room, level) = (room(0.8, 1.5), Skyline::default());
    let line = |height: f64| {
        let point =
            |bearing| Point { bearing: Bearing::from_degrees(bearing), height: Height::clamped(height) };
        Skyline::new([0.0, 90.0, 180.0, 270.0].map(point).to_vec())
    };
    let share =
        |line: &Skyline| Inside { room: &room, line }.sky_bare(table(5.0, 2.0), &SkyModel::UNIFORM).ratio();
    // A level written out is the level.
    assert!((share(&line(0.0)) / share(&level) - 1.0).abs() < 1e-12);
    assert!(share(&line(10.0)) < share(&line(5.0)) && share(&line(5.0)) < share(&level));
    assert_eq!(share(&line(60.0)), 0.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn it_is_the_plain_windows_closed_form(head in 0.2..3.0f64, width in 0.1..4.0f64, distance in 0.3..7.0f64) {
        let [height, wide, away] = m([head, width, distance]);
        let plain = FromPoint { height, width: wide, distance: away };
        let mut room = room(0.8, head);
        (room.openings[0].offset, room.openings[0].width) = (Metres::from_metres(5.0), wide);
        prop_assert!((bare(&room, table(5.0, distance), &SkyModel::UNIFORM) - plain.uniform().fraction()).abs() < 1e-12);
        prop_assert!((bare(&room, table(5.0, distance), &SkyModel::OVERCAST) - plain.overcast().fraction()).abs() < 1e-12);
    }

    #[test]
    fn turning_room_sun_and_plane_together_changes_nothing(
        turn in 0.0..360.0f64, bearing in 0.0..360.0f64, tilt in -90.0..90.0f64, x in 0.2..9.8f64, y in 0.2..7.8f64,
    ) {
        let light = |by: f64| {
            let mut room = room(0.8, 1.5);
            room.wall_bearing = room.wall_bearing.turned(Degrees::from_degrees(by));
            let to = |bearing: f64, height: f64| Vector::towards(Bearing::from_degrees(bearing + by), Height::clamped(height));
            let facing = Facing { at: Vector::new(x, y, 1.4), normal: to(bearing, tilt) };
            [SkyModel::OVERCAST, SkyModel::clear(to(150.0, 35.0))].map(|sky| bare(&room, facing, &sky))
        };
        let (one, other) = (light(0.0), light(turn));
        prop_assert!((one[0] - other[0]).abs() < 1e-12);
        prop_assert!((one[1] - other[1]).abs() < 1e-3 * one[1] + 1e-9);
    }

    #[test]
    fn closing_an_opening_never_adds_light(
        bearing in 0.0..360.0f64, tilt in -90.0..90.0f64, x in 0.2..9.8f64, y in 0.2..7.8f64,
    ) {
        let mut room = room(0.8, 1.5);
        room.openings.push(Opening::rectangle("p", "p", 2, m([1.0, 0.5, 3.0, 2.0])));
        let normal = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(tilt));
        let facing = Facing { at: Vector::new(x, y, 1.4), normal };
        let open = bare(&room, facing, &SkyModel::OVERCAST);
        room.openings[0].covered = true;
        let closed = bare(&room, facing, &SkyModel::OVERCAST);
        prop_assert!(closed >= 0.0 && closed <= open);
    }
}
