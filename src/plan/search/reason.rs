//! Whether one instant grants a wish, part by part: the wish put as a question about a single direction.
//!
//! The search finds spans by planes; this asks the same of one instant. It tells why a slot begins and ends,
//! and it is the second opinion on the search.

use std::borrow::Cow;

use crate::place::cone::HalfSpace;
use crate::plan::calendar;
use crate::plan::levels::wished::Wished;
use crate::plan::shot;
use crate::plan::stage::Stage;
use crate::plan::wish::SunOnMark;
use crate::plan::wish::region::{self, BearingArc};
use crate::sky::search::SUN_RADIUS;
use crate::sky::sun::Sun;
use crate::units::{Duration, Height, Instant, Span, Vector, World};

/// Why a slot begins or ends: the part of the wish that does not hold beyond its edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// The dates that are possible.
    Dates,
    /// The hours that are possible.
    Hours,
    /// The sun stands lower than the wish allows.
    TooLow(Height),
    /// The sun stands higher than the wish allows.
    TooHigh(Height),
    /// The light comes from outside the arc.
    Arc,
    /// The light falls otherwise on the face.
    Face,
    /// The sun comes into the picture, or leaves it.
    Picture,
    /// The sun has not risen or has set.
    Horizon,
    /// The sun stands behind the skyline.
    Skyline,
    /// The sun does not come through this opening (its place in the stage's list) any more, or not yet.
    OutOfOpening(usize),
    /// The sun comes through this opening onto a mark that shall have none.
    Through(usize),
    /// The sun comes onto a mark in the open that shall have none.
    InTheSun,
    /// The levels: too dark, too flat, too hard.
    Levels,
    /// Nothing: the dates that were searched end here, or a light that never ends was cut at midnight.
    DatesSearched,
}

/// The sky above the horizon for the sun's centre while its upper limb is up.
pub(in crate::plan) fn above_horizon() -> HalfSpace {
    HalfSpace { normal: Vector::UP, least: -Height::clamped(SUN_RADIUS.degrees()).sin() }
}

/// A wish at a stage, ready to be asked of single instants.
pub(in crate::plan) struct Question<'a> {
    stage: &'a Stage,
    arcs: Vec<BearingArc>,
    limits: [HalfSpace; 2],
    shot: shot::Asked,
    levels: Option<Cow<'a, Wished>>,
}

impl<'a> Question<'a> {
    /// The wish of `stage`.
    pub(in crate::plan) fn new(stage: &'a Stage) -> Self {
        Self {
            stage,
            arcs: stage.light_from(),
            limits: region::height_limits(stage.wish.heights),
            shot: shot::Asked::of_stage(stage),
            levels: Wished::of_stage(stage),
        }
    }

    /// What the wish lacks just outside an edge; `inside` is an instant just inside.
    pub(in crate::plan) fn reason(&self, sun: &Sun, outside: Instant, inside: Instant) -> Reason {
        self.clock(outside)
            .or_else(|| self.direction(sun.apparent(outside)))
            .or_else(|| self.direct(sun, outside, inside))
            .or_else(|| self.shot(sun, outside))
            .or_else(|| self.levels(sun, outside))
            .unwrap_or(Reason::DatesSearched)
    }

    /// Whether the whole wish holds at `at`.
    #[cfg(test)]
    pub(in crate::plan) fn holds(&self, sun: &Sun, at: Instant) -> bool {
        self.reason(sun, at, at) == Reason::DatesSearched
    }

    /// What face and picture lack.
    fn shot(&self, sun: &Sun, at: Instant) -> Option<Reason> {
        self.shot.lacks(self.stage, at, sun.apparent(at)).map(|lacks| match lacks {
            shot::Lacks::Face => Reason::Face,
            shot::Lacks::Picture => Reason::Picture,
        })
    }

    /// What the levels lack.
    fn levels(&self, sun: &Sun, at: Instant) -> Option<Reason> {
        let levels = self.levels.as_ref()?;
        (!levels.holds(sun, self.stage, at)).then_some(Reason::Levels)
    }

    /// What dates and hours lack.
    fn clock(&self, at: Instant) -> Option<Reason> {
        let wish = &self.stage.wish;
        let moment = Span::new(at, at + Duration::from_millis(1))?;
        let dates =
            || !wish.dates.is_empty() && calendar::dates(&self.stage.zone, &wish.dates, moment).is_empty();
        let hours =
            || wish.hours.is_some_and(|hours| calendar::hours(&self.stage.zone, hours, moment).is_empty());
        if dates() { Some(Reason::Dates) } else { hours().then_some(Reason::Hours) }
    }

    /// What arc and heights lack.
    fn direction(&self, light: Vector<World>) -> Option<Reason> {
        let [low, high] = &self.limits;
        if !low.contains(light) {
            Some(Reason::TooLow(self.stage.wish.heights.from))
        } else if !high.contains(light) {
            Some(Reason::TooHigh(self.stage.wish.heights.to))
        } else {
            let bearing = light.bearing();
            (!self.arcs.iter().any(|arc| arc.contains(bearing))).then_some(Reason::Arc)
        }
    }

    /// What the sun on the mark lacks, or has too much.
    fn direct(&self, sun: &Sun, outside: Instant, inside: Instant) -> Option<Reason> {
        match self.stage.wish.sun_on_mark {
            SunOnMark::Any => None,
            SunOnMark::Yes => self.blocked(sun, outside, || self.through(sun.apparent(inside))),
            SunOnMark::No => {
                let clear = self.blocked(sun, outside, || None).is_none();
                clear.then(|| self.through(sun.apparent(outside)).map_or(Reason::InTheSun, Reason::Through))
            }
        }
    }

    /// What keeps the sun off the mark at an instant; `was` tells the opening that let it in a moment before.
    fn blocked(&self, sun: &Sun, at: Instant, was: impl Fn() -> Option<usize>) -> Option<Reason> {
        let (light, line) = (sun.apparent(at), self.stage.skyline_at(at));
        if line.is_level() && !above_horizon().contains(light) {
            Some(Reason::Horizon)
        } else if !line.is_level() && !line.clears(light, SUN_RADIUS) {
            let level = line.height_at(light.bearing()) <= Height::default();
            Some(if level { Reason::Horizon } else { Reason::Skyline })
        } else if self.stage.openings.is_some() && self.through(light).is_none() {
            Some(Reason::OutOfOpening(was().unwrap_or(0)))
        } else {
            None
        }
    }

    /// Place of the first opening that light from `light` comes through.
    fn through(&self, light: Vector<World>) -> Option<usize> {
        self.stage.openings.as_ref()?.iter().position(|opening| opening.contains(light))
    }
}
