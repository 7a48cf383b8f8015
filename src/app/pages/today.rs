//! Today's sun at the current location, as Start and Now show it: facts, hours, horizon strip.

use leptos::prelude::*;
use slantlight::draw::Drawing;
use slantlight::draw::strip::{Hour, Strip};
use slantlight::light::shadow::shadow_length;
use slantlight::place::zone::Zone;
use slantlight::plan::today::{self, Happening, Today, What};
use slantlight::sky::events::Passage;
use slantlight::sky::sun::Sun;
use slantlight::units::{Degrees, Instant, Span, Vector, World};
use slantlight::words::{self, Clock};

use crate::app::parts::Fact;
use crate::app::store::Store;

/// The day that all rooms show, at the location that all rooms show.
#[derive(Clone, PartialEq)]
pub struct Day {
    zone: std::sync::Arc<Zone>,
    sun: SunAt,
    today: Today,
    path: Vec<(Instant, Vector<World>)>,
}

/// The sun at a site; two are the same if their sites are.
#[derive(Clone, Copy, PartialEq)]
struct SunAt(slantlight::place::site::Site);

impl Day {
    /// `None` without a location. Tracked, and made anew only when date or place change.
    pub fn shown(store: Store) -> Memo<Option<Self>> {
        let date = Memo::new(move |_| store.current_zone().date(store.moment.to_the_minute()));
        let location = Memo::new(move |_| store.current_location());
        Memo::new(move |_| {
            let location = location.get()?;
            let zone = store.zones.named(&location.zone);
            let day = zone.day(date.get())?;
            Some(Self::at(SunAt(location.site), zone, day))
        })
    }

    fn at(sun: SunAt, zone: std::sync::Arc<Zone>, day: Span) -> Self {
        let (today, path) = (Today::of(&sun.track(), day), today::path(&sun.track(), day));
        Self { zone, sun, today, path }
    }

    /// "06:50 sunrise" and so on, in the order of the day.
    pub fn facts(&self, clock: Clock) -> Vec<Fact> {
        let fact = |what: What, end: bool, name: &str| {
            let found = self.today.first(what)?;
            Some(Fact::new(self.time(if end { found.until? } else { found.at }, clock), name))
        };
        let facts = [
            fact(What::Sunrise, false, "sunrise"),
            fact(What::LowFrom, false, "under 6° from"),
            fact(What::Sunset, false, "sunset"),
            fact(What::EveningBlue, true, "blue until"),
        ];
        facts.into_iter().flatten().collect()
    }

    /// A sentence for a day on which the sun does not rise or set.
    pub fn polar(&self) -> Option<&'static str> {
        match self.today.sun {
            Passage::Crosses { .. } => None,
            Passage::AboveAllDay => Some("The sun does not set on this day."),
            Passage::BelowAllDay => Some("The sun does not rise on this day."),
        }
    }

    /// What happens, with its time in words.
    pub fn hours(&self, clock: Clock) -> Vec<(Instant, String, &'static str)> {
        let line = |one: &Happening| (one.at, self.time_of(one, clock), name(one.what));
        self.today.happenings.iter().map(line).collect()
    }

    /// Height, bearing and shadow at an instant.
    pub fn at_instant(&self, at: Instant) -> Vec<Fact> {
        let sun = self.sun.track().apparent(at);
        let shadow = shadow_length(sun.height()).map_or("none".to_owned(), words::times);
        vec![
            Fact::new(words::degrees_fine(Degrees::from_degrees(sun.height().degrees())), "height"),
            Fact::new(words::bearing(sun.bearing()), "bearing, true"),
            Fact::new(shadow, "shadow length"),
        ]
    }

    /// The horizon strip at an instant.
    pub fn strip(&self, at: Instant, clock: Clock) -> Drawing {
        let local_hour = |at: &Instant| words::full_hour(self.zone.local(*at), clock);
        let hours = self
            .path
            .iter()
            .filter_map(|(at, sun)| Some(Hour { spot: (*sun).into(), text: local_hour(at)? }));
        let strip = Strip {
            path: self.path.iter().map(|(_, sun)| (*sun).into()).collect(),
            hours: hours.collect(),
            now: Some(self.sun.track().apparent(at).into()),
            ..Strip::default()
        };
        strip.draw()
    }

    fn time(&self, at: Instant, clock: Clock) -> String {
        words::clock(words::to_the_minute(self.zone.local(at)).time(), clock)
    }

    fn time_of(&self, one: &Happening, clock: Clock) -> String {
        let time = |at| words::to_the_minute(self.zone.local(at)).time();
        match one.until {
            None => words::clock(time(one.at), clock),
            Some(end) => words::clock_from_to(time(one.at), time(end), clock),
        }
    }
}

impl SunAt {
    fn track(self) -> Sun {
        Sun::new(self.0)
    }
}

/// What it is called.
const fn name(what: What) -> &'static str {
    match what {
        What::MorningBlue | What::EveningBlue => "blue hour",
        What::Sunrise => "sunrise",
        What::LowUntil => "sun over 6° high",
        What::Highest => "sun at its highest",
        What::LowFrom => "sun under 6° high",
        What::Sunset => "sunset",
    }
}
