//! Ids: every entity has one, and no two of a kind share one.
//!
//! A new id is made from the old one, so that the same file always gives the same project.

use std::collections::HashSet;

use serde_json::Value;

/// Letters an id may have.
const LONGEST: usize = 100;

/// The ids of one kind of entity that are taken.
#[derive(Debug)]
pub(super) struct Ids<'a> {
    kind: &'static str,
    /// Every id in the file, of whatever kind: a new one is none of them, so that it takes nobody's.
    in_file: &'a HashSet<String>,
    taken: HashSet<String>,
    last: usize,
}

/// Every id below `tree`.
pub(super) fn all(tree: &Value) -> HashSet<String> {
    let (mut found, mut waiting) = (HashSet::new(), vec![tree]);
    while let Some(value) = waiting.pop() {
        match value {
            Value::Array(entries) => waiting.extend(entries),
            Value::Object(members) => {
                found.extend(members.get("id").and_then(Value::as_str).map(str::to_owned));
                waiting.extend(members.values());
            }
            _ => {}
        }
    }
    found
}

impl<'a> Ids<'a> {
    /// None taken yet. `kind` is the stem of ids made from nothing.
    pub fn of(kind: &'static str, in_file: &'a HashSet<String>) -> Self {
        Self { kind, in_file, taken: HashSet::new(), last: 1 }
    }

    /// The same for entities of another kind.
    pub fn for_kind(&self, kind: &'static str) -> Self {
        Self::of(kind, self.in_file)
    }

    /// Gives `entity` an id of its own; what was done, unless it had one.
    pub fn settle(&mut self, entity: &mut Value) -> Option<String> {
        let members = entity.as_object_mut()?;
        let own = members.get("id").and_then(Value::as_str);
        let own = own.filter(|id| !id.is_empty() && id.chars().count() <= LONGEST).map(str::to_owned);
        if let Some(id) = &own
            && self.taken.insert(id.clone())
        {
            return None;
        }
        let why = if own.is_some() { "Its id is used twice" } else { "It has no usable id" };
        let id = self.free(own.as_deref().unwrap_or(self.kind));
        let done = format!("{why}: it is '{id}' now.");
        members.insert("id".to_owned(), id.into());
        Some(done)
    }

    /// A free id. The number only grows, so that a million doubles take a million steps.
    fn free(&mut self, stem: &str) -> String {
        let stem: String = stem.chars().take(LONGEST - 10).collect();
        loop {
            self.last += 1;
            let id = format!("{stem}-{}", self.last);
            if !self.in_file.contains(&id) && self.taken.insert(id.clone()) {
                return id;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn doubles_and_the_nameless_get_their_own() {
        let in_file = all(&json!([{"id": "a"}, {"id": "a"}, {"deep": {"id": "a-2"}}, {"id": 7}]));
        let mut ids = Ids::of("mark", &in_file);
        let mut settled = |mut entity: Value| {
            let done = ids.settle(&mut entity).is_some();
            (entity["id"].as_str().map(str::to_owned), done)
        };
        assert_eq!(settled(json!({"id": "a"})), (Some("a".to_owned()), false));
        assert_eq!(settled(json!({"id": "a"})), (Some("a-3".to_owned()), true));
        assert_eq!(settled(json!({"id": 7})), (Some("mark-4".to_owned()), true));
        assert_eq!(settled(json!({"id": "a-2"})), (Some("a-2".to_owned()), false));
        assert_eq!(settled(json!("no entity")), (None, false));
    }
}
