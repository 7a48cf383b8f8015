//! Dates, hours and pieces of the clock, at the edges of days and of clock changes.

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

use super::*;
use crate::plan::fixture::{at, clock, lisbon, on, some_days, span, time};
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
    let zone = Zone::by_asking("island", span("2011-12-01T00:00:00Z", "2012-02-01T00:00:00Z"), ask).unwrap();
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
