//! More set-ups than can be planned exactly: a plan is packed day by day, then improved two days at a time.
//!
//! Each piece is itself solved exactly, or with its matches. What comes out is the best found, never proved.

use super::problem::{EXACT, Minutes, Problem};
use super::solution::{DayPlan, Solution, worth};
use super::solver::Solver;

/// Set-ups of one piece: two fewer than can be solved, for speed. Our own choice.
const PIECE: usize = EXACT - 2;

/// Pieces tried; then the plan stands as it is. Our own choice.
const MOST: usize = 200;

/// A running search.
#[derive(Clone, Debug)]
pub struct Many {
    problem: Problem,
    plan: Vec<DayPlan>,
    /// Days to be planned together next, the next piece last.
    queue: Vec<Vec<usize>>,
    running: Option<Piece>,
    tried: usize,
}

#[derive(Clone, Debug)]
struct Piece {
    days: Vec<usize>,
    /// Places in the problem's list, by place in the piece's.
    jobs: Vec<usize>,
    solver: Box<Solver>,
}

impl Many {
    /// Nothing done yet.
    pub fn new(problem: Problem) -> Self {
        let days = problem.days.len();
        let mut queue = rounds(days);
        queue.extend((0..days).rev().map(|day| vec![day]));
        Self { problem, plan: Vec::new(), queue, running: None, tried: 0 }
    }

    /// Goes on for about `work` looks; `true` when nothing is left to try.
    pub fn step(&mut self, work: usize) -> bool {
        let Some(mut piece) = self.running.take().or_else(|| self.next()) else { return true };
        if piece.solver.step(work) {
            self.settle(&piece);
        } else {
            self.running = Some(piece);
        }
        false
    }

    /// How much is done, as far as can be said.
    pub fn share(&self) -> f64 {
        self.tried as f64 / (self.tried + self.queue.len() + 1) as f64
    }

    /// The best plan found.
    pub fn solution(&self) -> Solution {
        Solution::of(&self.problem, self.plan.clone(), false)
    }

    fn next(&mut self) -> Option<Piece> {
        while self.tried < MOST {
            let days = self.queue.pop()?;
            self.tried += 1;
            if let Some(jobs) = self.jobs(&days) {
                let solver = Box::new(Solver::new(self.piece(&days, &jobs)));
                return Some(Piece { days, jobs, solver });
            }
        }
        None
    }

    /// What stands on these days and, as room allows, what stands nowhere yet, the weightiest and rarest first.
    /// `None` if the days alone hold too much, or there is nothing to do.
    fn jobs(&self, days: &[usize]) -> Option<Vec<usize>> {
        let on = |day: &DayPlan| days.contains(&day.day);
        let here: Vec<usize> = jobs_of(self.plan.iter().filter(|day| on(day)));
        let placed = jobs_of(self.plan.iter());
        let able = |job: &usize| self.problem.jobs[*job].windows.iter().any(|w| days.contains(&w.day));
        let mut idle: Vec<usize> =
            (0..self.problem.jobs.len()).filter(|job| !placed.contains(job) && able(job)).collect();
        let rarity = |job: &usize| {
            let of = &self.problem.jobs[*job];
            of.windows.iter().map(|w| i32::from(w.to - w.from - of.minutes)).sum::<i32>()
        };
        crate::order::by_key(&mut idle, |job| (u32::MAX - self.problem.jobs[*job].weight, rarity(job)));
        idle.truncate(PIECE.saturating_sub(here.len()));
        let all = [here, idle].concat();
        (!all.is_empty() && all.len() <= EXACT).then_some(all)
    }

    /// The piece's own problem: on its days only, matching what stands elsewhere, with rest from the days beside it.
    fn piece(&self, days: &[usize], jobs: &[usize]) -> Problem {
        let mut whole = self.problem.clone();
        for job in &mut whole.jobs {
            job.windows.retain(|window| days.contains(&window.day));
        }
        for one in &self.problem.matches {
            for measure in &one.measures {
                let elsewhere = self.plan.iter().filter(|day| !days.contains(&day.day));
                let planned =
                    elsewhere.flat_map(|day| day.set_ups.iter().map(move |planned| (day.day, planned)));
                let fixed = measure.of(planned.filter(|(_, planned)| one.jobs.contains(&planned.job)));
                if let Some((least, most)) = fixed {
                    let range = most.saturating_sub(measure.most)..=least.saturating_add(measure.most);
                    whole.clipped(&one.jobs, measure, &range);
                }
            }
        }
        for rest in &self.problem.rests {
            let on = |day: usize| self.plan.iter().find(|plan| plan.day == day && !days.contains(&day));
            if let Some(before) = on(rest.before) {
                let open = &mut whole.days[rest.after].open;
                *open = (*open).max(before.wrap + rest.least);
            }
            if let Some(after) = on(rest.after) {
                let close = &mut whole.days[rest.before].close;
                *close = (*close).min(after.call - rest.least);
            }
        }
        whole.of_jobs(jobs)
    }

    /// Takes the piece's plan if the whole is better for it; then every pair of days is worth another try.
    fn settle(&mut self, piece: &Piece) {
        let mut found = piece.solver.solution().days;
        for planned in found.iter_mut().flat_map(|day| &mut day.set_ups) {
            planned.job = piece.jobs[planned.job];
        }
        let others = self.plan.iter().filter(|day| !piece.days.contains(&day.day)).cloned();
        let mut next: Vec<DayPlan> = others.chain(found).collect();
        crate::order::by_key(&mut next, |day| day.day);
        if worth(&self.problem, &next).rank() < worth(&self.problem, &self.plan).rank() {
            self.plan = next;
            if piece.days.len() > 1 {
                self.queue = rounds(self.problem.days.len());
            }
        }
    }
}

/// Every pair of days, then each day alone.
fn rounds(days: usize) -> Vec<Vec<usize>> {
    let pairs = (0..days).flat_map(|a| (a + 1..days).map(move |b| vec![a, b]));
    (0..days).map(|day| vec![day]).chain(pairs).collect()
}

fn jobs_of<'a>(days: impl Iterator<Item = &'a DayPlan>) -> Vec<usize> {
    days.flat_map(|day| day.set_ups.iter().map(|planned| planned.job)).collect()
}

const _: () = assert!(Minutes::MAX as usize > 36 * 60, "a minute of a long night fits");
