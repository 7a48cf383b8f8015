//! Dates and hours of the local clock as spans of real time.
//!
//! The clock of a place is a row of pieces with one offset each. Inside a piece local and real time run alike, so
//! dates and hours are found there and put together again: days of 23, 24 or 25 hours, hours that come twice or
//! never, and the date that an island once skipped need no rules of their own.

use chrono::{Datelike, NaiveDate, NaiveDateTime, NaiveTime};

use super::wish::{ClockRange, DateRange};
use crate::place::zone::Zone;
use crate::units::{Duration, Instant, Span, Spans};

/// No place's clock is further from UTC than this. Fact (the widest ever used is 15 h 13 min).
const WIDEST_OFFSET: Duration = Duration::from_minutes(16 * 60);

/// All the time of a range of dates, as one span from the first local midnight to the last.
///
/// `None` if the range is empty: its end comes before its begin, or the place skipped the date.
pub fn whole(zone: &Zone, range: DateRange) -> Option<Span> {
    let spans = dates(zone, &[range], around(range)?);
    let (first, last) = (spans.as_slice().first()?, spans.as_slice().last()?);
    Span::new(first.start(), last.end())
}

/// The time within `within` whose local date lies in one of `ranges`.
pub fn dates(zone: &Zone, ranges: &[DateRange], within: Span) -> Spans {
    let found = pieces(zone, within).into_iter().flat_map(|piece| {
        ranges.iter().filter_map(move |range| {
            let local = Span::new(midnight(range.from), midnight(range.to) + Duration::DAY)?;
            piece.real(local)
        })
    });
    Spans::gather(found.collect())
}

/// The time within `within` whose local clock shows one of `hours`; equal ends mean all day.
pub fn hours(zone: &Zone, hours: ClockRange, within: Span) -> Spans {
    if hours.from == hours.to {
        return Spans::from(within);
    }
    let from = since_midnight(hours.from);
    let long =
        Duration::from_millis((since_midnight(hours.to) - from).millis().rem_euclid(Duration::DAY.millis()));
    let found = pieces(zone, within).into_iter().flat_map(|piece| {
        let day_before = floor_to_day(piece.span.start() + piece.offset) - Duration::DAY;
        let end = piece.span.end() + piece.offset;
        days_from(day_before, end)
            .filter_map(move |day| piece.real(Span::new(day + from, day + from + long)?))
            .collect::<Vec<_>>()
    });
    Spans::gather(found.collect())
}

/// `span` itself, or its parts between local midnights where it lasts a day and longer, as under a midnight sun.
pub fn by_days(zone: &Zone, span: Span) -> Vec<Span> {
    if span.duration() < Duration::DAY {
        return vec![span];
    }
    let (first, last) = (zone.date(span.start()), zone.date(span.end()));
    let day = |date: &NaiveDate| whole(zone, DateRange { from: *date, to: *date })?.and(span);
    first.iter_days().take_while(|date| *date <= last).filter_map(|date| day(&date)).collect()
}

/// Time on the clock of one date: from and to since its midnight, 24 h at most.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClockSpan {
    /// First.
    pub from: Duration,
    /// First no longer in it.
    pub to: Duration,
}

/// `spans` on the clock, date by date, in order. An hour that comes twice is there once.
pub fn on_clock(zone: &Zone, spans: &Spans) -> Vec<(NaiveDate, ClockSpan)> {
    let local = spans.iter().flat_map(|span| pieces(zone, span)).filter_map(|piece| piece.local());
    let clock = Spans::gather(local.collect());
    clock.iter().flat_map(by_clock_days).collect()
}

/// A span of local time (written as if it were UTC), cut at its midnights.
fn by_clock_days(local: Span) -> impl Iterator<Item = (NaiveDate, ClockSpan)> {
    days_from(floor_to_day(local.start()), local.end()).filter_map(move |midnight| {
        let part = Span::new(midnight, midnight + Duration::DAY)?.and(local)?;
        Some((
            midnight.to_utc().date(),
            ClockSpan { from: part.start() - midnight, to: part.end() - midnight },
        ))
    })
}

/// The date `days` later; the end of the calendar where there is none.
pub fn later(date: NaiveDate, days: u32) -> NaiveDate {
    date.checked_add_days(chrono::Days::new(u64::from(days))).unwrap_or(NaiveDate::MAX)
}

impl ClockSpan {
    /// The clock at its beginning.
    pub fn starts(&self) -> NaiveTime {
        let seconds = (self.from.millis() / 1000).clamp(0, 86_399) as u32;
        NaiveTime::from_num_seconds_from_midnight_opt(seconds, 0).unwrap_or(NaiveTime::MIN)
    }
}

/// The full hour that holds a time of the clock; the last one of the day ends a minute early.
pub fn hour_around(clock: Duration) -> (NaiveTime, NaiveTime) {
    let hour = (clock.millis() / 3_600_000).clamp(0, 23) as u32;
    let at = |hour: u32, minute: u32| NaiveTime::from_hms_opt(hour, minute, 0).unwrap_or(NaiveTime::MIN);
    (at(hour, 0), if hour == 23 { at(23, 59) } else { at(hour + 1, 0) })
}

/// So many days later, or earlier when negative; the end of the calendar stays where it is.
pub fn moved(date: NaiveDate, days: i64) -> NaiveDate {
    date.checked_add_signed(chrono::TimeDelta::days(days)).unwrap_or(date)
}

/// Days from one date to another.
pub fn days_between(from: NaiveDate, to: NaiveDate) -> i64 {
    (to - from).num_days()
}

/// Whether two dates are of one month.
pub fn same_month(one: NaiveDate, other: NaiveDate) -> bool {
    (one.year(), one.month()) == (other.year(), other.month())
}

/// The seven dates of the week that holds `date`, from Monday on (ISO 8601).
pub fn week(date: NaiveDate) -> Vec<NaiveDate> {
    let monday = date.week(chrono::Weekday::Mon).first_day();
    monday.iter_days().take(7).collect()
}

/// The first days of a year's months from the month of `date` on; the first of them is `date` itself.
pub fn months(date: NaiveDate) -> Vec<NaiveDate> {
    let first = date.with_day(1).unwrap_or(date);
    (0..12)
        .filter_map(|months| first.checked_add_months(chrono::Months::new(months)))
        .map(|month| month.max(date))
        .collect()
}

/// A stretch of time in which the clock's offset stays the same.
#[derive(Clone, Copy, Debug)]
struct Piece {
    span: Span,
    offset: Duration,
}

impl Piece {
    /// This piece in local time, written as if it were UTC.
    fn local(&self) -> Option<Span> {
        Span::new(self.span.start() + self.offset, self.span.end() + self.offset)
    }

    /// The part of a span of local time (written as if it were UTC) that lies in this piece.
    fn real(&self, local: Span) -> Option<Span> {
        Span::new(local.start() - self.offset, local.end() - self.offset)?.and(self.span)
    }
}

/// `within`, cut where the clock is moved.
fn pieces(zone: &Zone, within: Span) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut from = within.start();
    while let Some(rest) = Span::new(from, within.end()) {
        let until = next_change(zone, from).map_or(rest.end(), |next| next.min(rest.end()));
        pieces.extend(Span::new(from, until).map(|span| Piece { span, offset: zone.offset_at(from) }));
        from = until;
    }
    pieces
}

/// When the clock is moved next after `at`.
fn next_change(zone: &Zone, at: Instant) -> Option<Instant> {
    let changes = zone.changes();
    changes.get(changes.partition_point(|change| change.at <= at)).map(|change| change.at)
}

/// A span that surely holds all the time of a range of dates, wherever on Earth.
fn around(range: DateRange) -> Option<Span> {
    Span::new(midnight(range.from) - WIDEST_OFFSET, midnight(range.to) + Duration::DAY + WIDEST_OFFSET)
}

/// Midnights (of local time written as UTC) from `first` on, before `end`.
fn days_from(first: Instant, end: Instant) -> impl Iterator<Item = Instant> {
    core::iter::successors(Some(first), |day| Some(*day + Duration::DAY)).take_while(move |day| *day < end)
}

/// Midnight at the start of a date, as if it were UTC.
fn midnight(date: NaiveDate) -> Instant {
    Instant::from_utc(NaiveDateTime::new(date, NaiveTime::MIN))
}

/// Midnight before `at`.
fn floor_to_day(at: Instant) -> Instant {
    Instant::from_unix_millis(at.unix_millis().div_euclid(Duration::DAY.millis()) * Duration::DAY.millis())
}

/// Time on the clock since midnight.
fn since_midnight(time: NaiveTime) -> Duration {
    Duration::from_millis((time - NaiveTime::MIN).num_milliseconds())
}

#[cfg(test)]
mod tests {
    #[test]
    fn weeks_months_and_hours() {
        use super::*;
        let date: NaiveDate = "2027-03-11".parse().unwrap();
        let week = week(date);
        assert_eq!((week[0].to_string(), week[6].to_string()), ("2027-03-08".into(), "2027-03-14".into()));
        let months = months(date);
        assert_eq!((months[0], months.len()), (date, 12));
        assert_eq!(months[11].to_string(), "2028-02-01");
        let hour = hour_around(Duration::from_minutes(17 * 60 + 38));
        assert_eq!((hour.0.to_string(), hour.1.to_string()), ("17:00:00".into(), "18:00:00".into()));
        assert!(hour_around(Duration::from_minutes(1439)).1 > hour_around(Duration::from_minutes(1439)).0);
    }

    use super::super::fixture::{at, clock, lisbon, on, some_days, span, time};
    use super::*;
    use proptest::prelude::*;

    fn hour_range(from: u32, to: u32) -> ClockRange {
        ClockRange { from: time(from, 0), to: time(to, 0) }
    }

    #[test]
    fn days_of_23_24_and_25_hours() {
        let long = |month, day| {
            let date = on(2027, month, day);
            whole(&lisbon(), DateRange { from: date, to: date }).unwrap().duration().minutes() / 60.0
        };
        assert_eq!((long(3, 27), long(3, 28), long(10, 31)), (24.0, 23.0, 25.0));
    }

    #[test]
    fn hours_that_never_come_and_hours_that_come_twice() {
        let within = span("2027-03-27T12:00:00Z", "2027-03-28T12:00:00Z");
        assert!(hours(&lisbon(), hour_range(1, 2), within).is_empty());
        let within = span("2027-10-30T12:00:00Z", "2027-10-31T12:00:00Z");
        assert_eq!(hours(&lisbon(), hour_range(1, 2), within).total(), Duration::from_minutes(120));
    }

    #[test]
    fn hours_over_midnight() {
        let within = span("2027-01-10T00:00:00Z", "2027-01-12T00:00:00Z");
        let night = hours(&lisbon(), hour_range(22, 3), within);
        let expected = [
            span("2027-01-10T00:00:00Z", "2027-01-10T03:00:00Z"),
            span("2027-01-10T22:00:00Z", "2027-01-11T03:00:00Z"),
            span("2027-01-11T22:00:00Z", "2027-01-12T00:00:00Z"),
        ];
        assert_eq!(night.as_slice(), expected);
        assert_eq!(hours(&lisbon(), hour_range(5, 5), within).as_slice(), [within]);
    }

    #[test]
    fn a_date_that_was_skipped() {
        // An island crosses the date line: after the 29th at −10 h comes the 31st at +14 h.
        let jump = at("2011-12-30T10:00:00Z");
        let ask = |now| Some(Duration::from_minutes(if now < jump { -600 } else { 840 }));
        let zone =
            Zone::by_asking("island", span("2011-12-01T00:00:00Z", "2012-02-01T00:00:00Z"), ask).unwrap();
        let skipped = on(2011, 12, 30);
        assert_eq!(whole(&zone, DateRange { from: skipped, to: skipped }), None);
        let around = whole(&zone, DateRange { from: on(2011, 12, 29), to: on(2011, 12, 31) }).unwrap();
        assert_eq!(around.duration(), Duration::from_minutes(48 * 60));
    }

    #[test]
    fn a_day_begins_earlier_beyond_the_date_line() {
        let east = clock(14 * 60, &[]);
        let west = clock(-11 * 60, &[]);
        let date = DateRange { from: on(2027, 6, 1), to: on(2027, 6, 1) };
        assert_eq!(whole(&east, date).unwrap().start(), at("2027-05-31T10:00:00Z"));
        assert_eq!(whole(&west, date).unwrap().start(), at("2027-06-01T11:00:00Z"));
    }

    proptest! {
        #[test]
        fn agrees_with_the_clock_at_every_quarter(
            within in some_days(), quarters in -48i64..56, from in 0u32..24, to in 0u32..24, day in 0u32..3,
        ) {
            prop_assume!(from != to);
            let zone = clock(quarters * 15, &[("2027-03-28T01:00:00Z", "2027-10-31T01:00:00Z")]);
            let range = hour_range(from, to);
            let date = later(zone.date(within.start()), day);
            let (open, of_date) = (hours(&zone, range, within), dates(&zone, &[DateRange { from: date, to: date }], within));
            for quarter in 0..192 {
                let now = within.start() + Duration::from_minutes(quarter * 15);
                let local = zone.local(now);
                let inside = if from < to {
                    range.from <= local.time() && local.time() < range.to
                } else {
                    range.from <= local.time() || local.time() < range.to
                };
                prop_assert_eq!(open.contains(now), inside);
                prop_assert_eq!(of_date.contains(now), local.date() == date);
            }
        }
    }
}
