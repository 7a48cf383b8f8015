//! The search for a plan, in slices.

use super::exact::Exact;
use super::many::Many;
use super::matched::Matched;
use super::problem::{EXACT, Problem};
use super::solution::Solution;

/// A search that goes on whenever it is told to.
///
/// ```
/// use slantlight::plan::schedule::problem::{Day, Job, Meal, MealFrom, Problem, Window};
/// use slantlight::plan::schedule::solver::Solver;
/// let window = Window { day: 0, from: 1058, to: 1094 };
/// let problem = Problem {
///     days: vec![Day { open: 360, close: 1260, longest: 600 }],
///     moves: vec![vec![0]],
///     leads: vec![45],
///     tails: vec![45],
///     meal: Meal { minutes: 60, within: 360, from: MealFrom::Call },
///     jobs: vec![Job { location: 0, minutes: 25, weight: 1, windows: vec![window] }],
///     matches: vec![],
///     rests: vec![],
/// };
/// let mut solver = Solver::new(problem);
/// while !solver.step(10_000) {}
/// let plan = solver.solution();
/// assert!(plan.proved);
/// assert_eq!((plan.days[0].call, plan.days[0].set_ups[0].start, plan.days[0].wrap), (1013, 1058, 1128));
/// ```
#[derive(Clone, Debug)]
pub struct Solver(Way);

#[derive(Clone, Debug)]
enum Way {
    Exact(Box<Exact>),
    Matched(Box<Matched>),
    Many(Box<Many>),
}

impl Solver {
    /// Chooses the way by the problem's size.
    pub fn new(problem: Problem) -> Self {
        Self(if problem.jobs.len() > EXACT {
            Way::Many(Box::new(Many::new(problem)))
        } else if problem.matches.is_empty() && problem.rests.is_empty() {
            Way::Exact(Box::new(Exact::new(problem)))
        } else {
            Way::Matched(Box::new(Matched::new(problem)))
        })
    }

    /// Goes on for about `work` looks at labels; `true` when the plan is ready.
    pub fn step(&mut self, work: usize) -> bool {
        match &mut self.0 {
            Way::Exact(exact) => exact.step(work),
            Way::Matched(matched) => matched.step(work),
            Way::Many(many) => many.step(work),
        }
    }

    /// About how much is done, 0 to 1.
    pub fn share(&self) -> f64 {
        match &self.0 {
            Way::Exact(exact) => exact.share(),
            Way::Matched(matched) => matched.share(),
            Way::Many(many) => many.share(),
        }
    }

    /// The plan, when [`Solver::step`] has said that it is ready.
    pub fn solution(&self) -> Solution {
        match &self.0 {
            Way::Exact(exact) => exact.solution(),
            Way::Matched(matched) => matched.solution(),
            Way::Many(many) => many.solution(),
        }
    }
}
