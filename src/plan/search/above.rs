//! When the sun stands above a skyline: of its disc, some still shows.
//!
//! A wish's own heights stand for a level horizon, so that [`above`] does not ask it; [`shown`] does.

use super::reason::above_horizon;
use crate::place::cone::Cone;
use crate::place::skyline::Skyline;
use crate::sky::search::{Limb, SUN_RADIUS};
use crate::sky::sun::Sun;
use crate::units::{Spans, Vector, World};

/// The part of `light` in which some of the sun's disc shows above `line`.
pub fn above(sun: &Sun, line: &Skyline, light: &Spans) -> Spans {
    if line.is_level() { light.clone() } else { sun.above(line, Limb::Upper, light) }
}

/// The part of `light` in which the sun is seen over `line`, be it the level horizon.
pub fn shown(sun: &Sun, line: &Skyline, light: &Spans) -> Spans {
    if !line.is_level() {
        return above(sun, line, light);
    }
    let up = Cone { sides: vec![above_horizon()] };
    Spans::gather(light.iter().flat_map(|span| sun.spans(&up, span).as_slice().to_vec()).collect())
}

/// Whether a sun in a direction is seen over `line`.
pub fn shows(line: &Skyline, light: Vector<World>) -> bool {
    if line.is_level() { above_horizon().contains(light) } else { line.clears(light, SUN_RADIUS) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{site, skyline, some_days, span};
    use crate::units::{Duration, Span};
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
