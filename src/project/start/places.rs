//! Rooms, openings and blockers as they start.

use super::mark;
use crate::place::blocker::{Blocker, Kind};
use crate::place::opening::Opening;
use crate::place::outside::Screen;
use crate::place::room::Room;
use crate::project::find::free_name;
use crate::units::{Bearing, Degrees, Metres};
use crate::words;

/// A room's first sizes: width along the wall with the windows, depth, ceiling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoomSize {
    /// "small room".
    pub name: &'static str,
    /// Width, depth, ceiling.
    pub sizes: [Metres; 3],
}

/// Sizes to begin with. Our own choice.
pub const ROOM_SIZES: [RoomSize; 3] = [
    RoomSize { name: "small room", sizes: metres([4.0, 3.5, 2.5]) },
    RoomSize { name: "large room", sizes: metres([6.5, 5.0, 2.8]) },
    RoomSize { name: "hall", sizes: metres([14.0, 9.0, 5.0]) },
];

/// A rectangular room with a mark in its middle.
pub fn room(ids: [&str; 2], rooms: &[Room], sizes: [Metres; 3], wall_bearing: Bearing) -> Room {
    let name = free_name("Room", rooms.iter().map(|room| room.name.as_str()));
    let middle = [sizes[0], sizes[1]].map(|size| Metres::from_metres(size.metres() / 2.0));
    Room { marks: vec![mark(ids[1], &[], middle)], ..Room::rectangle(ids[0], &name, sizes, wall_bearing) }
}

/// A blocker's first sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlockerSize {
    /// "house".
    pub name: &'static str,
    /// What it is.
    pub kind: Kind,
    /// Distance, width, depth, height.
    pub sizes: [Metres; 4],
}

/// Sizes to begin with. Our own choice.
pub const BLOCKER_SIZES: [BlockerSize; 4] = [
    BlockerSize { name: "house", kind: Kind::House, sizes: metres([20.0, 12.0, 10.0, 8.0]) },
    BlockerSize { name: "wall", kind: Kind::Wall, sizes: metres([10.0, 10.0, 0.0, 2.5]) },
    BlockerSize { name: "roof edge", kind: Kind::Parapet, sizes: metres([3.0, 10.0, 0.0, 1.1]) },
    BlockerSize { name: "tree", kind: Kind::Tree, sizes: metres([15.0, 8.0, 0.0, 12.0]) },
];

/// A blocker to the south, with a free name.
pub fn blocker(id: &str, blockers: &[Blocker], size: BlockerSize) -> Blocker {
    let [distance, width, depth, height] = size.sizes;
    Blocker {
        id: id.to_owned(),
        name: free_name(&words::capital(size.name), blockers.iter().map(|blocker| blocker.name.as_str())),
        kind: size.kind,
        bearing: Bearing::from_degrees(180.0),
        distance,
        width,
        depth,
        height,
        turned: Degrees::default(),
        leaves: None,
    }
}

/// An opening's first sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpeningSize {
    /// "window".
    pub name: &'static str,
    /// Whether it is in the ceiling.
    pub in_ceiling: bool,
    /// Sill, width, height, reveal; of a roof light the sill is not used.
    pub sizes: [Metres; 4],
}

/// Sizes to begin with. Our own choice.
pub const OPENING_SIZES: [OpeningSize; 4] = [
    OpeningSize { name: "window", in_ceiling: false, sizes: metres([0.9, 1.2, 1.2, 0.2]) },
    OpeningSize { name: "tall window", in_ceiling: false, sizes: metres([0.5, 1.2, 2.0, 0.2]) },
    OpeningSize { name: "door", in_ceiling: false, sizes: metres([0.0, 0.9, 2.05, 0.2]) },
    OpeningSize { name: "roof light", in_ceiling: true, sizes: metres([0.0, 0.8, 1.2, 0.3]) },
];

/// An opening in the middle of the widest stretch of a wall that is still free, no larger than the wall leaves room
/// for; `None` if there is no such wall.
pub fn opening(id: &str, room: &Room, wall: usize, size: OpeningSize) -> Option<Opening> {
    if size.in_ceiling {
        return Some(roof_light(id, room, size));
    }
    let length = room.wall(wall)?.length;
    let [sill, width, height, reveal] = size.sizes.map(Metres::metres);
    let [from, to] = widest_gap(room, wall, length.metres());
    let width = width.min(length.metres());
    let sill = sill.min(room.ceiling.metres() / 2.0);
    let height = height.min(room.ceiling.metres() - sill);
    let offset = ((from + to - width) / 2.0).clamp(0.0, length.metres() - width);
    let name =
        free_name(&words::capital(size.name), room.openings.iter().map(|opening| opening.name.as_str()));
    let opening = Opening::rectangle(id, &name, wall, metres([offset, sill, width, height]));
    Some(Opening { reveal: Metres::from_metres(reveal), ..opening })
}

/// A roof light over the middle of the floor; where the floor leaves no room there, it is for its owner to move.
fn roof_light(id: &str, room: &Room, size: OpeningSize) -> Opening {
    let [_, width, height, reveal] = size.sizes;
    let [x, y] = room.middle();
    let near = |middle: Metres, size: Metres| Metres::from_metres(middle.metres() - size.metres() / 2.0);
    let sizes = [near(x, width), near(y, height), width, height];
    let name =
        free_name(&words::capital(size.name), room.openings.iter().map(|opening| opening.name.as_str()));
    Opening { in_ceiling: true, reveal, ..Opening::rectangle(id, &name, 0, sizes) }
}

/// A house front across the street, before wall 0, with a free name.
pub fn screen(id: &str, room: &Room) -> Screen {
    let half = Degrees::from_degrees(30.0);
    let [distance, height, ..] = metres([12.0, 8.0, 0.0, 0.0]);
    let name = free_name("House across the street", room.screens.iter().map(|screen| screen.name.as_str()));
    let from = room.wall_bearing.turned(Degrees::from_degrees(-half.degrees()));
    Screen { id: id.to_owned(), name, distance, from, to: room.wall_bearing.turned(half), height }
}

/// Where the widest stretch of a wall without openings begins and ends.
fn widest_gap(room: &Room, wall: usize, length: f64) -> [f64; 2] {
    let mut taken: Vec<[f64; 2]> = room
        .openings
        .iter()
        .filter(|opening| !opening.in_ceiling && opening.wall == wall)
        .map(|opening| [opening.offset.metres(), opening.offset.metres() + opening.width.metres()])
        .collect();
    taken.push([length; 2]);
    crate::order::by(&mut taken, |a, b| a[0].total_cmp(&b[0]));
    let (mut widest, mut free) = ([0.0; 2], 0.0f64);
    for [from, to] in taken {
        if from - free > widest[1] - widest[0] {
            widest = [free, from];
        }
        free = free.max(to);
    }
    widest
}

const fn metres<const N: usize>(numbers: [f64; N]) -> [Metres; N] {
    let mut all = [Metres::from_metres(0.0); N];
    let mut at = 0;
    while at < N {
        all[at] = Metres::from_metres(numbers[at]);
        at += 1;
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn new_openings_find_a_free_place_and_fit() {
        for size in ROOM_SIZES {
            let mut room = room(["r", "m"], &[], size.sizes, Bearing::default());
            for number in 0..2 {
                let found = opening(&number.to_string(), &room, 0, OPENING_SIZES[1]).unwrap();
                room.openings.push(found);
            }
            assert_eq!(room.check(), [], "{}", size.name);
            let [one, two] = [&room.openings[0], &room.openings[1]];
            assert_ne!(one.name, two.name);
            let apart = (one.offset.metres() - two.offset.metres()).abs();
            assert!(apart > one.width.metres(), "{}: {apart} m", size.name);
        }
        let tiny = Room::rectangle("t", "t", metres([0.5, 0.5, 1.0]), Bearing::default());
        let mut with_door = tiny.clone();
        with_door.openings.extend(opening("o", &tiny, 0, OPENING_SIZES[2]));
        assert_eq!(with_door.check(), []);
        assert_eq!(opening("o", &tiny, 9, OPENING_SIZES[0]), None);
    }
}
