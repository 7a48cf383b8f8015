//! The day that Now shows: made anew when date, place or project change, asked each minute and each second.

use std::sync::Arc;

use chrono::NaiveDate;
use leptos::prelude::*;
use slantlight::draw::outline;
use slantlight::draw::strip::{Hour, Strip};
use slantlight::place::site::Site;
use slantlight::place::zone::Zone;
use slantlight::plan::today::words::Said;
use slantlight::project::day_at::DayAt;
use slantlight::units::Instant;
use slantlight::words::{self, Clock};

use crate::app::parts::Fact;
use crate::app::store::Store;

/// A day and what of its drawing stands still. Two are the same only if they are one: comparing would cost more than
/// drawing.
#[derive(Clone)]
pub struct Held(Arc<(DayAt, Strip)>);

impl PartialEq for Held {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

/// The day of the page; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Shown {
    /// The store.
    pub store: Store,
    /// The day; `None` while no place is known.
    pub day: Memo<Option<Held>>,
}

impl Shown {
    /// The day that all rooms show, at the location that all rooms show, or where the phone is.
    pub fn of(store: Store) -> Self {
        let date = Memo::new(move |_| zone_of(store).date(store.moment.to_the_minute()));
        Self { store, day: day_on(store, date) }
    }

    /// The day of the phone's clock, whatever day is shown: for alarms.
    pub fn of_the_clock(store: Store) -> Self {
        let date = Memo::new(move |_| zone_of(store).date(store.moment.today()));
        Self { store, day: day_on(store, date) }
    }

    /// Reads the day; tracked.
    pub fn with_day<T>(self, read: impl FnOnce(&DayAt) -> T) -> Option<T> {
        self.day.with(|held| held.as_ref().map(|held| read(&held.0.0)))
    }

    /// How the clock is written; tracked.
    pub fn clock(self) -> Clock {
        self.store.settings.get().clock
    }

    /// The place's zone; tracked.
    pub fn zone(self) -> Arc<Zone> {
        zone_of(self.store)
    }

    /// Where it is; tracked.
    pub fn site(self) -> Option<Site> {
        self.with_day(DayAt::site)
    }

    /// "Sail loft", or "Where I am".
    pub fn title(self) -> String {
        match (self.store.here.get(), self.store.current_location()) {
            (Some(_), _) => "Where I am".to_owned(),
            (None, Some(place)) => place.name.clone(),
            (None, None) => "Now".to_owned(),
        }
    }

    /// The strip at the minute shown; tracked.
    pub fn strip(self) -> Option<Strip> {
        let at = self.store.moment.to_the_minute();
        self.day.with(|held| {
            let (day, still) = &*held.as_ref()?.0;
            Some(Strip { now: Some(day.sun_at(at).into()), ..still.clone() })
        })
    }

    /// Facts of the minute shown; tracked.
    pub fn facts(self) -> Vec<Fact> {
        let at = self.store.moment.to_the_minute();
        let facts = self.with_day(|day| day.facts(at)).unwrap_or_default();
        facts.into_iter().map(|(value, name)| Fact::new(value, name)).collect()
    }

    /// Since when the words of the countdown hold; tracked.
    pub fn turn(self) -> Instant {
        let at = self.store.moment.as_told();
        self.with_day(|day| day.turn(at)).unwrap_or(at)
    }

    /// The countdown as it is said from an instant on; tracked.
    pub fn said(self, at: Instant) -> Said {
        let clock = self.clock();
        self.with_day(|day| day.said(at, clock)).unwrap_or_default()
    }
}

/// The day of a date, at the place shown.
fn day_on(store: Store, date: Memo<NaiveDate>) -> Memo<Option<Held>> {
    let clock = Memo::new(move |_| store.settings.get().clock);
    Memo::new(move |_| {
        let (zone, date) = (Zone::clone(&zone_of(store)), date.get());
        let day = match (store.here.get(), store.current_location()) {
            (Some(site), _) => DayAt::anywhere(site, zone, date)?,
            (None, Some(location)) => {
                let set_up = store.current_set_up();
                store.desk.with(|project| DayAt::of(project, &location, zone, (date, set_up.as_deref())))?
            }
            (None, None) => return None,
        };
        let still = still(&day, clock.get());
        Some(Held(Arc::new((day, still))))
    })
}

/// The zone of where the phone is, if that is shown, else of the location.
fn zone_of(store: Store) -> Arc<Zone> {
    if store.here.with(Option::is_some) { store.zones.of_the_phone() } else { store.current_zone() }
}

/// What of the strip stands still all day.
fn still(day: &DayAt, clock: Clock) -> Strip {
    let hours = day.path.iter().filter_map(|(at, sun)| {
        Some(Hour { spot: (*sun).into(), text: words::full_hour(day.zone.local(*at), clock)? })
    });
    let stage = day.set_up().map(|one| &one.stage);
    let cones = stage.and_then(|stage| stage.openings.as_ref()).into_iter().flatten();
    Strip {
        path: day.path.iter().map(|(_, sun)| (*sun).into()).collect(),
        hours: hours.collect(),
        skyline: outline::skyline(&day.skyline),
        openings: cones.flat_map(|opening| &opening.cones).flat_map(outline::cone).collect(),
        wish: stage.map(|stage| outline::wish(&stage.light_from(), stage.wish.heights)).unwrap_or_default(),
        lens: stage.map(|stage| stage.lens),
        now: None,
    }
}
