//! The store: what the person chose, what is open, what is kept. One context for all pages.
//!
//! | file | holds |
//! |---|---|
//! | `desk` | the open project, its history, edits |
//! | `cabinet` | all projects of this browser, as they were found at the start |
//! | `keeper`, `shelf` | the way to local storage and IndexedDB, and how far it got |
//! | `copies` | when each project was last sent or exported |
//! | `pictures` | what the photographs show, read when somebody looks |
//! | `moment` | the instant that all rooms show: now, or one that was chosen |
//! | `zones` | tables of clock changes, asked of the browser once each |
//! | `safety` | asks the browser to keep what is kept |
//! | `settings` | units, clock, scheme; kept apart from every project |
//!
//! Pages read signals and send edits; effects live here and in `devices`.

pub mod cabinet;
pub mod copies;
pub mod desk;
pub mod keeper;
pub mod moment;
pub mod pictures;
mod safety;
pub mod settings;
pub mod shelf;
pub mod zones;

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::place::zone::Zone;
use slantlight::project::document::{Location, Project};
use slantlight::project::edit::Edit;
use slantlight::project::filed::Filed;
use slantlight::project::told::Told;
use slantlight::units::Degrees;

use super::devices::{id, local};
use super::parts::Notes;
use cabinet::Found;
use copies::Copies;
pub use desk::{Desk, NotMade};
pub use keeper::Kept;
pub use moment::Moment;
pub use pictures::{Picture, Pictures};
pub use settings::{Scheme, Settings};
use zones::Zones;

/// The set-up that all rooms show.
const CURRENT: &str = "slantlight-set-up";

/// The rest of a day that was planned anew.
const TOLD: &str = "slantlight-rest-of-day";

/// All of it; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Store {
    /// Units, clock, scheme.
    pub settings: RwSignal<Settings>,
    /// The instant that all rooms show.
    pub moment: Moment,
    /// The open project.
    pub desk: Desk,
    /// When each project was last sent or exported.
    pub copies: Copies,
    /// What the photographs show.
    pub pictures: Pictures,
    /// Zones by name.
    pub zones: Zones,
    /// Where the phone is, when that is no location of the project; only Now shows it.
    pub here: RwSignal<Option<Site>>,
    /// The rest of a day that was planned anew; until the sun is back.
    pub replanned: RwSignal<Option<Told>>,
    /// How much the compass reads too little here, as a shadow has shown; until the page is closed.
    pub compass_off: RwSignal<Degrees>,
    /// Id of the set-up that all rooms show; it may be of another project, or gone.
    current: RwSignal<Option<String>>,
    /// Id of the location whose page was opened after the set-up was chosen.
    visited: RwSignal<Option<String>>,
    /// Records that could not be read at the start.
    pub damaged: usize,
    notes: Notes,
}

impl Store {
    /// Makes the store of what was found and offers it to all that is inside the app. Call once, at its root.
    pub fn provide(found: Found, notes: Notes) -> Self {
        let damaged = found.damaged;
        let open = opened(&found.filed).unwrap_or_else(|| Arc::new(Project::empty(&id::fresh(), "")));
        let (settings, copies, shelf) = (found.settings, found.copies.clone(), found.durable.clone());
        let desk = Desk::new(open, found, notes);
        let store = Self {
            settings: settings::kept(settings),
            moment: Moment::ticking(),
            desk,
            copies: Copies::remembered(copies),
            pictures: Pictures::on(shelf, desk.may_write),
            zones: Zones::new(),
            here: RwSignal::new(None),
            replanned: RwSignal::new(local::read(TOLD).as_deref().and_then(Told::read)),
            compass_off: RwSignal::new(Degrees::default()),
            current: RwSignal::new(local::read(CURRENT)),
            visited: RwSignal::new(None),
            damaged,
            notes,
        };
        safety::ask_at_first_save(store.desk.keeper.kept, notes);
        provide_context(store);
        store
    }

    /// The store; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// Makes an edit: one step of undo. If it cannot be made, a note says why; false then.
    pub fn edit(self, edit: Edit) -> bool {
        self.told(self.desk.edit(edit))
    }

    /// Makes an edit that takes something away, and offers to undo it.
    pub fn edit_with_undo(self, edit: Edit, says: impl Into<String>) -> bool {
        let done = self.edit(edit);
        if done {
            self.notes.say_with(says, "Undo", move || {
                self.desk.undo();
            });
        }
        done
    }

    /// Puts a whole other state in place of the open project: one step of undo. False if it may not be written here.
    pub fn replace(self, project: Arc<Project>, label: &'static str) -> bool {
        self.told(self.desk.replace(project, label))
    }

    /// The open project has just been sent or exported: its age is remembered, and its state as the likeliest ancestor
    /// of what comes back.
    pub fn copy_made(self, id: &str) {
        self.copies.made(id);
        self.desk.lay_aside();
    }

    /// Makes one of the edits of a drag; see [`Desk::new_drag`].
    pub fn edit_in_drag(self, edit: Edit, drag: u32) -> bool {
        self.told(self.desk.edit_in_drag(edit, drag))
    }

    /// Id of the set-up that all rooms show: the chosen one if the project has it, else the first. Tracked.
    pub fn current_set_up(self) -> Option<String> {
        let chosen = self.current.get();
        self.desk.with(|project| {
            let chosen = chosen.filter(|id| project.set_up(id).is_some());
            chosen.or_else(|| project.set_ups().next().map(|(_, set_up)| set_up.id.clone()))
        })
    }

    /// The location that all rooms show: the one visited last, else that of the current set-up, else the first of
    /// the project. Tracked.
    pub fn current_location(self) -> Option<Arc<Location>> {
        let (set_up, visited) = (self.current_set_up(), self.visited.get());
        self.desk.with(|project| {
            let visited = visited.and_then(|id| project.locations.iter().find(|place| place.id == id));
            if let Some(place) = visited {
                return Some(place.clone());
            }
            let at = set_up.and_then(|id| project.set_up(&id).and_then(|(_, set_up)| set_up.at.clone()));
            let of_set_up = at.and_then(|at| project.locations.iter().find(|place| place.id == at.location));
            of_set_up.or(project.locations.first()).cloned()
        })
    }

    /// Zone of the location that all rooms show, else the phone's. Tracked.
    pub fn current_zone(self) -> Arc<Zone> {
        match self.current_location() {
            Some(location) => self.zones.named(&location.zone),
            None => self.zones.of_the_phone(),
        }
    }

    /// Every room stands at this set-up from here on.
    pub fn stand_by(self, set_up: &str) {
        self.current.set(Some(set_up.to_owned()));
        self.visited.set(None);
        self.here.set(None);
        // Without room it is the first set-up again next time.
        let _ = local::write(CURRENT, set_up);
    }

    /// The rest of the day was planned anew, or stands again as it was.
    pub fn replan(self, told: Option<Told>) {
        match &told {
            // Without room it is told until the page is closed.
            Some(told) => drop(local::write(TOLD, &told.kept())),
            None => local::forget(TOLD),
        }
        self.replanned.set(told);
    }

    /// Every room shows this location from here on, until a set-up is chosen.
    pub fn visit(self, location: &str) {
        self.here.set(None);
        self.visited.set(Some(location.to_owned()));
    }

    /// A fresh id for something new in the project.
    pub fn fresh_id(self) -> String {
        id::fresh()
    }

    fn told(self, made: Result<(), NotMade>) -> bool {
        match made {
            Ok(()) => true,
            Err(NotMade::OtherTab) => {
                self.notes.say("Slantlight is open in another tab, and changes are made there. Tap “Write here” to make them in this one.");
                false
            }
            Err(NotMade::Newer) => {
                self.notes.say(
                    "A newer version of Slantlight has changed this project. Let it in here too, then go on.",
                );
                false
            }
            Err(NotMade::Gone) => {
                self.notes.say("What you changed is not in the project any more. Nothing was changed.");
                false
            }
        }
    }
}

/// The project that was open last, or the first.
fn opened(filed: &[Filed]) -> Option<Arc<Project>> {
    let last = cabinet::last_open();
    let found = filed.iter().find(|one| Some(&one.project.id) == last.as_ref());
    found.or(filed.first()).map(|one| one.project.clone())
}
