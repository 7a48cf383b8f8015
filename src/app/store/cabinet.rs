//! The cabinet: all projects that this browser keeps.
//!
//! At the start both shelves are read, and of each project the newest valid record counts. A record that cannot be
//! read is left where it lies: the failure page can still hand it out, and nothing is overwritten by guesses.

use std::collections::HashMap;
use std::sync::Arc;

use slantlight::project::canonical::to_line;
use slantlight::project::document::Project;
use slantlight::project::record::Record;
use slantlight::project::restore::reopen;
use slantlight::units::Instant;

use super::shelf::{Durable, Quick, Shelf};
use crate::app::devices::local;

/// Which project was open last.
const OPEN: &str = "slantlight-open";

/// A project as it lies in the cabinet.
#[derive(Clone, Debug, PartialEq)]
pub struct Filed {
    /// The project.
    pub project: Arc<Project>,
    /// How often it was written.
    pub revision: u64,
    /// When it was written last.
    pub written: Instant,
}

/// What was found at the start.
pub struct Found {
    /// The projects, by their titles.
    pub filed: Vec<Filed>,
    /// Records that could not be read.
    pub damaged: usize,
    /// The durable shelf, where the browser has one.
    pub durable: Option<Durable>,
}

/// Reads both shelves.
pub async fn look() -> Found {
    let durable = Durable::open().await.ok();
    let mut texts = Quick.all().await;
    if let Some(shelf) = &durable {
        texts.extend(shelf.all().await);
    }
    let filed: Vec<Filed> = texts.iter().filter_map(|text| read(text)).collect();
    let damaged = texts.len() - filed.len();
    Found { filed: newest(filed), damaged, durable }
}

/// The text of a project's record.
pub fn seal(filed: &Filed) -> String {
    Record::seal(to_line(&filed.project), filed.revision, filed.written).to_text()
}

/// A record's project; `None` for one that was cut off, altered or of a newer version.
pub fn read(text: &str) -> Option<Filed> {
    let record = Record::open(text).ok()?;
    let project = reopen(&record.body).ok()?;
    Some(Filed { project: Arc::new(project), revision: record.revision, written: record.written })
}

/// Id of the project that was open last.
pub fn last_open() -> Option<String> {
    local::read(OPEN)
}

/// Remembers which project is open. Without room it is forgotten, and the first of the list opens next time.
pub fn remember_open(id: &str) {
    let _ = local::write(OPEN, id);
}

/// Of each project the one with the highest revision.
fn newest(filed: Vec<Filed>) -> Vec<Filed> {
    let mut by_id: HashMap<String, Filed> = HashMap::new();
    for one in filed {
        match by_id.get(&one.project.id) {
            Some(other) if other.revision >= one.revision => {}
            _ => drop(by_id.insert(one.project.id.clone(), one)),
        }
    }
    let mut newest: Vec<Filed> = by_id.into_values().collect();
    newest.sort_by(|one, other| one.project.title.cmp(&other.project.title));
    newest
}
