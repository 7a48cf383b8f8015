//! Zones: local civil time as a plain table of clock changes.
//!
//! The library holds no zone data. A [`Zone`] is filled by asking somebody who knows (the browser's Intl in the app,
//! a bundled database in the tests) for the offset at instants, and bisecting to the second where it differs.
//! Local times that a clock change skips or repeats are named outcomes, never guessed silently.

#[cfg(test)]
mod tests;

use chrono::{Days, NaiveDate, NaiveDateTime, NaiveTime};

use crate::units::{Degrees, Duration, Instant, Longitude, Span};

/// Longest step between two questions. Some zones change twice within a month, none twice within a week.
const STEP: Duration = Duration::from_millis(7 * 86_400_000);

/// Offset against the longitude's own time beyond which a zone is worth a question: no civil time of a land
/// place is further off. Our own choice.
const PLAUSIBLE_HOURS: f64 = 3.5;

/// A zone's offsets over the years in question; an offset is local time less UTC.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone {
    name: String,
    first: Duration,
    changes: Vec<Change>,
}

/// A clock change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// First instant with the new offset.
    pub at: Instant,
    /// Offset until then.
    pub before: Duration,
    /// Offset from then on.
    pub after: Duration,
}

/// The instants that a local time stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LocalTime {
    /// It happens once.
    Once(Instant),
    /// A clock change skips it: read with the offset before the change, and with the one after it.
    Skipped {
        /// With the offset in force before the change; the later of the two.
        before: Instant,
        /// With the offset in force after the change.
        after: Instant,
    },
    /// A clock change repeats it.
    Twice {
        /// The earlier instant.
        first: Instant,
        /// The later instant.
        second: Instant,
    },
}

impl LocalTime {
    /// The one instant to take where a choice must be made: the earlier of two, and for a skipped time the
    /// one counted with the offset before the change (RFC 5545, section 3.3.5).
    pub const fn first(self) -> Instant {
        match self {
            Self::Once(at) | Self::Skipped { before: at, .. } | Self::Twice { first: at, .. } => at,
        }
    }
}

impl Zone {
    /// A zone that never changes its clocks.
    pub fn fixed(name: &str, offset: Duration) -> Self {
        Self { name: name.to_owned(), first: offset, changes: Vec::new() }
    }

    /// Fills a zone for `span` by asking for the offset at instants.
    ///
    /// Gives `None` if `ask` does not know the zone. A gap in what `ask` knows reads as no change.
    pub fn by_asking(name: &str, span: Span, ask: impl Fn(Instant) -> Option<Duration>) -> Option<Self> {
        let first = ask(span.start())?;
        let mut zone = Self::fixed(name, first);
        let (mut from, mut offset) = (span.start(), first);
        while from < span.end() {
            let to = (from + STEP).min(span.end());
            if let Some(next) = ask(to).filter(|next| *next != offset) {
                let at = changes_at(from, to, offset, &ask);
                zone.changes.push(Change { at, before: offset, after: next });
                offset = next;
            }
            from = to;
        }
        Some(zone)
    }

    /// IANA name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// All clock changes it knows, in order.
    pub fn changes(&self) -> &[Change] {
        &self.changes
    }

    /// Local time less UTC.
    pub fn offset_at(&self, at: Instant) -> Duration {
        let passed = self.changes.partition_point(|change| change.at <= at);
        passed.checked_sub(1).map_or(self.first, |last| self.changes[last].after)
    }

    /// Local date and clock time.
    pub fn local(&self, at: Instant) -> NaiveDateTime {
        (at + self.offset_at(at)).to_utc()
    }

    /// Local date.
    pub fn date(&self, at: Instant) -> NaiveDate {
        self.local(at).date()
    }

    /// Local date, and the clock counted from its midnight.
    pub fn clock(&self, at: Instant) -> (NaiveDate, Duration) {
        let local = self.local(at);
        (local.date(), Instant::from_utc(local) - Instant::from_utc(local.date().and_time(NaiveTime::MIN)))
    }

    /// The first instant at which the clock of `date` shows so much since its midnight.
    pub fn at_clock(&self, date: NaiveDate, since_midnight: Duration) -> Instant {
        let midnight = Instant::from_utc(date.and_time(NaiveTime::MIN));
        self.instant((midnight + since_midnight).to_utc()).first()
    }

    /// From one time of the clock to another on the same date; `None` unless the first comes first.
    pub fn span_on(&self, date: NaiveDate, from: NaiveTime, to: NaiveTime) -> Option<Span> {
        Span::new(self.instant(date.and_time(from)).first(), self.instant(date.and_time(to)).first())
    }

    /// What a local date and clock time stands for.
    pub fn instant(&self, local: NaiveDateTime) -> LocalTime {
        let wall = Instant::from_utc(local);
        let doubtful = self.changes.iter().find(|change| {
            let (a, b) = (change.at + change.before, change.at + change.after);
            a.min(b) <= wall && wall < a.max(b)
        });
        match doubtful {
            None => LocalTime::Once(self.undoubted(wall)),
            Some(Change { before, after, .. }) if after > before => {
                LocalTime::Skipped { before: wall - *before, after: wall - *after }
            }
            Some(Change { before, after, .. }) => {
                LocalTime::Twice { first: wall - *before, second: wall - *after }
            }
        }
    }

    /// The instant at which the clock shows on `date` what it shows at `at`.
    pub fn on_date(&self, at: Instant, date: NaiveDate) -> Instant {
        self.instant(date.and_time(self.local(at).time())).first()
    }

    /// A civil date: its first instant up to the next date's first. 23, 24 or 25 hours as a rule; `None` for a
    /// date that the zone left out (some islands have jumped over one).
    pub fn day(&self, date: NaiveDate) -> Option<Span> {
        let next = date.checked_add_days(Days::new(1))?;
        Span::new(self.first_instant(date), self.first_instant(next))
    }

    /// How far the zone's time at `at` is from the longitude's own, hours, if that is implausible: perhaps the
    /// zone or the sign of the longitude is wrong.
    pub fn implausible(&self, longitude: Longitude, at: Instant) -> Option<f64> {
        let turned = Degrees::from_degrees(self.offset_at(at).minutes() / 4.0 - longitude.degrees());
        let hours = turned.signed().degrees() / 15.0;
        (hours.abs() > PLAUSIBLE_HOURS).then_some(hours)
    }

    /// The instant of a wall time that no change makes doubtful.
    fn undoubted(&self, wall: Instant) -> Instant {
        let passed = self.changes.partition_point(|change| change.at + change.after <= wall);
        wall - passed.checked_sub(1).map_or(self.first, |last| self.changes[last].after)
    }

    /// First instant of a civil date: midnight, or where a change skips midnight the change itself.
    fn first_instant(&self, date: NaiveDate) -> Instant {
        let midnight = date.and_time(NaiveTime::MIN);
        match self.instant(midnight) {
            LocalTime::Once(at) | LocalTime::Twice { first: at, .. } => at,
            LocalTime::Skipped { before, .. } => {
                let change = self.changes.iter().rev().find(|change| change.at <= before);
                change.map_or(before, |change| change.at)
            }
        }
    }
}

/// First whole second in `from..to` at which the offset is no longer `before`.
fn changes_at(
    from: Instant,
    to: Instant,
    before: Duration,
    ask: &impl Fn(Instant) -> Option<Duration>,
) -> Instant {
    let (mut low, mut high) = (from.unix_millis().div_euclid(1000), to.unix_millis().div_euclid(1000));
    while high - low > 1 {
        let middle = low + (high - low) / 2;
        if ask(Instant::from_unix_millis(middle * 1000)) == Some(before) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Instant::from_unix_millis(high * 1000)
}
