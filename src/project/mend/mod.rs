//! Mending a tree until the types can read it, part by part, so that one bad set-up does not lose the project.
//!
//! Lists are walked from the inside out: openings and marks before their room, rooms before their location,
//! set-ups before their scene. Each entity gets an id of its own, is mended or left out, and set-ups that refer
//! to something that is not there forget it. All repairs are made on the tree, so that what the types do not
//! know stays in it.

mod guess;
mod ids;
mod one;
pub(super) mod path;
mod references;
mod sound;
mod sound_light;

use std::sync::Arc;

use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use self::ids::Ids;
use self::path::Place;
use self::sound::{Head, Sound};
use super::document::{Camera, Location, Project, Scene, SetUp};
use super::photograph::Photograph;
use super::record::checksum;
use super::restore::Repair;
use super::shoot::Shoot;
use crate::place::blocker::Blocker;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::outside::Screen;
use crate::place::room::Room;
use crate::place::site::Site;
use crate::plan::kit::{Gear, Reading, There};

/// Letters that a name or title may have. Our own choice; the screens show far fewer.
const LONGEST_NAME: usize = 200;

/// Mends `tree`, which says it is a project of the present version, and reads it.
pub(super) fn project(tree: &mut Value, repairs: &mut Vec<Repair>) -> Project {
    let in_file = ids::all(tree);
    let of_projects = Ids::of("project", &in_file);
    let id = project_id(tree, &of_projects, repairs);
    cut_names(tree, "", repairs);
    let head = head(tree, repairs);
    let mut project =
        Project { invented: head.invented, dates: head.dates, ..Project::empty(&id, &head.title) };
    let mut ids = of_projects.for_kind("camera");
    project.cameras = list(tree, "cameras", None, repairs, |camera, place, repairs| {
        entity::<Camera>(camera, place, &mut ids, repairs).map(Arc::new)
    });
    let mut ids = of_projects.for_kind("kit");
    project.kit = list(tree, "kit", None, repairs, |gear, place, repairs| {
        entity::<Gear>(gear, place, &mut ids, repairs).map(Arc::new)
    });
    project.locations = locations(tree, &of_projects, repairs);
    project.scenes = scenes(tree, &project, &of_projects, repairs);
    project.shoot = shoot(tree, repairs);
    project
}

/// Days, rules and plan. What is too damaged to be read falls member by member.
fn shoot(tree: &mut Value, repairs: &mut Vec<Repair>) -> Shoot {
    let Some(found) = tree.get_mut("shoot") else { return Shoot::default() };
    if let Ok(shoot) = Shoot::deserialize(&*found) {
        return shoot;
    }
    let mut sound = serde_json::Map::new();
    for (name, value) in found.as_object().cloned().unwrap_or_default() {
        let mut more = sound.clone();
        more.insert(name.clone(), value);
        match Shoot::deserialize(&Value::Object(more.clone())) {
            Ok(_) => sound = more,
            Err(_) => {
                repairs
                    .push(repair(&format!("shoot.{name}"), "It could not be read and is gone.".to_owned()));
            }
        }
    }
    let shoot = Shoot::deserialize(&Value::Object(sound.clone())).unwrap_or_default();
    if sound.is_empty() {
        repairs.push(repair("shoot", "Nothing of it could be read: days and plan are empty.".to_owned()));
    }
    *found = Value::Object(sound);
    shoot
}

/// The project's id. One made from nothing is made from the text, so that the same file is the same project.
fn project_id(tree: &mut Value, ids: &Ids<'_>, repairs: &mut Vec<Repair>) -> String {
    let mut ids = ids.for_kind("project");
    if tree.get("id").is_none_or(|id| !id.is_string()) {
        let made = format!("project-{}", checksum(&tree.to_string()));
        repairs.push(repair("id", format!("It has no usable id: it is '{made}' now.")));
        tree["id"] = made.into();
    }
    repairs.extend(ids.settle(tree).map(|done| repair("id", done)));
    tree["id"].as_str().unwrap_or_default().to_owned()
}

/// Title, dates and the like. Dates that are too damaged fall all together.
fn head(tree: &mut Value, repairs: &mut Vec<Repair>) -> Head {
    let place = Place { inside: None, list: "", index: 0 };
    if let Some(head) = one::mend::<Head>(tree, &place, repairs) {
        return head;
    }
    if let Some(members) = tree.as_object_mut() {
        members.remove("dates");
    }
    let nothing = Head { title: "Without a name".to_owned(), invented: false, dates: Vec::new() };
    one::mend::<Head>(tree, &place, repairs).unwrap_or(nothing)
}

fn locations(tree: &mut Value, ids: &Ids<'_>, repairs: &mut Vec<Repair>) -> Vec<Arc<Location>> {
    let (mut of_locations, mut of_rooms) = (ids.for_kind("location"), ids.for_kind("room"));
    let (mut of_openings, mut of_marks) = (ids.for_kind("opening"), ids.for_kind("mark"));
    let (mut of_blockers, mut of_screens) = (ids.for_kind("blocker"), ids.for_kind("screen"));
    let mut of_photographs = ids.for_kind("photograph");
    list(tree, "locations", None, repairs, |location, place, repairs| {
        list(location, "rooms", Some(place), repairs, |room, place, repairs| {
            list(room, "openings", Some(place), repairs, |opening, place, repairs| {
                entity::<Opening>(opening, place, &mut of_openings, repairs)
            });
            list(room, "marks", Some(place), repairs, |m, place, repairs| {
                mark(m, place, &mut of_marks, repairs)
            });
            list(room, "screens", Some(place), repairs, |screen, place, repairs| {
                entity::<Screen>(screen, place, &mut of_screens, repairs)
            });
            entity::<Room>(room, place, &mut of_rooms, repairs)
        });
        list(location, "marks", Some(place), repairs, |m, place, repairs| {
            mark(m, place, &mut of_marks, repairs)
        });
        list(location, "blockers", Some(place), repairs, |blocker, place, repairs| {
            entity::<Blocker>(blocker, place, &mut of_blockers, repairs)
        });
        let mut of_lights = ids.for_kind("light");
        list(location, "lights", Some(place), repairs, |light, place, repairs| {
            entity::<There>(light, place, &mut of_lights, repairs)
        });
        let mut of_readings = ids.for_kind("reading");
        list(location, "readings", Some(place), repairs, |reading, place, repairs| {
            entity::<Reading>(reading, place, &mut of_readings, repairs)
        });
        list(location, "photographs", Some(place), repairs, |photograph, place, repairs| {
            entity::<Photograph>(photograph, place, &mut of_photographs, repairs)
        });
        // The location holds the members of its site as its own; read apart, their faults have a path.
        one::mend::<Site>(location, place, repairs)?;
        entity::<Location>(location, place, &mut of_locations, repairs).map(Arc::new)
    })
}

fn mark(mark: &mut Value, place: &Place<'_>, ids: &mut Ids<'_>, repairs: &mut Vec<Repair>) -> Option<Mark> {
    own_ids(mark, "sighted", place, ids, repairs);
    entity(mark, place, ids, repairs)
}

fn scenes(tree: &mut Value, places: &Project, ids: &Ids<'_>, repairs: &mut Vec<Repair>) -> Vec<Arc<Scene>> {
    let (of_saved, of_shots) = (ids.for_kind("slot"), ids.for_kind("shot"));
    let (mut of_scenes, mut of_set_ups) = (ids.for_kind("scene"), ids.for_kind("set-up"));
    list(tree, "scenes", None, repairs, |scene, place, repairs| {
        list(scene, "set_ups", Some(place), repairs, |set_up, place, repairs| {
            own_ids(set_up, "saved", place, &of_saved, repairs);
            own_ids(set_up, "shots", place, &of_shots, repairs);
            let read: SetUp = entity(set_up, place, &mut of_set_ups, repairs)?;
            references::clear(set_up, &read, places, |path, done| {
                repairs.push(repair(&path::join(&place.to_string(), path), done));
            });
            Some(())
        });
        entity::<Scene>(scene, place, &mut of_scenes, repairs).map(Arc::new)
    })
}

/// Walks the list `name` of `parent`; what `each` does not give back is taken out.
fn list<T>(
    parent: &mut Value,
    name: &str,
    inside: Option<&Place<'_>>,
    repairs: &mut Vec<Repair>,
    mut each: impl FnMut(&mut Value, &Place<'_>, &mut Vec<Repair>) -> Option<T>,
) -> Vec<T> {
    let Some(members) = parent.as_object_mut() else { return Vec::new() };
    let Some(found) = members.get_mut(name) else { return Vec::new() };
    let Value::Array(entries) = found else {
        members.remove(name);
        let outer = inside.map(Place::to_string).unwrap_or_default();
        repairs.push(repair(&path::join(&outer, name), "This is no list: left out.".to_owned()));
        return Vec::new();
    };
    let (mut kept, mut read) = (Vec::with_capacity(entries.len()), Vec::with_capacity(entries.len()));
    for (index, mut entry) in core::mem::take(entries).into_iter().enumerate() {
        if let Some(one) = each(&mut entry, &Place { inside, list: name, index }, repairs) {
            read.push(one);
            kept.push(entry);
        }
    }
    *entries = kept;
    read
}

/// An entity with an id of its own and names of a sensible length, mended.
fn entity<T: DeserializeOwned + Sound>(
    entity: &mut Value,
    place: &Place<'_>,
    ids: &mut Ids<'_>,
    repairs: &mut Vec<Repair>,
) -> Option<T> {
    repairs.extend(ids.settle(entity).map(|done| repair(&place.to_string(), done)));
    cut_names(entity, &place.to_string(), repairs);
    one::mend(entity, place, repairs)
}

/// Ids of a list whose entries are read with their parent.
fn own_ids(parent: &mut Value, name: &str, place: &Place<'_>, ids: &Ids<'_>, repairs: &mut Vec<Repair>) {
    let mut ids = ids.for_kind("entry");
    let entries = parent.get_mut(name).and_then(Value::as_array_mut);
    for (index, entry) in entries.into_iter().flatten().enumerate() {
        let done = ids.settle(entry);
        repairs.extend(done.map(|done| repair(&format!("{place}.{name}[{index}]"), done)));
    }
}

/// Cuts names that no screen could show.
fn cut_names(entity: &mut Value, place: &str, repairs: &mut Vec<Repair>) {
    for name in ["name", "title", "number"] {
        if let Some(Value::String(text)) = entity.get_mut(name)
            && let Some((end, _)) = text.char_indices().nth(LONGEST_NAME)
        {
            text.truncate(end);
            let done = format!("It is very long: cut to {LONGEST_NAME} letters.");
            repairs.push(repair(&path::join(place, name), done));
        }
    }
}

fn repair(path: &str, sentence: String) -> Repair {
    Repair { path: path.to_owned(), sentence }
}
