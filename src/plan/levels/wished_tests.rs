//! Conditions on levels against a brute scan, minute by minute, that shares only the question of one instant; and that
//! question against levels found by hand.

use std::sync::Arc;

use super::*;
use crate::light::daylight::Sky;
use crate::place::skyline::Skyline;
use crate::plan::fixture::{loft, wish};
use crate::plan::levels::fixture;
use crate::plan::wish::SunOnMark;
use crate::units::{Bearing, Stops};

/// Three days at site T, any sun, in the open.
fn stage(levels: LevelWish) -> Stage {
    let subject = fixture::open(200.0);
    let mut wish = wish((0.0, 360.0), (-12.0, 90.0), SunOnMark::Any);
    wish.levels = levels;
    Stage {
        site: subject.site,
        zone: subject.zone.clone(),
        lens: subject.lens,
        wish,
        openings: None,
        skyline: Skyline::default(),
        levels: Some(Arc::new(Wished { wish: levels, subject })),
        ..loft()
    }
}

fn days() -> Span {
    let start = Instant::parse("2026-03-20T00:00:00Z").unwrap();
    Span::new(start, start + Duration::from_minutes(2 * 1440)).unwrap()
}

fn assert_as_by_brute_scan(stage: &Stage) {
    let sun = Sun::new(stage.site);
    let found = met::met(&sun, stage, days());
    let free = Stage { levels: None, ..stage.clone() };
    let without = met::met(&sun, &free, days());
    let wished = stage.levels.as_ref().unwrap();
    let minutes = days().duration().millis() / 60_000;
    let (mut held, mut apart) = (0, 0);
    for minute in 0..minutes {
        let at = days().start() + Duration::from_minutes(minute);
        let brute = without.contains(at) && wished.holds(&sun, stage, at);
        held += i32::from(brute);
        apart += i32::from(brute != found.contains(at));
    }
    assert!(
        held > 0 && i64::from(held) < minutes,
        "a condition that always or never holds proves nothing: {held}"
    );
    assert_eq!(apart, 0, "of {held} minutes: {found:?}");
}

#[test]
fn a_range_of_ratios_is_found_as_by_a_brute_scan() {
    assert_as_by_brute_scan(&stage(LevelWish { ratio: Some([2.0, 5.0]), ..LevelWish::default() }));
}

#[test]
fn soft_light_is_found_as_by_a_brute_scan() {
    let soft = LevelWish { soft: Some(Lux::from_lux(150.0)), ..LevelWish::default() };
    let mut soft_only = stage(soft);
    soft_only.wish.sun_on_mark = SunOnMark::Any;
    assert_as_by_brute_scan(&soft_only);
}

#[test]
fn the_balance_of_the_blue_hour_is_found_as_by_a_brute_scan() {
    let balance = Balance { lamp: Lux::from_lux(205.0), within: Stops::from_stops(1.0) };
    let stage = stage(LevelWish { balance: Some(balance), ..LevelWish::default() });
    assert_as_by_brute_scan(&stage);
    // T-H7: 205 lx are the sky's at about −1.9°, and a stop over it at about −2.7°.
    let sun = Sun::new(stage.site);
    let found = met::met(&sun, &stage, days());
    let evening =
        found.iter().find(|span| span.start() > days().start() + Duration::from_minutes(720)).unwrap();
    let ends = sun.apparent(evening.end()).height().degrees();
    assert!((ends + 2.7).abs() < 0.1, "{ends}");
}

#[test]
fn turning_the_lens_turns_the_cheeks() {
    let north = stage(LevelWish { ratio: Some([3.0, 100.0]), ..LevelWish::default() });
    let sun = Sun::new(north.site);
    let turned = Stage { lens: Bearing::from_degrees(90.0), ..north.clone() };
    assert_ne!(met::met(&sun, &north, days()), met::met(&sun, &turned, days()));
    let at = Instant::parse("2026-03-20T15:30:00Z").unwrap();
    let wished = north.levels.as_ref().unwrap();
    let levels = Levels::of(&wished.subject, &wished.subject.hour(&sun, at, Sky::Clear));
    let number = levels.ratio().map_or(1.0, Ratio::number);
    assert_eq!(wished.holds(&sun, &north, at), number >= 3.0);
}
