//! The demo project: "Salt and thread", an invented short film about a sail-maker on a tidal lagoon.
//!
//! Everything in it is made up; the coordinates lie on a real lagoon coast, so that the sun is real.
//! It is written as code, not kept as a file, so that it can never be of an older version than the app.

use std::sync::Arc;

use super::document::{At, Camera, FORMAT, Lens, Location, Project, Scene, SetUp, VERSION};
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::plan::presets::PRESETS;
use crate::plan::wish::{self, Heights, SunOnMark, Wish};
use crate::units::{Bearing, Degrees, Height, Latitude, Longitude, Metres};

/// The demo's id; opening the demo again finds the same one.
pub const ID: &str = "salt-and-thread";

/// The demo project as it is first opened.
pub fn project() -> Project {
    Project {
        id: ID.to_owned(),
        title: "Salt and thread".to_owned(),
        invented: true,
        cameras: vec![Arc::new(Camera {
            id: "camera-a".to_owned(),
            name: "Camera A".to_owned(),
            sensor_width_mm: 24.89,
            sensor_height_mm: 18.66,
        })],
        locations: vec![Arc::new(sail_loft()), Arc::new(salt_pans()), Arc::new(ferry_slip())],
        scenes: scenes().into_iter().map(Arc::new).collect(),
        ..Project::empty("", "")
    }
}

impl Project {
    /// A project with a title and nothing in it.
    pub fn empty(id: &str, title: &str) -> Self {
        Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            id: id.to_owned(),
            title: title.to_owned(),
            invented: false,
            dates: Vec::new(),
            cameras: Vec::new(),
            locations: Vec::new(),
            scenes: Vec::new(),
            unknown: Arc::default(),
        }
    }
}

fn sail_loft() -> Location {
    let window = |id: &str, name: &str, offset: f64| Opening {
        reveal: metres(0.35),
        ..Opening::rectangle(id, name, 0, [offset, 0.9, 1.2, 1.7].map(metres))
    };
    let floor = [[0.0, 0.0], [8.0, 0.0], [8.0, 6.0], [0.0, 6.0]];
    let loft = Room {
        id: "loft".to_owned(),
        name: "Upper floor".to_owned(),
        wall_bearing: Bearing::from_degrees(248.0),
        bearing_uncertainty: Degrees::from_degrees(2.0),
        floor: floor.map(|corner| corner.map(metres)).to_vec(),
        ceiling: metres(3.4),
        openings: vec![
            window("loft-left", "Loft window, left", 4.6),
            window("loft-right", "Loft window, right", 1.8),
        ],
        marks: vec![
            mark("bench", "by the bench", [3.6, 2.6], 1.25),
            mark("desk", "ledger desk", [1.1, 1.6], 1.2),
        ],
    };
    Location {
        rooms: vec![loft],
        notes: "Ask before moving the cutting table. Power: one circuit, kettle on the same one.".to_owned(),
        ..location("sail-loft", "Sail loft", 40.6405, -8.6538)
    }
}

fn salt_pans() -> Location {
    Location {
        marks: vec![
            mark("crust", "crust, low", [0.0, 0.0], 0.2),
            mark("dyke", "top of the dyke", [40.0, -25.0], 1.6),
        ],
        notes: "Flat, full horizon. Deep mud beside the dykes; check the tide.".to_owned(),
        ..location("salt-pans", "Salt pans", 40.6449, -8.6642)
    }
}

fn ferry_slip() -> Location {
    Location {
        marks: vec![
            mark("door", "lamp at the door", [0.0, 0.0], 1.6),
            mark("slip", "foot of the slip", [-18.0, 6.0], 1.6),
        ],
        notes: "A hill stands to the south-west. Street lamps come on at dusk. Wet stone: slippery."
            .to_owned(),
        ..location("ferry-slip", "Ferry slip", 40.6216, -8.7415)
    }
}

fn scenes() -> Vec<Scene> {
    let low = heights(4.0, 16.0);
    let loft = |mark| at("sail-loft", Some("loft"), mark);
    let pans = |mark| at("salt-pans", None, mark);
    let slip = |mark| at("ferry-slip", None, mark);
    let split = wish("split");
    let mending = Wish { arc: arc(112.0, 165.0, true), heights: low, ..wish("three-quarter-back") };
    vec![
        scene("1", "The net mender", vec![set_up("1a", "A", pans("dyke"), (150.0, 35.0), 20, split)]),
        scene(
            "2",
            "Salt crust, macro",
            vec![set_up("2a", "A", pans("crust"), (262.0, 100.0), 30, wish("rim"))],
        ),
        scene(
            "3",
            "The ledger",
            vec![set_up("3a", "A", loft("desk"), (330.0, 50.0), 40, wish("window-wrap"))],
        ),
        scene(
            "4",
            "Mending the sail",
            vec![
                set_up("4a", "A", loft("bench"), (215.0, 50.0), 25, mending.clone()),
                set_up("4b", "B", loft("bench"), (230.0, 85.0), 20, mending),
            ],
        ),
        scene(
            "5",
            "Dust in the loft",
            vec![set_up("5a", "A", loft("desk"), (250.0, 35.0), 20, wish("shaft"))],
        ),
        scene(
            "6",
            "The ferry is late",
            vec![set_up("6a", "A", slip("slip"), (240.0, 75.0), 15, wish("silhouette"))],
        ),
        scene(
            "7",
            "Walking the dyke",
            vec![set_up(
                "7a",
                "A",
                pans("dyke"),
                (75.0, 135.0),
                15,
                Wish { heights: heights(2.0, 12.0), ..wish("rim") },
            )],
        ),
        scene(
            "8",
            "The rakes",
            vec![set_up(
                "8a",
                "A",
                pans("dyke"),
                (20.0, 25.0),
                45,
                Wish { arc: arc(0.0, 360.0, false), heights: heights(50.0, 75.0), ..wish("flat") },
            )],
        ),
        scene(
            "9",
            "Lamp at the door",
            vec![set_up("9a", "A", slip("door"), (300.0, 35.0), 8, wish("blue-hour"))],
        ),
        scene(
            "10",
            "The sail leaves",
            vec![set_up(
                "10a",
                "A",
                slip("slip"),
                (120.0, 100.0),
                20,
                Wish {
                    heights: heights(3.0, 20.0),
                    sun_on_mark: SunOnMark::Any,
                    ..wish("three-quarter-back")
                },
            )],
        ),
    ]
}

fn location(id: &str, name: &str, latitude: f64, longitude: f64) -> Location {
    Location {
        id: id.to_owned(),
        name: name.to_owned(),
        site: Site {
            latitude: Latitude::from_degrees(latitude).expect("within bounds"),
            longitude: Longitude::from_degrees(longitude).expect("within bounds"),
            elevation: metres(3.0),
        },
        accuracy: None,
        zone: "Europe/Lisbon".to_owned(),
        rooms: Vec::new(),
        marks: Vec::new(),
        skyline: Skyline::default(),
        backgrounds: Vec::new(),
        notes: String::new(),
    }
}

fn mark(id: &str, name: &str, [x, y]: [f64; 2], face: f64) -> Mark {
    Mark {
        id: id.to_owned(),
        name: name.to_owned(),
        x: metres(x),
        y: metres(y),
        face_height: metres(face),
        sighted: Vec::new(),
    }
}

fn at(location: &str, room: Option<&str>, mark: &str) -> At {
    At { location: location.to_owned(), room: room.map(str::to_owned), mark: Some(mark.to_owned()) }
}

fn scene(number: &str, title: &str, set_ups: Vec<SetUp>) -> Scene {
    Scene { id: format!("scene-{number}"), number: number.to_owned(), title: title.to_owned(), set_ups }
}

/// A set-up whose lens looks to `bearing` with a focal length in millimetres.
fn set_up(id: &str, name: &str, at: At, (bearing, focal_mm): (f64, f64), minutes: u32, wish: Wish) -> SetUp {
    SetUp {
        id: format!("set-up-{id}"),
        name: name.to_owned(),
        at: Some(at),
        lens: Lens {
            bearing: Bearing::from_degrees(bearing),
            bearing_uncertainty: Degrees::from_degrees(5.0),
            choice: crate::plan::lens::LensChoice::Fixed,
            distance: metres(2.5),
            height: metres(1.4),
            tilt: Degrees::from_degrees(0.0),
            focal_mm,
            camera: None,
        },
        minutes,
        wish,
        saved: Vec::new(),
        notes: String::new(),
    }
}

/// The wish of a preset.
fn wish(id: &str) -> Wish {
    let preset = PRESETS.iter().find(|preset| preset.id == id).expect("the demo names presets that exist");
    Wish {
        arc: preset.arc,
        heights: preset.heights,
        sun_on_mark: preset.sun_on_mark,
        sky: wish::Sky::Any,
        dates: Vec::new(),
        hours: None,
    }
}

fn arc(from: f64, to: f64, either_side: bool) -> wish::Arc {
    wish::Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side }
}

fn heights(from: f64, to: f64) -> Heights {
    Heights { from: Height::clamped(from), to: Height::clamped(to) }
}

const fn metres(metres: f64) -> Metres {
    Metres::from_metres(metres)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_has_what_a_demo_needs() {
        let demo = project();
        assert!(demo.invented);
        assert_eq!(demo.locations.len(), 3);
        assert!(demo.set_ups().count() >= 8);
        assert!(
            demo.set_ups().any(|(_, s)| s.at.as_ref().is_some_and(|at| at.room.is_some())),
            "an interior"
        );
        assert!(demo.set_ups().any(|(_, s)| s.wish.heights.to.degrees() < 0.0), "a dusk scene");
    }
}
