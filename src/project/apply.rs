//! Applying an edit: a new root that shares every entity the edit did not touch.

use std::sync::Arc;

use super::document::{At, Location, Project, Scene, SetUp};
use super::edit::{Edit, Missing};
use super::find::marks;
use super::taken;
use crate::place::room::Room;

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
        Edit::PutGear(gear) => put(&mut next.kit, Arc::new(*gear), |g| &g.id),
        Edit::RemoveGear(id) => {
            next.kit.retain(|gear| gear.id != id);
            each_set_up(&mut next, |set_up| {
                let before = set_up.rig.placed.len();
                set_up.rig.placed.retain(|placed| placed.gear != id);
                set_up.rig.placed.len() != before
            });
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
        Edit::SetShoot { shoot, .. } => next.shoot = *shoot,
        Edit::PutScene(scene) => put(&mut next.scenes, Arc::new(*scene), |s| &s.id),
        Edit::RemoveScene(id) => next.scenes.retain(|scene| scene.id != id),
        Edit::Together { edits, .. } => {
            return edits.into_iter().try_fold(next, |project, edit| apply(&project, edit));
        }
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
        Edit::CopySetUp { set_up, id, name } => copy(scene_of(project, &set_up)?, &set_up, id, name),
        Edit::MoveSetUp { set_up, scene, place } => move_to(project, &set_up, &scene, place)?,
        Edit::SaveSlot { set_up, slot } => {
            let saved = &mut set_up_of(project, &set_up)?.saved;
            put(saved, slot, |s| &s.id);
            crate::order::by_key(saved, |slot| slot.start);
        }
        Edit::ForgetSlot { set_up, slot } => set_up_of(project, &set_up)?.saved.retain(|s| s.id != slot),
        Edit::PutShot { set_up, shot } => taken::put(project, &set_up, shot)?,
        Edit::RemoveShot { set_up, shot } => taken::remove(project, &set_up, &shot)?,
        _ => {}
    }
    Ok(())
}

/// Puts a copy of a set-up behind it.
fn copy(scene: &mut Scene, set_up: &str, id: String, name: String) {
    if let Some(at) = scene.set_ups.iter().position(|s| s.id == set_up) {
        let copy = SetUp { id, name, saved: Vec::new(), shots: Vec::new(), ..scene.set_ups[at].clone() };
        scene.set_ups.insert(at + 1, copy);
    }
}

/// Moves a set-up; nothing changes if there is no such scene or set-up.
fn move_to(project: &mut Project, set_up: &str, scene: &str, place: usize) -> Result<(), Missing> {
    let target = project.scenes.iter().position(|s| s.id == scene);
    let target = target.ok_or_else(|| Missing { kind: "scene", id: scene.to_owned() })?;
    let source = scene_of(project, set_up)?;
    let at = source.set_ups.iter().position(|s| s.id == set_up).expect("the scene was found by it");
    let moved = source.set_ups.remove(at);
    let target = &mut Arc::make_mut(&mut project.scenes[target]).set_ups;
    target.insert(place.min(target.len()), moved);
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

pub(super) fn set_up_of<'a>(project: &'a mut Project, id: &str) -> Result<&'a mut SetUp, Missing> {
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

    #[test]
    fn a_copy_stands_behind_its_model_and_keeps_no_slots() {
        let before = demo::project();
        let set_up = before.scenes[3].set_ups[0].id.clone();
        let edit = Edit::CopySetUp { set_up, id: "copy".to_owned(), name: "C".to_owned() };
        let after = apply(&before, edit).unwrap();
        let names: Vec<_> = after.scenes[3].set_ups.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(names, ["A", "C", "B"]);
        assert!(after.scenes[3].set_ups[1].saved.is_empty());
    }

    #[test]
    fn a_set_up_moves_within_its_scene_and_to_another() {
        let before = demo::project();
        let set_up = before.scenes[3].set_ups[0].id.clone();
        let to =
            |scene: &str, place| Edit::MoveSetUp { set_up: set_up.clone(), scene: scene.to_owned(), place };
        let within = apply(&before, to(&before.scenes[3].id, 9)).unwrap();
        assert_eq!(within.scenes[3].set_ups[1].id, set_up);
        let away = apply(&before, to(&before.scenes[0].id, 0)).unwrap();
        assert_eq!((&away.scenes[0].set_ups[0].id, away.scenes[3].set_ups.len()), (&set_up, 1));
        assert!(apply(&before, to("nowhere", 0)).is_err());
    }
}
