//! Bearing and time together: slots of a set-up whose lens is free, each with the bearing that holds longest.
//!
//! Everything but the lens is the same for every bearing, so it is searched once, exactly. Within each of those spans the
//! sun's course ([`super::course`]) tells in closed form how long each whole degree of the lens holds; those that come
//! near the best are then searched exactly: the answer of a scan of every degree, at a fraction of its price.
//!
//! Levels of the two sides turn with the lens as well. No course tells those, and an ask costs a thousand directions: where
//! they are wished each tenth degree is tried, the longest by the rest of the wish first, until none can hold longer.

use core::cell::Cell;
use std::borrow::Cow;
use std::sync;

use super::course::Course;
use super::met;
use super::scan;
use super::slot::Slot;
use crate::place::cone::Cone;
use crate::plan::calendar;
use crate::plan::levels::wished::Wished;
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

/// Between bearings, in degrees, where levels turn with the lens. Our own choice: half of it changes what falls at 45° onto
/// a side by a tenth.
const BY_LEVELS: u16 = 10;

/// A lens that may look anywhere, and what each bearing of it asks of face and picture.
struct Lenses<'a> {
    sun: &'a Sun,
    stage: &'a Stage,
    bearings: Vec<Bearing>,
    /// Where the light may come from, for a lens to the north.
    north: Vec<BearingArc>,
    /// By the bearings; empty where the wish leaves face and picture out, or asks the same of every lens.
    asked: Vec<Asked>,
    /// By the bearings; empty where no level turns with the lens.
    levels: Vec<Cow<'a, Wished>>,
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

/// The bearings that are tried of those a lens may have: all; one in ten where levels turn with it.
pub fn tried(stage: &Stage, bearings: &[Bearing]) -> Vec<Bearing> {
    bearings.iter().copied().step_by(usize::from(step(stage))).collect()
}

/// Degrees between two bearings that are tried.
pub fn step(stage: &Stage) -> u16 {
    if turning_levels(stage).is_some() { BY_LEVELS } else { 1 }
}

/// The levels wished, where another bearing of the lens changes when they hold.
fn turning_levels(stage: &Stage) -> Option<&Wished> {
    stage.levels.as_deref().filter(|levels| levels.turns_with_lens())
}

/// The same without what a wish asks of face, picture and levels by the lens.
pub(in crate::plan) fn without_lens(mut stage: Stage) -> Stage {
    stage.wish.face.cheek = None;
    stage.wish.in_picture = InPicture::Any;
    stage.levels = stage.levels.and_then(|levels| levels.of_any_lens()).map(sync::Arc::new);
    stage
}

/// What of `light`, in which all is granted that no lens changes, is left by some of `bearings`.
pub(in crate::plan) fn some_lens(sun: &Sun, stage: &Stage, light: Spans, bearings: &[Bearing]) -> Spans {
    let lenses = Lenses::of(sun, stage, bearings);
    if lenses.asked.is_empty() && lenses.levels.is_empty() {
        return light;
    }
    // The lens that did at the last look mostly does at the next.
    let last = Cell::new(0);
    let holds = |at: Instant| {
        let towards = sun.apparent(at);
        let does = |place: &usize| {
            lenses.is_in_arc(lenses.bearings[*place], towards.bearing())
                && lenses.asked.get(*place).is_none_or(|asked| asked.lacks(stage, at, towards).is_none())
                && lenses.levels.get(*place).is_none_or(|levels| levels.holds(sun, stage, at))
        };
        let found = (last.get()..lenses.bearings.len()).chain(0..last.get()).find(does);
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
    let found = if asked.is_nothing() { found } else { asked.leaves(sun, stage, found) };
    match turning_levels(stage) {
        Some(levels) => levels.seen_by(lens).met(sun, &stage.looking(lens), &found),
        None => found,
    }
}

/// The longest of some spans; the earliest of equals.
pub fn longest(spans: &Spans) -> Option<Span> {
    spans.iter().rev().max_by_key(|span| span.duration())
}

impl<'a> Lenses<'a> {
    fn of(sun: &'a Sun, stage: &'a Stage, bearings: &[Bearing]) -> Self {
        let wish = &stage.wish;
        let turns = wish.face.cheek.is_some() || !wish.in_picture.is_any();
        let bearings = tried(stage, bearings);
        let asked = bearings.iter().filter(|_| turns).map(|lens| Asked::of(stage, *lens)).collect();
        let seen_by = |levels: &'a Wished| bearings.iter().map(|lens| levels.seen_by(*lens)).collect();
        let levels = turning_levels(stage).map(seen_by).unwrap_or_default();
        let north = region::bearings(wish.arc, Bearing::default());
        Self { sun, stage, bearings, north, asked, levels }
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
        let mut by_hold: Vec<usize> = (0..holds.len()).collect();
        crate::order::by_key(&mut by_hold, |place| -holds[*place]);
        let mut best: Option<(usize, Bearing, Span)> = None;
        for place in by_hold {
            let longest = best.map_or(self.stage.takes, |(_, _, span)| span.duration());
            if holds[place] + give < longest {
                break;
            }
            let Some((lens, span)) = exact(self.bearings[place]) else { continue };
            let is_better = |(of, _, best): (usize, Bearing, Span)| {
                span.duration() > best.duration() || span.duration() == best.duration() && place < of
            };
            if best.is_none_or(is_better) {
                best = Some((place, lens, span));
            }
        }
        best.map(|(_, lens, span)| (lens, span))
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
