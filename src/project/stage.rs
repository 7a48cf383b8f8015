//! From the document to the search: a set-up's ids looked up, its openings turned into parts of the sky.

use core::fmt;
use std::sync;

use super::document::{At, Lens, Project, SetUp};
use super::find::Standing;
use super::levels;
use super::shot::shot;
use crate::place::aperture::face;
use crate::place::blocker::Eye;
use crate::place::mark::{FACE_HEIGHT, Mark};
use crate::place::room::Room;
use crate::place::seasons::Around;
use crate::place::sighting::{SightingError, sighted};
use crate::place::zone::Zone;
use crate::plan::in_room::{self, RoomStage};
use crate::plan::levels::wished::Wished;
use crate::plan::shot::Shot;
use crate::plan::stage::{Stage, StageOpening};
use crate::plan::wish::face::{FaceWish, InPicture};
use crate::plan::wish::{Arc, Heights, Sky, SunOnMark, Wish};
use crate::units::{Bearing, Degrees, Duration, Height, InRoom, Metres, Vector};

/// Why a set-up or a mark cannot be searched yet.
#[derive(Clone, Debug, PartialEq)]
pub enum NotReady {
    /// The project has no such set-up.
    NoSetUp(String),
    /// Nobody has said where the set-up is.
    Nowhere,
    /// The place it names is not in the project any more.
    Lost(At),
    /// In a room the subject must stand on a mark.
    NoMark,
    /// An opening was sighted in a way that makes none.
    Sighting {
        /// The sighting's name.
        name: String,
        /// What is wrong with it.
        error: SightingError,
    },
}

impl fmt::Display for NotReady {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSetUp(id) => write!(f, "the project has no set-up '{id}'"),
            Self::Nowhere => f.write_str("the set-up has no place yet"),
            Self::Lost(at) => write!(f, "the set-up's place '{}' is not in the project", at.location),
            Self::NoMark => f.write_str("in a room the subject needs a mark"),
            Self::Sighting { name, error } => write!(f, "the sighting of '{name}': {error}"),
        }
    }
}

impl core::error::Error for NotReady {}

/// The set-up with an id, ready to be searched; `zone` is that of its location.
///
/// # Errors
/// It does not exist, stands nowhere, or its openings make no sense.
pub fn of_set_up(project: &Project, id: &str, zone: Zone) -> Result<Stage, NotReady> {
    let (_, set_up) = project.set_up(id).ok_or_else(|| NotReady::NoSetUp(id.to_owned()))?;
    on(project, set_up, &standing_of(project, set_up)?, zone)
}

/// A set-up as it would be on another mark.
///
/// # Errors
/// That has no mark in a room, or openings that make no sense.
pub fn on(project: &Project, set_up: &SetUp, standing: &Standing<'_>, zone: Zone) -> Result<Stage, NotReady> {
    let wish = set_up.wish.levels;
    let subject = || levels::at(project, set_up, standing, zone.clone());
    let levels = (!wish.is_empty()).then(subject).transpose()?;
    Ok(Stage {
        levels: levels.map(|subject| sync::Arc::new(Wished { wish, subject })),
        lens: set_up.lens.bearing,
        lens_uncertainty: set_up.lens.bearing_uncertainty,
        free: free(set_up, standing),
        wish: set_up.wish.clone(),
        takes: Duration::from_minutes(i64::from(set_up.minutes)),
        shot: shot(project, set_up, standing),
        ..at_mark(standing, zone)?
    })
}

/// A mark without a set-up, for "when does the sun come through onto this spot": any light, for any time.
///
/// # Errors
/// In a room no mark was given, or a sighting makes no sense.
pub fn at_mark(standing: &Standing<'_>, zone: Zone) -> Result<Stage, NotReady> {
    let Around { in_leaf, seasons } = around(standing);
    Ok(Stage {
        site: standing.location.site,
        zone,
        lens: Bearing::default(),
        lens_uncertainty: Degrees::default(),
        free: None,
        wish: sun_from_anywhere(),
        takes: Duration::ZERO,
        openings: openings(standing)?,
        skyline: in_leaf,
        shot: Shot::default(),
        seasons,
        levels: None,
    })
}

/// What blocks the sky from a mark: what is far off, every blocker as it is seen from there, and what stands around a room.
pub fn around(standing: &Standing<'_>) -> Around {
    let far = far(standing);
    match standing.room {
        Some(room) => far.map(|line| in_room::seen_from(room, line, spot(room, standing.mark))),
        None => far,
    }
}

/// What is far off, and every blocker.
pub(super) fn far(standing: &Standing<'_>) -> Around {
    Around::of(&standing.location.skyline, &standing.location.blockers, eye(standing))
}

/// Where the eye is at a mark. A room does not say how far it is from the location, so that its marks see the location's
/// blockers from there, and the room's own screens from themselves.
fn eye(standing: &Standing<'_>) -> Eye {
    let mark = standing.mark;
    let (east, north) = match standing.room {
        None => mark.map(|mark| (mark.x, mark.y)).unwrap_or_default(),
        Some(_) => Default::default(),
    };
    Eye { east, north, height: mark.map_or(FACE_HEIGHT, |mark| mark.face_height) }
}

/// Where the lens may look; `None` for one that is fixed.
fn free(set_up: &SetUp, standing: &Standing<'_>) -> Option<Vec<Bearing>> {
    let Lens { choice, bearing, .. } = &set_up.lens;
    (!choice.is_fixed()).then(|| choice.bearings(*bearing, &standing.location.backgrounds))
}

/// A room to be asked for any spot in it, in the light that `stage` wishes; `None` in the open.
pub fn in_room(standing: &Standing<'_>, stage: Stage) -> Option<RoomStage> {
    let room = standing.room?.clone();
    Some(RoomStage { stage, room, far: far(standing) })
}

/// The mark's face, or the middle of the room.
fn spot(room: &Room, mark: Option<&Mark>) -> Vector<InRoom> {
    let middle = || {
        let [x, y] = room.middle().map(Metres::metres);
        Vector::new(x, y, FACE_HEIGHT.metres())
    };
    mark.map_or_else(middle, face)
}

/// Where a set-up is.
pub(super) fn standing_of<'a>(project: &'a Project, set_up: &SetUp) -> Result<Standing<'a>, NotReady> {
    let at = set_up.at.as_ref().ok_or(NotReady::Nowhere)?;
    let standing = project.standing(at).ok_or_else(|| NotReady::Lost(at.clone()))?;
    let lost =
        (at.room.is_some() && standing.room.is_none()) || (at.mark.is_some() && standing.mark.is_none());
    if lost { Err(NotReady::Lost(at.clone())) } else { Ok(standing) }
}

/// The openings of the room and those sighted from the mark; `None` in the open.
pub(super) fn openings(standing: &Standing<'_>) -> Result<Option<Vec<StageOpening>>, NotReady> {
    match (standing.room, standing.mark) {
        (Some(_), None) => Err(NotReady::NoMark),
        (Some(room), Some(mark)) => {
            Ok(Some([in_room::measured(room, face(mark)), sightings(mark)?].concat()))
        }
        (None, Some(mark)) if !mark.sighted.is_empty() => sightings(mark).map(Some),
        (None, _) => Ok(None),
    }
}

/// Openings sighted from a mark. What an unknown wall may be off counts like an error of the bearing.
fn sightings(mark: &Mark) -> Result<Vec<StageOpening>, NotReady> {
    mark.sighted
        .iter()
        .map(|sighting| {
            let seen = sighted(sighting)
                .map_err(|error| NotReady::Sighting { name: sighting.name.clone(), error })?;
            let uncertainty = sighting.bearing_uncertainty.degrees() + seen.margin.degrees();
            Ok(StageOpening {
                id: sighting.id.clone(),
                name: sighting.name.clone(),
                cones: vec![seen.cone],
                uncertainty: Degrees::from_degrees(uncertainty),
            })
        })
        .collect()
}

/// The wish of somebody who only wants the sun.
fn sun_from_anywhere() -> Wish {
    Wish {
        arc: Arc { from: Degrees::from_degrees(0.0), to: Degrees::from_degrees(360.0), either_side: true },
        heights: Heights { from: Height::clamped(0.0), to: Height::clamped(90.0) },
        sun_on_mark: SunOnMark::Yes,
        sky: Sky::Any,
        dates: Vec::new(),
        hours: None,
        face: FaceWish::default(),
        in_picture: InPicture::Any,
        levels: Default::default(),
    }
}

#[cfg(test)]
#[path = "stage_tests.rs"]
mod tests;
