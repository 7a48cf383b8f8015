//! Two stretches of work with the meal between them.
//!
//! The first ends at `f`, the second starts at `g` after a move of `t` and ends at `w`. The meal, at `m`, is after the
//! move, `f + t ≤ m ≤ g − meal`, or before it, `f ≤ m ≤ g − t − meal`. The rule asks for `m ≤ first + within` and
//! `m + meal ≥ w − within`. That can be had if and only if
//!
//! * `f (+ t) ≤ first + within`, which bounds the call from below;
//! * `w − g ≤ within (− t)`, which bounds `g` from below; waiting for it moves no end;
//! * `w − first ≤ 2 within + meal`.

use super::label::{Label, Part};
use super::problem::{Minutes, Problem};

/// A day of two stretches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joined {
    /// From call to wrap.
    pub part: Part,
    /// Travelled in all.
    pub travel: Minutes,
    /// Whether the meal comes after the move.
    pub after_move: bool,
    /// Earliest call that has the meal in time.
    pub call: Minutes,
    /// Earliest start of the second stretch that lets it be short enough.
    pub second: Minutes,
}

/// `first` from call on, then a move and a meal, then `second`, which is a label of the mirrored walk.
pub fn joined(
    problem: &Problem,
    first: &Label,
    travel: Minutes,
    second: &Label,
    longest: Minutes,
) -> Option<Joined> {
    let (a, b) = (first.part, second.part.mirrored());
    let gap = travel + problem.meal.minutes;
    let part = Part {
        end: b.end.max(a.end + gap + b.work),
        work: a.work + gap + b.work,
        latest: a.latest.min(b.latest - gap - a.work),
    };
    if a.end + gap > b.latest || part.span() > longest {
        return None;
    }
    let whole =
        Joined { part, travel: first.travel + travel + second.travel, after_move: true, call: 0, second: 0 };
    let ways: &[bool] = if travel == 0 { &[true] } else { &[true, false] };
    ways.iter().find_map(|after| kept(problem, first, second, Joined { after_move: *after, ..whole }, travel))
}

/// With its bounds, if the rule can be kept.
fn kept(problem: &Problem, first: &Label, second: &Label, whole: Joined, travel: Minutes) -> Option<Joined> {
    let meal = &problem.meal;
    let (ahead, behind) = if whole.after_move { (travel, 0) } else { (0, travel) };
    let (reach, cap) = (meal.within + first.free - ahead, meal.within - behind);
    // Both without what the rule does not count.
    let (end, work) = (whole.part.end - second.free, second.part.work - second.free);
    let latest = -second.part.end;
    let call = first.part.end - reach;
    let keeps = first.part.work <= reach
        && call <= whole.part.latest
        && work <= cap
        && end - latest <= cap
        && whole.part.span() - first.free - second.free <= 2 * meal.within + meal.minutes;
    keeps.then_some(Joined { call, second: end - cap, ..whole })
}

/// A day of one stretch, wrapped at the location where it ends.
pub fn alone(
    problem: &Problem,
    only: &Label,
    tail: Minutes,
    close: Minutes,
    longest: Minutes,
) -> Option<Part> {
    let Part { end, work, latest } = only.part;
    let earlier = Label { part: Part { latest: latest.min(close - tail - work), ..only.part }, ..*only };
    let part = Part { end: end + tail, work: work + tail, latest: earlier.part.latest };
    let keeps = earlier.counted() <= problem.meal.within && part.end <= close && part.span() <= longest;
    keeps.then_some(part)
}
