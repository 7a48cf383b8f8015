//! The location of the page: read as memos, changed by edits; all edits of one drag are one step of undo.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::document::Location;
use slantlight::project::edit::Edit;
use slantlight::words::{self, Units};

use crate::app::store::Store;

/// The location of the page; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Shown {
    /// The store.
    pub store: Store,
    found: Memo<Option<Arc<Location>>>,
    drag: StoredValue<Option<u32>>,
}

impl Shown {
    /// The location with this id; all rooms of the app show it from here on.
    pub fn of(id: String) -> Self {
        let store = Store::here();
        store.visit(&id);
        let found = Memo::new(move |_| {
            store.desk.with_live(|project| project.locations.iter().find(|place| place.id == id).cloned())
        });
        Self { store, found, drag: StoredValue::new(None) }
    }

    /// Whether the project has it.
    pub fn is_there(self) -> bool {
        self.found.with(Option::is_some)
    }

    /// Reads the location; tracked.
    pub fn with<T>(self, read: impl FnOnce(&Location) -> T) -> Option<T> {
        self.found.with(|found| found.as_ref().map(|location| read(location)))
    }

    /// "40.6405 N 8.6538 W · ± 8 m · Europe/Lisbon".
    pub fn subtitle(self) -> String {
        let units = self.units();
        let words = self.with(|location| {
            let accuracy = location.accuracy.map(|accuracy| format!(" {}", words::accuracy(accuracy, units)));
            format!("{}{} · {}", words::position(location.site), accuracy.unwrap_or_default(), location.zone)
        });
        words.unwrap_or_default()
    }

    /// Metres, or feet and inches; tracked.
    pub fn units(self) -> Units {
        self.store.settings.get().units
    }

    /// Changes the location: one step of undo.
    pub fn change(self, change: impl FnOnce(&mut Location)) {
        self.drag.set_value(None);
        if let Some(edit) = self.edited(change) {
            self.store.edit(edit);
        }
    }

    /// Takes something of the location away, and offers to undo it.
    pub fn change_with_undo(self, change: impl FnOnce(&mut Location), says: String) {
        self.drag.set_value(None);
        if let Some(edit) = self.edited(change) {
            self.store.edit_with_undo(edit, says);
        }
    }

    /// Changes the location while it is typed: all until the next other change is one step of undo.
    pub fn drag(self, change: impl FnOnce(&mut Location)) {
        let drag = self.drag.get_value().unwrap_or_else(|| self.store.desk.new_drag());
        self.drag.set_value(Some(drag));
        if let Some(edit) = self.edited(change) {
            self.store.edit_in_drag(edit, drag);
        }
    }

    fn edited(self, change: impl FnOnce(&mut Location)) -> Option<Edit> {
        // From the latest root, not the one on the screen: two changes may come within one frame.
        let project = self.store.desk.latest();
        let id = self.found.with_untracked(|found| found.as_ref().map(|location| location.id.clone()))?;
        let mut location = project.location(&id)?.clone();
        change(&mut location);
        Some(Edit::PutLocation(Box::new(location)))
    }
}
