//! The plan for others: calendar, table, map, message, page. All of them say what the day sheet says.

pub mod calendar;
pub mod csv;
pub mod geojson;
pub mod message;
pub mod page;

#[cfg(test)]
mod out_tests;

use crate::project::document::Project;
use crate::project::send::{Candidate, file_stem};

/// A file named after the project.
fn file(project: &Project, ending: &str, media_type: &'static str, text: String) -> Candidate {
    Candidate { name: format!("{}{ending}", file_stem(&project.title)), media_type, bytes: text.into_bytes() }
}
