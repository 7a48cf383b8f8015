//! Pictures: what the photographs show, on the durable shelf beside the projects.
//!
//! They are read when somebody looks, and stay in memory from then on: a file that carries them must be ready within the
//! tap. Nothing is ever written over a picture that is there. Some time after the start, the tab that may write clears
//! away those that no record of any project or version names any more.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::document::Project;

use super::shelf::Durable;
use crate::app::devices::local::NotKept;
use crate::app::parts::Notes;
use crate::app::second::Second;

/// When to clear away: long after the start, which has better things to do. Our own choice.
const LATER: core::time::Duration = core::time::Duration::from_secs(20);

/// What is known of a picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Picture {
    /// It is being read.
    Reading,
    /// JPEG in base64.
    There(Arc<str>),
    /// This browser does not have it.
    Gone,
}

/// Pictures by the ids of their photographs.
#[derive(Clone, Copy)]
pub struct Pictures {
    seen: RwSignal<BTreeMap<String, Picture>>,
    shelf: StoredValue<Option<Durable>, LocalStorage>,
}

impl Pictures {
    /// Those on the durable shelf, if the browser has one.
    pub fn on(shelf: Option<Durable>, may_write: RwSignal<bool>) -> Self {
        let (shelf, second) = (StoredValue::new_local(shelf), Second::here());
        let tidy = move || {
            if let (true, Some(shelf)) = (may_write.get_untracked(), shelf.get_value()) {
                second.later(move |table| (table.clear_away)(shelf));
            }
        };
        set_timeout(tidy, LATER);
        Self { seen: RwSignal::new(BTreeMap::new()), shelf }
    }

    /// The picture of a photograph; read if nobody has looked yet. Tracked.
    pub fn look(self, id: &str) -> Picture {
        if let Some(known) = self.seen.with(|seen| seen.get(id).cloned()) {
            return known;
        }
        let id = id.to_owned();
        spawn_local(async move { self.read(id).await });
        Picture::Reading
    }

    /// The project with all pictures that are here; `None` while some are still being read.
    pub fn fill(self, project: &Project) -> Option<Project> {
        let mut found = BTreeMap::new();
        for one in project.photographs() {
            match untrack(move || self.look(&one.id)) {
                Picture::Reading => return None,
                Picture::There(picture) => drop(found.insert(one.id.clone(), picture)),
                Picture::Gone => {}
            }
        }
        Some(project.with_pictures(&found))
    }

    /// Reads all pictures of a project, so that they are there when they are asked for.
    pub async fn read_all(self, project: Arc<Project>) {
        for one in project.photographs() {
            self.read(one.id.clone()).await;
        }
    }

    /// Keeps a picture, unless one is there under this id.
    ///
    /// # Errors
    /// The browser has no room, or keeps nothing for this page.
    pub async fn keep(self, id: String, picture: Arc<str>) -> Result<(), NotKept> {
        let shelf = self.shelf.get_value().ok_or(NotKept::Blocked)?;
        if let Some(ours) = shelf.picture(&id).await {
            self.saw(id, Picture::There(ours.into()));
            return Ok(());
        }
        shelf.put_picture(&id, &picture).await?;
        self.saw(id, Picture::There(picture));
        Ok(())
    }

    /// Keeps the pictures that came with a project, and says how many could not be kept.
    pub fn keep_all(self, pictures: BTreeMap<String, Arc<str>>, notes: Notes) {
        spawn_local(async move {
            let mut refused = 0;
            for (id, picture) in pictures {
                refused += usize::from(self.keep(id, picture).await.is_err());
            }
            if refused > 0 {
                notes.say(format!("{refused} of its photographs could not be kept: this browser has no room for them. Keep the file that brought them."));
            }
        });
    }

    async fn read(self, id: String) {
        let shelf = self.shelf.get_value();
        let found = match &shelf {
            Some(shelf) => shelf.picture(&id).await,
            None => None,
        };
        self.saw(id, found.map_or(Picture::Gone, |picture| Picture::There(picture.into())));
    }

    fn saw(self, id: String, picture: Picture) {
        self.seen.update(|seen| drop(seen.insert(id, picture)));
    }
}

/// Takes away the pictures that no record names; in the second part.
pub fn clear_away(shelf: Durable) {
    spawn_local(async move { shelf.clear_away_pictures().await });
}
