//! The room of the page: read as memos, changed by edits; all edits of one drag are one step of undo.

use std::sync::Arc;

use chrono::NaiveDate;
use leptos::prelude::*;
use slantlight::place::mark::Mark;
use slantlight::place::opening::Opening;
use slantlight::place::room::Room;
use slantlight::place::skyline::Skyline;
use slantlight::place::zone::Zone;
use slantlight::plan::in_room::RoomStage;
use slantlight::plan::in_room::story::Style;
use slantlight::plan::search::on_mark;
use slantlight::plan::stage::Stage;
use slantlight::project::document::Location;
use slantlight::project::edit::Edit;
use slantlight::project::find::Standing;
use slantlight::project::stage::{self, NotReady};
use slantlight::sky::sun::Sun;
use slantlight::units::{Instant, Vector, World};
use slantlight::words::{self, Units};

use crate::app::store::Store;

/// The room of the page; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Shown {
    /// The store.
    pub store: Store,
    found: Memo<Option<(Arc<Location>, Room)>>,
    /// The room while it is dragged, frame by frame.
    live: Memo<Option<Room>>,
    /// Id of the mark that was chosen on this page.
    chosen: RwSignal<Option<String>>,
    /// The shown mark, ready to be asked for its sun.
    pub stage: Memo<Option<Result<Arc<Stage>, NotReady>>>,
    drag: StoredValue<Option<u32>>,
}

impl Shown {
    /// The room with this id; all rooms of the app show its location from here on.
    pub fn of(id: String) -> Self {
        let store = Store::here();
        let by_id = id.clone();
        let found = Memo::new(move |_| {
            store.desk.with(|project| {
                let (location, room) = project.room(&by_id)?;
                let location = project.locations.iter().find(|place| place.id == location.id)?;
                Some((location.clone(), room.clone()))
            })
        });
        let live = Memo::new(move |_| {
            store.desk.with_live(|project| project.room(&id).map(|(_, room)| room.clone()))
        });
        found.with_untracked(|found| {
            if let Some((location, _)) = found {
                store.visit(&location.id);
            }
        });
        let chosen = RwSignal::new(mark_of_set_up(store));
        let stage = Memo::new(move |_| {
            found.with(|found| {
                let (location, room) = found.as_ref()?;
                let mark = shown_mark(room, chosen.get().as_deref())?;
                let standing = Standing { location, room: Some(room), mark: Some(mark) };
                let zone = Zone::clone(&store.zones.named(&location.zone));
                Some(stage::at_mark(&standing, zone).map(Arc::new))
            })
        });
        Self { store, found, live, chosen, stage, drag: StoredValue::new(None) }
    }

    /// Whether the project has it.
    pub fn is_there(self) -> bool {
        self.found.with(Option::is_some)
    }

    /// Reads the room; tracked.
    pub fn with<T>(self, read: impl FnOnce(&Room) -> T) -> Option<T> {
        self.found.with(|found| found.as_ref().map(|(_, room)| read(room)))
    }

    /// Reads the room as it is under the hand that drags it; tracked.
    pub fn with_live<T>(self, read: impl FnOnce(&Room) -> T) -> Option<T> {
        self.live.with(|room| room.as_ref().map(read))
    }

    /// Reads the location; tracked.
    pub fn with_location<T>(self, read: impl FnOnce(&Location) -> T) -> Option<T> {
        self.found.with(|found| found.as_ref().map(|(location, _)| read(location)))
    }

    /// Reads one opening; tracked.
    pub fn with_opening<T>(self, id: &str, read: impl FnOnce(&Opening) -> T) -> Option<T> {
        self.with(|room| room.openings.iter().find(|opening| opening.id == id).map(read)).flatten()
    }

    /// Reads one mark; tracked.
    pub fn with_mark<T>(self, id: &str, read: impl FnOnce(&Mark) -> T) -> Option<T> {
        self.with(|room| room.marks.iter().find(|mark| mark.id == id).map(read)).flatten()
    }

    /// Id of the mark that is shown: the chosen one, else the first. Tracked.
    pub fn mark(self) -> Option<String> {
        let chosen = self.chosen.get();
        self.with(|room| shown_mark(room, chosen.as_deref()).map(|mark| mark.id.clone())).flatten()
    }

    /// Shows another mark.
    pub fn choose_mark(self, id: &str) {
        self.chosen.set(Some(id.to_owned()));
    }

    /// "Sail loft, Upper floor".
    pub fn title(self) -> String {
        self.with(|room| room.name.clone()).unwrap_or_else(|| "Room".to_owned())
    }

    /// "40.6405 N 8.6538 W · Europe/Lisbon · room 8.0 × 6.0 × 3.4 m".
    pub fn subtitle(self) -> String {
        let units = self.units();
        let place = self.with_location(|location| {
            format!("{} · {} · {}", location.name, words::position(location.site), location.zone)
        });
        let sizes = self.with(|room| {
            let [width, depth] = room.rectangle_sizes()?;
            Some(format!(" · room {}", words::sizes(&[width, depth, room.ceiling], units, words::length)))
        });
        format!("{}{}", place.unwrap_or_default(), sizes.flatten().unwrap_or_default())
    }

    /// Metres, or feet and inches; tracked.
    pub fn units(self) -> Units {
        self.store.settings.get().units
    }

    /// The place's zone; tracked.
    pub fn zone(self) -> Arc<Zone> {
        match self.with_location(|location| self.store.zones.named(&location.zone)) {
            Some(zone) => zone,
            None => self.store.zones.of_the_phone(),
        }
    }

    /// The place's date at the instant that all rooms show; tracked.
    pub fn date(self) -> NaiveDate {
        self.zone().date(self.store.moment.to_the_minute())
    }

    /// What blocks the sky from the shown mark; tracked.
    pub fn skyline(self) -> Skyline {
        match self.stage.get() {
            Some(Ok(stage)) => stage.skyline_at(self.store.moment.to_the_minute()).clone(),
            _ => self.with_location(|location| location.skyline.clone()).unwrap_or_default(),
        }
    }

    /// The sun at an instant, if it is there. Tracked.
    pub fn sun_at(self, at: Instant) -> Option<Vector<World>> {
        let site = self.with_location(|location| location.site)?;
        on_mark::sun_there(&Sun::new(site), &self.skyline(), at)
    }

    /// The room with the shown mark's stage, to be asked for any spot. Tracked.
    pub fn place(self) -> Option<RoomStage> {
        let Some(Ok(stage)) = self.stage.get() else { return None };
        self.found.with(|found| {
            let (location, room) = found.as_ref()?;
            let mark = shown_mark(room, self.chosen.get().as_deref())?;
            let standing = Standing { location, room: Some(room), mark: Some(mark) };
            stage::in_room(&standing, Stage::clone(&stage))
        })
    }

    /// The same on the date that is shown. Tracked.
    pub fn place_today(self) -> Option<RoomStage> {
        self.place().map(|place| place.on(self.date()))
    }

    /// The shown mark; tracked.
    pub fn whole_mark(self) -> Option<Mark> {
        self.mark().and_then(|id| self.with_mark(&id, Mark::clone))
    }

    /// How times and lengths are written; tracked.
    pub fn style(self, zone: &Zone) -> Style<'_> {
        let settings = self.store.settings.get();
        Style { zone, clock: settings.clock, units: settings.units }
    }

    /// Changes the room: one step of undo.
    pub fn change(self, change: impl FnOnce(&mut Room)) {
        self.let_go();
        if let Some(edit) = self.edited(change) {
            self.store.edit(edit);
        }
    }

    /// Changes the room while something is held: all until [`Self::let_go`] is one step of undo.
    pub fn drag(self, change: impl FnOnce(&mut Room)) {
        let drag = self.drag.get_value().unwrap_or_else(|| self.store.desk.new_drag());
        self.drag.set_value(Some(drag));
        if let Some(edit) = self.edited(change) {
            self.store.edit_in_drag(edit, drag);
        }
    }

    /// What was held is let go.
    pub fn let_go(self) {
        if self.drag.try_update_value(Option::take).flatten().is_some() {
            self.store.desk.end_drag();
        }
    }

    /// Changes one opening.
    pub fn change_opening(self, id: &str, change: impl FnOnce(&mut Opening)) {
        self.change(|room| {
            if let Some(opening) = room.openings.iter_mut().find(|opening| opening.id == id) {
                change(opening);
            }
        });
    }

    /// Changes one mark.
    pub fn change_mark(self, id: &str, change: impl FnOnce(&mut Mark)) {
        self.change(|room| {
            if let Some(mark) = room.marks.iter_mut().find(|mark| mark.id == id) {
                change(mark);
            }
        });
    }

    fn edited(self, change: impl FnOnce(&mut Room)) -> Option<Edit> {
        // From the latest root, not the one on the screen: two changes may come within one frame.
        let project = self.store.desk.latest();
        let id = self.found.with_untracked(|found| found.as_ref().map(|(_, room)| room.id.clone()))?;
        let (location, room) = project.room(&id)?;
        let mut room = room.clone();
        change(&mut room);
        Some(Edit::PutRoom { location: location.id.clone(), room: Box::new(room) })
    }
}

/// The chosen mark, else the first.
fn shown_mark<'a>(room: &'a Room, chosen: Option<&str>) -> Option<&'a Mark> {
    let named = chosen.and_then(|id| room.marks.iter().find(|mark| mark.id == id));
    named.or(room.marks.first())
}

/// The mark of the set-up that all rooms show; it may be in another room.
fn mark_of_set_up(store: Store) -> Option<String> {
    let set_up = untrack(move || store.current_set_up())?;
    store.desk.latest().set_up(&set_up).and_then(|(_, set_up)| set_up.at.as_ref()?.mark.clone())
}
