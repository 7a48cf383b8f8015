//! Members of a file that this build does not know: kept aside at load, put back at save.
//!
//! The types stay free of catch-all maps. At load the tree of the file is compared with the tree the types write;
//! what only the file has is kept by its place. Entries of lists are found again by their `id`, or, where they have
//! none, by what they say, so that an edit elsewhere does not shift anything. What belonged to something that was
//! removed since goes with it.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::canonical;
use super::document::Project;

/// What a file said beyond what the types know, in one object or list and below.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unknown {
    /// Members that the types do not know at all.
    whole: Map<String, Value>,
    /// Members or entries the types know, with something unknown inside. A list's keys are its entries' ids.
    inside: BTreeMap<String, Unknown>,
}

impl Unknown {
    /// What `file` says and `project` does not.
    pub(super) fn between(file: &Value, project: &Project) -> Self {
        compare(file, &canonical::known(project)).unwrap_or_default()
    }

    /// Whether there is nothing.
    pub fn is_empty(&self) -> bool {
        self.whole.is_empty() && self.inside.is_empty()
    }

    /// Puts everything back into `tree` whose place is still there. What the types write always wins.
    pub(super) fn graft(&self, tree: &mut Value) {
        match tree {
            Value::Object(members) => {
                for (name, value) in &self.whole {
                    members.entry(name.clone()).or_insert_with(|| value.clone());
                }
                for (name, unknown) in &self.inside {
                    if let Some(member) = members.get_mut(name) {
                        unknown.graft(member);
                    }
                }
            }
            Value::Array(entries) if !self.inside.is_empty() => {
                for entry in entries {
                    if let Some(unknown) = self.inside.get(&key(entry)) {
                        unknown.graft(entry);
                    }
                }
            }
            _ => {}
        }
    }
}

/// What `file` says beyond `known`; `None` for nothing.
fn compare(file: &Value, known: &Value) -> Option<Unknown> {
    let mut unknown = Unknown::default();
    match (file, known) {
        (Value::Object(file), Value::Object(known)) => {
            for (name, value) in file {
                match known.get(name) {
                    None => drop(unknown.whole.insert(name.clone(), value.clone())),
                    Some(known) => unknown.keep(name.clone(), compare(value, known)),
                }
            }
        }
        (Value::Array(file), Value::Array(known)) if file.len() == known.len() => {
            for (file, known) in file.iter().zip(known) {
                unknown.keep(key(known), compare(file, known));
            }
        }
        _ => {}
    }
    (!unknown.is_empty()).then_some(unknown)
}

impl Unknown {
    fn keep(&mut self, name: String, inner: Option<Self>) {
        if let Some(inner) = inner {
            self.inside.insert(name, inner);
        }
    }
}

/// What an entry of a list is found again by.
fn key(entry: &Value) -> String {
    match entry.get("id").and_then(Value::as_str) {
        Some(id) => id.to_owned(),
        None => entry.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn grafted(file: &Value, known: &Value, later: &Value) -> Value {
        let mut tree = later.clone();
        compare(file, known).unwrap_or_default().graft(&mut tree);
        tree
    }

    #[test]
    fn entries_keep_theirs_when_others_come_and_go() {
        let file =
            json!({"list": [{"id": "a", "n": 1, "new": true}, {"id": "b", "n": 2, "deep": {"x": [1]}}]});
        let known = json!({"list": [{"id": "a", "n": 1}, {"id": "b", "n": 2}]});
        let later = json!({"list": [{"id": "c", "n": 0}, {"id": "b", "n": 7}]});
        let expected = json!({"list": [{"id": "c", "n": 0}, {"id": "b", "n": 7, "deep": {"x": [1]}}]});
        assert_eq!(grafted(&file, &known, &later), expected);
        assert_eq!(grafted(&file, &known, &known), file);
    }

    #[test]
    fn entries_without_an_id_are_known_by_what_they_say() {
        let file = json!([{"from": 1, "why": "sea"}, {"from": 2}]);
        let known = json!([{"from": 1}, {"from": 2}]);
        assert_eq!(
            grafted(&file, &known, &json!([{"from": 3}, {"from": 1}])),
            json!([{"from": 3}, {"from": 1, "why": "sea"}])
        );
    }

    #[test]
    fn what_was_inside_something_removed_does_not_come_back() {
        let file = json!({"choice": {"kind": "range", "new": 1}, "left_out": "default"});
        let known = json!({"choice": {"kind": "range"}});
        assert_eq!(grafted(&file, &known, &json!({})), json!({"left_out": "default"}));
        let set = json!({"left_out": "chosen"});
        assert_eq!(grafted(&file, &known, &set), set, "what the types write wins");
    }
}
