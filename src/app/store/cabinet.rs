//! The cabinet: all that this browser keeps.
//!
//! At the start both shelves are read, and of each project the newest valid record counts. A record that cannot be
//! read is left where it lies: the failure page can still hand it out, and nothing is overwritten by guesses.

use slantlight::project::filed::{Filed, Kept};

use super::copies;
use super::settings::{self, Settings};
use super::shelf::{Durable, Quick, Shelf};
use crate::app::devices::local;
use crate::app::second::{self, Missing};

/// Which project was open last.
const OPEN: &str = "slantlight-open";

/// What was found at the start.
pub struct Found {
    /// The projects, by their titles.
    pub filed: Vec<Filed>,
    /// Ids of the projects that a newer build has written; this one must not write them.
    pub newer: Vec<String>,
    /// Records that could not be read.
    pub damaged: usize,
    /// The durable shelf, where the browser has one.
    pub durable: Option<Durable>,
    /// How this phone writes and looks.
    pub settings: Settings,
    /// When each project was last sent or exported.
    pub copies: copies::Made,
}

/// Reads both shelves, and what is kept beside them. An empty browser is known at once; reading takes the app's second part.
///
/// # Errors
/// That did not arrive.
pub async fn look() -> Result<Found, Missing> {
    let durable = Durable::open().await.ok();
    let mut texts = Quick.all().await;
    if let Some(shelf) = &durable {
        texts.extend(shelf.all().await);
    }
    let Kept { filed, newer, damaged } =
        if texts.is_empty() { Kept::default() } else { (second::come().await?.newest)(&texts) };
    let (settings, copies) = (settings::found().await?, copies::found().await?);
    Ok(Found { filed, newer, damaged, durable, settings, copies })
}

/// Id of the project that was open last.
pub fn last_open() -> Option<String> {
    local::read(OPEN)
}

/// Remembers which project is open. Without room it is forgotten, and the first of the list opens next time.
pub fn remember_open(id: &str) {
    let _ = local::write(OPEN, id);
}
