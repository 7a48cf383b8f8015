//! A room over a day and a year: what a mark gets, where a face would get more, and all of it in words.
//!
//! | file | says |
//! |---|---|
//! | `dark` | between which dates the sun never reaches a mark |
//! | `head` | how long all of a head is in the sun, not only a point |
//! | `patch_day` | when the sun is on the floor, and when it climbs a wall |
//! | `hold_map` | minutes of the wished light over the floor: the best place for a chair |
//! | `follow` | where to move it, and when, to keep the light |
//! | `light_here` | the sky's light on front, cheeks, crown and floor |
//! | `story`, `tell` | sentences, and which of them are told |

pub mod dark;
pub mod follow;
pub mod head;
pub mod hold_map;
pub mod light_here;
pub mod patch_day;
pub mod story;
pub mod tell;

use chrono::NaiveDate;

use crate::place::aperture::apertures_at;
use crate::place::room::Room;
use crate::place::seasons::Around;
use crate::place::skyline::Skyline;
use crate::plan::stage::{Stage, StageOpening};
use crate::sky::search::SUN_RADIUS;
use crate::units::{Degrees, InRoom, Vector};

/// A room, ready to be asked for any spot in it.
#[derive(Clone, Debug, PartialEq)]
pub struct RoomStage {
    /// The wish, the lens and the zone; its openings and skyline are those of the mark it was made for.
    pub stage: Stage,
    /// The room.
    pub room: Room,
    /// What blocks the sky besides the room's own surroundings, the same for all spots in it.
    pub far: Around,
}

impl RoomStage {
    /// The same as if all days were like one, for what is asked of a single date.
    pub fn on(&self, date: NaiveDate) -> Self {
        let Self { stage, room, far } = self.clone();
        let skyline = stage.seasons.as_ref().map_or(&stage.skyline, |seasons| seasons.on(date)).clone();
        let far = Around { in_leaf: far.on(date).clone(), seasons: None };
        Self { stage: Stage { skyline, seasons: None, ..stage }, room, far }
    }

    /// The stage of a face at a point of the room.
    pub fn at(&self, face: Vector<InRoom>) -> Stage {
        let openings = Some(measured(&self.room, face));
        let Around { in_leaf, seasons } = self.far.map(|line| seen_from(&self.room, line, face));
        Stage { openings, skyline: in_leaf, seasons, ..self.stage.clone() }
    }
}

/// What blocks the sky from a point of a room.
pub fn seen_from(room: &Room, far: &Skyline, point: Vector<InRoom>) -> Skyline {
    if has_surroundings(room) { far.or(&room.line_from(point)) } else { far.clone() }
}

fn has_surroundings(room: &Room) -> bool {
    !(room.skyline.is_level() && room.screens.is_empty())
}

/// The openings of a room as a point of it sees them. Bars that never hide all of the sun's disc do not part its light.
pub fn measured(room: &Room, point: Vector<InRoom>) -> Vec<StageOpening> {
    let disc = Degrees::from_degrees(2.0 * SUN_RADIUS.degrees());
    apertures_at(room, point, disc)
        .into_iter()
        .map(|aperture| StageOpening {
            id: aperture.id,
            name: aperture.name,
            cones: aperture.cones,
            uncertainty: room.bearing_uncertainty,
        })
        .collect()
}
