//! Copies: when each project was last sent or exported. Storage can be lost; a copy elsewhere cannot.

use std::collections::BTreeMap;

use leptos::prelude::*;
use slantlight::project::reader;
use slantlight::units::Instant;

use crate::app::devices::{clock, local};
use crate::app::second::{self, Missing};

/// Where it is remembered.
const KEY: &str = "slantlight-copies";

/// Instants by the projects' ids.
pub type Made = BTreeMap<String, Instant>;

/// When each project, by its id, was last sent or exported.
#[derive(Clone, Copy)]
pub struct Copies(RwSignal<Made>);

/// What is remembered.
///
/// # Errors
/// Something is, and the second part of the app, which can read it, did not arrive.
pub async fn found() -> Result<Made, Missing> {
    second::read_if_kept(KEY, |table| table.copies).await
}

impl Copies {
    /// As it was remembered; see [`found`].
    pub fn remembered(found: Made) -> Self {
        Self(RwSignal::new(found))
    }

    /// When a copy of project `id` was made last; tracked.
    pub fn last(self, id: &str) -> Option<Instant> {
        self.0.with(|copies| copies.get(id).copied())
    }

    /// A copy of project `id` was made just now.
    pub fn made(self, id: &str) {
        self.0.update(|copies| {
            copies.insert(id.to_owned(), clock::now());
        });
        // Without room the age is not known next time, and the screen says so.
        let _ = local::write(KEY, &self.0.with_untracked(reader::to_text));
    }
}
