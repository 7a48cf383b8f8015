//! New entities as they start: our own choice of first numbers, each of which the person can change.

mod places;

pub use places::{
    BLOCKER_SIZES, BlockerSize, OPENING_SIZES, OpeningSize, ROOM_SIZES, RoomSize, blocker, opening, room,
    screen,
};

use std::sync::Arc;

use super::document::{At, Camera, Lens, Location, Project, Scene, SetUp};
use super::find::{Standing, free_name};
use crate::light::daylight::ground::Surface;
use crate::place::mark::{FACE_HEIGHT, Mark};
use crate::place::room::Room;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::wall::COMPASS;
use crate::plan::cutting::match_limit::MatchLimit;
use crate::plan::grip::kit::GripKit;
use crate::plan::kit::{CameraSettings, Rig};
use crate::plan::wish::face::{FaceWish, InPicture};
use crate::plan::wish::lens::LensChoice;
use crate::plan::wish::presets::PRESETS;
use crate::plan::wish::{Sky, Wish};
use crate::units::{Bearing, Degrees, Metres};

/// Minutes that a new set-up takes. Our own choice.
pub const MINUTES: u32 = 25;

/// A scene with the next free number and one set-up at the first mark of the first location.
pub fn scene(project: &Project, id: &str, set_up_id: &str) -> Scene {
    let number = free_number(project.scenes.iter().map(|scene| &**scene));
    let at = project.locations.first().map(|location| first_spot(location));
    Scene {
        id: id.to_owned(),
        title: format!("Scene {number}"),
        number,
        set_ups: vec![set_up(set_up_id, "A", at)],
        match_limit: MatchLimit::default(),
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
        minutes: MINUTES,
        wish: Wish {
            arc: preset.arc,
            heights: preset.heights,
            sun_on_mark: preset.sun_on_mark,
            sky: Sky::Any,
            dates: Vec::new(),
            hours: None,
            face: FaceWish::default(),
            in_picture: InPicture::Any,
            levels: Default::default(),
        },
        rig: Rig::default(),
        facing: None,
        grip: GripKit::default(),
        travel: None,
        saved: Vec::new(),
        shots: Vec::new(),
        notes: String::new(),
    }
}

/// "A" to "Z", then "AA", "AB" …: names of the set-ups of a scene, in order.
pub fn letters() -> impl Iterator<Item = String> {
    (0usize..).map(|place| {
        let (mut name, mut rest) = (String::new(), place + 1);
        while rest > 0 {
            name.insert(0, char::from(b'A' + ((rest - 1) % 26) as u8));
            rest = (rest - 1) / 26;
        }
        name
    })
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
        blockers: Vec::new(),
        backgrounds: Vec::new(),
        ground: Surface::default(),
        lights: Vec::new(),
        readings: Vec::new(),
        scout: Default::default(),
        photographs: Vec::new(),
        notes: String::new(),
    }
}

/// A mark with a free name among `marks`.
pub fn mark(id: &str, marks: &[Mark], [x, y]: [Metres; 2]) -> Mark {
    let name = free_name("Mark", marks.iter().map(|mark| mark.name.as_str()));
    Mark { id: id.to_owned(), name, x, y, face_height: FACE_HEIGHT, sighted: Vec::new() }
}

/// A camera with a common format.
pub fn camera(id: &str) -> Camera {
    Camera {
        id: id.to_owned(),
        name: "Camera A".to_owned(),
        sensor_width_mm: 24.89,
        sensor_height_mm: 18.66,
        settings: CameraSettings::default(),
    }
}

/// One more camera, named by the next letter that is free.
pub fn another_camera(id: &str, cameras: &[Arc<Camera>]) -> Camera {
    let names = ('A'..='Z').map(|letter| format!("Camera {letter}"));
    let free = names.into_iter().find(|name| cameras.iter().all(|camera| camera.name != *name));
    Camera { name: free.unwrap_or_else(|| "Camera".to_owned()), ..camera(id) }
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

/// The first whole number that none of the scenes has.
pub fn free_number<'a>(scenes: impl Iterator<Item = &'a Scene> + Clone) -> String {
    let taken = |number: &String| scenes.clone().any(|scene| scene.number == *number);
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
    fn letters_go_on_behind_z() {
        let names: Vec<_> = letters().take(26 * 27 + 1).collect();
        assert_eq!(
            [&names[0], &names[25], &names[26], &names[27], &names[26 * 27]],
            ["A", "Z", "AA", "AB", "AAA"]
        );
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
