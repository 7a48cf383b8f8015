//! What a schedule is asked for. Whole minutes, counted from local midnight of each day.

use super::matching::Match;

/// Minutes since local midnight of the day, or a number of minutes. Days may run past midnight, up to 36 hours.
pub type Minutes = i16;

/// So many set-ups are planned exactly; more are packed by improving. Our own choice, by measurement.
pub const EXACT: usize = 16;

/// A day on which work may happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Day {
    /// Earliest call.
    pub open: Minutes,
    /// Latest wrap.
    pub close: Minutes,
    /// Longest span from call to wrap.
    pub longest: Minutes,
}

/// When a set-up may be done: it must lie in it whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// Place of the day in the list.
    pub day: usize,
    /// First minute.
    pub from: Minutes,
    /// Last minute.
    pub to: Minutes,
}

/// A set-up, as far as the schedule goes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// Place of the location in the table of moves.
    pub location: usize,
    /// How long it takes.
    pub minutes: Minutes,
    /// What it is worth to have it done.
    pub weight: u32,
    /// When it may be done.
    pub windows: Vec<Window>,
}

/// What the meal is counted from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MealFrom {
    /// From call: rigging counts as work.
    #[default]
    Call,
    /// From the first set-up.
    FirstSetUp,
}

/// The meal rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meal {
    /// How long the meal is.
    pub minutes: Minutes,
    /// Longest work without one.
    pub within: Minutes,
    /// What it is counted from.
    pub from: MealFrom,
}

/// Rest between the wrap of one day and the call of a later one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rest {
    /// Place of the earlier day in the list.
    pub before: usize,
    /// Place of the later day.
    pub after: usize,
    /// From the wrap's minute of its day to the call's of its own, at least; mostly negative.
    pub least: Minutes,
}

/// All of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The days.
    pub days: Vec<Day>,
    /// Minutes from the last set-up at one location to the first at another, by place in this table.
    pub moves: Vec<Vec<Minutes>>,
    /// From call to the first set-up of the day at each location.
    pub leads: Vec<Minutes>,
    /// From the last set-up of the day at each location to wrap.
    pub tails: Vec<Minutes>,
    /// The meal rule.
    pub meal: Meal,
    /// What is to be done.
    pub jobs: Vec<Job>,
    /// What must match.
    pub matches: Vec<Match>,
    /// Rest between days that follow each other.
    pub rests: Vec<Rest>,
}

impl Problem {
    /// Weight of those set-ups that have any window: no plan can do better.
    pub(super) fn possible_weight(&self) -> u32 {
        self.jobs.iter().filter(|job| !job.windows.is_empty()).map(|job| job.weight).sum()
    }

    /// The same days with the jobs of `kept` alone, and what must match among them.
    pub(super) fn of_jobs(&self, kept: &[usize]) -> Self {
        let place = |job: &usize| kept.iter().position(|one| one == job);
        let among = |one: &Match| Match { jobs: one.jobs.iter().filter_map(place).collect(), ..one.clone() };
        let jobs = kept.iter().map(|job| self.jobs[*job].clone()).collect();
        let matches = self.matches.iter().map(among).filter(|one| one.jobs.len() > 1).collect();
        Self { jobs, matches, ..self.clone() }
    }
}
