//! Match holds, orders and limits against all pairs of takes, asked by the handbook's own sentences.

use super::*;
use crate::plan::fixture::{ClearSun, at, site, span};
use crate::units::Share;
use proptest::prelude::*;

/// A gauge for tests: any smooth course of ratio and colour.
struct Course(f64);

impl Gauge for Course {
    fn ratio(&self, light: Vector<World>, _: Instant) -> Option<Stops> {
        Some(Stops::from_stops(2.0 + self.0 * light.z))
    }
    fn colour(&self, light: Vector<World>, _: Instant) -> Option<Mired> {
        Some(Mired::from_mired(180.0 + 60.0 / (light.z.max(0.0) + 0.2)))
    }
}

fn limit(shadow: f64, angle: f64, ratio: f64, colour: f64) -> MatchLimit {
    MatchLimit {
        shadow: Share::clamped(shadow),
        class_angle: Degrees::from_degrees(angle),
        ratio: Stops::from_stops(ratio),
        colour: Mired::from_mired(colour),
    }
}

fn some_limit() -> impl Strategy<Value = MatchLimit> {
    (0.05..0.6f64, 3.0..40.0f64, 0.2..2.0f64, 5.0..60.0f64).prop_map(|(a, b, c, d)| limit(a, b, c, d))
}

/// Four hours of any day of 2027.
fn some_hours() -> impl Strategy<Value = Span> {
    (0i64..365 * 24).prop_map(|hour| {
        let from = at("2027-01-01T00:00:00Z") + Duration::from_minutes(60 * hour);
        Span::new(from, from + Duration::from_minutes(240)).unwrap()
    })
}

/// Whether two takes keep the limit, from the handbook's sentences alone.
fn apart(gauge: &Course, limit: &MatchLimit, a: Vector<World>, b: Vector<World>) -> bool {
    let turned = {
        let difference = (a.bearing().degrees() - b.bearing().degrees()).abs();
        difference.min(360.0 - difference)
    };
    let long = |light: Vector<World>| light.height().degrees() >= 1.0;
    let shadows = match (long(a), long(b)) {
        (true, true) => {
            let [one, other] = [a, b].map(|light| 1.0 / maths::tan(light.height().radians()));
            one.max(other) / one.min(other) <= 1.0 + limit.shadow.fraction()
        }
        (one, other) => one == other,
    };
    let difference = |one: f64, other: f64, most: f64| (one - other).abs() <= most;
    let ratio = |light| gauge.ratio(light, Instant::from_unix_millis(0)).unwrap().stops();
    let colour = |light| gauge.colour(light, Instant::from_unix_millis(0)).unwrap().mired();
    turned <= limit.class_angle.degrees()
        && shadows
        && difference(ratio(a), ratio(b), limit.ratio.stops())
        && difference(colour(a), colour(b), limit.colour.mired())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn the_hold_is_that_of_trying_every_pair(
        latitude in -65.0..65.0f64, hours in some_hours(), limit in some_limit(), course in -3.0..3.0f64,
    ) {
        let (sun, gauge) = (Sun::new(site(latitude, 12.0)), Course(course));
        let found = Match { sun: &sun, gauge: &gauge, limit }.hold(hours).unwrap();
        // Brute force: from every minute on, a take every minute until one does not cut with one before.
        let minutes: Vec<Instant> = (0..=240).map(|n| hours.start() + Duration::from_minutes(n)).collect();
        let lights: Vec<Vector<World>> = minutes.iter().map(|at| sun.apparent(*at)).collect();
        let mut best = 0;
        for start in 0..minutes.len() {
            let cuts = |take: usize| (start..take).all(|other| apart(&gauge, &limit, lights[other], lights[take]));
            let end = (start..minutes.len()).take_while(|take| cuts(*take)).last().unwrap();
            best = best.max(end - start);
        }
        let best = Duration::from_minutes(best as i64);
        let short = (found.duration() - best).seconds();
        prop_assert!((-1.0..=60.5).contains(&short), "{} against {} min", found.duration().minutes(), best.minutes());
    }

    #[test]
    fn a_looser_limit_never_shortens_a_hold(
        latitude in -65.0..65.0f64, hours in some_hours(), strict in some_limit(),
        more in (0.0..0.4f64, 0.0..20.0f64, 0.0..1.0f64, 0.0..30.0f64), course in -3.0..3.0f64,
    ) {
        let (sun, gauge) = (Sun::new(site(latitude, 12.0)), Course(course));
        let loose = limit(
            strict.shadow.fraction() + more.0, strict.class_angle.degrees() + more.1,
            strict.ratio.stops() + more.2, strict.colour.mired() + more.3,
        );
        let held = |limit: MatchLimit| Match { sun: &sun, gauge: &gauge, limit };
        let long = |limit| held(limit).hold(hours).unwrap().duration();
        prop_assert!(long(loose) >= long(strict));
        let take = hours.middle();
        let (tight, wide) = (held(strict).around(take, hours).unwrap(), held(loose).around(take, hours).unwrap());
        prop_assert!(wide.start() <= tight.start() && tight.end() <= wide.end());
    }

    #[test]
    fn an_order_is_found_where_trying_every_minute_finds_one(
        hours in some_hours(), limit in some_limit(),
        windows in proptest::collection::vec((0i64..200, 10i64..120, 5i64..40), 2..3),
    ) {
        let (sun, gauge) = (Sun::new(site(40.0, 0.0)), Course(1.0));
        let minutes = |n: i64| hours.start() + Duration::from_minutes(n);
        let parts: Vec<Part> = windows.iter().enumerate().map(|(n, (from, long, takes))| Part {
            name: String::new(),
            width: Metres::from_metres(4.0 - n as f64),
            takes: Duration::from_minutes(*takes),
            met: Span::new(minutes(*from), minutes(from + long)).unwrap().into(),
        }).collect();
        let held = Match { sun: &sun, gauge: &gauge, limit };
        let found = held.order(&parts, hours);
        // Brute force over both orders and every minute of both starts.
        let fits = |n: usize, start: i64| {
            let (from, long, takes) = windows[n];
            start >= from && start + takes <= (from + long).min(240)
        };
        let mut any = false;
        for (first, second) in [(0usize, 1usize), (1, 0)] {
            for one in (0..240).filter(|one| fits(first, *one)) {
                let from = (one + windows[first].2).max(windows[second].0);
                any |= fits(second, from) && held.keeps(Span::new(minutes(one), minutes(from + windows[second].2)).unwrap());
            }
        }
        prop_assert_eq!(found.is_some(), any);
        for (number, span) in found.into_iter().flatten() {
            prop_assert!(parts[number].met.iter().any(|met| met.and(span) == Some(span)));
        }
    }
}

#[test]
fn late_light_holds_for_less_than_noon() {
    let sun = Sun::new(site(40.64, -8.65));
    let held = Match { sun: &sun, gauge: &ClearSun, limit: MatchLimit::default() };
    let hold = |from: &str, to: &str| held.hold(span(from, to)).unwrap().duration().minutes();
    let (noon, late) = (
        hold("2027-03-21T11:00:00Z", "2027-03-21T14:00:00Z"),
        hold("2027-03-21T16:30:00Z", "2027-03-21T18:30:00Z"),
    );
    // At noon the bearing turns by 15° in three quarters of an hour; late, a fifth more shadow takes a quarter of one.
    assert!((40.0..60.0).contains(&noon) && (15.0..40.0).contains(&late), "{noon} {late}");
}

#[test]
fn wide_goes_before_close_where_both_fit() {
    let sun = Sun::new(site(40.64, -8.65));
    let held = Match { sun: &sun, gauge: &ClearSun, limit: MatchLimit::default() };
    let day = span("2027-03-21T12:00:00Z", "2027-03-21T14:00:00Z");
    let part = |name: &str, width: f64| Part {
        name: name.into(),
        width: Metres::from_metres(width),
        takes: Duration::from_minutes(15),
        met: day.into(),
    };
    let order = held.order(&[part("close", 0.5), part("wide", 6.0)], day).unwrap();
    assert_eq!(order.iter().map(|(number, _)| *number).collect::<Vec<_>>(), [1, 0]);
    assert_eq!(order[0].1.end(), order[1].1.start());
}
