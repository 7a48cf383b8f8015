//! Joining two projects as it was chosen: one tree again, then one project.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::{Map, Value};

use super::parts::{Part, Parts, ROOT};
use super::{Choice, Merge};
use crate::project::document::{Project, Scene, SetUp};
use crate::project::restore::{RestoreError, reopen};

impl Merge {
    /// The one project that comes of it. `choices` stand in the order of the differences; where they end, what is
    /// suggested is done. Entities that are kept twice get ids that begin with `fresh`, which nobody else has made.
    ///
    /// # Errors
    /// What was put together cannot be read as a project; nothing is changed then.
    pub fn joined(&self, choices: &[Choice], fresh: &str) -> Result<Project, RestoreError> {
        let chosen = self.differences.iter().enumerate().map(|(at, difference)| {
            let choice = choices.get(at).copied().unwrap_or(difference.suggested);
            (difference.key.as_str(), choice)
        });
        let mut join =
            Join { here: &self.here, there: &self.there, chosen: chosen.collect(), fresh, copies: 0 };
        let tree = join.entity(ROOT);
        let mut project = reopen(&tree.to_string())?;
        forget_what_is_gone(&mut project);
        Ok(project)
    }
}

struct Join<'a> {
    here: &'a Parts,
    there: &'a Parts,
    chosen: BTreeMap<&'a str, Choice>,
    fresh: &'a str,
    /// Fresh ids so far.
    copies: usize,
}

impl<'a> Join<'a> {
    /// An entity as it was chosen, with all that is inside.
    fn entity(&mut self, key: &str) -> Value {
        let mut body = self.part(key).map(|part| part.body.clone()).unwrap_or_default();
        for child in self.children(key) {
            let Some(part) = self.part(child) else { continue };
            let inner = self.entity(child);
            push(&mut body, &part.list, inner);
            let is_on_both = self.here.get(child).is_some() && self.there.get(child).is_some();
            if is_on_both && self.chosen.get(child.as_str()) == Some(&Choice::Both) {
                let copy = self.copy(child, true);
                push(&mut body, &part.list, copy);
            }
        }
        Value::Object(body)
    }

    /// The entities inside `key`, in the order of the chosen side; what only the other has comes after its neighbour.
    fn children(&self, key: &str) -> Vec<&'a String> {
        let is_theirs = self.choice(key) == Choice::There;
        let (first, second) = if is_theirs { (self.there, self.here) } else { (self.here, self.there) };
        let mut followers: BTreeMap<&str, Vec<&'a String>> = BTreeMap::new();
        let mut neighbour = ROOT;
        for child in inside(second, key) {
            if first.get(child).is_some_and(|part| part.parent == key) {
                neighbour = child;
            } else {
                followers.entry(neighbour).or_default().push(child);
            }
        }
        let mut order = followers.remove(ROOT).unwrap_or_default();
        for child in inside(first, key) {
            order.push(child);
            order.extend(followers.remove(child.as_str()).unwrap_or_default());
        }
        order.retain(|child| self.belongs(child, key));
        order
    }

    /// Whether an entity ends up inside `key`, which stays: chosen so, or because what should hold it goes.
    fn belongs(&self, child: &str, key: &str) -> bool {
        self.part(child).is_some_and(|part| part.parent == key || !self.stays(&part.parent))
    }

    /// Whether an entity is there in the end. Only what is known by its id can have moved, so this goes few steps.
    fn stays(&self, key: &str) -> bool {
        let sides = [self.here.get(key), self.there.get(key)];
        key == ROOT
            || (self.part(key).is_some() && sides.into_iter().flatten().any(|part| self.stays(&part.parent)))
    }

    /// The entity on the side that was chosen; `None` if it goes.
    fn part(&self, key: &str) -> Option<&'a Part> {
        match self.choice(key) {
            Choice::There => self.there.get(key),
            Choice::Here => self.here.get(key),
            Choice::Both => self.here.get(key).or(self.there.get(key)),
        }
    }

    /// What is done about an entity; one that is the same on both sides, or goes with its holder, is as it is.
    fn choice(&self, key: &str) -> Choice {
        self.chosen.get(key).copied().unwrap_or(Choice::Both)
    }

    /// An entity of the project that came, with all that is inside, under fresh ids.
    fn copy(&mut self, key: &str, is_named: bool) -> Value {
        let Some(part) = self.there.get(key) else { return Value::Null };
        let mut body = part.body.clone();
        self.copies += 1;
        body.insert("id".to_owned(), format!("{}-{}", self.fresh, self.copies).into());
        if is_named {
            name_as_copy(&mut body);
        }
        for child in &part.children {
            let inner = self.copy(child, false);
            if let Some(child) = self.there.get(child) {
                push(&mut body, &child.list, inner);
            }
        }
        Value::Object(body)
    }
}

fn inside<'a>(parts: &'a Parts, key: &str) -> &'a [String] {
    parts.get(key).map_or(&[], |part| &part.children)
}

/// Puts an entry into the list `name` of an entity.
fn push(body: &mut Map<String, Value>, name: &str, entry: Value) {
    let list = body.entry(name.to_owned()).or_insert_with(|| Value::Array(Vec::new()));
    if let Value::Array(entries) = list {
        entries.push(entry);
    }
}

/// Says in its name that it came from elsewhere, so that the two can be told apart.
fn name_as_copy(body: &mut Map<String, Value>) {
    for name in ["name", "title"] {
        if let Some(Value::String(name)) = body.get_mut(name) {
            name.push_str(", taken in");
            return;
        }
    }
}

/// Set-ups forget a place, a mark, a camera or gear that did not stay.
fn forget_what_is_gone(project: &mut Project) {
    let whole = project.clone();
    for scene in &mut project.scenes {
        let mut sound = Scene::clone(scene);
        sound.set_ups.iter_mut().for_each(|set_up| forget(set_up, &whole));
        if sound != **scene {
            *scene = Arc::new(sound);
        }
    }
}

fn forget(set_up: &mut SetUp, project: &Project) {
    set_up.rig.placed.retain(|placed| project.kit.iter().any(|gear| gear.id == placed.gear));
    set_up.lens.camera.take_if(|id| project.cameras.iter().all(|camera| camera.id != *id));
    set_up.at = set_up.at.take().and_then(|mut at| {
        let standing = project.standing(&at)?;
        let (room, mark) = (standing.room.is_some(), standing.mark.is_some());
        at.room.take_if(|_| !room);
        at.mark.take_if(|_| !mark);
        Some(at)
    });
}
