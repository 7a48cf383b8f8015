//! Skylines beside a scan every five seconds.

use proptest::prelude::*;

use slantlight::place::site::Site;
use slantlight::place::skyline::{Point, Skyline};
use slantlight::sky::search::{Limb, SUN_RADIUS};
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Degrees, Duration, Height, Instant, Span, Spans};

use super::{EDGE, some_site, some_span};

/// Whether the limb shows.
fn shows(sun: &Sun, skyline: &Skyline, limb: Limb, at: Instant) -> bool {
    let radius = match limb {
        Limb::Upper => SUN_RADIUS,
        Limb::Centre => Degrees::default(),
        Limb::Lower => Degrees::from_degrees(-SUN_RADIUS.degrees()),
    };
    skyline.clears(sun.apparent(at), radius)
}

fn compare(spans: &Spans, within: Span, shows: impl Fn(Instant) -> bool) -> Result<(), TestCaseError> {
    let mut at = within.start();
    while at < within.end() {
        let answer = shows(at);
        if spans.contains(at) != answer {
            // Only where it changes within 10 ms.
            prop_assert!(shows(at - EDGE) != answer || shows(at + EDGE) != answer, "{} is {}", at, answer);
        }
        at = at + Duration::from_millis(5003);
    }
    for span in spans.iter().filter(|span| span.duration() > EDGE + EDGE) {
        // Spans and gaps of under two edges' exactness cannot be told from none.
        let touches = |other: &Span| other.start() >= span.end() && other.start() - span.end() <= EDGE + EDGE;
        let touched = |other: &Span| other.end() <= span.start() && span.start() - other.end() <= EDGE + EDGE;
        let (before, after) =
            (spans.iter().any(|other| touched(&other)), spans.iter().any(|other| touches(&other)));
        if span.start() > within.start() && !before {
            prop_assert!(!shows(span.start() - EDGE) && shows(span.start() + EDGE), "start {}", span.start());
        }
        if span.end() < within.end() && !after {
            prop_assert!(shows(span.end() - EDGE) && !shows(span.end() + EDGE), "end {}", span.end());
        }
    }
    Ok(())
}

fn some_point() -> impl Strategy<Value = Point> {
    let height = prop_oneof![-3.0..20.0f64, -1.0..0.5f64, 0.0..88.0f64];
    (0.0..360.0f64, height).prop_map(|(bearing, height)| Point {
        bearing: Bearing::from_degrees(bearing),
        height: Height::clamped(height),
    })
}

/// Few points, a town of many, or steps: two points of one bearing.
fn some_skyline() -> impl Strategy<Value = Skyline> {
    let few = proptest::collection::vec(some_point(), 0..6);
    let many = proptest::collection::vec(some_point(), 40..200);
    let steps = proptest::collection::vec((some_point(), -2.0..60.0f64), 1..8).prop_map(|pairs| {
        let both = |(point, other): (Point, f64)| [point, Point { height: Height::clamped(other), ..point }];
        pairs.into_iter().flat_map(both).collect()
    });
    prop_oneof![few, many, steps].prop_map(Skyline::new)
}

fn some_limb() -> impl Strategy<Value = Limb> {
    prop_oneof![Just(Limb::Upper), Just(Limb::Centre), Just(Limb::Lower)]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn above_a_skyline(
        site in some_site(), skyline in some_skyline(), limb in some_limb(), within in some_span(2),
    ) {
        let sun = Sun::new(site);
        let spans = sun.spans_above(&skyline, limb, within);
        compare(&spans, within, |at| shows(&sun, &skyline, limb, at))?;
    }

    /// Under the sun: it passes the zenith, where bearings turn fast.
    #[test]
    fn above_a_skyline_in_the_tropics(
        latitude in -23.5..23.5f64, skyline in some_skyline(), limb in some_limb(), within in some_span(1),
    ) {
        let sun = Sun::new(super::site(latitude, 12.0));
        let spans = sun.spans_above(&skyline, limb, within);
        compare(&spans, within, |at| shows(&sun, &skyline, limb, at))?;
    }
}

#[test]
fn the_level_horizon_is_rise_and_set_of_the_limb() {
    let sun = Sun::new(Site::default());
    let start = Instant::parse("2027-03-01T00:00:00Z").unwrap();
    let week = Span::new(start, start + Duration::from_minutes(7 * 1440)).unwrap();
    let open = Skyline::default();
    for limb in [Limb::Upper, Limb::Centre, Limb::Lower] {
        let spans = sun.spans_above(&open, limb, week);
        assert_eq!(spans.iter().len(), 7);
        compare(&spans, week, |at| shows(&sun, &open, limb, at)).unwrap();
    }
}
