//! Dates and hours of the local clock as spans of real time.
//!
//! The clock of a place is a row of pieces with one offset each. Inside a piece local and real time run alike, so
//! dates and hours are found there and put together again: days of 23, 24 or 25 hours, hours that come twice or
//! never, and the date that an island once skipped need no rules of their own.

use chrono::{Datelike, NaiveDate, NaiveDateTime, NaiveTime};

use crate::place::zone::Zone;
use crate::plan::wish::{ClockRange, DateRange};
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
    /// Its first whole minute since midnight; its beginning if it holds none.
    pub fn first_minute(&self) -> Duration {
        let next = Duration::from_minutes(self.from.minutes().ceil() as i64);
        if next < self.to { next } else { self.from }
    }

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
#[path = "calendar_tests.rs"]
mod tests;
