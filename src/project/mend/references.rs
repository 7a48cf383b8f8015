//! References of a set-up to things that are not there: forgotten, and said so.

use serde_json::Value;

use super::path::{Step, remove};
use crate::project::document::{Project, SetUp};

/// Takes references out of `set_up` that lead nowhere in `places`. `tell` hears where and what.
pub(super) fn clear(set_up: &mut Value, read: &SetUp, places: &Project, mut tell: impl FnMut(&str, String)) {
    for (path, kind) in dangling(read, places) {
        let steps: Vec<Step> = path.split('.').map(|name| Step::Member(name.to_owned())).collect();
        if remove(set_up, &steps) {
            tell(path, format!("The {kind} it leads to is not in the file: choose another."));
        }
    }
}

/// The members that lead nowhere, and to what they should lead.
fn dangling(read: &SetUp, places: &Project) -> Vec<(&'static str, &'static str)> {
    let mut found = Vec::new();
    if let Some(at) = &read.at {
        match places.standing(at) {
            None => found.push(("at", "location")),
            Some(standing) => {
                if at.room.is_some() && standing.room.is_none() {
                    found.extend([("at.room", "room"), ("at.mark", "mark")]);
                } else if at.mark.is_some() && standing.mark.is_none() {
                    found.push(("at.mark", "mark"));
                }
            }
        }
    }
    let camera = read.lens.camera.as_ref();
    if camera.is_some_and(|id| places.cameras.iter().all(|camera| camera.id != *id)) {
        found.push(("lens.camera", "camera"));
    }
    found
}
