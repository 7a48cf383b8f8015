//! Shelves: the two places where this browser keeps the records of projects.
//!
//! Local storage takes a record at once but may lose the last seconds when the browser is killed; IndexedDB with
//! strict durability takes a moment and loses nothing it has reported done. Each project lies on both, and the
//! newest valid record counts.

use crate::app::devices::database::{self, Database};
use crate::app::devices::local::{self, NotKept};
use slantlight::project::versions;
use slantlight::units::Instant;

/// What every key of a project's record begins with.
const PREFIX: &str = "slantlight-project-";

/// What every key of a photograph's picture begins with.
const PICTURE: &str = "slantlight-picture-";

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

    /// The record of project `id` that lies there now: what another tab has written last.
    pub fn read_now(self, id: &str) -> Option<String> {
        local::read(&key(id))
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

    /// Lays a version of project `id` aside, and takes away those that are too many.
    ///
    /// # Errors
    /// The place is full or was taken away; what lies there already stays.
    pub async fn lay_aside(&self, id: &str, written: Instant, record: &str) -> Result<(), NotKept> {
        self.0.write(&versions::key(id, written), record).await?;
        let keys = self.0.keys().await?;
        let all: Vec<Instant> = keys.iter().filter_map(|key| versions::written(key, id)).collect();
        for gone in versions::superfluous(&all) {
            self.0.forget(&versions::key(id, gone)).await?;
        }
        Ok(())
    }

    /// Takes all versions away, so that there is room for what is kept now.
    pub async fn make_room(&self) {
        for key in self.0.keys().await.unwrap_or_default().iter().filter(|key| versions::is_version(key)) {
            // One that cannot be taken away makes no room; the next may.
            let _ = self.0.forget(key).await;
        }
    }

    /// The records of the versions of project `id`.
    pub async fn versions(&self, id: &str) -> Vec<String> {
        self.below(&versions::keys_of(id)).await
    }

    /// The picture of the photograph with this id.
    pub async fn picture(&self, id: &str) -> Option<String> {
        self.0.read(&format!("{PICTURE}{id}")).await.ok().flatten()
    }

    /// Puts the picture of a photograph there.
    ///
    /// # Errors
    /// The place is full or was taken away.
    pub async fn put_picture(&self, id: &str, picture: &str) -> Result<(), NotKept> {
        self.0.write(&format!("{PICTURE}{id}"), picture).await
    }

    /// Takes away the pictures that no record names, of whatever project, version or build.
    pub async fn clear_away_pictures(&self) {
        let keys = self.0.keys().await.unwrap_or_default();
        let pictures: Vec<&str> = keys.iter().filter_map(|key| key.strip_prefix(PICTURE)).collect();
        if pictures.is_empty() {
            return;
        }
        let mut records = Quick.all().await;
        for key in keys.iter().filter(|key| !key.starts_with(PICTURE)) {
            match self.0.read(key).await {
                Ok(record) => records.extend(record),
                // What cannot be read now may name any of them.
                Err(_) => return,
            }
        }
        for id in pictures.into_iter().filter(|id| !records.iter().any(|record| record.contains(id))) {
            // One that cannot be taken away now can be next time.
            let _ = self.0.forget(&format!("{PICTURE}{id}")).await;
        }
    }

    /// What lies under all keys that begin with `prefix`.
    async fn below(&self, prefix: &str) -> Vec<String> {
        let mut records = Vec::new();
        for key in self.0.keys().await.unwrap_or_default().iter().filter(|key| key.starts_with(prefix)) {
            records.extend(self.0.read(key).await.ok().flatten());
        }
        records
    }
}

impl Shelf for Durable {
    async fn all(&self) -> Vec<String> {
        self.below(PREFIX).await
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
