//! The second part of the compiled app: the rooms behind the first screen and the demo's scenes, and the reading of whatever
//! was written elsewhere or before.
//!
//! The web build is cut in two (`part` in `dev`), so that a first visit waits for the first part only. The second one is
//! fetched as soon as the first page stands; what needs it earlier waits for it. All that leads from the first part into the
//! second stands in [`Table`]: whatever the first calls by any other way is in the first.

use std::sync::OnceLock;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::filed::{Kept, newest};
use slantlight::project::route::Route;

use super::devices::bridge;
use super::devices::file::Opened;
use super::pages::incoming::Incoming;
use super::parts::Notes;
use super::store::Desk;
use super::{pages, pasting};

/// What the first part calls in the second.
pub struct Table {
    /// The page at an address that the first part has no page for.
    pub page: fn(Route) -> AnyView,
    /// The sheets that any page may open.
    pub sheets: fn() -> AnyView,
    /// Reads what both shelves hold.
    pub newest: fn(&[String]) -> Kept,
    /// Takes in what another tab has kept.
    pub hear: fn(Desk, &str),
    /// Looks at a pasted text.
    pub offer: fn(&str, pasting::Pasting),
    /// Reads a link, or a message with a project.
    pub read: fn(Incoming, &str),
    /// Reads a file.
    pub read_file: fn(Incoming, &Opened),
}

static TABLE: Table = Table {
    page: pages::page_of_second,
    sheets: pages::sheets,
    newest,
    hear: Desk::hear_at_once,
    offer: pasting::offer,
    read: Incoming::read,
    read_file: Incoming::read_file,
};

/// The table, once it has come.
static THERE: OnceLock<&'static Table> = OnceLock::new();

/// The second part did not arrive.
#[derive(Clone, Copy, Debug)]
pub struct Missing;

/// What is said then.
pub const MISSING: &str = "A part of the app has not arrived: is the network gone?";

/// Where the second part is, for all that waits for it.
#[derive(Clone, Copy)]
pub struct Second {
    there: RwSignal<Option<&'static Table>>,
    /// Whether somebody waits for it.
    pub awaited: RwSignal<bool>,
}

impl Second {
    /// Makes it possible to ask for it. Call once, at the app's root.
    pub fn provide() -> Self {
        let second = Self { there: RwSignal::new(THERE.get().copied()), awaited: RwSignal::new(false) };
        provide_context(second);
        second
    }

    /// The way to it; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// The second part, if it is there; tracked.
    pub fn there(self) -> Option<&'static Table> {
        self.there.get()
    }

    /// Does `work` with the second part: now if it is there, else when it has come, or could not.
    pub fn ask(self, work: impl FnOnce(Option<&'static Table>) + 'static) {
        if let Some(table) = THERE.get() {
            return work(Some(table));
        }
        self.awaited.set(true);
        spawn_local(async move {
            let found = self.arrive().await;
            self.awaited.set(false);
            work(found);
        });
    }

    /// Does `work` with the second part as soon as it is there; if it does not come, a note says so and offers to try again.
    pub fn ask_or_say(self, notes: Notes, work: impl Fn(&'static Table) + Clone + Send + Sync + 'static) {
        self.ask(move |found| match found {
            Some(table) => work(table),
            None => notes.say_with(MISSING, "Try again", move || self.ask_or_say(notes, work.clone())),
        });
    }

    /// Fetches it ahead of being asked for it. The worker keeps its copies after that: nothing is fetched twice.
    pub fn fetch(self) {
        spawn_local(async move {
            self.arrive().await;
            bridge::settled();
        });
    }

    async fn arrive(self) -> Option<&'static Table> {
        let found = come().await.ok();
        if self.there.get_untracked().is_none() {
            self.there.set(found);
        }
        found
    }
}

/// The second part, as soon as it has come.
///
/// # Errors
/// It did not arrive; the next call asks for it anew.
pub async fn come() -> Result<&'static Table, Missing> {
    let table = table().await?;
    Ok(THERE.get_or_init(|| table))
}

/// The one cut.
#[cfg(cut)]
#[leptos::wasm_split::wasm_split(second, wasm_split_path = leptos::wasm_split, fallible)]
fn table() -> Result<&'static Table, Missing> {
    Ok(&TABLE)
}

/// Nothing is cut under `./dev serve`.
#[cfg(not(cut))]
async fn table() -> Result<&'static Table, Missing> {
    Ok(&TABLE)
}

#[cfg(cut)]
impl From<leptos::wasm_split::SplitLoaderError> for Missing {
    fn from(_: leptos::wasm_split::SplitLoaderError) -> Self {
        Self
    }
}
