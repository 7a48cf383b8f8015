//! The project document, version 1.
//!
//! One JSON object. Times are RFC 3339 UTC, dates ISO 8601, every other number carries its unit in its name
//! (`_deg`, `_m`, `_mm`). Entities are behind [`Arc`], so that an edit copies only what it changes and undo is the
//! previous root.
//!
//! | path | holds | by |
//! |---|---|---|
//! | `format`, `version` | [`FORMAT`], [`VERSION`] | [`Project`] |
//! | `id`, `title`, `invented`, `dates[]` | which production, when it could shoot | [`Project`] |
//! | `cameras[]` | size of the picture on the sensor, what is set | [`Camera`] |
//! | `kit[]` | lamps, boards, frames that are brought | [`Gear`] |
//! | `locations[]` | coordinates, zone, skyline, blockers, backgrounds, scout sheet, notes | [`Location`] |
//! | `locations[].lights[]`, `locations[].readings[]` | lights that are there, a meter's word | [`There`], [`Reading`] |
//! | `locations[].photographs[]` | when they were taken in and what they show; in a file on wish with the picture | [`Photograph`] |
//! | `locations[].rooms[]` | floor, ceiling, bearing | [`Room`] |
//! | `locations[].rooms[].openings[]` | windows, doors, gaps | [`crate::place::opening::Opening`] |
//! | `locations[].marks[]`, `locations[].rooms[].marks[]` | where a face is, openings sighted from there | [`Mark`] |
//! | `scenes[]` | number, title, match limit | [`Scene`] |
//! | `scenes[].set_ups[]` | place, facing, lens, way, minutes, notes | [`SetUp`] |
//! | `scenes[].set_ups[].wish` | the light wanted | [`Wish`] |
//! | `scenes[].set_ups[].rig` | what of the kit stands there, the ratio wanted | [`Rig`] |
//! | `scenes[].set_ups[].grip` | frame, flag and mirror | [`GripKit`] |
//! | `shoot` | days, limits and rules, what places take, the plan | [`Shoot`] |
//! | `scenes[].set_ups[].saved[]` | slots that were kept | [`SavedSlot`] |
//! | `scenes[].set_ups[].shots[]` | what was shot, with note and meter reading | [`Taken`] |
//!
//! Every entity has an `id` that is its own among its kind in the whole project (slots and shots: in the set-up; sightings:
//! at the mark). Set-ups refer to location, room, mark and camera by id. Members that a build does not know are
//! kept by [`super::unknown`]; files are read by [`super::restore`] and written by [`super::canonical`], never
//! by these types alone.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::photograph::Photograph;
use super::scout::ScoutSheet;
use super::shoot::Shoot;
use super::taken::Taken;
use super::unknown::Unknown;
use crate::light::daylight::ground::Surface;
use crate::light::face::Facing;
use crate::place::background::Background;
use crate::place::blocker::Blocker;
use crate::place::mark::Mark;
use crate::place::room::Room;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::plan::cutting::match_limit::MatchLimit;
use crate::plan::grip::kit::GripKit;
use crate::plan::kit::{CameraSettings, Gear, Reading, Rig, There};
use crate::plan::legs::travel::Travel;
use crate::plan::wish::lens::LensChoice;
use crate::plan::wish::{DateRange, Wish};
use crate::units::{Bearing, Degrees, Instant, Metres};

/// What the `format` member says in every file of ours.
pub const FORMAT: &str = "slantlight-project";

/// The version this build writes.
pub const VERSION: u32 = 1;

/// One production.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Project {
    /// Always [`FORMAT`].
    pub format: String,
    /// Always [`VERSION`] in memory; older files are migrated as they are read.
    pub version: u32,
    /// Stable for the life of the project.
    pub id: String,
    /// Working title.
    pub title: String,
    /// Whether this is the invented demo project.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub invented: bool,
    /// Dates on which the production could shoot; empty means not known yet.
    #[serde(default)]
    pub dates: Vec<DateRange>,
    /// Cameras; the first is the one set-ups use unless they say otherwise.
    #[serde(default)]
    pub cameras: Vec<Arc<Camera>>,
    /// Lamps, boards and frames that are brought.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kit: Vec<Arc<Gear>>,
    /// Where we shoot.
    #[serde(default)]
    pub locations: Vec<Arc<Location>>,
    /// What we shoot.
    #[serde(default)]
    pub scenes: Vec<Arc<Scene>>,
    /// When it is shot, and by which rules.
    #[serde(default, skip_serializing_if = "Shoot::is_empty")]
    pub shoot: Shoot,
    /// What the file said beyond all this; written back by [`super::canonical`].
    #[serde(skip)]
    pub unknown: Arc<Unknown>,
}

/// A camera: its frame, and what is set on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Camera {
    /// Stable within the project.
    pub id: String,
    /// "A camera".
    pub name: String,
    /// Width of the picture on sensor or film.
    #[serde(rename = "sensor_width_mm")]
    pub sensor_width_mm: f64,
    /// Height of the picture on sensor or film.
    #[serde(rename = "sensor_height_mm")]
    pub sensor_height_mm: f64,
    /// What is set on it, and what it cannot do.
    #[serde(default, skip_serializing_if = "CameraSettings::is_usual")]
    pub settings: CameraSettings,
}

/// A place we shoot at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Location {
    /// Stable within the project.
    pub id: String,
    /// "Salt pans".
    pub name: String,
    /// Where on Earth.
    #[serde(flatten)]
    pub site: Site,
    /// How exact the position is, when the phone has said so.
    #[serde(rename = "accuracy_m", default, skip_serializing_if = "Option::is_none")]
    pub accuracy: Option<Metres>,
    /// IANA zone, "Europe/Lisbon".
    pub zone: String,
    /// Rooms.
    #[serde(default)]
    pub rooms: Vec<Room>,
    /// Marks in the open; x east, y north of the location.
    #[serde(default)]
    pub marks: Vec<Mark>,
    /// What blocks the sky, seen from there; without points the level horizon.
    #[serde(default, skip_serializing_if = "Skyline::is_level")]
    pub skyline: Skyline,
    /// What hides the sky at a known distance, so that each mark sees it elsewhere.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub blockers: Vec<Blocker>,
    /// What stands behind the subject, by bearing, and whether it may be seen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub backgrounds: Vec<Background>,
    /// What its ground is.
    #[serde(default, skip_serializing_if = "Surface::is_unknown")]
    pub ground: Surface,
    /// Lights that are there already.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lights: Vec<There>,
    /// Readings of a meter in the open.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<Reading>,
    /// What was found out there, and what is not known yet.
    #[serde(default, skip_serializing_if = "ScoutSheet::is_empty")]
    pub scout: ScoutSheet,
    /// Photographs from there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photographs: Vec<Photograph>,
    /// Whatever the crew must know.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

/// A scene of the script.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Scene {
    /// Stable within the project.
    pub id: String,
    /// "4", "12A": as the script numbers it.
    pub number: String,
    /// "Mending the sail".
    pub title: String,
    /// Its set-ups.
    #[serde(default)]
    pub set_ups: Vec<SetUp>,
    /// How far the light may change between its takes.
    #[serde(rename = "match", default, skip_serializing_if = "MatchLimit::is_usual")]
    pub match_limit: MatchLimit,
}

/// One camera position and light state.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SetUp {
    /// Stable within the project.
    pub id: String,
    /// "A".
    pub name: String,
    /// Where the subject is; `None` until it is chosen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<At>,
    /// Where the camera looks from and with what.
    pub lens: Lens,
    /// Minutes of the wished light that the set-up takes.
    pub minutes: u32,
    /// The light wanted.
    pub wish: Wish,
    /// What of the kit stands there, and the ratio wanted.
    #[serde(default, skip_serializing_if = "Rig::is_empty")]
    pub rig: Rig,
    /// Frame, flag and mirror of the grip.
    #[serde(default, skip_serializing_if = "GripKit::is_usual")]
    pub grip: GripKit,
    /// Where the subject's nose points; `None` if nobody has said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub facing: Option<Facing>,
    /// The way of a subject that moves.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub travel: Option<Travel>,
    /// Slots that were kept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub saved: Vec<SavedSlot>,
    /// What was shot, the earliest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shots: Vec<Taken>,
    /// Whatever the crew must know.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

/// A mark, by the ids that lead to it. No mark means the location itself, in the open.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct At {
    /// Location.
    pub location: String,
    /// Room of the location; `None` in the open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub room: Option<String>,
    /// Mark of the room, or of the location.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mark: Option<String>,
}

/// The lens, seen from the subject.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lens {
    /// Where the camera looks, true.
    #[serde(rename = "bearing_deg")]
    pub bearing: Bearing,
    /// How far off that bearing may be.
    #[serde(rename = "bearing_uncertainty_deg")]
    pub bearing_uncertainty: Degrees,
    /// How far the camera may be moved about the subject instead.
    #[serde(default, skip_serializing_if = "LensChoice::is_fixed")]
    pub choice: LensChoice,
    /// Camera to subject.
    #[serde(rename = "distance_m")]
    pub distance: Metres,
    /// Lens above the floor.
    #[serde(rename = "height_m")]
    pub height: Metres,
    /// Upwards positive.
    #[serde(rename = "tilt_deg", default)]
    pub tilt: Degrees,
    /// Focal length.
    pub focal_mm: f64,
    /// Camera; `None` for the project's first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub camera: Option<String>,
}

/// A slot that was kept. The search may find it slightly moved later; what was promised stays written here.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SavedSlot {
    /// Stable within the project.
    pub id: String,
    /// Begin.
    pub start: Instant,
    /// End.
    pub end: Instant,
    /// Where the lens looks for it, when the set-up leaves that free.
    #[serde(rename = "lens_deg", default, skip_serializing_if = "Option::is_none")]
    pub lens: Option<Bearing>,
}
