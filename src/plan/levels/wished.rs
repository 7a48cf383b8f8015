//! Conditions on levels in a wish, and the time in which they hold.
//!
//! A ratio between two bounds; soft only: no sun on the mark and so much light; the sky within some stops of a lamp. Sampled
//! every few minutes (by day less often, where light changes slowly), at the edges of the light and where the sun comes onto
//! the mark or leaves it; each change between two samples is halved down to a second. Nothing longer than a step is missed.

use std::borrow::Cow;

use super::bare::Bare;
pub use super::level_wish::{Balance, LevelWish};
use super::sides::Levels;
use super::subject::{Subject, sky_of};
use crate::light::ratio::Ratio;
use crate::plan::search::met;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Duration, Height, Instant, Lux, Span, Spans};

/// Between samples (our choice: in civil twilight half a stop).
const STEP: i64 = 3;

/// Steps between samples while the sun is high (our choice: it moves by some 3° in them).
const BY_DAY: i64 = 4;

/// From here on it is (as for the day's curves: under it a stop lasts less than half an hour).
const HIGH: Height = Height::clamped(8.0);

/// Edges are found to this.
const SECOND: Duration = Duration::from_millis(1000);

/// Conditions, with the subject they are about.
#[derive(Clone, Debug, PartialEq)]
pub struct Wished {
    /// What is wished.
    pub wish: LevelWish,
    /// Of whom.
    pub subject: Subject,
}

impl Wished {
    /// What `stage` asks as it is. A lens that is free may look wherever it does, so that only what is the same for all its
    /// bearings is asked then; the bearing of each slot is chosen by all of it ([`crate::plan::search::free_lens`]).
    pub fn of_stage(stage: &Stage) -> Option<Cow<'_, Self>> {
        let levels = stage.levels.as_deref()?;
        if stage.free.is_none() {
            Some(levels.seen_by(stage.lens))
        } else {
            levels.of_any_lens().map(Cow::Owned)
        }
    }

    /// Whether another bearing of the lens changes when they hold: the two sides are those that the camera sees.
    pub fn turns_with_lens(&self) -> bool {
        self.wish.ratio.is_some() || self.wish.soft.is_some()
    }

    /// What is the same for every bearing of the lens; `None` if that is nothing.
    pub fn of_any_lens(&self) -> Option<Self> {
        let wish = LevelWish { balance: self.wish.balance, ..LevelWish::default() };
        (!wish.is_empty()).then(|| Self { wish, subject: self.subject.clone() })
    }

    /// The same of a subject that is seen from the lens' place for a bearing of it.
    pub fn seen_by(&self, lens: Bearing) -> Cow<'_, Self> {
        if self.subject.lens == lens {
            return Cow::Borrowed(self);
        }
        Cow::Owned(Self { subject: Subject { lens, ..self.subject.clone() }, ..self.clone() })
    }

    /// Whether all conditions hold at an instant, for the lens that they are asked of.
    pub fn holds(&self, sun: &Sun, stage: &Stage, at: Instant) -> bool {
        let hour = self.subject.hour(sun, at, sky_of(stage.wish.sky));
        if let Some(balance) = self.wish.balance
            && hour.level().stops_over(balance.lamp).stops().abs() > balance.within.stops()
        {
            return false;
        }
        if self.wish.ratio.is_none() && self.wish.soft.is_none() {
            return true;
        }
        if self.wish.soft.is_some() && self.subject.sun_through(at, hour.sun).is_some() {
            return false;
        }
        let bare = Bare::of(&self.subject, &hour);
        let levels = Levels::with(&self.subject, &hour, &bare, &self.subject.rig.placed);
        let soft = |least: Lux| levels.sun.is_none() && levels.bright().total() >= least;
        let number = levels.ratio().map_or(1.0, Ratio::number);
        self.wish.soft.is_none_or(soft)
            && self.wish.ratio.is_none_or(|[from, to]| (from..=to).contains(&number))
    }

    /// What is left of `light` when all conditions must hold, for the lens that they are asked of.
    pub fn met(&self, sun: &Sun, stage: &Stage, light: &Spans) -> Spans {
        Spans::gather(light.iter().flat_map(|span| self.within(sun, stage, span)).collect())
    }

    fn within(&self, sun: &Sun, stage: &Stage, span: Span) -> Vec<Span> {
        let nodes = self.nodes(sun, stage, span);
        let mut found = Vec::new();
        let mut begun = self.holds(sun, stage, span.start()).then_some(span.start());
        for pair in nodes.windows(2) {
            let ends = self.holds(sun, stage, pair[1]);
            match (begun, ends) {
                (Some(from), false) => {
                    found.extend(Span::new(from, self.change(sun, stage, (pair[0], pair[1]), true)));
                    begun = None;
                }
                (None, true) => begun = Some(self.change(sun, stage, (pair[0], pair[1]), false)),
                _ => {}
            }
        }
        found.extend(begun.and_then(|from| Span::new(from, span.end())));
        found
    }

    /// Times to ask at, in order: a step apart, and a second either side of where the sun comes and goes.
    fn nodes(&self, sun: &Sun, stage: &Stage, span: Span) -> Vec<Instant> {
        let mut nodes = vec![span.start()];
        let mut at = span.start();
        while at < span.end() {
            let steps = if sun.apparent(at).height() > HIGH { BY_DAY } else { 1 };
            at = (at + Duration::from_minutes(STEP * steps)).min(span.end());
            nodes.push(at);
        }
        for on in met::sun_on_mark(sun, stage, span).iter() {
            for edge in [on.start(), on.end()] {
                nodes.extend([edge - SECOND, edge + SECOND].into_iter().filter(|at| span.contains(*at)));
            }
        }
        crate::order::by(&mut nodes, Ord::cmp);
        nodes
    }

    /// When it changes between two instants; `was` is what held at the first.
    fn change(&self, sun: &Sun, stage: &Stage, (mut from, mut to): (Instant, Instant), was: bool) -> Instant {
        while to - from > SECOND {
            let middle = from + Duration::from_millis((to - from).millis() / 2);
            if self.holds(sun, stage, middle) == was {
                from = middle;
            } else {
                to = middle;
            }
        }
        // The last instant that holds, or the first.
        if was { from } else { to }
    }
}

#[cfg(test)]
#[path = "wished_tests.rs"]
mod tests;
