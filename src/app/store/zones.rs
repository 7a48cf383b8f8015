//! Zones of the locations, asked of the browser once each and kept as plain tables.

use std::collections::HashMap;
use std::sync::Arc;

use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::units::{Duration, Instant, Span};

use crate::app::devices::{clock, zone};

/// Years before and after now that a table covers. Our own choice: a shoot lies within them.
const YEARS: (i64, i64) = (2, 4);

/// Zones by name.
#[derive(Clone, Copy)]
pub struct Zones(StoredValue<HashMap<String, Arc<Zone>>>);

impl Zones {
    /// None yet.
    pub fn new() -> Self {
        Self(StoredValue::new(HashMap::new()))
    }

    /// The zone of this name. One that the browser does not know is UTC all year; see [`Zones::knows`].
    pub fn named(self, name: &str) -> Arc<Zone> {
        if let Some(zone) = self.0.with_value(|zones| zones.get(name).cloned()) {
            return zone;
        }
        let asked = Zone::by_asking(name, years(clock::now()), |instant| zone::offset(name, instant));
        let made = Arc::new(asked.unwrap_or_else(|| Zone::fixed(name, Duration::ZERO)));
        self.0.update_value(|zones| {
            zones.insert(name.to_owned(), made.clone());
        });
        made
    }

    /// The zone the phone is set to.
    pub fn of_the_phone(self) -> Arc<Zone> {
        self.named(&zone::of_the_phone().unwrap_or_else(|| "UTC".to_owned()))
    }

    /// Whether the browser knows the zone; where not, times are shown in UTC and the screen must say so.
    pub fn knows(self, name: &str) -> bool {
        zone::is_known(name)
    }
}

/// The years around `now`.
fn years(now: Instant) -> Span {
    let year = |count: i64| Duration::from_minutes(count * 366 * 24 * 60);
    Span::new(now - year(YEARS.0), now + year(YEARS.1)).expect("the past comes before the future")
}
