//! How long a plan takes: 14 set-ups at 4 locations on 5 days, as drawn for `tests/data/schedules_large.json`, and the
//! same with windows that are open all day. Thread CPU time, median of 15 rounds each.
//!
//! `cargo bench --bench schedule` prints the median and the slowest instance with the bars they must hold.
#![allow(clippy::print_stdout, reason = "a bench talks")]
#![allow(clippy::unwrap_used, reason = "a bench may stop at the first surprise")]

use std::hint::black_box;

use cpu_time::ThreadTime;
use serde_json::Value;
use slantlight::plan::schedule::problem::{Day, Job, Meal, MealFrom, Minutes, Problem, Window};
use slantlight::plan::schedule::solver::Solver;

const ROUNDS: usize = 15;

fn main() {
    let text = std::fs::read_to_string("tests/data/schedules_large.json").unwrap();
    let json: Value = serde_json::from_str(&text).unwrap();
    let all: Vec<Problem> = json["instances"].as_array().unwrap().iter().map(problem).collect();
    for size in 13..=16 {
        let typical: Vec<Problem> = all.iter().filter(|one| one.jobs.len() == size).cloned().collect();
        report(&format!("n = {size}, typical"), &typical, (size == 14).then_some(60.0));
    }
    let wide: Vec<Problem> = all.iter().filter(|one| one.jobs.len() == 14).map(all_day).collect();
    report("n = 14, all-day windows", &wide, Some(400.0));
    let widest: Vec<Problem> = all.iter().filter(|one| one.jobs.len() == 16).map(all_day).collect();
    report("n = 16, all-day windows", &widest, None);
}

fn report(name: &str, problems: &[Problem], bar: Option<f64>) {
    let (mut times, proved): (Vec<f64>, Vec<bool>) = problems.iter().map(milliseconds).unzip();
    times.sort_by(f64::total_cmp);
    let proved = proved.iter().filter(|proved| **proved).count();
    let bar = bar.map(|bar| format!(", hold ≤ {bar} ms")).unwrap_or_default();
    println!(
        "{name}: median {:.1} ms, slowest {:.1} ms, {proved} of {} proved{bar}",
        times[times.len() / 2],
        times[times.len() - 1],
        problems.len(),
    );
}

/// Time, and whether the plan is proved.
fn milliseconds(problem: &Problem) -> (f64, bool) {
    let mut rounds: Vec<(f64, bool)> = (0..ROUNDS).map(|_| once(problem)).collect();
    rounds.sort_by(|a, b| a.0.total_cmp(&b.0));
    rounds[ROUNDS / 2]
}

fn once(problem: &Problem) -> (f64, bool) {
    let start = ThreadTime::now();
    let mut solver = Solver::new(problem.clone());
    while !solver.step(10_000) {}
    let proved = black_box(solver.solution()).proved;
    (start.elapsed().as_secs_f64() * 1000.0, proved)
}

fn all_day(problem: &Problem) -> Problem {
    let mut wide = problem.clone();
    let of = |(day, limits): (usize, &Day)| Window { day, from: limits.open, to: limits.close };
    let windows: Vec<Window> = wide.days.iter().enumerate().map(of).collect();
    for job in &mut wide.jobs {
        job.windows.clone_from(&windows);
    }
    wide
}

fn problem(json: &Value) -> Problem {
    let list = |name: &str| json[name].as_array().unwrap().iter();
    let day = |day: &Value| Day {
        open: minutes(&day["open"]),
        close: minutes(&day["close"]),
        longest: minutes(&day["max_span"]),
    };
    let moves: Vec<Vec<Minutes>> =
        list("travel").map(|row| row.as_array().unwrap().iter().map(minutes).collect()).collect();
    let meal = Meal { minutes: minutes(&json["meal"]), within: 360, from: MealFrom::FirstSetUp };
    Problem {
        days: list("days").map(day).collect(),
        leads: vec![0; moves.len()],
        tails: vec![0; moves.len()],
        moves,
        meal,
        jobs: list("setups").map(job).collect(),
        matches: Vec::new(),
        rests: Vec::new(),
    }
}

fn job(json: &Value) -> Job {
    let window = |one: &Value| Window {
        day: one[0].as_u64().unwrap() as usize,
        from: minutes(&one[1]),
        to: minutes(&one[2]),
    };
    Job {
        location: json["location"].as_u64().unwrap() as usize,
        minutes: minutes(&json["minutes"]),
        weight: json["weight"].as_u64().unwrap() as u32,
        windows: json["windows"].as_array().unwrap().iter().map(window).collect(),
    }
}

fn minutes(json: &Value) -> Minutes {
    Minutes::try_from(json.as_i64().unwrap()).unwrap()
}
