//! Local storage: written at once, but a browser that is killed may lose its last seconds.
//!
//! Reaching for it throws where it is blocked, so each call asks anew and takes nothing for granted.

use leptos::prelude::window;
use web_sys::Storage;

/// Why nothing was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotKept {
    /// No room left.
    Full,
    /// Missing or blocked.
    Blocked,
}

/// Reads the text under `key`; `None` when nothing is there or storage is blocked.
pub fn read(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

/// Writes `text` under `key`.
///
/// # Errors
/// Storage is full, missing or blocked.
pub fn write(key: &str, text: &str) -> Result<(), NotKept> {
    let storage = storage().ok_or(NotKept::Blocked)?;
    storage.set_item(key, text).map_err(|_| NotKept::Full)
}

/// Forgets what is under `key`.
pub fn forget(key: &str) {
    if let Some(storage) = storage() {
        // Blocked storage has nothing to forget.
        drop(storage.remove_item(key));
    }
}

/// All keys that begin with `prefix`.
pub fn keys(prefix: &str) -> Vec<String> {
    let Some(storage) = storage() else { return Vec::new() };
    let count = storage.length().unwrap_or(0);
    (0..count)
        .filter_map(|index| storage.key(index).ok().flatten())
        .filter(|key| key.starts_with(prefix))
        .collect()
}

fn storage() -> Option<Storage> {
    window().local_storage().ok().flatten()
}
