//! Shelves: the two places where this browser keeps the records of projects.
//!
//! Local storage takes a record at once but may lose the last seconds when the browser is killed; IndexedDB with
//! strict durability takes a moment and loses nothing it has reported done. Each project lies on both, and the
//! newest valid record counts.

use crate::app::devices::database::{self, Database};
use crate::app::devices::local::{self, NotKept};

/// What every key of a project's record begins with.
const PREFIX: &str = "slantlight-project-";

/// A place that keeps records by the id of their project.
pub trait Shelf {
    /// All records, as they were put there.
    async fn all(&self) -> Vec<String>;

    /// Puts a record there in place of an older one.
    ///
    /// # Errors
    /// The place is full, missing or blocked.
    async fn put(&self, id: &str, record: &str) -> Result<(), NotKept>;

    /// Takes a record away.
    ///
    /// # Errors
    /// The place is missing or blocked.
    async fn remove(&self, id: &str) -> Result<(), NotKept>;
}

/// Local storage.
#[derive(Clone, Copy, Debug)]
pub struct Quick;

impl Quick {
    /// As [`Shelf::put`], within the very call: what a page that is being left still has time for.
    ///
    /// # Errors
    /// Storage is full, missing or blocked.
    pub fn put_now(self, id: &str, record: &str) -> Result<(), NotKept> {
        local::write(&key(id), record)
    }
}

impl Shelf for Quick {
    async fn all(&self) -> Vec<String> {
        local::keys(PREFIX).iter().filter_map(|key| local::read(key)).collect()
    }

    async fn put(&self, id: &str, record: &str) -> Result<(), NotKept> {
        self.put_now(id, record)
    }

    async fn remove(&self, id: &str) -> Result<(), NotKept> {
        local::forget(&key(id));
        Ok(())
    }
}

/// IndexedDB, written with strict durability.
#[derive(Clone, Debug)]
pub struct Durable(Database);

impl Durable {
    /// Opens it.
    ///
    /// # Errors
    /// The browser has none, or blocks it.
    pub async fn open() -> Result<Self, NotKept> {
        database::open().await.map(Self)
    }
}

impl Shelf for Durable {
    async fn all(&self) -> Vec<String> {
        let mut records = Vec::new();
        for key in self.0.keys().await.unwrap_or_default() {
            records.extend(self.0.read(&key).await.ok().flatten());
        }
        records
    }

    async fn put(&self, id: &str, record: &str) -> Result<(), NotKept> {
        self.0.write(&key(id), record).await
    }

    async fn remove(&self, id: &str) -> Result<(), NotKept> {
        self.0.forget(&key(id)).await
    }
}

/// Where the record of project `id` lies on either shelf.
fn key(id: &str) -> String {
    format!("{PREFIX}{id}")
}
