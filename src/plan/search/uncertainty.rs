//! The ± of a slot's edges: how far they move within the stated uncertainty of the bearings.
//!
//! The search is done again with the lens' bearing, and the openings', off by what is stated, each way and both
//! together; the edge is followed there in small turns, so that it is not taken for another slot's. Half of
//! the whole spread is the ±. Heights and the skyline carry no uncertainty of their own: an edge that they make
//! does not move. The weather and refraction near the horizon are not in it.

use super::met;
use super::slot::Slot;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Instant, Span, Spans};

/// Turn of the bearings between two looks when an edge is followed. Our own choice.
const TURN: f64 = 1.25;

/// A span further away than this after one turn is not the same slot any more. Our own choice.
const ASTRAY: Duration = Duration::from_minutes(20);

/// Time searched before and after a slot for where its edges may go. Our own choice.
const AROUND: Duration = Duration::from_minutes(6 * 60);

/// How far the edges of a slot may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edges {
    /// ± on the start.
    pub start: Duration,
    /// ± on the end.
    pub end: Duration,
    /// What becomes of the slot within the uncertainty.
    pub outcome: Outcome,
}

/// What becomes of a slot if the bearings are off as far as stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// It stays long enough.
    Holds,
    /// It may be shorter than the set-up takes.
    MayBeTooShort,
    /// There may be none.
    MayVanish,
}

impl Edges {
    /// The larger of the two.
    pub fn larger(&self) -> Duration {
        self.start.max(self.end)
    }
}

/// The ± of `slot`.
pub fn edges(sun: &Sun, stage: &Stage, slot: &Slot) -> Edges {
    follow(&stage.looking(slot.lens), slot.span, |off, within| met::met(sun, off, within))
}

/// The ± of a span of sun on the mark, whatever the wish says.
pub fn edges_of_sun(sun: &Sun, stage: &Stage, span: Span) -> Edges {
    follow(stage, span, |off, within| met::sun_on_mark(sun, off, within))
}

/// Follows the edges of `span` to every extreme of the bearings, where `found` searches again.
fn follow(stage: &Stage, span: Span, found: impl Fn(&Stage, Span) -> Spans) -> Edges {
    let turns = (largest(stage) / TURN).ceil().max(1.0) as u32;
    let mut seen = vec![span];
    let mut outcome = Outcome::Holds;
    for (lens, openings) in extremes(stage) {
        let mut at = Some(span);
        for turn in 1..=turns {
            let share = f64::from(turn) / f64::from(turns);
            let off = stage.off_by(lens * share, openings * share);
            at = at.and_then(|at| same(&found(&off, around(span)), at));
        }
        seen.extend(at);
        outcome = outcome.max(outcome_of(at, stage.takes));
    }
    let half_spread = |edge: fn(Span) -> Instant| {
        let (first, last) =
            (seen.iter().map(|span| edge(*span)).min(), seen.iter().map(|span| edge(*span)).max());
        first
            .zip(last)
            .map_or(Duration::ZERO, |(first, last)| Duration::from_millis((last - first).millis() / 2))
    };
    Edges { start: half_spread(Span::start), end: half_spread(Span::end), outcome }
}

/// What a slot has become.
fn outcome_of(at: Option<Span>, takes: Duration) -> Outcome {
    match at {
        None => Outcome::MayVanish,
        Some(span) if span.duration() < takes => Outcome::MayBeTooShort,
        Some(_) => Outcome::Holds,
    }
}

/// Shares of the stated uncertainties (lens, openings) that are looked at: each way, alone and together.
fn extremes(stage: &Stage) -> Vec<(f64, f64)> {
    let ways = |uncertain: bool| if uncertain { vec![-1.0, 1.0] } else { vec![0.0] };
    let lens = ways(stage.lens_uncertainty.degrees() > 0.0);
    let openings = ways(openings_uncertainty(stage) > 0.0);
    lens.iter().flat_map(|lens| openings.iter().map(|opening| (*lens, *opening))).collect()
}

/// The largest stated uncertainty, degrees.
fn largest(stage: &Stage) -> f64 {
    stage.lens_uncertainty.degrees().max(openings_uncertainty(stage))
}

/// The largest stated uncertainty of an opening, degrees.
fn openings_uncertainty(stage: &Stage) -> f64 {
    let all = stage.openings.iter().flatten().map(|opening| opening.uncertainty);
    all.map(Degrees::degrees).fold(0.0, f64::max)
}

/// The span of `found` that `before` has become after a small turn.
fn same(found: &Spans, before: Span) -> Option<Span> {
    let shared = |span: &Span| span.and(before).map_or(Duration::ZERO, Span::duration);
    let best = found.iter().max_by_key(|span| (shared(span), -gap(*span, before)))?;
    (gap(best, before) <= ASTRAY).then_some(best)
}

/// Time between two spans; zero or less where they touch.
fn gap(one: Span, other: Span) -> Duration {
    one.start().max(other.start()) - one.end().min(other.end())
}

/// Where the edges of `span` are looked for.
fn around(span: Span) -> Span {
    Span::new(span.start() - AROUND, span.end() + AROUND).unwrap_or(span)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, on, span, wish};
    use crate::plan::search::slots;
    use crate::plan::wish::{DateRange, SunOnMark};

    fn first_slot(stage: &Stage, month: u32, day: u32) -> Slot {
        let date = on(2027, month, day);
        let found = slots(&Sun::new(stage.site), stage, &[DateRange { from: date, to: date }]);
        found.into_iter().next().unwrap()
    }

    #[test]
    fn an_edge_made_by_a_height_does_not_move() {
        let stage = Stage { wish: wish((0.0, 360.0), (2.0, 20.0), SunOnMark::Any), ..field() };
        let slot = first_slot(&stage, 3, 11);
        let edges = edges(&Sun::new(stage.site), &stage, &slot);
        assert_eq!((edges.start, edges.end, edges.outcome), (Duration::ZERO, Duration::ZERO, Outcome::Holds));
    }

    #[test]
    fn a_lens_that_is_off_moves_the_arc() {
        // Due west at the equinox the sun's bearing runs at 15 sin φ degrees an hour (handbook A6).
        let stage = Stage {
            wish: wish((160.0, 200.0), (3.0, 70.0), SunOnMark::Any),
            lens: crate::units::Bearing::from_degrees(240.0),
            ..field()
        };
        let slot = first_slot(&stage, 3, 20);
        let edges = edges(&Sun::new(stage.site), &stage, &slot);
        assert!((12.0..40.0).contains(&edges.start.minutes()), "{}", edges.start.minutes());
        let exact = Stage { lens_uncertainty: Degrees::from_degrees(0.0), ..stage };
        assert_eq!(super::edges(&Sun::new(exact.site), &exact, &slot).start, Duration::ZERO);
    }

    #[test]
    fn the_spread_is_what_brute_turning_finds() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let slot = first_slot(&stage, 3, 11);
        let found = edges(&sun, &stage, &slot);
        let mut starts = vec![];
        for lens in -5..=5 {
            for openings in -5..=5 {
                let off = stage.off_by(f64::from(lens) / 5.0, f64::from(openings) / 5.0);
                let all = met::met(&sun, &off, around(slot.span));
                starts.extend(all.iter().filter(|span| span.and(slot.span).is_some()).map(Span::start));
            }
        }
        let spread = (*starts.iter().max().unwrap() - *starts.iter().min().unwrap()).minutes() / 2.0;
        assert!((found.start.minutes() - spread).abs() < 0.5, "{} {spread}", found.start.minutes());
    }

    #[test]
    fn a_narrow_slot_may_vanish() {
        // A window so narrow and a wish so tight that five degrees are more than both.
        let mut stage = loft();
        stage.takes = Duration::ZERO;
        stage.wish = wish((154.0, 157.0), (0.0, 60.0), SunOnMark::Yes);
        stage.lens_uncertainty = Degrees::from_degrees(0.0);
        stage.openings.as_mut().unwrap().truncate(1);
        let sun = Sun::new(stage.site);
        let all = slots(&sun, &stage, &[DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) }]);
        assert!(!all.is_empty());
        assert!(all.iter().any(|slot| edges(&sun, &stage, slot).outcome == Outcome::MayVanish));
    }

    #[test]
    fn a_tight_slot_may_be_too_short() {
        let mut stage = loft();
        let slot = first_slot(&stage, 3, 11);
        stage.takes = slot.hold();
        let edges = edges(&Sun::new(stage.site), &stage, &slot);
        assert!(edges.outcome >= Outcome::MayBeTooShort);
        assert_eq!(edges.larger(), edges.start.max(edges.end));
    }

    #[test]
    fn sun_through_an_opening_moves_with_the_wall() {
        let stage = Stage { ..loft() };
        let sun = Sun::new(stage.site);
        let day = met::sun_on_mark(&sun, &stage, span("2027-03-11T00:00:00Z", "2027-03-12T00:00:00Z"));
        let edges = edges_of_sun(&sun, &stage, day.as_slice()[0]);
        assert!((10.0..40.0).contains(&edges.start.minutes()), "{}", edges.start.minutes());
    }
}
