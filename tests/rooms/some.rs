//! Rooms to be asked: six floors, with openings of every kind, and screens outside.

use proptest::prelude::*;
use slantlight::place::opening::{Bars, Opening, Overhang};
use slantlight::place::outside::Screen;
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Metres};

/// Floors counter-clockwise, the first corner at the origin: a box, an L, a U, a T, a lozenge and a lean one with a niche.
const FLOORS: [&[[f64; 2]]; 6] = [
    &[[0.0, 0.0], [6.0, 0.0], [6.0, 4.0], [0.0, 4.0]],
    &[[0.0, 0.0], [7.0, 0.0], [7.0, 3.0], [3.0, 3.0], [3.0, 6.0], [0.0, 6.0]],
    &[[0.0, 0.0], [9.0, 0.0], [9.0, 6.0], [6.0, 6.0], [6.0, 2.0], [3.0, 2.0], [3.0, 6.0], [0.0, 6.0]],
    &[[0.0, 0.0], [3.0, 0.0], [3.0, 3.0], [5.0, 3.0], [5.0, 6.0], [-2.0, 6.0], [-2.0, 3.0], [0.0, 3.0]],
    &[[0.0, 0.0], [4.0, 0.0], [6.0, 3.0], [3.0, 6.0], [-1.0, 4.0]],
    &[[0.0, 0.0], [5.0, 0.0], [6.0, 2.0], [4.5, 2.5], [5.5, 5.0], [1.0, 6.0], [-0.5, 3.0]],
];

fn m(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

/// Shares of a wall's length and of the height, reveal, and what is around it.
fn opening() -> impl Strategy<Value = (usize, [f64; 4], f64, Opening)> {
    let overhang = proptest::option::of((0.1..1.5f64, 0.0..0.4f64));
    let bars = proptest::option::of((1u8..4, 1u8..4, 0.02..0.15f64));
    let shares = [0.02..0.5f64, 0.1..0.96f64, 0.0..0.5f64, 0.2..0.98f64];
    (0usize..10, shares, 0.0..0.5f64, overhang, bars).prop_map(|(wall, shares, reveal, overhang, bars)| {
        let mut one = Opening::rectangle("o", "o", 0, [m(0.0); 4]);
        one.overhang = overhang.map(|(depth, above)| Overhang { depth: m(depth), above: m(above) });
        one.bars = bars.map(|(rows, columns, bar)| Bars { rows, columns, thickness: m(bar) });
        (wall, shares, reveal, one)
    })
}

/// A room; openings whose wall has no number are roof lights.
pub fn room() -> impl Strategy<Value = Room> {
    let screens = prop::collection::vec((0.0..360.0f64, 5.0..120.0f64, 8.0..30.0f64, 1.0..15.0f64), 0..3);
    let parts =
        (0..FLOORS.len(), 2.3..4.0f64, 0.0..360.0f64, prop::collection::vec(opening(), 1..5), screens);
    parts.prop_map(|(floor, ceiling, turn, openings, screens)| {
        let mut room = Room::rectangle("r", "r", [m(1.0), m(1.0), m(ceiling)], Bearing::from_degrees(turn));
        room.floor = FLOORS[floor].iter().map(|corner| corner.map(m)).collect();
        for one in openings {
            let one = put(one, &room);
            // One a face, so that none overlap.
            let is_there = |other: &Opening| (other.wall, other.in_ceiling) == (one.wall, one.in_ceiling);
            if !room.openings.iter().any(is_there) {
                room.openings.push(one);
            }
        }
        room.screens = screens.into_iter().map(screen).collect();
        assert_eq!(room.check(), []);
        room
    })
}

/// Puts an opening into its wall, or into the widest rectangle of the ceiling that all floors have.
fn put((wall, [from, to, low, high], reveal, one): (usize, [f64; 4], f64, Opening), room: &Room) -> Opening {
    let in_ceiling = wall >= room.floor.len();
    let (length, tall) = match room.wall(wall) {
        Some(wall) => (wall.length.metres(), room.ceiling.metres()),
        None => (3.0, 2.0),
    };
    let (from, to) = (from.min(to * 0.9), from.max(to));
    let (low, high) = (low.min(high * 0.9), low.max(high));
    Opening {
        wall: if in_ceiling { 0 } else { wall },
        in_ceiling,
        offset: m(from * length),
        width: m((to - from) * length),
        sill: m(low * tall),
        height: m((high - low) * tall),
        reveal: m(reveal),
        overhang: one.overhang.filter(|_| !in_ceiling),
        ..one
    }
}

fn screen((from, span, distance, height): (f64, f64, f64, f64)) -> Screen {
    Screen {
        id: "s".to_owned(),
        name: "s".to_owned(),
        distance: m(distance),
        from: Bearing::from_degrees(from),
        to: Bearing::from_degrees(from + span),
        height: m(height),
    }
}

/// A point of the floor, by shares of what is around it; `None` where it falls outside.
pub fn spot(room: &Room, [x, y]: [f64; 2]) -> Option<[f64; 2]> {
    let at = [x * 11.0 - 2.0, y * 6.0];
    room.holds(m(at[0]), m(at[1])).then_some(at)
}
