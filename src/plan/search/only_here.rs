//! Only here from–to: the span is given, where does the camera go?
//!
//! Every whole degree of the bearings allowed is tried (each tenth where levels turn with the lens), each exactly in time;
//! neighbours that do are gathered into arcs. If none does: [`super::otherwise`].

use super::free_lens;
use super::slot::Light;
use crate::place::background::Background;
use crate::plan::stage::Stage;
use crate::plan::wish::lens::{self, Behind, LensChoice};
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Span, Spans};

/// What one bearing of the lens gives over a span.
#[derive(Clone, Debug, PartialEq)]
pub struct LensHold {
    /// Where the lens looks.
    pub lens: Bearing,
    /// When the wish is met.
    pub met: Spans,
    /// What stands behind the subject.
    pub behind: Behind,
}

impl LensHold {
    /// The longest span in which the wish is met; the earliest of equals.
    pub fn longest(&self) -> Option<Span> {
        free_lens::longest(&self.met)
    }

    /// How long the wish is met without a break.
    pub fn hold(&self) -> Duration {
        self.longest().map_or(Duration::ZERO, Span::duration)
    }
}

/// Neighbouring bearings of the lens that all give the wish long enough.
#[derive(Clone, Debug, PartialEq)]
pub struct LensArc {
    /// The first bearing.
    pub from: Bearing,
    /// The last, clockwise.
    pub to: Bearing,
    /// The bearing that holds longest; the middle one of equals.
    pub best: LensHold,
    /// Light and heights over the best bearing's longest span: half-way, at the start and at the end.
    pub light: Light,
    /// Height of the sun when that span starts and ends.
    pub heights: (Height, Height),
}

/// What every bearing that `choice` allows gives over `span`.
pub fn every_bearing(
    sun: &Sun,
    stage: &Stage,
    span: Span,
    choice: LensChoice,
    backgrounds: &[Background],
) -> Vec<LensHold> {
    let light = free_lens::any_lens(sun, stage, span);
    let bearings = free_lens::tried(stage, &choice.bearings(stage.lens, backgrounds));
    bearings
        .into_iter()
        .map(|lens| LensHold {
            lens,
            met: free_lens::with_lens(sun, stage, &light, lens),
            behind: lens::behind(backgrounds, lens),
        })
        .collect()
}

/// The bearings that hold as long as the set-up takes, neighbours gathered, the longest hold first.
pub fn arcs(sun: &Sun, stage: &Stage, tried: &[LensHold]) -> Vec<LensArc> {
    let mut arcs: Vec<LensArc> =
        neighbours(stage, tried).into_iter().filter_map(|group| arc(sun, stage, &group)).collect();
    crate::order::by_key(&mut arcs, |arc| -arc.best.hold());
    arcs
}

/// Bearings that do, parted where one is missing; the first and the last group are one across north.
fn neighbours(stage: &Stage, tried: &[LensHold]) -> Vec<Vec<LensHold>> {
    let step = Degrees::from_degrees(f64::from(free_lens::step(stage)));
    let is_next = |hold: &LensHold, next: &LensHold| hold.lens.turn_to(next.lens) == step;
    let mut groups: Vec<Vec<LensHold>> = Vec::new();
    for hold in tried.iter().filter(|hold| does(hold, stage.takes)) {
        match groups.last_mut() {
            Some(group) if group.last().is_some_and(|last| is_next(last, hold)) => group.push(hold.clone()),
            _ => groups.push(vec![hold.clone()]),
        }
    }
    if groups.len() > 1 {
        let across =
            groups[groups.len() - 1].last().zip(groups[0].first()).is_some_and(|(a, b)| is_next(a, b));
        if across {
            let last = groups.pop().unwrap_or_default();
            groups[0] = [last, groups[0].clone()].concat();
        }
    }
    groups
}

/// Whether a bearing holds long enough.
pub(in crate::plan) fn does(hold: &LensHold, takes: Duration) -> bool {
    hold.hold() >= takes && !hold.met.is_empty()
}

/// The arc of a group of bearings.
fn arc(sun: &Sun, stage: &Stage, group: &[LensHold]) -> Option<LensArc> {
    let longest = group.iter().map(LensHold::hold).max()?;
    let equals: Vec<&LensHold> = group.iter().filter(|hold| hold.hold() == longest).collect();
    let best = equals[equals.len() / 2].clone();
    let span = best.longest()?;
    let looking = Stage { lens: best.lens, ..stage.clone() };
    Some(LensArc {
        from: group.first()?.lens,
        to: group.last()?.lens,
        light: Light::from(sun.apparent(span.middle()), &looking),
        heights: (sun.apparent(span.start()).height(), sun.apparent(span.end()).height()),
        best,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, some_days, some_stage, span};
    use crate::plan::search::reason::Question;
    use proptest::prelude::*;

    fn all_round() -> LensChoice {
        LensChoice::Range { from_deg: Bearing::from_degrees(0.0), to_deg: Bearing::from_degrees(0.0) }
    }

    #[test]
    fn a_backlight_in_the_open_looks_towards_the_sun() {
        let stage = field();
        let sun = Sun::new(stage.site);
        // The last hour before sunset on the lagoon.
        let hour = span("2027-03-11T17:20:00Z", "2027-03-11T18:10:00Z");
        let tried = every_bearing(&sun, &stage, hour, all_round(), &[]);
        assert_eq!(tried.len(), 360);
        let arcs = arcs(&sun, &stage, &tried);
        assert_eq!(arcs.len(), 1);
        let best = &arcs[0].best;
        assert_eq!(best.hold(), hour.duration());
        let towards = sun.apparent(hour.middle()).bearing();
        assert!(best.lens.turn_to(towards).abs() < Degrees::from_degrees(2.0));
        assert!(arcs[0].heights.0 > arcs[0].heights.1);
    }

    #[test]
    fn an_arc_of_bearings_may_run_over_north() {
        // A south sun in the face of a lens that looks north.
        let mut stage = field();
        stage.wish = crate::plan::fixture::wish((0.0, 20.0), (0.0, 90.0), crate::plan::wish::SunOnMark::Any);
        let sun = Sun::new(stage.site);
        let noon = span("2027-03-11T12:30:00Z", "2027-03-11T13:00:00Z");
        let found = arcs(&sun, &stage, &every_bearing(&sun, &stage, noon, all_round(), &[]));
        assert_eq!(found.len(), 1);
        assert!(found[0].from.degrees() > 300.0 && found[0].to.degrees() < 60.0, "{:?}", found[0]);
    }

    #[test]
    fn bad_backgrounds_are_not_offered() {
        let stage = field();
        let sun = Sun::new(stage.site);
        let hour = span("2027-03-11T17:20:00Z", "2027-03-11T18:10:00Z");
        let bad = [Background {
            from: Bearing::from_degrees(200.0),
            to: Bearing::from_degrees(259.0),
            good: false,
            why: "car park".into(),
        }];
        let tried = every_bearing(&sun, &stage, hour, LensChoice::AnyGoodBackground, &bad);
        assert_eq!(tried.len(), 300);
        assert!(arcs(&sun, &stage, &tried).iter().all(|arc| !bad[0].contains(arc.best.lens)));
    }

    #[test]
    fn the_loft_in_the_afternoon() {
        let mut stage = loft();
        stage.wish.heights.to = Height::clamped(40.0);
        let sun = Sun::new(stage.site);
        let hour = span("2027-03-11T15:30:00Z", "2027-03-11T16:30:00Z");
        let tried = every_bearing(&sun, &stage, hour, all_round(), &[]);
        let arcs = arcs(&sun, &stage, &tried);
        assert!(!arcs.is_empty());
        assert!(arcs.iter().all(|arc| arc.best.hold() >= stage.takes));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]

        #[test]
        fn equals_a_scan_of_every_degree_and_minute(stage in some_stage(), days in some_days()) {
            let sun = Sun::new(stage.site);
            let span = Span::new(days.start(), days.start() + Duration::from_minutes(180)).unwrap();
            let tried = every_bearing(&sun, &stage, span, all_round(), &[]);
            for hold in tried.iter().step_by(7) {
                let looking = Stage { lens: hold.lens, ..stage.clone() };
                let question = Question::new(&looking);
                for minute in 0..180 {
                    let now = span.start() + Duration::from_minutes(minute);
                    let near = hold.met.iter().any(|met| {
                        [met.start(), met.end()].iter().any(|edge| (*edge - now).millis().abs() <= 1000)
                    });
                    if !near {
                        prop_assert_eq!(hold.met.contains(now), question.holds(&sun, now));
                    }
                }
            }
        }
    }
}
