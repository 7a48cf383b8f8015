//! A plan in a sentence: what it holds, and how good it is known to be.

use super::problem::Problem;
use super::solution::Solution;
use crate::words;

/// "11 set-ups on 4 days. No plan does it in fewer days or with less travel."
pub fn found(problem: &Problem, solution: &Solution) -> String {
    let placed: usize = solution.days.iter().map(|day| day.set_ups.len()).sum();
    let days = solution.days.len();
    let left = match solution.undone.len() {
        0 => String::new(),
        left => format!(", {left} left over"),
    };
    let plan = format!("{} on {}{left}", words::count(placed, "set-up"), words::count(days, "day"));
    match (solution.proved, solution.undone.len()) {
        (true, 0) => format!("{plan}. No plan does it in fewer days or with less travel."),
        (true, _) => format!("{plan}. No plan holds more of what matters, or the same in fewer days."),
        (false, _) => format!("{plan}: the best found, not proved. {}", bound(problem, solution)),
    }
}

/// What no plan can do better than.
fn bound(problem: &Problem, solution: &Solution) -> String {
    let able = problem.jobs.iter().filter(|job| !job.windows.is_empty()).count();
    let least = solution.least_days as usize;
    if solution.worth.weight < solution.most_weight {
        let need = words::count(least, "day");
        return format!(
            "No plan can hold more than {}, and all of them need at least {need}.",
            words::count(able, "set-up")
        );
    }
    match solution.days.len() > least {
        true => {
            format!("All that can be is in it. Fewer than {} is not possible.", words::count(least, "day"))
        }
        false => "All that can be is in it, in the fewest days. Less travel may be possible.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::problem::{Day, Job, Meal, MealFrom, Window};
    use super::super::solver::Solver;
    use super::*;

    /// Set-ups of an hour each on a day that holds ten of them.
    fn told(set_ups: usize, days: usize) -> String {
        let windows: Vec<Window> = (0..days).map(|day| Window { day, from: 480, to: 1080 }).collect();
        let job = Job { location: 0, minutes: 60, weight: 1, windows };
        let problem = Problem {
            days: vec![Day { open: 480, close: 1080, longest: 600 }; days],
            moves: vec![vec![0]],
            leads: vec![0],
            tails: vec![0],
            meal: Meal { minutes: 0, within: 600, from: MealFrom::Call },
            jobs: vec![job; set_ups],
            matches: Vec::new(),
            rests: Vec::new(),
        };
        let mut solver = Solver::new(problem.clone());
        while !solver.step(100_000) {}
        found(&problem, &solver.solution())
    }

    #[test]
    fn what_is_proved_says_so() {
        assert!(told(4, 2).starts_with("4 set-ups on 1 day. No plan does it in fewer days"));
        assert!(told(12, 1).starts_with("10 set-ups on 1 day, 2 left over. No plan holds more"));
    }

    #[test]
    fn what_is_not_proved_has_a_bound() {
        assert!(told(18, 2).ends_with("in the fewest days. Less travel may be possible."), "{}", told(18, 2));
        let short = told(22, 2);
        assert!(
            short.contains("2 left over: the best found, not proved. No plan can hold more than 22 set-ups"),
            "{short}"
        );
        assert!(short.ends_with("need at least 3 days."), "{short}");
    }
}
