//! What a schedule came to.

pub use super::assign::Worth;
use super::problem::{Minutes, Problem, Window};

/// A set-up in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Planned {
    /// Place in the problem's list.
    pub job: usize,
    /// Begin.
    pub start: Minutes,
    /// End.
    pub end: Minutes,
    /// The window it lies in.
    pub window: Window,
}

impl Planned {
    /// How much later it could begin, as far as its own window goes.
    pub const fn slack(&self) -> Minutes {
        self.window.to - self.end
    }
}

/// The meal of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MealAt {
    /// Begin.
    pub start: Minutes,
    /// End.
    pub end: Minutes,
    /// Whether the move to the next set-up comes first.
    pub after_move: bool,
    /// Place of the set-up that follows, among the day's.
    pub before: usize,
}

/// A day with work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayPlan {
    /// Place of the day in the problem's list.
    pub day: usize,
    /// When the crew is called.
    pub call: Minutes,
    /// When it is wrapped.
    pub wrap: Minutes,
    /// In order.
    pub set_ups: Vec<Planned>,
    /// Where the rule asks for one.
    pub meal: Option<MealAt>,
}

/// A plan, and how good it is known to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Solution {
    /// The days with work, in order.
    pub days: Vec<DayPlan>,
    /// Jobs that found no place.
    pub undone: Vec<usize>,
    /// What it is worth.
    pub worth: Worth,
    /// Whether no plan is better in the first four objectives.
    pub proved: bool,
    /// Weight that no plan can exceed.
    pub most_weight: u32,
    /// Days that a plan with everything in it must have.
    pub least_days: u32,
}

impl Solution {
    /// Gathers days into a plan.
    pub(super) fn of(problem: &Problem, days: Vec<DayPlan>, proved: bool) -> Self {
        let done = |job: &usize| days.iter().any(|day| day.set_ups.iter().any(|one| one.job == *job));
        let undone: Vec<usize> = (0..problem.jobs.len()).filter(|job| !done(job)).collect();
        let worth = worth(problem, &days);
        let (most_weight, least_days) = if proved {
            (worth.weight, worth.days)
        } else {
            (problem.possible_weight(), least_days(problem))
        };
        Self { days, undone, worth, proved, most_weight, least_days }
    }
}

/// What days are worth, counted anew from their set-ups.
pub fn worth(problem: &Problem, days: &[DayPlan]) -> Worth {
    let set_ups = || days.iter().flat_map(|day| &day.set_ups);
    let travel = |day: &DayPlan| -> u32 {
        let of = |one: &Planned| problem.jobs[one.job].location;
        day.set_ups
            .windows(2)
            .map(|pair| problem.moves[of(&pair[0])][of(&pair[1])].unsigned_abs())
            .map(u32::from)
            .sum()
    };
    Worth {
        weight: set_ups().map(|one| problem.jobs[one.job].weight).sum(),
        days: days.len() as u32,
        travel: days.iter().map(travel).sum(),
        span: days.iter().map(|day| u32::from((day.wrap - day.call).unsigned_abs())).sum(),
    }
}

/// So many days hold the bare minutes of everything that can be done at all.
fn least_days(problem: &Problem) -> u32 {
    let able = problem.jobs.iter().filter(|job| !job.windows.is_empty());
    let minutes: u32 = able.map(|job| u32::from(job.minutes.unsigned_abs())).sum();
    let longest = problem.days.iter().map(|day| u32::from(day.longest.unsigned_abs())).max().unwrap_or(0);
    if longest == 0 { 0 } else { minutes.div_ceil(longest) }
}
