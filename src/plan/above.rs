//! When the sun stands above a skyline: of its disc, some still shows.
//!
//! Each straight piece of a skyline with the sky above it is a convex cone, between two vertical planes and over one
//! great circle, so that the sky's own search finds every edge.

use crate::place::cone::{Cone, HalfSpace};
use crate::place::skyline::{Edge, Skyline};
use crate::sky::search::{Limb, SUN_RADIUS};
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Span, Spans};

/// Edges found on both sides of a seam between two pieces differ by their rounding: a millisecond each.
const SEAM: Duration = Duration::from_millis(3);

/// The part of `light` in which some of the sun's disc shows above `line`.
pub fn above(sun: &Sun, line: &Skyline, light: &Spans) -> Spans {
    if line.is_level() {
        return light.clone();
    }
    let cones: Vec<Cone> = line.edges().iter().filter_map(sky_above).collect();
    let clear = |span: Span| close_seams(&sun.spans_in(&cones, Limb::Centre, span));
    Spans::gather(light.iter().flat_map(|span| clear(span).as_slice().to_vec()).collect())
}

/// The sky above a piece for the middle of a disc that still shows; `None` for an upright step.
fn sky_above(edge: &Edge) -> Option<Cone> {
    let beside =
        |bearing: Bearing, turn: f64| HalfSpace::beside(bearing.turned(Degrees::from_degrees(turn)).level());
    let radius = Height::clamped(SUN_RADIUS.degrees()).sin();
    (edge.width > Degrees::default()).then(|| Cone {
        sides: vec![
            HalfSpace { normal: edge.above.normal, least: edge.above.least - radius },
            beside(edge.from, 90.0),
            beside(edge.to(), -90.0),
        ],
    })
}

/// Joins spans that only a seam parts.
fn close_seams(spans: &Spans) -> Spans {
    let longer = |span: Span| Span::new(span.start(), span.end() + SEAM);
    let joined = Spans::gather(spans.iter().filter_map(longer).collect());
    let shorter = |span: Span| Span::new(span.start(), span.end() - SEAM);
    Spans::gather(joined.iter().filter_map(shorter).collect())
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{site, skyline, some_days, span};
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_wall_all_round_shortens_the_day_alike() {
        let sun = Sun::new(site(40.64, -8.65));
        let day = span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z");
        let ring = skyline(&(0..36).map(|step| (f64::from(step) * 10.0, 10.0)).collect::<Vec<_>>());
        let clear = above(&sun, &ring, &day.into());
        assert_eq!(clear.as_slice().len(), 1, "no seam is left");
        for edge in [clear.as_slice()[0].start(), clear.as_slice()[0].end()] {
            let height = sun.apparent(edge).height().degrees() + SUN_RADIUS.degrees();
            // A straight roof between two points bulges a little.
            assert!((9.99..10.1).contains(&height), "{height}");
        }
    }

    #[test]
    fn without_points_nothing_is_blocked() {
        let sun = Sun::new(site(40.64, -8.65));
        let day = span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z");
        assert_eq!(above(&sun, &Skyline::default(), &day.into()).as_slice(), [day]);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]

        #[test]
        fn agrees_with_every_minute(
            latitude in -90.0..=90.0f64, longitude in -180.0..=180.0f64, within in some_days(),
            points in proptest::collection::vec((0.0..360.0f64, -3.0..40.0f64), 1..40),
        ) {
            let sun = Sun::new(site(latitude, longitude));
            let line = skyline(&points);
            let clear = above(&sun, &line, &within.into());
            for minute in 0..2880 {
                let now = within.start() + Duration::from_minutes(minute);
                let near = |span: Span| [span.start(), span.end()].iter().any(|edge| (*edge - now).millis().abs() <= 1000);
                if !clear.iter().any(near) {
                    prop_assert_eq!(clear.contains(now), line.clears(sun.apparent(now), SUN_RADIUS), "{}", now);
                }
            }
        }
    }
}
