//! The demo project: "Salt and thread", an invented short film about a sail-maker on a tidal lagoon.
//!
//! Everything in it is made up; the coordinates lie on a real lagoon coast, so that the sun is real.
//! It is written as code, not kept as a file, so that it can never be of an older version than the app.

mod scenes;

use std::sync::Arc;

use super::document::{Camera, FORMAT, Location, Project, VERSION};
use super::scout::ScoutSheet;
use super::shoot::Shoot;
use crate::light::daylight::ground::Surface;
use crate::light::exposure::flicker::Mains;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::room::{REFLECTANCE, Room};
use crate::place::site::Site;
use crate::place::skyline::{Point, Skyline};
use crate::plan::kit::{CameraSettings, Gear, LampColour, There, generic};
use crate::units::{Bearing, Degrees, Height, Latitude, Longitude, Lux, Metres};

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
            settings: CameraSettings::default(),
        })],
        locations: vec![Arc::new(sail_loft()), Arc::new(salt_pans()), Arc::new(ferry_slip())],
        kit: kit(),
        scenes: scenes::scenes().into_iter().map(Arc::new).collect(),
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
            kit: Vec::new(),
            locations: Vec::new(),
            scenes: Vec::new(),
            shoot: Shoot::default(),
            unknown: Arc::default(),
        }
    }
}

/// What the invented production brings: generic pieces.
fn kit() -> Vec<Arc<Gear>> {
    let wanted = [
        "White board, 1.2 × 1.2 m",
        "Black cloth, 1.2 × 1.2 m",
        "Small panel, 0.6 × 0.3 m",
        "Tube, 1.2 m, red",
    ];
    let found = generic::examples().into_iter().filter(|one| wanted.contains(&one.0));
    found.enumerate().map(|(at, one)| Arc::new(generic::gear(&format!("gear-{}", at + 1), one))).collect()
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
        reflectance: REFLECTANCE,
        openings: vec![
            window("loft-left", "Loft window, left", 4.6),
            window("loft-right", "Loft window, right", 1.8),
        ],
        marks: vec![
            mark("bench", "by the bench", [3.6, 2.6], 1.25),
            mark("desk", "ledger desk", [1.1, 1.6], 1.2),
        ],
        skyline: Skyline::default(),
        screens: Vec::new(),
    };
    Location {
        rooms: vec![loft],
        scout: sheet(&[
            (
                "power",
                Some("Two sockets on one 16 A circuit, the kettle on the same one; panel under the stairs."),
            ),
            ("access", Some("Outside stair, door 80 cm wide, no lift. Key from the office next door.")),
            ("noise", None),
            ("permission", None),
        ]),
        notes: "Ask before moving the cutting table.".to_owned(),
        ..location("sail-loft", "Sail loft", 40.6405, -8.6538)
    }
}

/// A scout sheet; `None` is *not known*.
fn sheet(rows: &[(&str, Option<&str>)]) -> ScoutSheet {
    // Collected, it would bring a sort of its own into what a first visit waits for.
    let mut sheet = ScoutSheet::new();
    sheet.extend(rows.iter().map(|(key, says)| ((*key).to_owned(), says.map(str::to_owned))));
    sheet
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
        ground: Surface::Brick,
        lights: vec![There {
            id: "door-lamp".to_owned(),
            name: "Lamp at the door".to_owned(),
            lux: Lux::from_lux(20.0),
            bearing: None,
            colour: LampColour::white(2200.0),
            mains: Some(Mains::Hertz50),
            hours: None,
        }],
        notes: "A hill stands to the south-west. Street lamps come on at dusk. Wet stone: slippery."
            .to_owned(),
        skyline: hill(),
        ..location("ferry-slip", "Ferry slip", 40.6216, -8.7415)
    }
}

/// The hill to the south-west of the slip.
fn hill() -> Skyline {
    let points = [(205.0, 0.0), (218.0, 5.5), (231.0, 9.0), (240.0, 7.0), (252.0, 3.0), (262.0, 0.0)];
    Skyline::new(
        points
            .map(|(bearing, height)| Point {
                bearing: Bearing::from_degrees(bearing),
                height: Height::clamped(height),
            })
            .to_vec(),
    )
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
        blockers: Vec::new(),
        backgrounds: Vec::new(),
        ground: Surface::default(),
        lights: Vec::new(),
        readings: Vec::new(),
        scout: ScoutSheet::new(),
        photographs: Vec::new(),
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
