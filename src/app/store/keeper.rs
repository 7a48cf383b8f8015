//! The keeper: writes each change to both shelves and says truly how far it got.
//!
//! A change is on the quick shelf within the frame it was made in; "Saved" is said only when the durable shelf
//! has reported it done. While one durable write runs, newer records wait and only the newest is written.

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::filed::Filed;

use super::shelf::{Durable, Quick, Shelf};
use crate::app::devices::local::NotKept;
use crate::app::second::Second;

/// How far keeping got.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kept {
    /// Nothing has been made yet.
    #[default]
    Nothing,
    /// On its way to the disk.
    Saving,
    /// On the disk.
    Saved,
    /// On the quick shelf only: a crash may lose the last seconds.
    OnlyQuick,
    /// Nowhere but in this page: export it.
    Nowhere(NotKept),
}

impl Kept {
    /// What the person reads; empty while there is nothing to say.
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Nothing => "",
            Self::Saving => "Saving",
            Self::Saved => "Saved",
            Self::OnlyQuick => {
                "Saved, but if the browser crashes now the last seconds may be lost. Send yourself a copy."
            }
            Self::Nowhere(NotKept::Full) => {
                "Not saved: this browser's storage is full. Send yourself a copy before you close the page."
            }
            Self::Nowhere(NotKept::Blocked) => {
                "Not saved: this browser keeps nothing for this page. Send yourself a copy before you close it."
            }
        }
    }

    /// Whether the person should do something about it.
    pub const fn is_trouble(self) -> bool {
        matches!(self, Self::OnlyQuick | Self::Nowhere(_))
    }
}

/// A record on its way.
#[derive(Clone, Debug)]
struct Parcel {
    id: String,
    record: String,
    quick: Result<(), NotKept>,
}

/// Writes records, one after the other.
#[derive(Clone, Copy)]
pub struct Keeper {
    /// How far keeping got.
    pub kept: RwSignal<Kept>,
    durable: StoredValue<Option<Durable>, LocalStorage>,
    second: Second,
    waiting: StoredValue<Vec<Parcel>>,
    writing: StoredValue<bool>,
    /// Whether a newer record is announced.
    awaited: StoredValue<bool>,
}

impl Keeper {
    /// A keeper with the durable shelf, if the browser has one.
    pub fn new(durable: Option<Durable>) -> Self {
        Self {
            kept: RwSignal::new(Kept::Nothing),
            durable: StoredValue::new_local(durable),
            second: Second::here(),
            waiting: StoredValue::new(Vec::new()),
            writing: StoredValue::new(false),
            awaited: StoredValue::new(false),
        }
    }

    /// Keeps the record of project `id` in place of an older one.
    pub fn keep(self, id: &str, record: String) {
        let quick = Quick.put_now(id, &record);
        self.waiting.update_value(|waiting| {
            waiting.retain(|older| older.id != id);
            waiting.push(Parcel { id: id.to_owned(), record, quick });
        });
        self.await_newer();
        self.awaited.set_value(false);
        if !self.writing.get_value() {
            self.writing.set_value(true);
            spawn_local(self.write_all());
        }
    }

    /// A newer record will follow soon: until it is kept, nothing is called saved.
    pub fn await_newer(self) {
        self.awaited.set_value(true);
        if self.kept.get_untracked() != Kept::Saving {
            self.kept.set(Kept::Saving);
        }
    }

    /// Takes the record of project `id` from both shelves.
    pub fn forget(self, id: String) {
        spawn_local(async move {
            // A record that cannot be taken away shows up again at the next start; nothing is lost by it.
            let _ = Quick.remove(&id).await;
            if let Some(durable) = self.durable.get_value() {
                let _ = durable.remove(&id).await;
            }
        });
    }

    /// Lays a state of a project aside. Without room it is not, and what is kept stays as it is.
    pub fn lay_aside(self, filed: Filed) {
        if let Some(durable) = self.durable.get_value() {
            self.second.later(move |table| (table.lay_aside)(durable, filed));
        }
    }

    /// States of project `id` that were laid aside, the newest first.
    pub async fn versions(self, id: &str) -> Vec<Filed> {
        let Some(durable) = self.durable.get_value() else { return Vec::new() };
        let records = durable.versions(id).await;
        let mut versions: Vec<Filed> = records.iter().filter_map(|record| Filed::read(record).ok()).collect();
        versions.sort_unstable_by_key(|version| core::cmp::Reverse(version.written));
        versions
    }

    /// Writes what waits until nothing waits.
    async fn write_all(self) {
        let durable = self.durable.get_value();
        while let Some(parcel) = self.waiting.try_update_value(first).flatten() {
            let written = match &durable {
                Some(shelf) => put(shelf, &parcel).await,
                None => Err(NotKept::Blocked),
            };
            if self.waiting.with_value(Vec::is_empty) && !self.awaited.get_value() {
                self.kept.set(outcome(parcel.quick, written));
            }
        }
        self.writing.set_value(false);
    }
}

/// Lays a state of a project aside, as [`Keeper::lay_aside`] does; in the second part.
pub fn lay_aside(shelf: Durable, filed: Filed) {
    spawn_local(async move {
        let record = filed.seal();
        let _ = shelf.lay_aside(&filed.project.id, filed.written, &record).await;
    });
}

/// Writes a record; where there is no room, earlier versions give way.
async fn put(shelf: &Durable, parcel: &Parcel) -> Result<(), NotKept> {
    match shelf.put(&parcel.id, &parcel.record).await {
        Err(NotKept::Full) => {
            shelf.make_room().await;
            shelf.put(&parcel.id, &parcel.record).await
        }
        written => written,
    }
}

/// Takes the parcel that has waited longest.
fn first(waiting: &mut Vec<Parcel>) -> Option<Parcel> {
    (!waiting.is_empty()).then(|| waiting.remove(0))
}

/// What two attempts amount to.
fn outcome(quick: Result<(), NotKept>, durable: Result<(), NotKept>) -> Kept {
    match (quick, durable) {
        (_, Ok(())) => Kept::Saved,
        (Ok(()), Err(_)) => Kept::OnlyQuick,
        (Err(NotKept::Full), Err(_)) | (Err(_), Err(NotKept::Full)) => Kept::Nowhere(NotKept::Full),
        (Err(NotKept::Blocked), Err(NotKept::Blocked)) => Kept::Nowhere(NotKept::Blocked),
    }
}
