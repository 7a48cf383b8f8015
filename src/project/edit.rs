//! Named edits: the only way a project changes.
//!
//! `apply` gives a new root that shares every entity the edit did not touch, so that undo is keeping the old one.
//! *Put* adds an entity, or replaces the one with the same id. Removing something clears what referred to it.

use core::fmt;
use std::sync::Arc;

use super::document::{At, Camera, Location, Project, SavedSlot, Scene, SetUp};
use super::find::marks;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::room::Room;
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
}

impl Edit {
    /// What is undone, in words: "Undo: remove the room".
    pub const fn label(&self) -> &'static str {
        match self {
            Self::SetTitle(_) => "name the project",
            Self::SetDates(_) => "set the dates",
            Self::PutCamera(_) => "change a camera",
            Self::RemoveCamera(_) => "remove a camera",
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
            Self::SaveSlot { .. } => "save a slot",
            Self::ForgetSlot { .. } => "let go of a slot",
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

/// The project after `edit`.
///
/// # Errors
/// The edit names an entity that the project does not hold; the project is unchanged then.
pub fn apply(project: &Project, edit: Edit) -> Result<Project, Missing> {
    let mut next = project.clone();
    match edit {
        Edit::SetTitle(title) => next.title = title,
        Edit::SetDates(dates) => next.dates = dates,
        Edit::PutCamera(camera) => put(&mut next.cameras, Arc::new(camera), |c| &c.id),
        Edit::RemoveCamera(id) => {
            next.cameras.retain(|camera| camera.id != id);
            each_set_up(&mut next, |set_up| forget(&mut set_up.lens.camera, &id));
        }
        Edit::PutLocation(location) => put(&mut next.locations, Arc::new(*location), |l| &l.id),
        Edit::RemoveLocation(id) => {
            next.locations.retain(|location| location.id != id);
            each_set_up(&mut next, |set_up| {
                let gone = set_up.at.as_ref().is_some_and(|at| at.location == id);
                if gone {
                    set_up.at = None;
                }
                gone
            });
        }
        Edit::PutScene(scene) => put(&mut next.scenes, Arc::new(*scene), |s| &s.id),
        Edit::RemoveScene(id) => next.scenes.retain(|scene| scene.id != id),
        inside_place @ (Edit::PutRoom { .. }
        | Edit::RemoveRoom(_)
        | Edit::PutOpening { .. }
        | Edit::RemoveOpening(_)
        | Edit::PutMark { .. }
        | Edit::RemoveMark(_)) => apply_in_place(&mut next, inside_place)?,
        inside_scene => apply_in_scene(&mut next, inside_scene)?,
    }
    Ok(next)
}

/// Edits inside a location.
fn apply_in_place(project: &mut Project, edit: Edit) -> Result<(), Missing> {
    match edit {
        Edit::PutRoom { location, room } => put(&mut place(project, &location)?.rooms, *room, |r| &r.id),
        Edit::RemoveRoom(id) => {
            place_with(project, "room", &id, |l| l.rooms.iter().any(|r| r.id == id))?
                .rooms
                .retain(|r| r.id != id);
            each_at(project, |at| {
                at.room.as_deref() == Some(&id) && {
                    (at.room, at.mark) = (None, None);
                    true
                }
            });
        }
        Edit::PutOpening { room, opening } => {
            put(&mut room_with(project, "room", &room, |r| r.id == room)?.openings, opening, |o| &o.id)
        }
        Edit::RemoveOpening(id) => {
            let holds = |r: &Room| r.openings.iter().any(|o| o.id == id);
            room_with(project, "opening", &id, holds)?.openings.retain(|o| o.id != id);
        }
        Edit::PutMark { location, room, mark } => {
            let place = place(project, &location)?;
            let marks = match room {
                None => &mut place.marks,
                Some(id) => {
                    let found = place.rooms.iter_mut().find(|r| r.id == id);
                    &mut found.ok_or(Missing { kind: "room", id })?.marks
                }
            };
            put(marks, mark, |m| &m.id);
        }
        Edit::RemoveMark(id) => {
            let holds = |l: &Location| marks(l).any(|m| m.id == id);
            let place = place_with(project, "mark", &id, holds)?;
            place.marks.retain(|m| m.id != id);
            place.rooms.iter_mut().for_each(|r| r.marks.retain(|m| m.id != id));
            each_at(project, |at| forget(&mut at.mark, &id));
        }
        _ => {}
    }
    Ok(())
}

/// Edits inside a scene.
fn apply_in_scene(project: &mut Project, edit: Edit) -> Result<(), Missing> {
    match edit {
        Edit::PutSetUp { scene, set_up } => {
            let found = project.scenes.iter_mut().find(|s| s.id == scene);
            let scene = found.ok_or(Missing { kind: "scene", id: scene })?;
            put(&mut Arc::make_mut(scene).set_ups, *set_up, |s| &s.id);
        }
        Edit::RemoveSetUp(id) => scene_of(project, &id)?.set_ups.retain(|s| s.id != id),
        Edit::SaveSlot { set_up, slot } => {
            let saved = &mut set_up_of(project, &set_up)?.saved;
            put(saved, slot, |s| &s.id);
            saved.sort_by_key(|slot| slot.start);
        }
        Edit::ForgetSlot { set_up, slot } => set_up_of(project, &set_up)?.saved.retain(|s| s.id != slot),
        _ => {}
    }
    Ok(())
}

/// Replaces the entry with the same id, or adds it at the end.
fn put<T>(list: &mut Vec<T>, entry: T, id: impl Fn(&T) -> &String) {
    match list.iter().position(|old| id(old) == id(&entry)) {
        Some(at) => list[at] = entry,
        None => list.push(entry),
    }
}

/// Clears `reference` if it leads to `id`; says whether it did.
fn forget(reference: &mut Option<String>, id: &str) -> bool {
    let gone = reference.as_deref() == Some(id);
    if gone {
        *reference = None;
    }
    gone
}

fn place<'a>(project: &'a mut Project, id: &str) -> Result<&'a mut Location, Missing> {
    place_with(project, "location", id, |location| location.id == id)
}

/// The location for which `holds` is true, made ready to change.
fn place_with<'a>(
    project: &'a mut Project,
    kind: &'static str,
    id: &str,
    holds: impl Fn(&Location) -> bool,
) -> Result<&'a mut Location, Missing> {
    let found = project.locations.iter_mut().find(|location| holds(location));
    found.map(Arc::make_mut).ok_or_else(|| Missing { kind, id: id.to_owned() })
}

/// The room for which `holds` is true, made ready to change.
fn room_with<'a>(
    project: &'a mut Project,
    kind: &'static str,
    id: &str,
    holds: impl Fn(&Room) -> bool,
) -> Result<&'a mut Room, Missing> {
    let place = place_with(project, kind, id, |location| location.rooms.iter().any(&holds))?;
    place.rooms.iter_mut().find(|room| holds(room)).ok_or_else(|| Missing { kind, id: id.to_owned() })
}

/// The scene that holds a set-up, made ready to change.
fn scene_of<'a>(project: &'a mut Project, set_up: &str) -> Result<&'a mut Scene, Missing> {
    let found = project.scenes.iter_mut().find(|scene| scene.set_ups.iter().any(|s| s.id == set_up));
    found.map(Arc::make_mut).ok_or_else(|| Missing { kind: "set-up", id: set_up.to_owned() })
}

fn set_up_of<'a>(project: &'a mut Project, id: &str) -> Result<&'a mut SetUp, Missing> {
    let scene = scene_of(project, id)?;
    let found = scene.set_ups.iter_mut().find(|set_up| set_up.id == id);
    found.ok_or_else(|| Missing { kind: "set-up", id: id.to_owned() })
}

/// Runs `change` over every set-up; scenes of which none changed stay shared.
fn each_set_up(project: &mut Project, change: impl Fn(&mut SetUp) -> bool) {
    for scene in &mut project.scenes {
        let mut copy = Scene::clone(scene);
        if copy.set_ups.iter_mut().fold(false, |any, set_up| change(set_up) | any) {
            *scene = Arc::new(copy);
        }
    }
}

/// Runs `change` over the places of all set-ups.
fn each_at(project: &mut Project, change: impl Fn(&mut At) -> bool) {
    each_set_up(project, |set_up| set_up.at.as_mut().is_some_and(&change));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn an_edit_shares_what_it_does_not_touch() {
        let before = demo::project();
        let after = apply(&before, Edit::RemoveSetUp(before.scenes[0].set_ups[0].id.clone())).unwrap();
        assert!(after.scenes[0].set_ups.len() < before.scenes[0].set_ups.len());
        assert!(Arc::ptr_eq(&before.scenes[1], &after.scenes[1]));
        assert!(Arc::ptr_eq(&before.locations[0], &after.locations[0]));
    }

    #[test]
    fn what_is_removed_is_no_longer_referred_to() {
        let before = demo::project();
        let location = before.locations[0].id.clone();
        let room = before.locations[0].rooms[0].id.clone();
        let all = |p: &Project| {
            p.scenes.iter().flat_map(|s| s.set_ups.clone()).filter_map(|s| s.at).collect::<Vec<_>>()
        };
        assert!(all(&before).iter().any(|at| at.room.as_ref() == Some(&room)));
        let roomless = apply(&before, Edit::RemoveRoom(room.clone())).unwrap();
        assert!(all(&roomless).iter().all(|at| at.room.as_ref() != Some(&room)));
        let bare = apply(&before, Edit::RemoveLocation(location.clone())).unwrap();
        assert!(all(&bare).iter().all(|at| at.location != location));
        let mark = marks(&before.locations[0]).next().unwrap().id.clone();
        let markless = apply(&before, Edit::RemoveMark(mark.clone())).unwrap();
        assert!(all(&markless).iter().all(|at| at.mark.as_ref() != Some(&mark)));
    }

    #[test]
    fn put_replaces_in_place_and_adds_at_the_end() {
        let before = demo::project();
        let mut scene = Scene::clone(&before.scenes[1]);
        scene.title = "Otherwise".to_owned();
        let after = apply(&before, Edit::PutScene(Box::new(scene.clone()))).unwrap();
        assert_eq!(after.scenes.len(), before.scenes.len());
        assert_eq!(after.scenes[1].title, "Otherwise");
        scene.id = "new".to_owned();
        assert_eq!(
            apply(&after, Edit::PutScene(Box::new(scene))).unwrap().scenes.len(),
            before.scenes.len() + 1
        );
    }

    #[test]
    fn an_edit_of_what_is_gone_says_so() {
        let gone = apply(&demo::project(), Edit::RemoveOpening("nowhere".to_owned())).unwrap_err();
        assert_eq!(gone.to_string(), "no opening with the id 'nowhere'");
    }
}
