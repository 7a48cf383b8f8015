//! Times of one day's set-ups: as early as the shortest span allows, in the order with the most slack.

use super::day::{Costs, NEVER, Way};
use super::join::Joined;
use super::problem::{Job, Minutes, Problem, Window};
use super::solution::{DayPlan, MealAt, Planned};
use super::walk::Step;

/// The best plan of a day for a set of jobs (places in the problem's list); `None` if they do not fit.
///
/// Of all ways with the least travel and span it takes one whose least slack is largest, where a window that is too
/// tight for that much counts with what it has. Found by shortening all windows: with them the least cost only grows.
pub fn plan(problem: &Problem, day: usize, jobs: &[usize]) -> Option<DayPlan> {
    let costs = |earlier: Minutes| {
        let mut costs = Costs::of_all(problem, day, jobs, earlier);
        while !costs.step(problem, usize::MAX) {}
        costs
    };
    let mut best = costs(0);
    let least = *best.costs().last()?;
    if least == NEVER {
        return None;
    }
    let (mut kept, mut lost) = (0, most_slack(problem, day, jobs) + 1);
    while lost - kept > 1 {
        let middle = kept + (lost - kept) / 2;
        let tighter = costs(middle);
        if tighter.costs().last() == Some(&least) {
            (kept, best) = (middle, tighter);
        } else {
            lost = middle;
        }
    }
    let way = best.way(problem).expect("a set with a cost has a way");
    Some(timed(problem, day, jobs, &way))
}

/// The largest slack that any of the jobs could have.
fn most_slack(problem: &Problem, day: usize, jobs: &[usize]) -> Minutes {
    let of = |job: &usize| {
        let Job { minutes, windows, .. } = &problem.jobs[*job];
        windows
            .iter()
            .filter(|window| window.day == day)
            .map(|window| window.to - window.from - minutes)
            .max()
    };
    jobs.iter().filter_map(of).max().unwrap_or(0)
}

/// From call on, each as early as it can be; after the meal not before the second stretch can be short enough.
fn timed(problem: &Problem, day: usize, jobs: &[usize], way: &Way) -> DayPlan {
    let job = |step: &Step| &problem.jobs[jobs[step.job]];
    let steps = || way.first.iter().chain(&way.second);
    let at = |step: Option<&Step>| step.map_or(0, |step| job(step).location);
    let (lead, tail) = (problem.leads[at(steps().next())], problem.tails[at(steps().last())]);
    let earliest = way.joined.map_or(Minutes::MIN, |joined| joined.call);
    let call = (way.part.end - way.part.span()).max(earliest).min(way.part.latest);
    let (mut clock, mut place, mut set_ups) = (call + lead, at(steps().next()), Vec::new());
    let mut rest = None;
    for (n, step) in steps().enumerate() {
        let Job { location, minutes, .. } = *job(step);
        let travel = problem.moves[place][location];
        let mut start = (clock + travel).max(step.window.from);
        if let (true, Some(joined)) = (n == way.first.len(), way.joined) {
            rest = Some((joined, clock, travel));
            start = (clock + travel + problem.meal.minutes).max(step.window.from).max(joined.second);
        }
        (clock, place) = (start + minutes, location);
        set_ups.push(planned(problem, day, jobs[step.job], start));
    }
    let meal = rest.map(|(joined, from, travel)| meal(problem, joined, from, travel, clock, way.first.len()));
    DayPlan { day, call, wrap: clock + tail, set_ups, meal }
}

/// As early as it can be, but not so early that the second stretch gets too long.
fn meal(
    problem: &Problem,
    joined: Joined,
    from: Minutes,
    travel: Minutes,
    last: Minutes,
    before: usize,
) -> MealAt {
    let earliest = if joined.after_move { from + travel } else { from };
    let start = earliest.max(last - problem.meal.within - problem.meal.minutes);
    MealAt { start, end: start + problem.meal.minutes, after_move: joined.after_move, before }
}

/// In the one of its windows that ends last.
fn planned(problem: &Problem, day: usize, job: usize, start: Minutes) -> Planned {
    let Job { minutes, windows, .. } = &problem.jobs[job];
    let end = start + minutes;
    let holds = |window: &&Window| window.day == day && window.from <= start && end <= window.to;
    let window = windows.iter().filter(holds).max_by_key(|window| window.to);
    Planned { job, start, end, window: *window.expect("a start lies in a window") }
}
