//! Named edits: the only way a project changes.
//!
//! `apply` gives a new root that shares every entity the edit did not touch, so that undo is keeping the old one.
//! *Put* adds an entity, or replaces the one with the same id. Removing something clears what referred to it.

use core::fmt;

pub use super::apply::apply;
use super::document::{Camera, Location, SavedSlot, Scene, SetUp};
use super::shoot::Shoot;
use super::taken::Taken;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::plan::kit::Gear;
use crate::plan::wish::DateRange;

/// A change of the project.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Names the production.
    SetTitle(String),
    /// Dates on which the production could shoot.
    SetDates(Vec<DateRange>),
    /// Adds or replaces a camera.
    PutCamera(Camera),
    /// Removes a camera; its set-ups go back to the first one.
    RemoveCamera(String),
    /// Adds or replaces a piece of the kit.
    PutGear(Box<Gear>),
    /// Removes a piece of the kit, and takes it from where it stands.
    RemoveGear(String),
    /// Adds or replaces a location.
    PutLocation(Box<Location>),
    /// Removes a location; its set-ups have no place then.
    RemoveLocation(String),
    /// Adds or replaces a room of a location.
    PutRoom {
        /// Location.
        location: String,
        /// Room.
        room: Box<Room>,
    },
    /// Removes a room; its set-ups stay at the location, without a mark.
    RemoveRoom(String),
    /// Adds or replaces an opening of a room.
    PutOpening {
        /// Room.
        room: String,
        /// Opening.
        opening: Opening,
    },
    /// Removes an opening.
    RemoveOpening(String),
    /// Adds or replaces a mark.
    PutMark {
        /// Location.
        location: String,
        /// Room, or `None` for a mark in the open.
        room: Option<String>,
        /// Mark.
        mark: Mark,
    },
    /// Removes a mark; its set-ups stay where they are, without a mark.
    RemoveMark(String),
    /// Adds or replaces a scene.
    PutScene(Box<Scene>),
    /// Removes a scene and its set-ups.
    RemoveScene(String),
    /// Adds or replaces a set-up of a scene.
    PutSetUp {
        /// Scene.
        scene: String,
        /// Set-up.
        set_up: Box<SetUp>,
    },
    /// Removes a set-up.
    RemoveSetUp(String),
    /// Puts a copy of a set-up right behind it; slots that were kept stay with the first.
    CopySetUp {
        /// Set-up.
        set_up: String,
        /// Id of the copy.
        id: String,
        /// Name of the copy.
        name: String,
    },
    /// Moves a set-up to a place in a scene, its own or another.
    MoveSetUp {
        /// Set-up.
        set_up: String,
        /// Scene.
        scene: String,
        /// How many set-ups stand before it then.
        place: usize,
    },
    /// Keeps a slot of a set-up.
    SaveSlot {
        /// Set-up.
        set_up: String,
        /// Slot.
        slot: SavedSlot,
    },
    /// Lets go of a slot.
    ForgetSlot {
        /// Set-up.
        set_up: String,
        /// Slot.
        slot: String,
    },
    /// Changes days, rules or the plan.
    SetShoot {
        /// What is done, in words.
        label: &'static str,
        /// The shoot as it is then.
        shoot: Box<Shoot>,
    },
    /// Several edits that belong together, one step of undo; none of them is made if one cannot be.
    Together {
        /// What they do, in words.
        label: &'static str,
        /// In this order.
        edits: Vec<Edit>,
    },
    /// Keeps that a set-up was shot, or puts it in place of the one with its id.
    PutShot {
        /// Set-up.
        set_up: String,
        /// When, with note and meter reading.
        shot: Taken,
    },
    /// Takes a shot of a set-up away.
    RemoveShot {
        /// Set-up.
        set_up: String,
        /// Shot.
        shot: String,
    },
}

impl Edit {
    /// What is undone, in words: "Undo: remove the room".
    pub const fn label(&self) -> &'static str {
        match self {
            Self::SetTitle(_) => "name the project",
            Self::SetDates(_) => "set the dates",
            Self::PutCamera(_) => "change a camera",
            Self::RemoveCamera(_) => "remove a camera",
            Self::PutGear(_) => "change a piece of the kit",
            Self::RemoveGear(_) => "remove a piece of the kit",
            Self::PutLocation(_) => "change a location",
            Self::RemoveLocation(_) => "remove a location",
            Self::PutRoom { .. } => "change a room",
            Self::RemoveRoom(_) => "remove a room",
            Self::PutOpening { .. } => "change an opening",
            Self::RemoveOpening(_) => "remove an opening",
            Self::PutMark { .. } => "change a mark",
            Self::RemoveMark(_) => "remove a mark",
            Self::PutScene(_) => "change a scene",
            Self::RemoveScene(_) => "remove a scene",
            Self::PutSetUp { .. } => "change a set-up",
            Self::RemoveSetUp(_) => "remove a set-up",
            Self::CopySetUp { .. } => "copy a set-up",
            Self::MoveSetUp { .. } => "move a set-up",
            Self::SaveSlot { .. } => "save a slot",
            Self::ForgetSlot { .. } => "let go of a slot",
            Self::PutShot { .. } => "mark as shot",
            Self::RemoveShot { .. } => "remove a shot",
            Self::SetShoot { label, .. } | Self::Together { label, .. } => label,
        }
    }
}

/// An edit of something that is not there (any more).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// "room", "set-up".
    pub kind: &'static str,
    /// The id that was asked for.
    pub id: String,
}

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "no {} with the id '{}'", self.kind, self.id)
    }
}

impl core::error::Error for Missing {}
