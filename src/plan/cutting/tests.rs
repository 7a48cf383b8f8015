//! Match holds, orders and limits against all pairs of takes, asked by the handbook's own sentences.

use super::*;
use crate::plan::fixture::{ClearSun, at, site, span};
use crate::units::Share;
use proptest::prelude::*;

/// A gauge for tests: any smooth course of ratio and colour.
#[derive(Debug)]
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

/// Whether two takes, each of a set-up with its own course, keep the limit: from the handbook's sentences alone.
fn cut(limit: &MatchLimit, (one, a): (&Course, Vector<World>), (other, b): (&Course, Vector<World>)) -> bool {
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
    let ratio = |course: &Course, light| course.ratio(light, Instant::from_unix_millis(0)).unwrap().stops();
    let colour = |course: &Course, light| course.colour(light, Instant::from_unix_millis(0)).unwrap().mired();
    turned <= limit.class_angle.degrees()
        && shadows
        && difference(ratio(one, a), ratio(other, b), limit.ratio.stops())
        && difference(colour(one, a), colour(other, b), limit.colour.mired())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn the_hold_is_that_of_trying_every_pair(
        latitude in -65.0..65.0f64, hours in some_hours(), limit in some_limit(),
        courses in proptest::collection::vec(-3.0..3.0f64, 1..4),
    ) {
        let sun = Sun::new(site(latitude, 12.0));
        let courses: Vec<Course> = courses.into_iter().map(Course).collect();
        let gauges: Vec<&dyn Gauge> = courses.iter().map(|course| course as &dyn Gauge).collect();
        let found = Match { sun: &sun, gauges: &gauges, limit }.hold(hours);
        // Brute force: from every minute on, a take of each set-up every minute until one does not cut with one before.
        let lights: Vec<Vector<World>> =
            (0..=240).map(|n| sun.apparent(hours.start() + Duration::from_minutes(n))).collect();
        let all_cut = |one: usize, other: usize| {
            courses.iter().all(|a| courses.iter().all(|b| cut(&limit, (a, lights[one]), (b, lights[other]))))
        };
        let mut best = None;
        for start in 0..lights.len() {
            let cuts = |take: &usize| (start..=*take).all(|other| all_cut(other, *take));
            best = best.max((start..lights.len()).take_while(cuts).last().map(|end| end - start));
        }
        match (found, best) {
            (Some(found), Some(best)) => {
                let short = found.duration().minutes() - best as f64;
                prop_assert!((-0.02..=1.01).contains(&short), "{} against {best} min", found.duration().minutes());
            }
            // A hold of less than a minute, just before the end.
            (found, best) => prop_assert!(found.is_none() && best.unwrap_or(0) == 0, "{found:?} {best:?}"),
        }
    }

    #[test]
    fn a_looser_limit_never_shortens_a_hold_and_another_set_up_never_lengthens_it(
        latitude in -65.0..65.0f64, hours in some_hours(), strict in some_limit(),
        more in (0.0..0.4f64, 0.0..20.0f64, 0.0..1.0f64, 0.0..30.0f64), courses in (-3.0..3.0f64, -3.0..3.0f64),
    ) {
        let sun = Sun::new(site(latitude, 12.0));
        let (one, other) = (Course(courses.0), Course(courses.1));
        let loose = limit(
            strict.shadow.fraction() + more.0, strict.class_angle.degrees() + more.1,
            strict.ratio.stops() + more.2, strict.colour.mired() + more.3,
        );
        let long = |gauges: &[&dyn Gauge], limit| {
            Match { sun: &sun, gauges, limit }.hold(hours).map_or(Duration::ZERO, Span::duration)
        };
        prop_assert!(long(&[&one], loose) >= long(&[&one], strict));
        prop_assert!(long(&[&one, &other], loose) >= long(&[&one, &other], strict));
        prop_assert!(long(&[&one, &other], strict) <= long(&[&one], strict));
    }

    #[test]
    fn an_order_is_found_where_trying_every_pair_of_starts_finds_one(
        hours in some_hours(), limit in some_limit(), courses in (-1.5..1.5f64, -1.5..1.5f64),
        windows in proptest::collection::vec((0i64..200, 10i64..120, 5i64..40), 2..3),
    ) {
        let sun = Sun::new(site(40.0, 0.0));
        let courses = [Course(courses.0), Course(courses.1)];
        let minutes = |n: i64| hours.start() + Duration::from_minutes(n);
        let parts: Vec<Part> = windows.iter().enumerate().map(|(n, (from, long, takes))| Part {
            name: String::new(),
            width: Metres::from_metres(4.0 - n as f64),
            takes: Duration::from_minutes(*takes),
            met: Span::new(minutes(*from), minutes(from + long)).unwrap().into(),
        }).collect();
        let gauges: [&dyn Gauge; 2] = [&courses[0], &courses[1]];
        let found = Match { sun: &sun, gauges: &gauges, limit }.order(&parts, hours);
        // Brute force over both orders and every minute of both starts, take by take.
        let lights: Vec<Vector<World>> = (0..=400).map(|n| sun.apparent(minutes(n))).collect();
        let fits = |n: usize, start: i64| {
            let (from, long, takes) = windows[n];
            start >= from && start + takes <= (from + long).min(240)
        };
        let takes = |n: usize, start: i64| (start..=start + windows[n].2).map(move |at| (n, at as usize));
        let cut_all = |first: (usize, i64), second: (usize, i64)| {
            let all: Vec<(usize, usize)> = takes(first.0, first.1).chain(takes(second.0, second.1)).collect();
            all.iter().all(|a| all.iter().all(|b| {
                cut(&limit, (&courses[a.0], lights[a.1]), (&courses[b.0], lights[b.1]))
            }))
        };
        let mut any = false;
        for (first, second) in [(0usize, 1usize), (1, 0)] {
            for one in (0..240).filter(|one| fits(first, *one)) {
                let after = (one + windows[first].2..240).filter(|two| fits(second, *two));
                any = any || after.into_iter().any(|two| cut_all((first, one), (second, two)));
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
    let held = Match { sun: &sun, gauges: &[&ClearSun, &ClearSun], limit: MatchLimit::default() };
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
    let held = Match { sun: &sun, gauges: &[&ClearSun, &ClearSun], limit: MatchLimit::default() };
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
