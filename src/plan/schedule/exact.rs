//! The exact way, in slices: walk the days one by one, deal, and time what was dealt.

use super::assign::{Deal, Dealt, Set};
use super::day::Costs;
use super::problem::{EXACT, Problem};
use super::solution::Solution;
use super::timing;

/// A running exact solution of a problem without matches and with at most [`EXACT`] jobs.
#[derive(Clone, Debug)]
pub struct Exact {
    problem: Problem,
    deal: Deal,
    day: usize,
    walk: Option<(Vec<usize>, Costs)>,
    dealing: bool,
    capped: bool,
}

impl Exact {
    /// Nothing done yet.
    pub fn new(problem: Problem) -> Self {
        assert!(problem.jobs.len() <= EXACT, "more jobs than sets have bits");
        let deal = Deal::new(problem.jobs.iter().map(|job| job.weight).collect());
        Self { problem, deal, day: 0, walk: None, dealing: false, capped: false }
    }

    /// Goes on for about `work` looks; `true` when the sets are dealt.
    pub fn step(&mut self, work: usize) -> bool {
        if self.day == self.problem.days.len() {
            return true;
        }
        if self.dealing {
            if self.deal.step(work) {
                (self.dealing, self.day) = (false, self.day + 1);
            }
            return self.day == self.problem.days.len();
        }
        let (jobs, mut walk) = self.walk.take().unwrap_or_else(|| begin(&self.problem, self.day));
        if walk.step(&self.problem, work) {
            self.deal.begin(&jobs, walk.costs(), self.day + 1 == self.problem.days.len());
            (self.dealing, self.capped) = (true, self.capped || !walk.proved());
        } else {
            self.walk = Some((jobs, walk));
        }
        false
    }

    /// How much is done, 0 to 1.
    pub fn share(&self) -> f64 {
        let part = match (&self.walk, self.dealing) {
            (Some((_, walk)), _) => walk.share() / 2.0,
            (None, true) => 0.5 + self.deal.share() / 2.0,
            (None, false) => 0.0,
        };
        (self.day as f64 + part) / self.problem.days.len().max(1) as f64
    }

    /// What was dealt, when [`Exact::step`] has said so.
    pub fn dealt(&self) -> Dealt {
        self.deal.dealt()
    }

    /// Whether nothing was dropped on the way.
    pub const fn proved(&self) -> bool {
        !self.capped
    }

    /// The plan, when [`Exact::step`] has said that all is dealt.
    pub fn solution(&self) -> Solution {
        let sets = self.dealt().sets;
        let worked = sets.iter().enumerate().filter(|(_, set)| **set != 0);
        let plan = |(day, set): (usize, &Set)| timing::plan(&self.problem, day, &members(*set));
        Solution::of(&self.problem, worked.filter_map(plan).collect(), self.proved())
    }
}

fn begin(problem: &Problem, day: usize) -> (Vec<usize>, Costs) {
    let able = |job: &usize| problem.jobs[*job].windows.iter().any(|window| window.day == day);
    let jobs: Vec<usize> = (0..problem.jobs.len()).filter(able).collect();
    let walk = Costs::new(problem, day, &jobs, 0);
    (jobs, walk)
}

fn members(set: Set) -> Vec<usize> {
    (0..EXACT).filter(|job| set >> job & 1 == 1).collect()
}
