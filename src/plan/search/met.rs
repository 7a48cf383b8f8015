//! When a wish is met: all the time in which every part of it holds at once.
//!
//! Arc, heights and openings are convex cones, so that the sky finds their spans without stepping; unions and
//! gaps are set work on spans. The skyline is asked last, of what is left. Dates and hours cut at the end,
//! since the clock's days are not the sun's.

use super::above::above;
use super::reason::above_horizon;
use crate::place::cone::Cone;
use crate::place::skyline::Skyline;
use crate::plan::calendar;
use crate::plan::levels::wished::Wished;
use crate::plan::shot;
use crate::plan::stage::Stage;
use crate::plan::wish::SunOnMark;
use crate::plan::wish::region;
use crate::sky::search::Limb;
use crate::sky::sun::Sun;
use crate::units::{Span, Spans};

/// All the time within `within` in which the wish holds, short spans included.
pub fn met(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    let light = match stage.wish.sun_on_mark {
        SunOnMark::Yes => direct(sun, stage, within, &wish_cones(stage)),
        // Not the wish's cones: the same edge found twice would leave slivers of a few milliseconds.
        SunOnMark::Any | SunOnMark::No => {
            as_direct_as_wished(sun, stage, &wished(sun, stage, within), within)
        }
    };
    let light = shot::kept(sun, stage, possible(stage, light, within));
    // Last, since a level costs a thousand directions.
    match Wished::of_stage(stage) {
        Some(levels) => levels.met(sun, stage, &light),
        None => light,
    }
}

/// When the sun reaches the mark, whatever the wish says.
pub fn sun_on_mark(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    direct(sun, stage, within, &[Cone::default()])
}

/// What is left of `light` when the mark must get, or lack, direct sun as the wish says.
pub(in crate::plan) fn as_direct_as_wished(sun: &Sun, stage: &Stage, light: &Spans, within: Span) -> Spans {
    match stage.wish.sun_on_mark {
        SunOnMark::Any => light.clone(),
        SunOnMark::Yes => light.and(&sun_on_mark(sun, stage, within)),
        SunOnMark::No => light.without(&sun_on_mark(sun, stage, within)),
    }
}

/// When arc and heights hold.
fn wished(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    sun.spans_in(&wish_cones(stage), Limb::Centre, within)
}

/// When the sun stands in one of `asked` and reaches the mark.
fn direct(sun: &Sun, stage: &Stage, within: Span, asked: &[Cone]) -> Spans {
    let light = |(part, line): (Span, &Skyline)| {
        above(sun, line, &sun.spans_in(&through_openings(stage, line, asked), Limb::Centre, part))
    };
    stage.by_season(within).into_iter().map(light).reduce(|all, one| all.or(&one)).unwrap_or_default()
}

/// The parts of `asked` above a level horizon that openings let onto the mark; a skyline stands for itself.
fn through_openings(stage: &Stage, line: &Skyline, asked: &[Cone]) -> Vec<Cone> {
    let up = Cone { sides: line.is_level().then(above_horizon).into_iter().collect() };
    let asked = asked.iter().map(|cone| both(cone, &up));
    match &stage.openings {
        None => asked.collect(),
        Some(all) => {
            let openings: Vec<&Cone> = all.iter().flat_map(|opening| &opening.cones).collect();
            asked
                .flat_map(|cone| openings.iter().map(|opening| both(&cone, opening)).collect::<Vec<_>>())
                .collect()
        }
    }
}

/// What dates and hours leave of `light`.
fn possible(stage: &Stage, mut light: Spans, within: Span) -> Spans {
    if !stage.wish.dates.is_empty() {
        light = light.and(&calendar::dates(&stage.zone, &stage.wish.dates, within));
    }
    match stage.wish.hours {
        Some(hours) => light.and(&calendar::hours(&stage.zone, hours, within)),
        None => light,
    }
}

/// The wish's arc and heights.
fn wish_cones(stage: &Stage) -> Vec<Cone> {
    region::cones(&stage.light_from(), stage.wish.heights)
}

/// In both cones.
fn both(one: &Cone, other: &Cone) -> Cone {
    Cone { sides: [one.sides.as_slice(), other.sides.as_slice()].concat() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::blocker::{DayOfYear, Eye, Leaves};
    use crate::place::seasons::Seasons;
    use crate::plan::fixture::{at, field, loft, site, some_days, some_stage, span, tree_at, window, wish};
    use crate::plan::search::reason::Question;
    use crate::plan::wish::Wish;
    use crate::units::{Bearing, Degrees, Duration, Height, Instant};
    use proptest::prelude::*;

    /// Every whole minute of `within` that is further than a second from an edge of `spans`.
    fn minutes_apart_from(spans: &Spans, within: Span) -> impl Iterator<Item = Instant> + '_ {
        let near = |at: Instant| {
            spans
                .iter()
                .any(|span| [span.start(), span.end()].iter().any(|edge| (*edge - at).millis().abs() <= 1000))
        };
        let all = (0..).map(move |n| within.start() + Duration::from_minutes(n));
        all.take_while(move |at| *at < within.end()).filter(move |at| !near(*at))
    }

    #[test]
    fn no_sun_on_the_mark_is_the_rest_of_the_light() {
        let yes = loft();
        let sun = Sun::new(yes.site);
        let no = Stage { wish: Wish { sun_on_mark: SunOnMark::No, ..yes.wish.clone() }, ..yes.clone() };
        let any = Stage { wish: Wish { sun_on_mark: SunOnMark::Any, ..yes.wish.clone() }, ..yes.clone() };
        let within = span("2027-03-01T00:00:00Z", "2027-03-20T00:00:00Z");
        let (yes, no, any) = (met(&sun, &yes, within), met(&sun, &no, within), met(&sun, &any, within));
        assert!(yes.and(&no).is_empty());
        let apart = any.total() - yes.total() - no.total();
        assert!(apart.millis().abs() < 1000, "{}", apart.millis());
    }

    #[test]
    fn the_mirrored_side_is_found_by_the_mirrored_wish() {
        // A lens due south on the meridian: what stands east at −t stands west at +t, seasons apart.
        let stage = Stage { lens: Bearing::from_degrees(180.0), openings: None, ..loft() };
        let one = |from: f64, to: f64| {
            let mut stage = stage.clone();
            stage.wish = wish((from, to), (5.0, 20.0), SunOnMark::Any);
            stage.wish.arc.either_side = false;
            let within = span("2027-06-18T00:00:00Z", "2027-06-24T00:00:00Z");
            met(&Sun::new(stage.site), &stage, within).total().minutes()
        };
        let (right, left) = (one(60.0, 120.0), one(240.0, 300.0));
        assert!(right > 60.0 && (right - left).abs() < 1.0, "{right} {left}");
    }

    #[test]
    fn an_opening_behind_the_sun_of_the_other_hemisphere() {
        // A north window has sun at noon in the south of the world and none in the north.
        let through = |latitude: f64| {
            let stage = Stage {
                site: site(latitude, 0.0),
                openings: Some(vec![window("north", 0.0, (-1.0, 1.0), (0.0, 3.0))]),
                ..loft()
            };
            sun_on_mark(&Sun::new(stage.site), &stage, span("2027-03-20T00:00:00Z", "2027-03-21T00:00:00Z"))
        };
        assert!(through(48.0).is_empty());
        assert!(through(-48.0).contains(at("2027-03-20T12:00:00Z")));
    }

    #[test]
    fn a_tree_takes_the_evening_sun_while_it_has_leaves() {
        let day = |month, day| DayOfYear { month, day };
        let leaves = Leaves { on: day(4, 15), off: day(11, 1) };
        let tree = tree_at(265.0, 8.0, leaves);
        let stage = Stage {
            seasons: Seasons::around(&Skyline::default(), &[tree], Eye::default()),
            wish: wish((0.0, 360.0), (2.0, 60.0), SunOnMark::Yes),
            ..field()
        };
        let (sun, question) = (Sun::new(stage.site), Question::new(&stage));
        let year = span("2027-01-01T00:00:00Z", "2028-01-01T00:00:00Z");
        let found = met(&sun, &stage, year);
        for minute in minutes_apart_from(&found, year).step_by(7) {
            assert_eq!(found.contains(minute), question.holds(&sun, minute), "{minute}");
        }
        // 17:45 UTC on either side of both dates, the sun in the west at 15° and at 1°.
        let lit = |text: &str| found.contains(at(text));
        assert!(lit("2027-04-14T17:45:00Z") && !lit("2027-04-15T17:45:00Z"));
        assert!(!lit("2027-10-31T16:30:00Z") && lit("2027-11-01T16:30:00Z"));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        #[test]
        fn the_search_agrees_with_every_minute(stage in some_stage(), within in some_days()) {
            let sun = Sun::new(stage.site);
            let found = met(&sun, &stage, within);
            let question = Question::new(&stage);
            for minute in minutes_apart_from(&found, within) {
                prop_assert_eq!(found.contains(minute), question.holds(&sun, minute), "{}", minute);
            }
        }

        #[test]
        fn a_looser_wish_never_loses_time(
            stage in some_stage(), within in some_days(), wider in 0.0..60.0f64, lower in 0.0..10.0f64,
        ) {
            let sun = Sun::new(stage.site);
            let mut looser = stage.clone();
            let arc = &mut looser.wish.arc;
            arc.to = Degrees::from_degrees((arc.to.degrees() + wider).min(arc.from.degrees() + 360.0));
            looser.wish.heights.to = Height::clamped(looser.wish.heights.to.degrees() + wider);
            looser.wish.heights.from = Height::clamped(looser.wish.heights.from.degrees() - lower);
            looser.wish.hours = None;
            let lost = met(&sun, &stage, within).without(&met(&sun, &looser, within));
            prop_assert!(lost.total().millis() < 100, "{}", lost.total().millis());
        }
    }
}
