//! Plans beside CP-SAT of OR-Tools: all four objectives must equal the proven optima, in `schedules.json` and in twenty
//! larger instances. Every plan is also checked against the rules by [`super::schedule_checker`].

use std::fs;
use std::path::Path;

use serde_json::Value;
use slantlight::plan::schedule::problem::{Day, Job, Meal, MealFrom, Minutes, Problem, Window};
use slantlight::plan::schedule::solution::Solution;
use slantlight::plan::schedule::solver::Solver;

use super::kit::{self, Failure};
use super::schedule_checker;

/// The limit of the table's meal rule.
const MEAL_WITHIN: Minutes = 360;

/// Instances that the repository holds.
const COMMITTED: usize = 40;

/// Work of a slice: small, so that the tests cut the search in many places.
const SLICE: usize = 5_000;

#[test]
fn all_objectives_equal_the_proven_optima() {
    let agreed = check(&kit::folder()).unwrap_or_else(|failure| panic!("{failure}"));
    println!("schedules.json: {agreed} instances, all objectives equal");
}

#[test]
fn twenty_larger_ones_too() {
    let file = "schedules_large.json";
    let agreed = every(&kit::committed(), file, Some(20)).unwrap_or_else(|failure| panic!("{failure}"));
    println!("{file}: {agreed} instances of 13 to 16 set-ups, all objectives equal");
}

/// Every instance of `schedules.json`; gives their number.
pub fn check(folder: &Path) -> Result<usize, Failure> {
    let committed = (folder == kit::committed()).then_some(COMMITTED);
    every(folder, "schedules.json", committed)
}

fn every(folder: &Path, file: &str, count: Option<usize>) -> Result<usize, Failure> {
    let text = fs::read_to_string(folder.join(file)).map_err(|error| Failure::unreadable(file, &error))?;
    let malformed = |line: usize, reason: &str| Failure::malformed(file, line, reason);
    let json: Value = serde_json::from_str(&text).map_err(|error| malformed(0, &error.to_string()))?;
    let all = json["instances"].as_array().ok_or_else(|| malformed(0, "no instances"))?;
    if all.is_empty() || count.is_some_and(|count| count != all.len()) {
        return Err(malformed(0, &format!("{} instances, expected {count:?}", all.len())));
    }
    for (n, one) in all.iter().enumerate() {
        // Each instance has a line of its own, after the head's.
        let line = n + 2;
        let (problem, optimum) = read(one).ok_or_else(|| malformed(line, "not an instance"))?;
        let solution = solved(problem.clone());
        let counted =
            schedule_checker::check(&problem, &solution).map_err(|words| malformed(line, &words))?;
        if counted != optimum || !solution.proved {
            let words = format!("{counted:?}, proved: {}; expected {optimum:?}", solution.proved);
            return Err(malformed(line, &words));
        }
    }
    Ok(all.len())
}

/// The plan, found in small slices.
pub fn solved(problem: Problem) -> Solution {
    let mut solver = Solver::new(problem);
    while !solver.step(SLICE) {}
    solver.solution()
}

/// An instance and its optimum: weight, days, travel, span.
pub fn read(json: &Value) -> Option<(Problem, [i64; 4])> {
    let days = list(&json["days"], |day| {
        Some(Day {
            open: minutes(&day["open"])?,
            close: minutes(&day["close"])?,
            longest: minutes(&day["max_span"])?,
        })
    })?;
    let moves = list(&json["travel"], |row| list(row, minutes))?;
    let meal = Meal { minutes: minutes(&json["meal"])?, within: MEAL_WITHIN, from: MealFrom::FirstSetUp };
    let jobs = list(&json["setups"], job)?;
    let optimum = ["weight", "days", "travel", "span"].map(|name| json["optimum"][name].as_i64());
    let [Some(weight), Some(used), Some(travel), Some(span)] = optimum else { return None };
    let none = vec![0; moves.len()];
    let problem = Problem {
        days,
        leads: none.clone(),
        tails: none,
        moves,
        meal,
        jobs,
        matches: Vec::new(),
        rests: Vec::new(),
    };
    Some((problem, [weight, used, travel, span]))
}

fn job(json: &Value) -> Option<Job> {
    let window = |one: &Value| {
        let day = usize::try_from(one[0].as_u64()?).ok()?;
        Some(Window { day, from: minutes(&one[1])?, to: minutes(&one[2])? })
    };
    Some(Job {
        location: usize::try_from(json["location"].as_u64()?).ok()?,
        minutes: minutes(&json["minutes"])?,
        weight: u32::try_from(json["weight"].as_u64()?).ok()?,
        windows: list(&json["windows"], window)?,
    })
}

fn list<T>(json: &Value, read: impl Fn(&Value) -> Option<T>) -> Option<Vec<T>> {
    json.as_array()?.iter().map(read).collect()
}

fn minutes(json: &Value) -> Option<Minutes> {
    Minutes::try_from(json.as_i64()?).ok()
}
