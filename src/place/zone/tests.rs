//! Gaps, repeated hours, lengths of days, and the laws of local time in any zone.

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
    assert_eq!((date.to_string(), clock), ("2027-07-01".to_owned(), Duration::from_minutes(18 * 60 + 38)));
    assert_eq!(zone.at_clock(date, clock), at("2027-07-01T17:38:00Z"));
}

#[test]
fn the_same_clock_on_another_date_keeps_to_the_clock() {
    let (zone, winter) = (lisbon(), at("2027-03-11T16:20:00Z"));
    assert_eq!(zone.on_date(winter, "2027-06-21".parse().unwrap()), at("2027-06-21T15:20:00Z"));
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
