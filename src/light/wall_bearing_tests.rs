//! Each way must give back the bearing of a room whose light was computed the other way round.

use super::*;
use crate::light::patch::{Surface, patches};
use crate::units::{Height, InRoom};
use proptest::prelude::*;

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

fn sun(bearing: f64, height: f64) -> Vector<World> {
    Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
}

fn off(found: FromSun, bearing: f64) -> f64 {
    found.bearing.turn_to(Bearing::from_degrees(bearing)).degrees().abs()
}

#[test]
fn a_graze_is_a_quarter_turn_from_the_sun() {
    let watch = Duration::from_minutes(2);
    // North of the tropics the sun goes clockwise: it begins on a wall that faces 90° further.
    let began = from_graze(Graze::Began, [sun(110.0, 20.0), sun(110.2, 20.1)], watch);
    assert!(off(began, 200.0) < 1e-9 && (began.good_to.degrees() - maths::hypot(0.4, 0.2837)).abs() < 1e-3);
    let ceased = from_graze(Graze::Ceased, [sun(290.0, 20.0), sun(290.2, 19.9)], watch);
    assert!(off(ceased, 200.0) < 1e-9);
    // South of them it goes the other way.
    let south = from_graze(Graze::Began, [sun(70.0, 20.0), sun(69.8, 20.1)], watch);
    assert!(off(south, 340.0) < 1e-9);
}

proptest! {
    #[test]
    fn a_patch_gives_the_bearing_back(
        turn in 0.0..360.0f64, aside in -50.0..50.0f64, height in 15.0..60.0f64, reveal in 0.0..0.3f64,
        left in any::<bool>(), head in any::<bool>(),
    ) {
        let mut room = Room::rectangle("r", "r", [m(60.0), m(40.0), m(3.0)], Bearing::from_degrees(turn));
        let opening = Opening { reveal: m(reveal), ..Opening::rectangle("o", "o", 0, [m(30.0), m(0.9), m(1.6), m(1.5)]) };
        room.openings.push(opening.clone());
        let light = sun(turn + aside, height);
        let found = patches(&room, room.room_from_world(light));
        prop_assume!(found.len() == 1 && found[0].surface == Surface::Floor && found[0].outline.len() == 4);
        // Seen from inside, left is where x is larger; the head's corners lie farther in.
        let outline = &found[0].outline;
        let far = |point: &Vector<InRoom>| point.y;
        let deepest = outline.iter().map(far).fold(0.0, f64::max);
        let row: Vec<_> = outline.iter().filter(|point| (far(point) > deepest - 1e-9) == head).collect();
        let at = row.into_iter().reduce(|one, other| if (other.x > one.x) == left { other } else { one }).unwrap();
        let taped = Taped { along: m(at.x), into: m(at.y), tape: m(0.02) };
        let found = from_patch(&opening, Corner { left, head }, taped, light).unwrap();
        prop_assert!(off(found, turn) < 1e-6, "{:?}", found);
        let [expected, measured] = found.lengths.unwrap();
        prop_assert!((expected.metres() - measured.metres()).abs() < 1e-6, "{:?}", found.lengths);
        prop_assert!(found.good_to.degrees() < 5.0);
    }

    #[test]
    fn a_shadow_gives_the_bearing_back(turn in 0.0..360.0f64, bearing in 0.0..360.0f64, height in 5.0..70.0f64) {
        let room = Room::rectangle("r", "r", [m(6.0), m(4.0), m(3.0)], Bearing::from_degrees(turn));
        let light = sun(bearing, height);
        let way = room.room_from_world(light);
        let tip = Taped { along: m(-way.x / way.z * 1.8), into: m(-way.y / way.z * 1.8), tape: m(0.01) };
        let found = from_upright(tip, Some(m(1.8)), light).unwrap();
        prop_assert!(off(found, turn) < 1e-9);
        let [expected, measured] = found.lengths.unwrap();
        prop_assert!((expected.metres() / measured.metres() - 1.0).abs() < 1e-9);
        // For another wall the room turns with it.
        let turned = turned_to(&room, 1, found).unwrap();
        prop_assert!(turned.bearing_of(1).unwrap().turn_to(found.bearing).degrees().abs() < 1e-9);
    }
}

#[test]
fn nothing_measured_is_no_bearing() {
    let none = Taped { along: m(0.0), into: m(0.0), tape: m(0.01) };
    assert_eq!(from_upright(none, None, sun(100.0, 30.0)), None);
    let roof = Opening { in_ceiling: true, ..Opening::rectangle("o", "o", 0, [m(1.0); 4]) };
    assert_eq!(from_patch(&roof, Corner { left: true, head: true }, none, sun(100.0, 30.0)), None);
}
