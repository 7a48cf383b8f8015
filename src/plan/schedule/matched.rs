//! Light that must match, and rest between days: branches of the search.
//!
//! Without them the exact way finds a plan. If set-ups that must match lie too far apart in a measure, every plan that
//! keeps the limit has either the least of it no lower than some number, or all of it within the limit above that number,
//! or no two of these set-ups at all. If a rest is too short, the earlier day is wrapped by some minute, or the later one
//! called so much after it. All are problems with shorter windows, and none allows the plan just found.

use super::exact::Exact;
use super::matching::{Extent, Match, Measure};
use super::problem::{Minutes, Problem, Rest};
use super::solution::{Planned, Solution, Worth};

/// Plans looked at; then the best found so far is given, unproved. Our own choice.
const MOST: usize = 120;

/// A problem still to be solved.
#[derive(Clone, Debug)]
struct Branch {
    problem: Problem,
    /// Matches of which the plans with one set-up alone are looked at elsewhere, a bit for each.
    told: u64,
    /// What the problem it came from is worth: it can be worth no more.
    bound: Option<Worth>,
}

/// A running search with matches.
#[derive(Clone, Debug)]
pub struct Matched {
    problem: Problem,
    /// The next one last.
    open: Vec<Branch>,
    running: Option<(Branch, Exact)>,
    best: Option<Solution>,
    looked: usize,
    proved: bool,
}

impl Matched {
    /// Nothing done yet.
    pub fn new(problem: Problem) -> Self {
        let root = Branch { problem: problem.clone(), told: 0, bound: None };
        Self { open: vec![root], problem, running: None, best: None, looked: 0, proved: true }
    }

    /// Goes on for about `work` looks; `true` when nothing is open any more.
    pub fn step(&mut self, work: usize) -> bool {
        let Some((branch, mut exact)) = self.running.take().or_else(|| self.next()) else { return true };
        if exact.step(work) {
            self.settle(branch, &exact);
        } else {
            self.running = Some((branch, exact));
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

    fn next(&mut self) -> Option<(Branch, Exact)> {
        let branch = loop {
            let branch = self.open.pop()?;
            if branch.bound.is_none_or(|bound| self.could_be_better(&bound)) {
                break branch;
            }
        };
        let exact = Exact::new(bare(&branch.problem));
        Some((branch, exact))
    }

    fn could_be_better(&self, worth: &Worth) -> bool {
        self.best.as_ref().is_none_or(|best| worth.rank() < best.worth.rank())
    }

    /// Takes a plan that keeps the limits if it is the best so far, and branches from one that breaks them.
    fn settle(&mut self, branch: Branch, exact: &Exact) {
        self.looked += 1;
        self.proved &= exact.proved();
        let worth = exact.dealt().worth;
        if !self.could_be_better(&worth) {
            return;
        }
        let solution = exact.solution();
        if let Some((rest, wrap)) = too_short(&self.problem, &solution) {
            let next = |problem| Branch { problem, told: branch.told, bound: Some(worth) };
            self.branch(rested(branch.problem, rest, wrap).map(next));
            return;
        }
        let broken = self.problem.matches.iter().enumerate().find_map(|(n, one)| {
            let (measure, extent) = apart(one, &solution)?;
            Some((n, one.clone(), measure.clone(), extent))
        });
        match broken {
            None => self.best = Some(solution),
            Some((n, one, measure, extent)) => {
                let told = branch.told | 1 << (n % 64);
                let next = |problem| Branch { problem, told, bound: Some(worth) };
                let singles: Vec<Problem> =
                    if branch.told == told { Vec::new() } else { alone(&branch.problem, &one).collect() };
                self.branch(
                    singles.into_iter().chain(halves(branch.problem, &one, &measure, extent)).map(next),
                );
            }
        }
    }

    /// Opens what is to be looked at next, unless enough was looked at.
    fn branch(&mut self, next: impl Iterator<Item = Branch>) {
        if self.looked >= MOST {
            self.proved = false;
            self.open.clear();
        } else {
            self.open.extend(next);
        }
    }
}

/// Without what is branched on.
fn bare(problem: &Problem) -> Problem {
    Problem { matches: Vec::new(), rests: Vec::new(), ..problem.clone() }
}

/// The measure in which set-ups that must match lie too far apart, and its least and most.
fn apart<'a>(one: &'a Match, solution: &Solution) -> Option<(&'a Measure, Extent)> {
    let planned: Vec<(usize, &Planned)> = solution
        .days
        .iter()
        .flat_map(|day| day.set_ups.iter().map(move |planned| (day.day, planned)))
        .filter(|(_, planned)| one.jobs.contains(&planned.job))
        .collect();
    if planned.len() < 2 {
        return None;
    }
    let extents =
        one.measures.iter().filter_map(|measure| Some((measure, measure.of(planned.iter().copied())?)));
    extents.into_iter().find(|(measure, extent)| measure.breaks(*extent))
}

/// A rest that is too short, and the minute by which the day before it should be wrapped or after which it is.
fn too_short(problem: &Problem, solution: &Solution) -> Option<(Rest, Minutes)> {
    let of = |day: usize| solution.days.iter().find(|plan| plan.day == day);
    problem.rests.iter().find_map(|rest| {
        let (before, after) = (of(rest.before)?, of(rest.after)?);
        let latest = after.call - rest.least;
        (before.wrap > latest).then_some((*rest, latest + (before.wrap - latest - 1) / 2))
    })
}

/// The earlier day wrapped by a minute, or the later one called so much after it.
fn rested(problem: Problem, rest: Rest, wrap: Minutes) -> impl Iterator<Item = Problem> {
    let (mut sooner, mut later) = (problem.clone(), problem);
    sooner.days[rest.before].close = sooner.days[rest.before].close.min(wrap);
    later.days[rest.after].open = later.days[rest.after].open.max(wrap + 1 + rest.least);
    [later, sooner].into_iter()
}

/// Only later than a number, or all within the limit above it.
fn halves(
    problem: Problem,
    one: &Match,
    measure: &Measure,
    (least, most): Extent,
) -> impl Iterator<Item = Problem> {
    let cut = least + (most - measure.most - least) / 2;
    let with = |mut problem: Problem, range| {
        problem.clipped(&one.jobs, measure, &range);
        problem
    };
    [with(problem.clone(), cut + 1..=i32::MAX), with(problem, i32::MIN..=cut.saturating_add(measure.most))]
        .into_iter()
}

/// Each of the set-ups without the others.
fn alone<'a>(problem: &'a Problem, one: &'a Match) -> impl Iterator<Item = Problem> + 'a {
    one.jobs.iter().map(|kept| {
        let mut single = problem.clone();
        for job in one.jobs.iter().filter(|job| *job != kept) {
            single.jobs[*job].windows.clear();
        }
        single
    })
}

/// A plan that cannot break a limit, since no two that must match are in it, and nothing after a day that wants rest.
fn one_of_each(problem: &Problem) -> Solution {
    let mut single = bare(problem);
    for one in &problem.matches {
        for job in one.jobs.iter().skip(1) {
            single.jobs[*job].windows.clear();
        }
    }
    for job in &mut single.jobs {
        job.windows.retain(|window| problem.rests.iter().all(|rest| rest.after != window.day));
    }
    let mut exact = Exact::new(single);
    while !exact.step(usize::MAX) {}
    exact.solution()
}
