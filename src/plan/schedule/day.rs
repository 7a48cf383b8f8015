//! One day: for each set of its set-ups the least travel, then the least span.
//!
//! A day is one stretch of work, or two with the meal between. Stretches come from a walk from call on and a mirrored one
//! from wrap on ([`super::walk`]); every set is parted into two in every way, unless it is as good in one stretch.

use super::join::{Joined, alone, joined};
use super::label::Part;
use super::problem::{Minutes, Problem};
use super::walk::{Step, Walk};

/// No way to do a set.
pub const NEVER: u32 = u32::MAX;

/// The costs of a day, in the making.
#[derive(Clone, Debug)]
pub struct Costs {
    day: usize,
    /// Locations of the jobs.
    locations: Vec<usize>,
    from_call: Walk,
    from_wrap: Walk,
    walked: usize,
    costs: Vec<u32>,
    /// Least travel between the locations of a set of locations.
    least_travel: Vec<u32>,
    next: usize,
}

/// A way through a day.
#[derive(Clone, Debug)]
pub struct Way {
    /// The stretch before the meal, or the only one.
    pub first: Vec<Step>,
    /// The stretch after the meal.
    pub second: Vec<Step>,
    /// From call to wrap.
    pub part: Part,
    /// How the two are joined.
    pub joined: Option<Joined>,
}

/// Travel before span, in one number.
const fn cost(travel: Minutes, span: Minutes) -> u32 {
    (travel as u32) << 16 | span as u32
}

/// Travel and span of a cost.
pub const fn parted(cost: u32) -> (u32, u32) {
    (cost >> 16, cost & 0xFFFF)
}

impl Costs {
    /// Nothing known yet of `jobs` (places in the problem's list) on a day; windows end `earlier`, see [`Walk::new`].
    pub fn new(problem: &Problem, day: usize, jobs: &[usize], earlier: Minutes) -> Self {
        let walk = |mirrored| Walk::new(problem, day, jobs, earlier, mirrored);
        Self {
            day,
            locations: jobs.iter().map(|job| problem.jobs[*job].location).collect(),
            from_call: walk(false),
            from_wrap: walk(true),
            walked: 0,
            costs: vec![NEVER; 1 << jobs.len()],
            least_travel: least_travel(problem),
            next: 1,
        }
    }

    /// The same, but only the cost of all jobs together will be known.
    pub fn of_all(problem: &Problem, day: usize, jobs: &[usize], earlier: Minutes) -> Self {
        let costs = Self::new(problem, day, jobs, earlier);
        Self { next: costs.costs.len() - 1, ..costs }
    }

    /// Goes on for about `work` looks; `true` when all costs are known.
    pub fn step(&mut self, problem: &Problem, work: usize) -> bool {
        let done = match self.walked {
            0 => self.from_call.step(problem, work),
            1 => self.from_wrap.step(problem, work),
            _ => return self.join(problem, work),
        };
        self.walked += usize::from(done);
        false
    }

    /// How much of it is done.
    pub fn share(&self) -> f64 {
        let joins = self.next as f64 / self.costs.len() as f64;
        (self.from_call.share() + self.from_wrap.share() + joins) / 3.0
    }

    /// Least cost of each set, by the bits of the jobs.
    pub fn costs(&self) -> &[u32] {
        &self.costs
    }

    /// Whether nothing was dropped.
    pub const fn proved(&self) -> bool {
        !self.from_call.capped() && !self.from_wrap.capped()
    }

    /// The best way through all jobs.
    pub fn way(&self, problem: &Problem) -> Option<Way> {
        let all = self.costs.len() - 1;
        let whole = self.wholes(problem, all).min_by_key(|(cost, ..)| *cost);
        let first = |at| self.from_call.way(at);
        if let Some((_, at, part)) = whole.filter(|(cost, ..)| *cost == self.costs[all]) {
            return Some(Way { first: first(at), second: Vec::new(), part, joined: None });
        }
        let mut best: Option<(u32, usize, usize, Joined)> = None;
        let mut least = NEVER;
        for part in parts(all) {
            self.joins(problem, part, all & !part, &mut least, |cost, a, b, joined| {
                best = Some((cost, a, b, joined))
            });
        }
        let (_, a, b, joined) = best?;
        let mut second = self.from_wrap.way(b);
        second.reverse();
        Some(Way { first: first(a), second, part: joined.part, joined: Some(joined) })
    }

    fn join(&mut self, problem: &Problem, work: usize) -> bool {
        let mut done = 0;
        while done < work && self.next < self.costs.len() {
            done += self.set(problem, self.next);
            self.next += 1;
        }
        self.next >= self.costs.len()
    }

    /// The cost of one set; gives how many pairs were looked at.
    fn set(&mut self, problem: &Problem, set: usize) -> usize {
        let mut least = self.wholes(problem, set).map(|(cost, ..)| cost).min().unwrap_or(NEVER);
        let mut looked = 1;
        let bound = self.least_with_meal(problem, set);
        // A meal makes no day shorter, so that it can only save travel.
        if parted(least).0 > parted(bound).0 && parted(bound).1 <= problem.days[self.day].longest as u32 {
            for part in parts(set) {
                looked += self.joins(problem, part, set & !part, &mut least, |_, _, _, _| ()) + 1;
                if least <= bound {
                    break;
                }
            }
        }
        self.costs[set] = least;
        looked
    }

    /// No day with a meal can cost less: no detour, and no waiting.
    fn least_with_meal(&self, problem: &Problem, set: usize) -> u32 {
        let travel = self.least_travel.get(self.places(set)).copied().unwrap_or(0);
        let least = |of: &[Minutes]| of.iter().copied().min().unwrap_or(0);
        let minutes: Minutes = problem.meal.minutes + least(&problem.leads) + least(&problem.tails);
        let span = self.from_call.minutes(set) + minutes as u32 + travel;
        (travel << 16) | span
    }

    /// Ways through a set in one stretch: cost, place of the label, the day.
    fn wholes<'a>(
        &'a self,
        problem: &'a Problem,
        set: usize,
    ) -> impl Iterator<Item = (u32, usize, Part)> + 'a {
        let limits = problem.days[self.day];
        self.from_call.of_set(set).filter_map(move |at| {
            let (label, tail) = (self.from_call.label(at), problem.tails[self.from_call.location(at)]);
            let part = alone(problem, label, tail, limits.close, limits.longest)?;
            Some((cost(label.travel, part.span()), at, part))
        })
    }

    /// Pairs of stretches through two sets that are better than `least`, each told to `better`.
    fn joins(
        &self,
        problem: &Problem,
        first: usize,
        second: usize,
        least: &mut u32,
        mut better: impl FnMut(u32, usize, usize, Joined),
    ) -> usize {
        let longest = problem.days[self.day].longest;
        let mut looked = 0;
        if self.from_wrap.of_set(second).is_empty() {
            return 0;
        }
        for a in self.from_call.of_set(first) {
            let (label, at) = (self.from_call.label(a), self.from_call.location(a));
            for b in self.from_wrap.of_set(second) {
                looked += 1;
                let (other, travel) =
                    (self.from_wrap.label(b), problem.moves[at][self.from_wrap.location(b)]);
                if (label.travel + travel + other.travel) as u32 > *least >> 16 {
                    continue;
                }
                if let Some(day) = joined(problem, label, travel, other, longest) {
                    let found = cost(day.travel, day.part.span());
                    if found < *least {
                        *least = found;
                        better(found, a, b, day);
                    }
                }
            }
        }
        looked
    }

    /// The locations of a set, a bit for each.
    fn places(&self, set: usize) -> usize {
        let of = self.locations.iter().enumerate().filter(|(job, _)| set >> job & 1 == 1);
        of.fold(0, |places, (_, location)| places | 1 << location)
    }
}

/// Every part of a set but none and all.
fn parts(set: usize) -> impl Iterator<Item = usize> {
    let next = move |part: &usize| Some((part - 1) & set).filter(|part| *part != 0);
    core::iter::successors(next(&set), next)
}

/// So many locations have a bound on their travel; with more of them it would cost more than it saves. Our own choice.
const BOUNDED: usize = 10;

/// Least travel that sees each set of locations, from any of them to any other: no day can do with less.
fn least_travel(problem: &Problem) -> Vec<u32> {
    let places = problem.moves.len();
    if places > BOUNDED {
        return Vec::new();
    }
    let mut ending = vec![vec![NEVER; places]; 1 << places];
    for set in 1..1 << places {
        for last in (0..places).filter(|place| set >> place & 1 == 1) {
            let before = set & !(1 << last);
            let from = |place: usize| ending[before][place].saturating_add(problem.moves[place][last] as u32);
            ending[set][last] = if before == 0 { 0 } else { (0..places).map(from).min().unwrap_or(NEVER) };
        }
    }
    ending.iter().map(|of| of.iter().copied().min().unwrap_or(NEVER)).collect()
}
