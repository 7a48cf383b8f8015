//! Paths into a tree: from the project to an entity, and from an entity inwards.

use core::fmt;

use serde_json::Value;

/// One step inwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::project) enum Step {
    /// Into a member of an object.
    Member(String),
    /// To an entry of a list, counted from 0.
    Entry(usize),
}

impl Step {
    /// Whether it leads to a member with one of these names.
    pub fn is_one_of(&self, names: &[&str]) -> bool {
        matches!(self, Self::Member(name) if names.contains(&name.as_str()))
    }
}

/// Where an entity stands: `list[index]`, inside another or at the top.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place<'a> {
    /// What the list belongs to; `None` for the project.
    pub inside: Option<&'a Place<'a>>,
    /// Name of the list; empty for the project itself.
    pub list: &'a str,
    /// Its place in the file's list.
    pub index: usize,
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.list.is_empty() {
            return Ok(());
        }
        if let Some(outer) = self.inside {
            write!(f, "{outer}.")?;
        }
        write!(f, "{}[{}]", self.list, self.index)
    }
}

/// `scenes[3]` and `lens.tilt_deg` as one path.
pub(super) fn join(outer: &str, inner: &str) -> String {
    let dot = if outer.is_empty() || inner.is_empty() { "" } else { "." };
    format!("{outer}{dot}{inner}")
}

/// A path in words: `lens.tilt_deg`, `dates[2].to`.
pub(super) fn shown(path: &[Step]) -> String {
    path.iter().fold(String::new(), |shown, step| match step {
        Step::Member(name) => join(&shown, name),
        Step::Entry(index) => format!("{shown}[{index}]"),
    })
}

/// What stands at `path`.
pub(super) fn at<'a>(tree: &'a mut Value, path: &[Step]) -> Option<&'a mut Value> {
    path.iter().try_fold(tree, |tree, step| match step {
        Step::Member(name) => tree.get_mut(name),
        Step::Entry(index) => tree.get_mut(*index),
    })
}

/// Takes out what stands at `path`; whether it was there.
pub(super) fn remove(tree: &mut Value, path: &[Step]) -> bool {
    let Some((last, outer)) = path.split_last() else { return false };
    match (at(tree, outer), last) {
        (Some(Value::Object(members)), Step::Member(name)) => members.remove(name).is_some(),
        (Some(Value::Array(entries)), Step::Entry(index)) if *index < entries.len() => {
            entries.remove(*index);
            true
        }
        _ => false,
    }
}
