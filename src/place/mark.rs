//! Marks: where the subject's face is.

use serde::{Deserialize, Serialize};

use super::opening::Sighting;
use crate::units::Metres;

/// Height of a seated-to-standing face when nobody has said better. Our own choice.
pub const FACE_HEIGHT: Metres = Metres::from_metres(1.5);

/// A position on the floor (room axes indoors, metres east and north of the location outdoors) and the height of the face.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Mark {
    /// Stable within the project.
    pub id: String,
    /// "mark 1", "by the bench".
    pub name: String,
    /// Along x: room axes, or east.
    #[serde(rename = "x_m", default)]
    pub x: Metres,
    /// Along y: room axes, or north.
    #[serde(rename = "y_m", default)]
    pub y: Metres,
    /// Face above the floor.
    #[serde(rename = "face_height_m")]
    pub face_height: Metres,
    /// Openings that were sighted from this very spot instead of measured in a room.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sighted: Vec<Sighting>,
}

impl Mark {
    /// A mark at `[x, y]` with the usual face height.
    pub fn new(id: &str, name: &str, [x, y]: [Metres; 2]) -> Self {
        Self { id: id.to_owned(), name: name.to_owned(), x, y, face_height: FACE_HEIGHT, sighted: Vec::new() }
    }
}
