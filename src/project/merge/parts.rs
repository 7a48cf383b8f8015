//! A project's tree taken apart into its entities, each with its own words, its parent and its place.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

/// Key of the project itself.
pub(super) const ROOT: &str = "";

/// Lists whose entries have ids of their own in the whole project, so that they are found again when they were moved:
/// the list that holds the parent, and the list. Entries of all other lists are found by their parent and their id.
const WHOLE_PROJECT: [[&str; 2]; 10] = [
    ["", "cameras"],
    ["", "locations"],
    ["", "scenes"],
    ["locations", "rooms"],
    ["locations", "marks"],
    ["locations", "blockers"],
    ["rooms", "openings"],
    ["rooms", "marks"],
    ["rooms", "screens"],
    ["scenes", "set_ups"],
];

/// One entity.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// Key of the entity it stands in.
    pub(super) parent: String,
    /// Name of the list it stands in.
    pub(super) list: String,
    /// Its own members, without the entities inside.
    pub(super) body: Map<String, Value>,
    /// Keys of the entities inside, in their order.
    pub(super) children: Vec<String>,
    /// Whether it is known by its id in the whole project.
    is_known: bool,
}

impl Part {
    /// Whether the members are the same; a list that is empty is as good as none.
    pub(super) fn says_the_same(&self, other: &Self) -> bool {
        fn full(body: &Map<String, Value>) -> impl Iterator<Item = (&String, &Value)> {
            body.iter().filter(|(_, value)| value.as_array().is_none_or(|list| !list.is_empty()))
        }
        full(&self.body).eq(full(&other.body))
    }
}

/// All entities of a project by their keys.
#[derive(Clone, Debug)]
pub(super) struct Parts {
    by_key: BTreeMap<String, Part>,
    /// Keys as they come in the file.
    order: Vec<String>,
}

impl Parts {
    /// Takes a project's tree apart.
    pub(super) fn of(tree: Value) -> Self {
        let mut parts = Self { by_key: BTreeMap::new(), order: Vec::new() };
        let Value::Object(members) = tree else { return parts };
        let root = Part {
            parent: ROOT.to_owned(),
            list: String::new(),
            body: Map::new(),
            children: Vec::new(),
            is_known: true,
        };
        parts.add(ROOT.to_owned(), root, members);
        parts
    }

    pub(super) fn get(&self, key: &str) -> Option<&Part> {
        self.by_key.get(key)
    }

    /// Keys in the order of the file.
    pub(super) fn keys(&self) -> impl Iterator<Item = &String> {
        self.order.iter()
    }

    /// Entities inside `key` that stand there on the other side as well, in their order.
    pub(super) fn shared_children<'a>(
        &'a self,
        key: &'a str,
        other: &'a Self,
    ) -> impl Iterator<Item = &'a String> {
        let children = self.get(key).map_or(&[][..], |part| &part.children);
        children.iter().filter(move |child| other.get(child).is_some_and(|there| there.parent == key))
    }

    /// Adds an entity and all that is inside.
    fn add(&mut self, key: String, mut part: Part, members: Map<String, Value>) {
        let at = self.order.len();
        self.order.push(key.clone());
        // Kept free until the children are known, so that none of them takes the same key.
        self.by_key.insert(key.clone(), part.clone());
        for (name, member) in members {
            match member {
                Value::Array(entries) if is_entities(&entries) => {
                    for entry in entries.into_iter().filter_map(into_members) {
                        let is_known =
                            part.is_known && WHOLE_PROJECT.contains(&[part.list.as_str(), name.as_str()]);
                        let child = self.free_key(is_known, &key, &name, &entry);
                        part.children.push(child.clone());
                        let inner = Part {
                            parent: key.clone(),
                            list: name.clone(),
                            body: Map::new(),
                            children: Vec::new(),
                            is_known,
                        };
                        self.add(child, inner, entry);
                    }
                }
                other => drop(part.body.insert(name, other)),
            }
        }
        self.by_key.insert(self.order[at].clone(), part);
    }

    /// What an entry is found again by. Two with one id cannot come from a sound file; they stay two all the same.
    fn free_key(&self, is_known: bool, parent: &str, list: &str, entry: &Map<String, Value>) -> String {
        let id = entry.get("id").and_then(Value::as_str).unwrap_or_default();
        let mut key = if is_known { format!("{list}/{id}") } else { format!("{parent}/{list}/{id}") };
        while self.by_key.contains_key(&key) {
            key.push('+');
        }
        key
    }
}

/// Whether all entries of a list are entities: objects with an id.
fn is_entities(entries: &[Value]) -> bool {
    !entries.is_empty() && entries.iter().all(|entry| entry.get("id").is_some_and(Value::is_string))
}

fn into_members(entry: Value) -> Option<Map<String, Value>> {
    match entry {
        Value::Object(members) => Some(members),
        _ => None,
    }
}
