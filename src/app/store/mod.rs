//! The store: what the person chose, what is open, what is kept. One context for all pages.
//!
//! | file | holds |
//! |---|---|
//! | `settings` | units, clock, scheme; kept apart from every project |
//! | `moment` | the instant that all rooms show: now, or one that was chosen |
//!
//! Pages read signals and send edits; effects live here and in `devices`.

pub mod keeper;
pub mod moment;
pub mod settings;
pub mod shelf;

use leptos::prelude::*;

pub use moment::Moment;
pub use settings::{Scheme, Settings};

/// All of it; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Store {
    /// Units, clock, scheme.
    pub settings: RwSignal<Settings>,
    /// The instant that all rooms show.
    pub moment: Moment,
}

impl Store {
    /// Makes the store and offers it to all that is inside the app. Call once, at its root.
    pub fn provide() -> Self {
        let store = Self { settings: settings::kept(), moment: Moment::ticking() };
        provide_context(store);
        store
    }

    /// The store; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }
}
