//! Migrations: one file per step from a version to the next. Every version that was ever released stays readable.
//!
//! There is one version so far, so there is no step yet. A step works on the tree, because the types know only
//! the present version; it goes into [`STEPS`] at the place of the version it starts from, less one.

use serde_json::Value;

use super::document::VERSION;

/// Brings a tree from one version to the next.
type Step = fn(&mut Value);

/// The step from version 1 to 2 first, and so on.
const STEPS: [Step; VERSION as usize - 1] = [];

/// Brings `tree` from `version` (1 to [`VERSION`]) to [`VERSION`].
pub(super) fn up(tree: &mut Value, version: u32) {
    for step in STEPS.iter().skip(version as usize - 1) {
        step(tree);
    }
    if let Some(project) = tree.as_object_mut() {
        project.insert("version".to_owned(), VERSION.into());
    }
}
