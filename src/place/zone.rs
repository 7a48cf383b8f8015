//! Zones: local civil time as a plain table of clock changes.
//!
//! The library holds no zone data. A [`Zone`] is filled by asking somebody who knows (the browser's Intl in the app,
//! a bundled database in the tests) for the offset at instants, and bisecting to the second where it differs.
//! Local times that a clock change skips or repeats are named outcomes, never guessed silently.

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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    /// Portugal's rule of today for 2027, written out.
    fn lisbon() -> Zone {
        let year = Span::new(at("2027-01-01T00:00:00Z"), at("2028-01-01T00:00:00Z")).unwrap();
        let summer = Span::new(at("2027-03-28T01:00:00Z"), at("2027-10-31T01:00:00Z")).unwrap();
        Zone::by_asking("Europe/Lisbon", year, |now| {
            Some(Duration::from_minutes(if summer.contains(now) { 60 } else { 0 }))
        })
        .unwrap()
    }

    fn local(text: &str) -> NaiveDateTime {
        text.parse().unwrap()
    }

    #[test]
    fn changes_are_found_to_the_second() {
        let found: Vec<_> = lisbon().changes().iter().map(|change| change.at).collect();
        assert_eq!(found, [at("2027-03-28T01:00:00Z"), at("2027-10-31T01:00:00Z")]);
    }

    #[test]
    fn skipped_and_repeated_times_are_named() {
        let zone = lisbon();
        assert_eq!(
            zone.instant(local("2027-03-28T01:30:00")),
            LocalTime::Skipped { before: at("2027-03-28T01:30:00Z"), after: at("2027-03-28T00:30:00Z") }
        );
        assert_eq!(
            zone.instant(local("2027-10-31T01:30:00")),
            LocalTime::Twice { first: at("2027-10-31T00:30:00Z"), second: at("2027-10-31T01:30:00Z") }
        );
        assert_eq!(zone.instant(local("2027-07-01T12:00:00")), LocalTime::Once(at("2027-07-01T11:00:00Z")));
    }

    #[test]
    fn the_clock_is_read_and_set() {
        let zone = lisbon();
        let (date, clock) = zone.clock(at("2027-07-01T17:38:00Z"));
        assert_eq!(
            (date.to_string(), clock),
            ("2027-07-01".to_owned(), Duration::from_minutes(18 * 60 + 38))
        );
        assert_eq!(zone.at_clock(date, clock), at("2027-07-01T17:38:00Z"));
    }

    #[test]
    fn days_have_the_hours_they_have() {
        let zone = lisbon();
        let hours = |day: &str| zone.day(day.parse().unwrap()).unwrap().duration().minutes() / 60.0;
        assert_eq!((hours("2027-03-28"), hours("2027-10-31"), hours("2027-07-01")), (23.0, 25.0, 24.0));
    }

    #[test]
    fn a_wrong_sign_of_the_longitude_is_noticed() {
        let zone = Zone::fixed("UTC+10", Duration::from_minutes(600));
        let longitude = |degrees| Longitude::from_degrees(degrees).unwrap();
        assert_eq!(zone.implausible(longitude(151.2), at("2027-07-01T00:00:00Z")), None);
        assert!(zone.implausible(longitude(-151.2), at("2027-07-01T00:00:00Z")).is_some());
        // Across the date line from Greenwich's antipode the time is one's own all the same.
        let islands = Zone::fixed("UTC+13", Duration::from_minutes(780));
        assert_eq!(islands.implausible(longitude(-172.0), at("2027-07-01T00:00:00Z")), None);
    }

    /// A zone of any offsets that change at least a week apart.
    fn some_zone() -> impl Strategy<Value = Zone> {
        let change = (8i64..200, 0i64..1440, -56i64..=56);
        (-48i64..=56, proptest::collection::vec(change, 0..6)).prop_map(|(first, changes)| {
            let mut zone = Zone::fixed("somewhere", Duration::from_minutes(first * 15));
            let (mut at, mut before) = (at("2027-01-01T00:00:00Z"), Duration::from_minutes(first * 15));
            for (days, minutes, quarters) in changes {
                let after = Duration::from_minutes(quarters * 15);
                at = at + Duration::from_minutes(days * 1440 + minutes);
                zone.changes.push(Change { at, before, after });
                before = after;
            }
            zone
        })
    }

    proptest! {
        #[test]
        fn local_time_reads_back(zone in some_zone(), minutes in 0i64..2_000_000) {
            let now = at("2026-12-01T00:00:00Z") + Duration::from_minutes(minutes);
            match zone.instant(zone.local(now)) {
                LocalTime::Once(once) => prop_assert_eq!(once, now),
                LocalTime::Twice { first, second } => prop_assert!((now == first || now == second) && first < second),
                LocalTime::Skipped { .. } => prop_assert!(false, "{} is no skipped time", zone.local(now)),
            }
        }

        #[test]
        fn asking_finds_the_same_table(zone in some_zone()) {
            let years = Span::new(at("2026-12-01T00:00:00Z"), at("2031-01-01T00:00:00Z")).unwrap();
            let asked = Zone::by_asking("somewhere", years, |at| Some(zone.offset_at(at))).unwrap();
            for change in zone.changes() {
                prop_assert_eq!(asked.offset_at(change.at), change.after);
                prop_assert_eq!(asked.offset_at(change.at - Duration::from_millis(1)), change.before);
            }
        }

        #[test]
        fn days_follow_each_other(zone in some_zone(), day in 0u64..1200) {
            let date = NaiveDate::from_ymd_opt(2026, 12, 1).unwrap() + Days::new(day);
            if let (Some(one), Some(two)) = (zone.day(date), zone.day(date + Days::new(1))) {
                prop_assert_eq!(one.end(), two.start());
                prop_assert_eq!(zone.date(one.start()), date);
            }
        }
    }
}
