//! Labels: everything about a stretch of work that what follows can depend on.
//!
//! For a fixed order and fixed windows the earliest end of a stretch, as a function of its start `s`, is
//! `max(end, s + work)` for `s ≤ latest`: it waits, or it is pushed along. So the numbers (end, work, latest) say it all,
//! and of two stretches with the same set and last location the one that is no worse in each can replace the other.
//!
//! The same holds with the clock run backwards: then `end` is minus the latest start, and `latest` minus the earliest
//! end. So one walk finds the stretches from call on, another, mirrored, those up to wrap.

use super::problem::{Minutes, Window};

/// Earliest end, work without waiting, latest start of a stretch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// Earliest end, whenever it starts.
    pub end: Minutes,
    /// Its length when nothing is waited for.
    pub work: Minutes,
    /// Latest start.
    pub latest: Minutes,
}

impl Part {
    /// The shortest span; it is had by starting as late as possible.
    pub fn span(self) -> Minutes {
        self.work.max(self.end - self.latest)
    }

    /// Seen in a mirror of time.
    pub const fn mirrored(self) -> Self {
        Self { end: -self.latest, work: self.work, latest: -self.end }
    }
}

/// A stretch from call on, or in the mirror from wrap on, without a meal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Label {
    /// The stretch.
    pub part: Part,
    /// Minutes at its begin that the meal rule does not count.
    pub free: Minutes,
    /// Travelled in it.
    pub travel: Minutes,
}

impl Label {
    /// A stretch of one set-up, with `before` minutes (of which the meal rule does not count `free`) from `open` on.
    pub fn first(
        (open, before, free): (Minutes, Minutes, Minutes),
        minutes: Minutes,
        window: &Window,
    ) -> Option<Self> {
        let (from, last) = (window.from.max(open + before), window.to - minutes);
        let part = Part { end: from + minutes, work: before + minutes, latest: last - before };
        (from <= last).then_some(Self { part, free, travel: 0 })
    }

    /// Longer by a set-up of `minutes` after a move; `None` if that comes too late.
    pub fn then(&self, travel: Minutes, minutes: Minutes, window: &Window) -> Option<Self> {
        let Part { end, work, latest } = self.part;
        let (reached, room) = (end + travel, window.to - minutes);
        let part = Part {
            end: reached.max(window.from) + minutes,
            work: work + travel + minutes,
            latest: latest.min(room - travel - work),
        };
        (reached <= room).then_some(Self { part, travel: self.travel + travel, ..*self })
    }

    /// What the meal rule counts.
    pub fn counted(&self) -> Minutes {
        self.part.span() - self.free
    }

    /// Whether nothing speaks for `other`, which has the same set and last location.
    pub const fn covers(&self, other: &Self) -> bool {
        self.part.end <= other.part.end
            && self.part.work <= other.part.work
            && self.part.latest >= other.part.latest
            && self.travel <= other.travel
            && self.free >= other.free
    }
}
