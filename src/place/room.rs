//! Rooms: a floor polygon with upright walls.
//!
//! Corners run counter-clockwise seen from above; wall `n` runs from corner `n` to corner `n + 1`, so the room
//! lies to its left and its outward normal to its right. Room axes: origin at corner 0, x along wall 0 to
//! corner 1, y into the room, z up from the floor. The one bearing of a room is that of wall 0's outward normal:
//! y points the opposite way, and x points to the bearing − 90°.
//! (In the words of the screens, wall `n` is "wall n + 1".)

use serde::{Deserialize, Serialize};

use super::mark::Mark;
use super::opening::Opening;
use super::outside::Screen;
use super::skyline::Skyline;
use crate::units::{Bearing, Degrees, Metres, Share};

/// A room of a location.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Room {
    /// Stable within the project.
    pub id: String,
    /// "Sail loft, upstairs".
    pub name: String,
    /// Outward normal of wall 0, true.
    #[serde(rename = "wall_bearing_deg")]
    pub wall_bearing: Bearing,
    /// How far off that bearing may be; 5° for a compass unless the user says better.
    #[serde(rename = "bearing_uncertainty_deg")]
    pub bearing_uncertainty: Degrees,
    /// Corners `[x, y]` in room axes, 3 to 12 of them, counter-clockwise, the first at `[0, 0]`, the second at `[x, 0]`.
    #[serde(rename = "floor_m")]
    pub floor: Vec<[Metres; 2]>,
    /// Ceiling above the floor.
    #[serde(rename = "ceiling_m")]
    pub ceiling: Metres,
    /// What its walls, floor and ceiling give back, all in all.
    #[serde(default = "usual", skip_serializing_if = "is_usual")]
    pub reflectance: Share,
    /// Openings in its walls.
    #[serde(default)]
    pub openings: Vec<Opening>,
    /// Marks on its floor.
    #[serde(default)]
    pub marks: Vec<Mark>,
    /// What is far off and blocks the sky, seen from the room; besides the location's own.
    #[serde(default, skip_serializing_if = "Skyline::is_level")]
    pub skyline: Skyline,
    /// Upright screens outside, near enough that each spot of the room sees them elsewhere.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub screens: Vec<Screen>,
}

/// What a room gives back when nobody has said better: light ceiling, middling walls, dark floor. Common practice.
pub const REFLECTANCE: Share = Share::clamped(0.5);

const fn usual() -> Share {
    REFLECTANCE
}

fn is_usual(reflectance: &Share) -> bool {
    *reflectance == REFLECTANCE
}
