//! Bearing and time together: slots of a set-up whose lens is free, each with the bearing that holds longest.
//!
//! Everything but the lens is the same for every bearing, so it is searched once, exactly. Within each of those spans the
//! sun's course ([`super::course`]) tells in closed form how long each whole degree of the lens holds; those that come
//! near the best are then searched exactly: the answer of a scan of every degree, at a fraction of its price.

use core::cell::Cell;

use super::course::Course;
use super::met;
use super::scan;
use super::slot::Slot;
use crate::place::cone::Cone;
use crate::plan::calendar;
use crate::plan::shot::Asked;
use crate::plan::stage::Stage;
use crate::plan::wish::Arc;
use crate::plan::wish::face::InPicture;
use crate::plan::wish::region::{self, BearingArc};
use crate::sky::search::Limb;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Instant, Span, Spans};

/// Between two looks at a face or a picture. Our own choice: nothing shorter is worth turning a lens for.
const LOOK: Duration = Duration::from_minutes(4);

/// A lens that may look anywhere, and what each bearing of it asks of face and picture.
struct Lenses<'a> {
    sun: &'a Sun,
    stage: &'a Stage,
    bearings: &'a [Bearing],
    /// Where the light may come from, for a lens to the north.
    north: Vec<BearingArc>,
    /// By the bearings; empty where the wish leaves face and picture out, or asks the same of every lens.
    asked: Vec<Asked>,
}

/// The best slot of every stretch of `light`, which [`any_lens`] has found, in order of time, for a lens that may look to
/// any of `bearings`.
///
/// Best is the longest hold; where several bearings keep the light from its begin to its end, the middle one.
pub(in crate::plan) fn slots(sun: &Sun, stage: &Stage, light: &Spans, bearings: &[Bearing]) -> Vec<Slot> {
    let lenses = Lenses::of(sun, stage, bearings);
    light
        .iter()
        .flat_map(|light| calendar::by_days(&stage.zone, light))
        .filter(|light| light.duration() >= stage.takes)
        .filter_map(|light| lenses.best_within(light))
        .collect()
}

/// When everything but the arc is granted: all the time in which some lens might do.
pub fn any_lens(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    let mut open = stage.looking(stage.lens);
    let from = open.wish.arc.from;
    open.wish.arc = Arc { to: Degrees::from_degrees(from.degrees() + 360.0), ..open.wish.arc };
    met::met(sun, &without_lens(open), within)
}

/// The same without what a wish asks of face and picture by the lens.
pub(in crate::plan) fn without_lens(mut stage: Stage) -> Stage {
    stage.wish.face.cheek = None;
    stage.wish.in_picture = InPicture::Any;
    stage
}

/// What of `light`, in which all is granted that no lens changes, is left by some of `bearings`.
pub(in crate::plan) fn some_lens(sun: &Sun, stage: &Stage, light: Spans, bearings: &[Bearing]) -> Spans {
    let lenses = Lenses::of(sun, stage, bearings);
    if lenses.asked.is_empty() {
        return light;
    }
    // The lens that did at the last look mostly does at the next.
    let last = Cell::new(0);
    let holds = |at: Instant| {
        let towards = sun.apparent(at);
        let does = |place: &usize| {
            lenses.is_in_arc(bearings[*place], towards.bearing())
                && lenses.asked[*place].lacks(stage, at, towards).is_none()
        };
        let found = (last.get()..bearings.len()).chain(0..last.get()).find(does);
        last.set(found.unwrap_or(last.get()));
        found.is_some()
    };
    let left = |span| scan::spans(span, LOOK, holds).as_slice().to_vec();
    Spans::gather(light.iter().flat_map(left).collect())
}

/// What is left of `light`, in which everything but the arc is granted, when the lens looks to `lens`.
pub fn with_lens(sun: &Sun, stage: &Stage, light: &Spans, lens: Bearing) -> Spans {
    let arcs: Vec<Cone> = region::bearings(stage.wish.arc, lens).iter().flat_map(BearingArc::cones).collect();
    let found = light.iter().flat_map(|span| sun.spans_in(&arcs, Limb::Centre, span).as_slice().to_vec());
    let asked = Asked::of(stage, lens);
    let found = Spans::gather(found.collect());
    if asked.is_nothing() { found } else { asked.leaves(sun, stage, found) }
}

/// The longest of some spans; the earliest of equals.
pub fn longest(spans: &Spans) -> Option<Span> {
    spans.iter().rev().max_by_key(|span| span.duration())
}

impl<'a> Lenses<'a> {
    fn of(sun: &'a Sun, stage: &'a Stage, bearings: &'a [Bearing]) -> Self {
        let wish = &stage.wish;
        let turns = wish.face.cheek.is_some() || !wish.in_picture.is_any();
        let asked = bearings.iter().filter(|_| turns).map(|lens| Asked::of(stage, *lens));
        let north = region::bearings(wish.arc, Bearing::default());
        Self { sun, stage, bearings, north, asked: asked.collect() }
    }

    /// Whether the light comes from where it is wished for a bearing of the lens.
    fn is_in_arc(&self, lens: Bearing, light: Bearing) -> bool {
        let turn = light.degrees() - lens.degrees();
        self.north.iter().any(|arc| {
            // No more than two turns are ever missing.
            let past = turn - arc.from.degrees();
            let past = if past < -360.0 { past + 720.0 } else { past };
            (if past < 0.0 { past + 360.0 } else { past }) <= arc.width.degrees()
        })
    }

    /// The slot of the bearing that holds longest within `light`.
    fn best_within(&self, light: Span) -> Option<Slot> {
        let (lens, span) = self.longest_holding(light)?;
        let long_enough = span.duration() >= self.stage.takes;
        long_enough.then(|| Slot::new(self.sun, &self.stage.looking(lens), span))
    }

    /// The bearing that holds longest, and the span for which it does; none where the course tells that none holds long
    /// enough.
    fn longest_holding(&self, light: Span) -> Option<(Bearing, Span)> {
        let course = Course::of(self.sun, light);
        let holds: Vec<Duration> = (0..self.bearings.len()).map(|place| self.told(&course, place)).collect();
        let most = holds.iter().copied().max()?;
        let give = course.off() + course.off();
        if most + give < self.stage.takes {
            return None;
        }
        let exact = |lens: Bearing| {
            let found = with_lens(self.sun, self.stage, &light.into(), lens);
            longest(&found).map(|span| (lens, span))
        };
        // Where several keep all of it, they are neighbours, and the middle one is asked alone.
        let first = holds.iter().position(|hold| *hold == most)?;
        let equals = holds[first..].iter().take_while(|hold| **hold == most).count();
        let middle = exact(self.bearings[first + equals / 2]);
        if middle.is_some_and(|(_, span)| span == light) {
            return middle;
        }
        let least = most - give;
        let near = self.bearings.iter().zip(&holds).filter(|(_, hold)| **hold >= least);
        let found: Vec<_> = near.filter_map(|(lens, _)| exact(*lens)).collect();
        found.into_iter().rev().max_by_key(|(_, span)| span.duration())
    }

    /// How long a bearing holds at most, by the course.
    fn told(&self, course: &Course, place: usize) -> Duration {
        let turn = Degrees::from_degrees(self.bearings[place].degrees());
        let arcs = self.north.iter().map(|arc| BearingArc { from: arc.from.turned(turn), ..*arc });
        let found = course.within(arcs);
        let Some(asked) = self.asked.get(place) else { return hold(&found) };
        let holds = |at: Instant| asked.lacks(self.stage, at, course.light(at)).is_none();
        found.iter().map(|span| hold(&scan::spans(span, LOOK, holds))).max().unwrap_or_default()
    }
}

fn hold(spans: &Spans) -> Duration {
    longest(spans).map_or(Duration::ZERO, Span::duration)
}

#[cfg(test)]
#[path = "free_lens_tests.rs"]
mod tests;
