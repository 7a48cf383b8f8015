//! Copies: when each project was last sent or exported. Storage can be lost; a copy elsewhere cannot.

use std::collections::BTreeMap;

use leptos::prelude::*;
use slantlight::project::reader;
use slantlight::units::Instant;

use crate::app::devices::{clock, local};

/// Where it is remembered.
const KEY: &str = "slantlight-copies";

/// When each project, by its id, was last sent or exported.
#[derive(Clone, Copy)]
pub struct Copies(RwSignal<BTreeMap<String, Instant>>);

impl Copies {
    /// As it was remembered.
    pub fn remembered() -> Self {
        let read = local::read(KEY).and_then(|text| reader::from_text(&text));
        Self(RwSignal::new(read.unwrap_or_default()))
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
