//! Dealing sets of set-ups out to the days, by submasks.
//!
//! After some days `best[set]` is the least cost of doing just that set. The last day is asked only for the heaviest sets
//! that can be done at all.

use super::day::{NEVER, parted};

/// A set of jobs, a bit for each.
pub type Set = u16;

/// Days, travel and span in one number, in the order of their worth.
type Cost = u64;

const IMPOSSIBLE: Cost = Cost::MAX / 2;

/// The dealing, day after day.
#[derive(Clone, Debug)]
pub struct Deal {
    weights: Vec<u32>,
    best: Vec<Cost>,
    /// For each day done, the part of each set that falls on it.
    chosen: Vec<Vec<Set>>,
    running: Option<Running>,
}

#[derive(Clone, Debug)]
struct Running {
    costs: Vec<Cost>,
    /// Jobs that can be done on the day.
    able: usize,
    last: bool,
    /// Sets in the order they are asked.
    order: Vec<usize>,
    next: usize,
    after: Vec<Cost>,
    part: Vec<Set>,
    /// Weight of the first set found on the last day.
    found: Option<u32>,
}

/// What was dealt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dealt {
    /// A set for each day.
    pub sets: Vec<Set>,
    /// Weight, days, travel, span.
    pub worth: Worth,
}

/// The four objectives of the table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Worth {
    /// Weight of what is done.
    pub weight: u32,
    /// Days with any work.
    pub days: u32,
    /// Minutes of travel.
    pub travel: u32,
    /// Minutes from first to last, summed over the days.
    pub span: u32,
}

impl Worth {
    /// Smaller is better.
    pub const fn rank(&self) -> (u32, u32, u32, u32) {
        (u32::MAX - self.weight, self.days, self.travel, self.span)
    }
}

impl Deal {
    /// Nothing dealt yet.
    pub fn new(weights: Vec<u32>) -> Self {
        let mut best = vec![IMPOSSIBLE; 1 << weights.len()];
        best[0] = 0;
        Self { weights, best, chosen: Vec::new(), running: None }
    }

    /// Begins a day: `jobs` are the places of its jobs, `costs` the cost of each set of them.
    pub fn begin(&mut self, jobs: &[usize], costs: &[u32], last: bool) {
        let mut all = vec![IMPOSSIBLE; self.best.len()];
        for (local, cost) in costs.iter().enumerate().filter(|(_, cost)| **cost != NEVER) {
            all[spread(local, jobs)] = whole(*cost);
        }
        let mut order: Vec<usize> = (0..self.best.len()).collect();
        if last {
            crate::order::by_key(&mut order, |set| u32::MAX - self.weight(*set));
        }
        self.running = Some(Running {
            costs: all,
            able: spread((1 << jobs.len()) - 1, jobs),
            last,
            order,
            next: 0,
            after: self.best.clone(),
            part: vec![0; self.best.len()],
            found: None,
        });
    }

    /// Deals on for about `work` pairs of sets; `true` when the day is dealt.
    pub fn step(&mut self, work: usize) -> bool {
        let Some(mut run) = self.running.take() else { return true };
        let mut done = 0;
        while done < work && run.next < run.order.len() {
            let set = run.order[run.next];
            if run.last && run.found.is_some_and(|weight| self.weight(set) < weight) {
                run.next = run.order.len();
                break;
            }
            done += run.set(set, &self.best);
            if run.last && run.after[set] < IMPOSSIBLE {
                run.found = Some(self.weight(set));
            }
            run.next += 1;
        }
        if run.next < run.order.len() {
            self.running = Some(run);
            return false;
        }
        self.best = run.after;
        self.chosen.push(run.part);
        true
    }

    /// How much of the day is dealt.
    pub fn share(&self) -> f64 {
        self.running.as_ref().map_or(1.0, |run| run.next as f64 / run.order.len() as f64)
    }

    /// The best of all, when every day has been dealt.
    pub fn dealt(&self) -> Dealt {
        let possible = (0..self.best.len()).filter(|set| self.best[*set] < IMPOSSIBLE);
        let best = possible.min_by_key(|set| (u32::MAX - self.weight(*set), self.best[*set])).unwrap_or(0);
        let (mut sets, mut left) = (vec![0; self.chosen.len()], best);
        for (day, part) in self.chosen.iter().enumerate().rev() {
            sets[day] = part[left];
            left &= !usize::from(part[left]);
        }
        let cost = self.best[best];
        let worth = Worth {
            weight: self.weight(best),
            days: (cost >> 40) as u32,
            travel: (cost >> 20 & 0xF_FFFF) as u32,
            span: (cost & 0xF_FFFF) as u32,
        };
        Dealt { sets, worth }
    }

    fn weight(&self, set: usize) -> u32 {
        (0..self.weights.len()).filter(|job| set >> job & 1 == 1).map(|job| self.weights[job]).sum()
    }
}

impl Running {
    /// Finds the part of `set` that falls on this day; gives the number of parts tried.
    fn set(&mut self, set: usize, best: &[Cost]) -> usize {
        let able = set & self.able;
        let (mut least, mut chosen, mut part, mut tried) = (best[set], 0, able, 1);
        while part != 0 {
            let cost = best[set ^ part] + self.costs[part];
            if cost < least {
                (least, chosen) = (cost, part);
            }
            part = (part - 1) & able;
            tried += 1;
        }
        self.after[set] = least;
        self.part[set] = chosen as Set;
        tried
    }
}

/// A day's own bits, among all jobs'.
fn spread(local: usize, jobs: &[usize]) -> usize {
    jobs.iter().enumerate().filter(|(bit, _)| local >> bit & 1 == 1).map(|(_, job)| 1 << job).sum()
}

/// A day's cost among those of other days: it is one more day.
fn whole(cost: u32) -> Cost {
    let (travel, span) = parted(cost);
    1 << 40 | Cost::from(travel) << 20 | Cost::from(span)
}
