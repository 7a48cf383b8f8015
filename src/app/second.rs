//! The second part of the compiled app: the rooms behind the first screen and the demo's scenes, the reading of whatever
//! was written elsewhere or before, and the writing.
//!
//! The web build is cut in two (`part` in `dev`), so that a first visit waits for the first part only. The second one is
//! fetched as soon as the first page stands; what needs it earlier waits for it, and says so. All that leads from the first part into the
//! second stands in [`Table`]: whatever the first calls by any other way is in the first.

use std::sync::OnceLock;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::filed::{Filed, Kept, newest};
use slantlight::project::reader;
use slantlight::project::route::Route;

use super::devices::bridge;
use super::devices::file::Opened;
use super::devices::local;
use super::pages::incoming::Incoming;
use super::parts::Notes;
use super::store::copies::Made;
use super::store::shelf::Durable;
use super::store::{Desk, Settings, keeper, pictures, settings};
use super::{banners, pages, pasting};

/// Reads a text that is kept; `None` if it cannot be read.
pub type Read<T> = fn(&str) -> Option<T>;

/// What the first part calls in the second.
pub struct Table {
    /// The page at an address that the first part has no page for.
    pub page: fn(Route) -> AnyView,
    /// The sheets that any page may open.
    pub sheets: fn() -> AnyView,
    /// What the sun does today, on the first screen.
    pub today: fn() -> AnyView,
    /// What is said over every page of other tabs and versions.
    pub banners: fn() -> AnyView,
    /// What is said beneath every page when it stands at another instant than now.
    pub elsewhen: fn() -> AnyView,
    /// Reads what both shelves hold.
    pub newest: fn(&[String]) -> Kept,
    /// Reads the settings.
    pub settings: Read<Settings>,
    /// Writes them.
    pub keep_settings: fn(Settings),
    /// Reads when copies were made.
    pub copies: Read<Made>,
    /// Writes a project.
    pub write: fn(Desk, Filed),
    /// Lays a state of a project aside.
    pub lay_aside: fn(Durable, Filed),
    /// Takes away the pictures that no record names.
    pub clear_away: fn(Durable),
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
    today: pages::today::section,
    banners: banners::of_others,
    elsewhen: banners::elsewhen,
    newest,
    settings: reader::from_text,
    keep_settings: settings::keep,
    copies: reader::from_text,
    write: Desk::write_at_once,
    lay_aside: keeper::lay_aside,
    clear_away: pictures::clear_away,
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

/// What is said while it is on its way.
pub const COMING: &str = "One moment: the rest of the app is on its way.";

/// Where the second part is.
#[derive(Clone, Copy)]
enum State {
    Coming,
    Missing,
    There(&'static Table),
}

/// What waits for it.
type Work = Box<dyn FnOnce(&'static Table)>;

/// Where the second part is, for all that needs it. It is fetched as soon as the first page stands.
#[derive(Clone, Copy)]
pub struct Second {
    state: RwSignal<State>,
    waiting: StoredValue<Vec<Work>, LocalStorage>,
    notes: Notes,
}

impl Second {
    /// Makes it possible to ask for it. Call once, at the app's root.
    pub fn provide(notes: Notes) -> Self {
        let waiting = StoredValue::new_local(Vec::new());
        let second = Self { state: RwSignal::new(State::Coming), waiting, notes };
        provide_context(second);
        match THERE.get() {
            Some(table) => second.arrived(table),
            None => second.fetch(),
        }
        second
    }

    /// The way to it; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// The second part, if it is there; tracked.
    pub fn there(self) -> Option<&'static Table> {
        match self.state.get() {
            State::There(table) => Some(table),
            State::Coming | State::Missing => None,
        }
    }

    /// Whether it is there; not tracked.
    fn is_there(self) -> bool {
        matches!(self.state.get_untracked(), State::There(_))
    }

    /// Whether it could not be fetched; tracked.
    pub fn is_missing(self) -> bool {
        matches!(self.state.get(), State::Missing)
    }

    /// Does `work` with the second part: now, or when it has come, and says that it waits.
    pub fn ask(self, work: impl FnOnce(&'static Table) + 'static) {
        if !self.is_there() {
            self.notes.say(COMING);
        }
        self.later(work);
    }

    /// The same for what nobody waits for: it says nothing.
    pub fn later(self, work: impl FnOnce(&'static Table) + 'static) {
        if let State::There(table) = self.state.get_untracked() {
            return work(table);
        }
        self.waiting.update_value(|waiting| waiting.push(Box::new(work)));
        self.try_again();
    }

    /// Fetches it if it could not be fetched.
    pub fn try_again(self) {
        if let State::Missing = self.state.get_untracked() {
            self.state.set(State::Coming);
            self.fetch();
        }
    }

    fn fetch(self) {
        spawn_local(async move {
            match come().await {
                Ok(table) => self.arrived(table),
                Err(Missing) => self.failed(),
            }
        });
    }

    /// The worker begins after that: it keeps the copies that were fetched, and none is fetched twice.
    fn arrived(self, table: &'static Table) {
        self.state.set(State::There(table));
        for work in self.waiting.try_update_value(core::mem::take).unwrap_or_default() {
            work(table);
        }
        bridge::settled();
    }

    /// What waits goes on waiting: whatever fetches it in the end does that too.
    fn failed(self) {
        self.state.set(State::Missing);
        if !self.waiting.with_value(Vec::is_empty) {
            self.notes.say_with(MISSING, "Try again", move || self.try_again());
        }
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

/// What is kept under `key`, as `by` reads it; the default of it where nothing is, or nothing that can be read.
///
/// # Errors
/// Something is kept, and the second part did not arrive.
pub async fn read_if_kept<T: Default>(key: &str, by: fn(&Table) -> Read<T>) -> Result<T, Missing> {
    let Some(text) = local::read(key) else { return Ok(T::default()) };
    Ok(by(come().await?)(&text).unwrap_or_default())
}

/// The one cut.
#[cfg(not(debug_assertions))]
#[leptos::wasm_split::wasm_split(second, wasm_split_path = leptos::wasm_split, fallible)]
fn table() -> Result<&'static Table, Missing> {
    Ok(&TABLE)
}

/// Nothing is cut under `./dev serve`.
#[cfg(debug_assertions)]
async fn table() -> Result<&'static Table, Missing> {
    Ok(&TABLE)
}

#[cfg(not(debug_assertions))]
impl From<leptos::wasm_split::SplitLoaderError> for Missing {
    fn from(_: leptos::wasm_split::SplitLoaderError) -> Self {
        Self
    }
}
