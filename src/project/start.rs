//! New entities as they start: our own choice of first numbers, each of which the person can change.

use super::document::{At, Camera, Lens, Location, Project, Scene, SetUp};
use super::find::{Standing, free_name};
use crate::place::mark::{FACE_HEIGHT, Mark};
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::wall::COMPASS;
use crate::plan::lens::LensChoice;
use crate::plan::presets::PRESETS;
use crate::plan::wish::{Sky, Wish};
use crate::units::{Bearing, Degrees, Metres};
use crate::words;

/// A scene with the next free number and one set-up at the first mark of the first location.
pub fn scene(project: &Project, id: &str, set_up_id: &str) -> Scene {
    let number = free_number(project);
    let at = project.locations.first().map(|location| first_spot(location));
    Scene {
        id: id.to_owned(),
        title: format!("Scene {number}"),
        number,
        set_ups: vec![set_up(set_up_id, "A", at)],
    }
}

/// A set-up that asks for a low light from three-quarter back.
pub fn set_up(id: &str, name: &str, at: Option<At>) -> SetUp {
    let preset = &PRESETS[1];
    SetUp {
        id: id.to_owned(),
        name: name.to_owned(),
        at,
        lens: Lens {
            bearing: Bearing::from_degrees(0.0),
            choice: LensChoice::default(),
            bearing_uncertainty: COMPASS,
            distance: Metres::from_metres(2.5),
            height: FACE_HEIGHT,
            tilt: Degrees::default(),
            focal_mm: 50.0,
            camera: None,
        },
        minutes: 25,
        wish: Wish {
            arc: preset.arc,
            heights: preset.heights,
            sun_on_mark: preset.sun_on_mark,
            sky: Sky::Any,
            dates: Vec::new(),
            hours: None,
        },
        saved: Vec::new(),
        notes: String::new(),
    }
}

/// A location with nothing in it yet.
pub fn location(id: &str, name: &str, site: Site, zone: &str) -> Location {
    Location {
        id: id.to_owned(),
        name: name.to_owned(),
        site,
        accuracy: None,
        zone: zone.to_owned(),
        rooms: Vec::new(),
        marks: Vec::new(),
        skyline: Skyline::default(),
        backgrounds: Vec::new(),
        notes: String::new(),
    }
}

/// A mark with a free name among `marks`.
pub fn mark(id: &str, marks: &[Mark], [x, y]: [Metres; 2]) -> Mark {
    let name = free_name("Mark", marks.iter().map(|mark| mark.name.as_str()));
    Mark { id: id.to_owned(), name, x, y, face_height: FACE_HEIGHT, sighted: Vec::new() }
}

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

/// An opening's first sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpeningSize {
    /// "window".
    pub name: &'static str,
    /// Sill, width, height, reveal.
    pub sizes: [Metres; 4],
}

/// Sizes to begin with. Our own choice.
pub const OPENING_SIZES: [OpeningSize; 3] = [
    OpeningSize { name: "window", sizes: metres([0.9, 1.2, 1.2, 0.2]) },
    OpeningSize { name: "tall window", sizes: metres([0.5, 1.2, 2.0, 0.2]) },
    OpeningSize { name: "door", sizes: metres([0.0, 0.9, 2.05, 0.2]) },
];

/// An opening in the middle of the widest stretch of a wall that is still free, no larger than the wall leaves room
/// for; `None` if there is no such wall.
pub fn opening(id: &str, room: &Room, wall: usize, size: OpeningSize) -> Option<Opening> {
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

/// Where the widest stretch of a wall without openings begins and ends.
fn widest_gap(room: &Room, wall: usize, length: f64) -> [f64; 2] {
    let mut taken: Vec<[f64; 2]> = room
        .openings
        .iter()
        .filter(|opening| opening.wall == wall)
        .map(|opening| [opening.offset.metres(), opening.offset.metres() + opening.width.metres()])
        .collect();
    taken.push([length; 2]);
    taken.sort_by(|a, b| a[0].total_cmp(&b[0]));
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

/// A camera with a common format.
pub fn camera(id: &str) -> Camera {
    Camera { id: id.to_owned(), name: "Camera A".to_owned(), sensor_width_mm: 24.89, sensor_height_mm: 18.66 }
}

/// The first mark of a location, in a room if there is one.
pub fn first_spot(location: &Location) -> At {
    let room = location.rooms.iter().find(|room| !room.marks.is_empty());
    let mark = room.map_or(&location.marks, |room| &room.marks).first();
    At {
        location: location.id.clone(),
        room: room.map(|room| room.id.clone()),
        mark: mark.map(|mark| mark.id.clone()),
    }
}

/// A place where a subject can be, and what it is called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spot {
    /// The way there.
    pub at: At,
    /// "Sail loft, by the bench".
    pub words: String,
}

/// Every mark of the project, and every location as a whole.
pub fn spots(project: &Project) -> Vec<Spot> {
    let mut spots = Vec::new();
    for location in &project.locations {
        let mut add = |room: Option<&Room>, mark: Option<&Mark>| {
            let at = At {
                location: location.id.clone(),
                room: room.map(|room| room.id.clone()),
                mark: mark.map(|mark| mark.id.clone()),
            };
            spots.push(Spot { words: Standing { location, room, mark }.words(), at });
        };
        for room in &location.rooms {
            room.marks.iter().for_each(|mark| add(Some(room), Some(mark)));
        }
        location.marks.iter().for_each(|mark| add(None, Some(mark)));
        add(None, None);
    }
    spots
}

/// The first whole number that no scene has.
fn free_number(project: &Project) -> String {
    let taken = |number: &String| project.scenes.iter().any(|scene| scene.number == *number);
    let mut free = (1usize..).map(|number| number.to_string()).filter(|number| !taken(number));
    free.next().expect("there are more numbers than scenes")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn every_mark_is_a_spot() {
        let demo = demo::project();
        let spots = spots(&demo);
        assert!(spots.iter().any(|spot| spot.words == "Sail loft, by the bench"));
        assert!(
            demo.set_ups().all(|(_, set_up)| spots.iter().any(|spot| Some(&spot.at) == set_up.at.as_ref()))
        );
    }

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

    #[test]
    fn a_new_scene_has_a_free_number_and_a_place() {
        let demo = demo::project();
        let new = scene(&demo, "s", "u");
        assert!(demo.scenes.iter().all(|scene| scene.number != new.number));
        let at = new.set_ups[0].at.as_ref().unwrap();
        assert!(demo.standing(at).unwrap().mark.is_some());
        assert!(scene(&Project::empty("p", ""), "s", "u").set_ups[0].at.is_none());
    }
}
