//! Light that must match: set-ups whose measures of the light may lie only so far apart.
//!
//! A measure is a number at each minute of each day: the clock itself, or how long shadows are, where the light comes
//! from, how far the sides are apart, how warm it is. Two set-ups match if in every measure the least and the most of
//! all their minutes are no further apart than is allowed. A set-up alone has nothing to match.

use core::ops::RangeInclusive;
use std::sync::Arc;

use super::problem::{Minutes, Problem, Window};
use super::solution::Planned;

/// The number where there is nothing to measure: far from every other.
pub const NOTHING: i32 = -1_000_000_000;

/// What is measured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Scale {
    /// Minutes of the clock.
    Clock,
    /// By day, and by minute from midnight on.
    Light(Arc<Vec<Vec<i32>>>),
}

/// A measure, and how far apart it may be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measure {
    /// From the least to the most.
    pub most: i32,
    /// What is measured.
    pub scale: Scale,
}

/// Set-ups that must match each other, on whichever days.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// Places of the set-ups in the list.
    pub jobs: Vec<usize>,
    /// In what.
    pub measures: Vec<Measure>,
}

/// From the least to the most.
pub(super) type Extent = (i32, i32);

impl Measure {
    /// Minutes of the clock, from the earliest begin to the latest end.
    pub const fn clock(most: Minutes) -> Self {
        Self { most: most as i32, scale: Scale::Clock }
    }

    fn at(&self, day: usize, minute: Minutes) -> i32 {
        match &self.scale {
            Scale::Clock => i32::from(minute),
            Scale::Light(days) => {
                let found = usize::try_from(minute).ok().and_then(|minute| days.get(day)?.get(minute));
                found.copied().unwrap_or(NOTHING)
            }
        }
    }

    /// Of a stretch, both ends counted.
    fn extent(&self, day: usize, from: Minutes, to: Minutes) -> Extent {
        let values = (from..=to).map(|minute| self.at(day, minute));
        values.fold((i32::MAX, i32::MIN), |(least, most), value| (least.min(value), most.max(value)))
    }

    /// Of set-ups, each with its day; `None` of nothing.
    pub(super) fn of<'a>(&self, all: impl Iterator<Item = (usize, &'a Planned)>) -> Option<Extent> {
        let each = all.map(|(day, one)| self.extent(day, one.start, one.end));
        each.reduce(|(least, most), (low, high)| (least.min(low), most.max(high)))
    }

    /// Whether an extent is more than may be.
    pub(super) const fn breaks(&self, (least, most): Extent) -> bool {
        most - least > self.most
    }
}

impl Problem {
    /// With the windows of some jobs cut to where a measure lies in a range.
    pub(super) fn clipped(&mut self, jobs: &[usize], measure: &Measure, range: &RangeInclusive<i32>) {
        for at in jobs {
            let job = &mut self.jobs[*at];
            let parts = job.windows.iter().flat_map(|window| parts(window, job.minutes, measure, range));
            job.windows = parts.collect();
        }
    }
}

/// The longest stretches of a window in which a measure keeps to a range, and which hold `minutes`.
fn parts(window: &Window, minutes: Minutes, measure: &Measure, range: &RangeInclusive<i32>) -> Vec<Window> {
    let (mut found, mut begun) = (Vec::new(), None);
    // One minute more than there is closes the last stretch.
    for minute in window.from..=window.to.saturating_add(1) {
        let keeps = minute <= window.to && range.contains(&measure.at(window.day, minute));
        match (keeps, begun) {
            (true, None) => begun = Some(minute),
            (false, Some(from)) => {
                let to = minute - 1;
                if to - from >= minutes {
                    found.push(Window { from, to, ..*window });
                }
                begun = None;
            }
            _ => {}
        }
    }
    found
}
