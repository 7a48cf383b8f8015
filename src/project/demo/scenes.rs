//! What is shot in the demo: scenes, set-ups, and the light each of them wants.

use super::metres;
use crate::plan::cutting::match_limit::MatchLimit;
use crate::plan::grip::kit::GripKit;
use crate::plan::kit::{Placed, Rig, Side};
use crate::plan::wish::face::{FaceWish, InPicture};
use crate::plan::wish::lens::LensChoice;
use crate::plan::wish::presets::PRESETS;
use crate::plan::wish::{self, Heights, Wish};
use crate::project::document::{At, Lens, Scene, SetUp};
use crate::units::{Bearing, Degrees, Height, Mired, Share, Stops};

/// The scenes, in the order of the script.
pub(super) fn scenes() -> Vec<Scene> {
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
        Scene {
            match_limit: MatchLimit {
                shadow: Share::clamped(1.0),
                class_angle: Degrees::from_degrees(15.0),
                ratio: Stops::from_stops(1.5),
                colour: Mired::from_mired(60.0),
            },
            ..scene(
                "4",
                "Mending the sail",
                vec![
                    SetUp {
                        rig: bounce(),
                        ..set_up("4a", "A", loft("bench"), (215.0, 50.0), 25, mending.clone())
                    },
                    set_up("4b", "B", loft("bench"), (230.0, 85.0), 20, mending),
                ],
            )
        },
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
                Wish { heights: heights(3.0, 20.0), ..wish("three-quarter-back") },
            )],
        ),
    ]
}

/// A white board of the demo's kit at camera left, and 4 : 1 wanted.
fn bounce() -> Rig {
    Rig {
        ratio: Some(4.0),
        placed: vec![Placed { distance: metres(1.6), side: Side::Left, ..Placed::usual("gear-3") }],
        wet_minutes: None,
    }
}

fn at(location: &str, room: Option<&str>, mark: &str) -> At {
    At { location: location.to_owned(), room: room.map(str::to_owned), mark: Some(mark.to_owned()) }
}

fn scene(number: &str, title: &str, set_ups: Vec<SetUp>) -> Scene {
    Scene {
        id: format!("scene-{number}"),
        number: number.to_owned(),
        title: title.to_owned(),
        set_ups,
        match_limit: MatchLimit::default(),
    }
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
            choice: LensChoice::Fixed,
            distance: metres(2.5),
            height: metres(1.4),
            tilt: Degrees::from_degrees(0.0),
            focal_mm,
            camera: None,
        },
        minutes,
        wish,
        rig: Rig::default(),
        facing: None,
        grip: GripKit::default(),
        travel: None,
        saved: Vec::new(),
        shots: Vec::new(),
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
        face: FaceWish::default(),
        in_picture: InPicture::Any,
        levels: Default::default(),
    }
}

fn arc(from: f64, to: f64, either_side: bool) -> wish::Arc {
    wish::Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side }
}

fn heights(from: f64, to: f64) -> Heights {
    Heights { from: Height::clamped(from), to: Height::clamped(to) }
}
