//! Stretches of work without a meal, for each set of a day's set-ups and its last location.
//!
//! Sets are met in the order of their bits, so that all smaller ones are known. A set and the location of its last
//! set-up hold the labels that no other covers. No stretch is longer than the meal rule allows, which keeps them few.

use core::ops::Range;

use super::label::Label;
use super::problem::{Job, MealFrom, Minutes, Problem, Window};

/// Labels kept for one set and last location. Above it others are dropped and nothing is proved any more. Our own
/// choice; the committed instances need far fewer.
const KEPT: usize = 400;

/// One set-up of a stretch: which job of the day, in which of its windows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// Place in the day's list.
    pub job: usize,
    /// The window.
    pub window: Window,
}

/// A label and where it came from.
#[derive(Clone, Copy, Debug)]
struct Entry {
    label: Label,
    job: u8,
    window: u8,
    /// Place of the label before; `NONE` for the first.
    before: u32,
}

const NONE: u32 = u32::MAX;

/// A job of the day, in the walk's own direction of time.
#[derive(Clone, Debug)]
struct Task {
    location: usize,
    minutes: Minutes,
    windows: Vec<Window>,
}

/// The walk through the sets of one day, forwards or in the mirror.
#[derive(Clone, Debug)]
pub struct Walk {
    tasks: Vec<Task>,
    mirrored: bool,
    open: Minutes,
    longest: Minutes,
    next: usize,
    entries: Vec<Entry>,
    /// Where the entries of each set begin.
    begins: Vec<u32>,
    scratch: Vec<Vec<Entry>>,
    capped: bool,
}

impl Walk {
    /// The walk through `jobs` (places in the problem's list) on a day. Windows end `earlier`, as far as their length
    /// allows: then every set-up has that much slack.
    pub fn new(problem: &Problem, day: usize, jobs: &[usize], earlier: Minutes, mirrored: bool) -> Self {
        let of = |job: &usize| task(&problem.jobs[*job], day, earlier, mirrored);
        let locations = problem.moves.len();
        let limits = problem.days[day];
        Self {
            tasks: jobs.iter().map(of).collect(),
            mirrored,
            open: if mirrored { -limits.close } else { limits.open },
            longest: limits.longest,
            next: 1,
            entries: Vec::new(),
            begins: vec![0; 2],
            scratch: vec![Vec::new(); locations],
            capped: false,
        }
    }

    /// Walks on for about `work` labels; `true` when all sets have been seen.
    pub fn step(&mut self, problem: &Problem, work: usize) -> bool {
        let (mut done, sets) = (0, 1 << self.tasks.len());
        while done < work && self.next < sets {
            done += self.set(problem, self.next) + 1;
            self.next += 1;
        }
        self.next >= sets
    }

    /// How much of it is done.
    pub fn share(&self) -> f64 {
        self.next as f64 / (1_u64 << self.tasks.len()) as f64
    }

    /// Whether labels were dropped.
    pub const fn capped(&self) -> bool {
        self.capped
    }

    /// Places of all labels of a set.
    pub fn of_set(&self, set: usize) -> Range<usize> {
        self.begins[set] as usize..self.begins[set + 1] as usize
    }

    /// Bare minutes of a set's jobs.
    pub fn minutes(&self, set: usize) -> u32 {
        let of = self.tasks.iter().enumerate().filter(|(job, _)| set >> job & 1 == 1);
        of.map(|(_, task)| u32::from(task.minutes.unsigned_abs())).sum()
    }

    /// The label at a place.
    pub fn label(&self, at: usize) -> &Label {
        &self.entries[at].label
    }

    /// The location at which the stretch of a label ends.
    pub fn location(&self, at: usize) -> usize {
        self.tasks[usize::from(self.entries[at].job)].location
    }

    /// The steps to a label, in the walk's own order, windows as they truly are.
    pub fn way(&self, at: usize) -> Vec<Step> {
        let (mut steps, mut next) = (Vec::new(), at as u32);
        while next != NONE {
            let entry = &self.entries[next as usize];
            let window = self.tasks[usize::from(entry.job)].windows[usize::from(entry.window)];
            let window = if self.mirrored { flipped(&window) } else { window };
            steps.push(Step { job: usize::from(entry.job), window });
            next = entry.before;
        }
        steps.reverse();
        steps
    }

    /// All labels of one set; gives how many were looked at.
    fn set(&mut self, problem: &Problem, set: usize) -> usize {
        let mut looked = 0;
        for job in (0..self.tasks.len()).filter(|job| set >> job & 1 == 1) {
            let before = set & !(1 << job);
            looked += if before == 0 { self.first(problem, job) } else { self.longer(problem, before, job) };
        }
        for found in &mut self.scratch {
            self.entries.append(found);
        }
        self.begins.push(self.entries.len() as u32);
        looked
    }

    fn first(&mut self, problem: &Problem, job: usize) -> usize {
        let task = &self.tasks[job];
        let (lead, tail) = (problem.leads[task.location], problem.tails[task.location]);
        let begin = match (self.mirrored, problem.meal.from) {
            (true, _) => (self.open, tail, tail),
            (false, MealFrom::FirstSetUp) => (self.open, lead, lead),
            (false, MealFrom::Call) => (self.open, lead, 0),
        };
        for (n, window) in task.windows.iter().enumerate() {
            let label = Label::first(begin, task.minutes, window).filter(|l| l.part.span() <= self.longest);
            if let Some(label) = label {
                let entry = Entry { label, job: job as u8, window: n as u8, before: NONE };
                self.capped |= !keep(&mut self.scratch[task.location], entry);
            }
        }
        task.windows.len()
    }

    fn longer(&mut self, problem: &Problem, before: usize, job: usize) -> usize {
        let mut looked = 0;
        let task = &self.tasks[job];
        for at in self.of_set(before) {
            let from = self.location(at);
            let ends = if self.mirrored { (task.location, from) } else { (from, task.location) };
            let travel = problem.moves[ends.0][ends.1];
            let label = self.entries[at].label;
            for (n, window) in task.windows.iter().enumerate() {
                looked += 1;
                let longer = label.then(travel, task.minutes, window);
                let fits = |l: &Label| l.counted() <= problem.meal.within && l.part.span() <= self.longest;
                if let Some(label) = longer.filter(fits) {
                    let entry = Entry { label, job: job as u8, window: n as u8, before: at as u32 };
                    self.capped |= !keep(&mut self.scratch[task.location], entry);
                }
            }
        }
        looked
    }
}

/// Keeps `entry` unless another covers it, and drops what it covers. `false` if the list was full.
fn keep(list: &mut Vec<Entry>, entry: Entry) -> bool {
    if list.iter().any(|other| other.label.covers(&entry.label)) {
        return true;
    }
    list.retain(|other| !entry.label.covers(&other.label));
    if list.len() < KEPT {
        list.push(entry);
        return true;
    }
    false
}

fn task(job: &Job, day: usize, earlier: Minutes, mirrored: bool) -> Task {
    let sooner =
        |window: &Window| Window { to: (window.to - earlier).max(window.from + job.minutes), ..*window };
    let turned = |window: Window| if mirrored { flipped(&window) } else { window };
    let of_day = job.windows.iter().filter(|window| window.day == day);
    Task { location: job.location, minutes: job.minutes, windows: of_day.map(sooner).map(turned).collect() }
}

const fn flipped(window: &Window) -> Window {
    Window { day: window.day, from: -window.to, to: -window.from }
}
