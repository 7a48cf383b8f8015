//! Light that must match: a branch of the search.
//!
//! Without the limit the exact way finds a plan. If set-ups that must match lie too far apart by the clock, every plan
//! that keeps the limit either has the earliest of them no later than some minute, so that all end within the limit after
//! it, or all of them later. Both are problems with shorter windows, and neither allows the plan just found.

use super::exact::Exact;
use super::problem::{Match, Minutes, Problem};
use super::solution::Solution;

/// Plans looked at; then the best found so far is given, unproved. Our own choice.
const MOST: usize = 120;

/// A running search with matches.
#[derive(Clone, Debug)]
pub struct Matched {
    problem: Problem,
    /// Problems still to be solved, the next one last.
    open: Vec<Problem>,
    running: Option<(Problem, Exact)>,
    best: Option<Solution>,
    looked: usize,
    proved: bool,
}

impl Matched {
    /// Nothing done yet.
    pub fn new(problem: Problem) -> Self {
        Self { open: vec![problem.clone()], problem, running: None, best: None, looked: 0, proved: true }
    }

    /// Goes on for about `work` looks; `true` when nothing is open any more.
    pub fn step(&mut self, work: usize) -> bool {
        let Some((problem, mut exact)) = self.running.take().or_else(|| self.next()) else { return true };
        if exact.step(work) {
            self.settle(&problem, &exact);
        } else {
            self.running = Some((problem, exact));
        }
        self.running.is_none() && self.open.is_empty()
    }

    /// How much is done, as far as can be said.
    pub fn share(&self) -> f64 {
        let running = self.running.as_ref().map_or(0.0, |(_, exact)| exact.share());
        (self.looked as f64 + running) / (self.looked + self.open.len() + 1) as f64
    }

    /// The best plan that keeps every limit.
    pub fn solution(&self) -> Solution {
        let found = self.best.clone().unwrap_or_else(|| one_of_each(&self.problem));
        Solution::of(&self.problem, found.days, self.proved)
    }

    fn next(&mut self) -> Option<(Problem, Exact)> {
        let problem = self.open.pop()?;
        let exact = Exact::new(Problem { matches: Vec::new(), ..problem.clone() });
        Some((problem, exact))
    }

    /// Takes a plan that keeps the limits if it is the best so far, and opens two problems for one that breaks them.
    fn settle(&mut self, problem: &Problem, exact: &Exact) {
        self.looked += 1;
        self.proved &= exact.proved();
        let worth = exact.dealt().worth;
        if self.best.as_ref().is_some_and(|best| best.worth.rank() <= worth.rank()) {
            return;
        }
        let solution = exact.solution();
        match problem.matches.iter().find_map(|one| Some((one, apart(one, &solution)?))) {
            None => self.best = Some(solution),
            Some(_) if self.looked >= MOST => {
                self.proved = false;
                self.open.clear();
            }
            Some((broken, (earliest, latest))) => {
                let cut = earliest + (latest - broken.limit - earliest) / 2;
                let mut later = problem.clone();
                later.clipped(&broken.jobs, cut + 1, Minutes::MAX);
                let mut sooner = problem.clone();
                sooner.clipped(&broken.jobs, Minutes::MIN, cut + broken.limit);
                self.open.extend([later, sooner]);
            }
        }
    }
}

/// Earliest start and latest end of set-ups that must match, if that is too far apart.
fn apart(one: &Match, solution: &Solution) -> Option<(Minutes, Minutes)> {
    let planned = solution.days.iter().flat_map(|day| &day.set_ups).filter(|p| one.jobs.contains(&p.job));
    let (earliest, latest) =
        planned.fold((Minutes::MAX, Minutes::MIN), |(from, to), p| (from.min(p.start), to.max(p.end)));
    (earliest < latest && latest - earliest > one.limit).then_some((earliest, latest))
}

/// A plan that cannot break a limit, since no two that must match are in it.
fn one_of_each(problem: &Problem) -> Solution {
    let mut single = Problem { matches: Vec::new(), ..problem.clone() };
    for one in &problem.matches {
        for job in one.jobs.iter().skip(1) {
            single.jobs[*job].windows.clear();
        }
    }
    let mut exact = Exact::new(single);
    while !exact.step(usize::MAX) {}
    exact.solution()
}
