//! Filed projects: as they lie in the browser's two stores, and which of two copies of one project counts.
//!
//! Each project is kept twice. Of the copies that are whole the one with the highest revision wins; of equal ones the
//! one written last. A record that cannot be read is counted and otherwise left alone: nothing is overwritten by guesses.

use std::collections::HashMap;
use std::sync::Arc;

use super::canonical::to_line;
use super::document::Project;
use super::record::{Record, id_in};
use super::restore::{RestoreError, reopen};
use crate::units::Instant;

/// A project as it was written.
#[derive(Clone, Debug, PartialEq)]
pub struct Filed {
    /// The project.
    pub project: Arc<Project>,
    /// How often it was written.
    pub revision: u64,
    /// When it was written last.
    pub written: Instant,
}

impl Filed {
    /// The text of its record.
    pub fn seal(&self) -> String {
        Record::seal(to_line(&self.project), self.revision, self.written).to_text()
    }

    /// A record's project.
    ///
    /// # Errors
    /// The record is not whole, or a newer build has written it.
    pub fn read(text: &str) -> Result<Self, Unread> {
        let record = Record::open(text).map_err(|_| Unread::Damaged)?;
        match reopen(&record.body) {
            Ok(project) => {
                Ok(Self { project: Arc::new(project), revision: record.revision, written: record.written })
            }
            Err(RestoreError::Newer { text, .. }) => Err(Unread::Newer(id_in(&text))),
            Err(_) => Err(Unread::Damaged),
        }
    }

    /// Whether it counts instead of another copy of its project.
    fn is_newer_than(&self, other: &Self) -> bool {
        (self.revision, self.written) > (other.revision, other.written)
    }
}

/// Why a record is not read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unread {
    /// It was cut off or altered.
    Damaged,
    /// A newer build has written it; the project's id.
    Newer(String),
}

/// What a browser's stores hold.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// Of each project the copy that counts, by their titles.
    pub filed: Vec<Filed>,
    /// Ids of the projects that a newer build has written; this one must not write them.
    pub newer: Vec<String>,
    /// How many records could not be read.
    pub damaged: usize,
}

/// Reads all records, and of each project takes the copy that counts.
pub fn newest(records: &[String]) -> Kept {
    let mut by_id: HashMap<String, Filed> = HashMap::new();
    let mut kept = Kept::default();
    for text in records {
        match Filed::read(text) {
            Err(Unread::Damaged) => kept.damaged += 1,
            Err(Unread::Newer(id)) => kept.newer.push(id),
            Ok(filed) if by_id.get(&filed.project.id).is_none_or(|other| filed.is_newer_than(other)) => {
                by_id.insert(filed.project.id.clone(), filed);
            }
            Ok(_) => {}
        }
    }
    kept.filed = by_id.into_values().collect();
    crate::order::by(&mut kept.filed, |one, other| {
        (&one.project.title, &one.project.id).cmp(&(&other.project.title, &other.project.id))
    });
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Duration;

    fn filed(id: &str, title: &str, revision: u64, minute: i64) -> Filed {
        let written = Instant::default() + Duration::from_minutes(minute);
        Filed { project: Arc::new(Project::empty(id, title)), revision, written }
    }

    fn records(all: &[Filed]) -> Vec<String> {
        all.iter().map(Filed::seal).collect()
    }

    #[test]
    fn the_highest_revision_counts_whichever_store_it_lies_in() {
        let (old, new) = (filed("p", "Loft", 4, 9), filed("p", "Loft, new", 5, 1));
        for order in [[old.clone(), new.clone()], [new.clone(), old]] {
            assert_eq!(newest(&records(&order)), Kept { filed: vec![new.clone()], ..Kept::default() });
        }
    }

    #[test]
    fn of_equal_revisions_the_one_written_last_counts() {
        let (early, late) = (filed("p", "A", 4, 1), filed("p", "B", 4, 2));
        for order in [[early.clone(), late.clone()], [late.clone(), early]] {
            assert_eq!(newest(&records(&order)).filed, vec![late.clone()]);
        }
    }

    #[test]
    fn a_damaged_copy_never_wins_and_is_counted() {
        let (old, new) = (filed("p", "Loft", 4, 0), filed("p", "Loft", 5, 0));
        let cut: String = new.seal().chars().take(60).collect();
        let altered = new.seal().replace("Loft", "Left");
        let found = newest(&[cut, old.seal(), altered, "not a record".to_owned()]);
        assert_eq!(found, Kept { filed: vec![old], damaged: 3, ..Kept::default() });
    }

    #[test]
    fn several_projects_come_by_their_titles() {
        let all = [filed("a", "Salt", 1, 0), filed("b", "Ferry", 9, 0), filed("c", "Salt", 1, 0)];
        let titles = |found: &[Filed]| found.iter().map(|one| one.project.id.clone()).collect::<Vec<_>>();
        assert_eq!(titles(&newest(&records(&all)).filed), ["b", "a", "c"]);
        assert_eq!(newest(&[]), Kept::default());
    }

    #[test]
    fn a_newer_build_is_named_and_the_older_copy_still_shown() {
        let old = filed("p", "Loft", 4, 0);
        let body = to_line(&Project::empty("p", "Loft")).replace("\"version\":1", "\"version\":9");
        let newer = Record::seal(body, 5, Instant::default()).to_text();
        let kept = newest(&[newer, old.seal()]);
        assert_eq!(kept, Kept { filed: vec![old], newer: vec!["p".to_owned()], damaged: 0 });
    }
}
