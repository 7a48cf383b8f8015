//! The interval search beside an exhaustive scan that shares nothing with it but the sun's direction.
//!
//! Sites from pole to pole, cones of slanted, upright and level half-spaces, any season. The scan asks the cone every
//! minute for the *seen* direction, climbs every peak between, and bisects nothing: the search's own edges must change
//! the answer within 10 ms.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod far;
mod skyline;

use proptest::prelude::*;

use slantlight::place::cone::{Cone, HalfSpace};
use slantlight::place::site::Site;
use slantlight::sky::sun::Sun;
use slantlight::units::{
    Bearing, Duration, Height, Instant, Latitude, Longitude, Metres, Span, Spans, Vector, World,
};

/// A margin that a clock error of 0.01 s can make up for at the sun's fastest.
const KNIFE_EDGE: f64 = 7.3e-7;

/// How far an edge may be from where the answer changes.
const EDGE: Duration = Duration::from_millis(10);

/// How deep inside the cone a direction is; negative outside.
fn margin(region: &Cone, direction: Vector<World>) -> f64 {
    let depth = |side: &HalfSpace| side.normal.dot(direction) - side.least;
    region.sides.iter().map(depth).fold(f64::INFINITY, f64::min)
}

/// Complains about any minute, peak or edge on which the spans and the scan differ.
fn compare(spans: &Spans, within: Span, depth: impl Fn(Instant) -> f64) -> Result<(), TestCaseError> {
    minutes_agree(spans, within, &depth)?;
    edges_are_edges(spans, within, &depth)
}

fn minutes_agree(spans: &Spans, within: Span, depth: &impl Fn(Instant) -> f64) -> Result<(), TestCaseError> {
    let minute = Duration::from_minutes(1);
    let (mut before, mut last) = (f64::NEG_INFINITY, depth(within.start()));
    let mut at = within.start();
    while at < within.end() {
        let next = depth(at + minute);
        if last.abs() > KNIFE_EDGE {
            prop_assert_eq!(spans.contains(at), last > 0.0, "{} depth {}", at, last);
        }
        if at > within.start() && at + minute < within.end() {
            if before < last && next < last && last < 0.0 {
                let (peak, top) = climb(at, depth);
                prop_assert!(top < KNIFE_EDGE || spans.contains(peak), "missed {} by {}", peak, top);
            }
            if before > last && next > last && last > 0.0 {
                let (hole, bottom) = climb(at, |at| -depth(at));
                prop_assert!(bottom < KNIFE_EDGE || !spans.contains(hole), "bridged {} by {}", hole, bottom);
            }
        }
        (before, last) = (last, next);
        at = at + minute;
    }
    Ok(())
}

/// The highest point within a minute of `at`, by thirds.
fn climb(at: Instant, height: impl Fn(Instant) -> f64) -> (Instant, f64) {
    let (mut from, mut to) = (at.unix_millis() - 60_000, at.unix_millis() + 60_000);
    while to - from > 3 {
        let third = (to - from) / 3;
        let (one, two) = (from + third, to - third);
        if height(Instant::from_unix_millis(one)) < height(Instant::from_unix_millis(two)) {
            from = one;
        } else {
            to = two;
        }
    }
    let peak = Instant::from_unix_millis((from + to) / 2);
    (peak, height(peak))
}

fn edges_are_edges(
    spans: &Spans,
    within: Span,
    depth: &impl Fn(Instant) -> f64,
) -> Result<(), TestCaseError> {
    for span in spans.iter() {
        if span.duration() < EDGE + EDGE {
            continue;
        }
        if span.start() > within.start() {
            let (out, inside) = (depth(span.start() - EDGE), depth(span.start() + EDGE));
            prop_assert!(out < 0.0 && inside >= 0.0, "start {}: {} {}", span.start(), out, inside);
        }
        if span.end() < within.end() {
            let (inside, out) = (depth(span.end() - EDGE), depth(span.end() + EDGE));
            prop_assert!(out < 0.0 && inside >= 0.0, "end {}: {} {}", span.end(), inside, out);
        }
    }
    Ok(())
}

fn site(latitude: f64, longitude: f64) -> Site {
    Site {
        latitude: Latitude::from_degrees(latitude).unwrap(),
        longitude: Longitude::from_degrees(longitude).unwrap(),
        elevation: Metres::from_metres(120.0),
    }
}

fn some_site() -> impl Strategy<Value = Site> {
    let latitude =
        prop_oneof![-90.0..=90.0f64, 64.0..=69.0f64, -69.0..=-64.0f64, Just(90.0), Just(-90.0), Just(0.0)];
    (latitude, -180.0..=180.0f64).prop_map(|(latitude, longitude)| site(latitude, longitude))
}

fn some_span(days: i64) -> impl Strategy<Value = Span> {
    (1_700_000_000i64..1_900_000_000, 1..=days * 1440).prop_map(|(start, minutes)| {
        let start = Instant::from_unix_millis(start * 1000 + 77);
        Span::new(start, start + Duration::from_minutes(minutes)).unwrap()
    })
}

fn towards(bearing: f64, height: f64) -> Vector<World> {
    Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
}

fn level(lowest: f64) -> HalfSpace {
    HalfSpace { normal: Vector::UP, least: Height::clamped(lowest).sin() }
}

fn below(highest: f64) -> HalfSpace {
    HalfSpace { normal: -Vector::UP, least: -Height::clamped(highest).sin() }
}

fn some_side() -> impl Strategy<Value = HalfSpace> {
    prop_oneof![
        (-8.0..60.0f64).prop_map(level),
        (-2.0..2.0f64).prop_map(level),
        (-2.0..80.0f64).prop_map(below),
        (0.0..360.0f64).prop_map(|bearing| HalfSpace::beside(towards(bearing, 0.0))),
        (0.0..360.0f64, -90.0..90.0f64)
            .prop_map(|(bearing, height)| HalfSpace::beside(towards(bearing, height))),
        (0.0..360.0f64, -90.0..90.0f64, -0.95..0.95f64)
            .prop_map(|(bearing, height, least)| HalfSpace { normal: towards(bearing, height), least }),
    ]
}

fn some_cone(most: usize) -> impl Strategy<Value = Cone> {
    proptest::collection::vec(some_side(), 0..=most).prop_map(|sides| Cone { sides })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn one_cone(site in some_site(), region in some_cone(4), within in some_span(3)) {
        let sun = Sun::new(site);
        compare(&sun.spans(&region, within), within, |at| margin(&region, sun.apparent(at)))?;
    }

    #[test]
    fn one_airless_cone(site in some_site(), region in some_cone(3), within in some_span(3)) {
        let sun = Sun::new(site);
        compare(&sun.airless_spans(&region, within), within, |at| margin(&region, sun.direction(at)))?;
    }

    /// A height or plane that the sun only just reaches, at its highest or lowest of the day.
    #[test]
    fn grazing(
        site in some_site(), within in some_span(2), bearing in 0.0..360.0f64, height in -90.0..90.0f64,
        off in prop_oneof![-1e-6..1e-6f64, -1e-4..1e-4f64, -0.01..0.01f64], upper in any::<bool>(), level in any::<bool>(),
    ) {
        let sun = Sun::new(site);
        let normal = if level { Vector::UP } else { towards(bearing, height) };
        let depths = (0..1440).map(|minute| normal.dot(sun.apparent(within.start() + Duration::from_minutes(minute))));
        let extreme = if upper { depths.fold(-1.0, f64::max) } else { depths.fold(1.0, f64::min) };
        let region = Cone { sides: vec![HalfSpace { normal, least: extreme + off }] };
        compare(&sun.spans(&region, within), within, |at| margin(&region, sun.apparent(at)))?;
    }
}

/// Whole years at awkward latitudes.
#[test]
fn years_at_all_latitudes() {
    let start = Instant::parse("2027-01-01T00:00:00Z").unwrap();
    let year = Span::new(start, start + Duration::from_minutes(365 * 1440)).unwrap();
    let window = [towards(200.0, 10.0), towards(20.0, 75.0), towards(110.0, 5.0)].map(HalfSpace::beside);
    let region = Cone { sides: [window.as_slice(), &[level(0.2), below(55.0)]].concat() };
    for latitude in [-90.0, -78.0, -66.4, -33.0, -0.1, 0.0, 23.4, 48.2, 66.6, 71.0, 89.9, 90.0] {
        let sun = Sun::new(site(latitude, 173.0));
        let spans = sun.spans(&region, year);
        compare(&spans, year, |at| margin(&region, sun.apparent(at))).unwrap();
    }
}

#[test]
fn union_of_cones_is_the_union_of_spans() {
    let sun = Sun::new(site(40.6, -8.7));
    let start = Instant::parse("2027-03-01T00:00:00Z").unwrap();
    let week = Span::new(start, start + Duration::from_minutes(7 * 1440)).unwrap();
    let east = Cone { sides: vec![HalfSpace::beside(towards(90.0, 0.0)), level(3.0)] };
    let west = Cone { sides: vec![HalfSpace::beside(towards(250.0, 0.0)), level(5.0)] };
    let both = sun.spans_in(&[east.clone(), west.clone()], Default::default(), week);
    assert_eq!(both, sun.spans(&east, week).or(&sun.spans(&west, week)));
    assert!(sun.spans(&Cone::default(), week) == Spans::from(week), "no side, no limit");
}
