//! Small plans worked out by hand, and laws that every plan obeys.

use proptest::prelude::*;

use super::matching::{Match, Measure, NOTHING, Scale};
use super::problem::{Day, Job, Meal, MealFrom, Minutes, Problem, Rest, Window};
use super::solution::Solution;
use super::solver::Solver;

fn job(location: usize, minutes: Minutes, windows: &[(usize, Minutes, Minutes)]) -> Job {
    let window = |(day, from, to): &(usize, Minutes, Minutes)| Window { day: *day, from: *from, to: *to };
    Job { location, minutes, weight: 1, windows: windows.iter().map(window).collect() }
}

fn problem(days: usize, jobs: Vec<Job>) -> Problem {
    Problem {
        days: vec![Day { open: 300, close: 1320, longest: 660 }; days],
        moves: vec![vec![0, 45], vec![45, 0]],
        leads: vec![0, 0],
        tails: vec![0, 0],
        meal: Meal { minutes: 60, within: 360, from: MealFrom::Call },
        jobs,
        matches: Vec::new(),
        rests: Vec::new(),
    }
}

fn solved(problem: &Problem) -> Solution {
    let mut solver = Solver::new(problem.clone());
    while !solver.step(500) {}
    solver.solution()
}

#[test]
fn dawn_and_dusk_are_not_one_crew() {
    // Handbook I3: 04:05 to 19:44 is 15.6 h.
    let dawn_and_dusk =
        [job(0, 30, &[(0, 245, 300), (1, 245, 300)]), job(0, 30, &[(0, 1130, 1184), (1, 1130, 1184)])];
    let mut both = problem(2, dawn_and_dusk.to_vec());
    for day in &mut both.days {
        day.open = 200;
    }
    let plan = solved(&both);
    assert_eq!((plan.worth.weight, plan.worth.days), (2, 2));
    assert!(plan.proved);
}

#[test]
fn call_is_worked_backwards_and_wrap_forwards() {
    let mut one = problem(1, vec![job(1, 15, &[(0, 1110, 1159)])]);
    (one.leads, one.tails) = (vec![0, 105], vec![0, 45]);
    let day = &solved(&one).days[0];
    assert_eq!((day.call, day.set_ups[0].start, day.wrap), (1005, 1110, 1170));
    assert_eq!(day.set_ups[0].slack(), 34);
}

#[test]
fn the_meal_is_counted_from_call_or_from_the_first_set_up() {
    let jobs = vec![job(0, 30, &[(0, 600, 630)]), job(0, 30, &[(0, 900, 930)])];
    let mut rigged = problem(1, jobs);
    rigged.leads = vec![60, 60];
    let meal = |problem: &Problem| solved(problem).days[0].meal;
    // From call, 9:00 to 15:30 is 390 minutes; from the first set-up it is 330.
    assert_eq!(meal(&rigged).map(|meal| (meal.start, meal.end, meal.before)), Some((630, 690, 1)));
    rigged.meal.from = MealFrom::FirstSetUp;
    assert_eq!(meal(&rigged), None);
}

#[test]
fn of_equal_orders_the_one_with_more_slack_is_taken() {
    // Whichever comes first, the day is as long; the second order leaves both 40 minutes, the first leaves one none.
    let plan = solved(&problem(1, vec![job(0, 40, &[(0, 600, 720)]), job(0, 40, &[(0, 600, 680)])]));
    let day = &plan.days[0];
    assert_eq!(day.set_ups.iter().map(|one| one.job).collect::<Vec<_>>(), [1, 0]);
    assert_eq!(day.set_ups.iter().map(|one| one.slack()).min(), Some(40));
}

fn within(jobs: &[usize], minutes: Minutes) -> Match {
    Match { jobs: jobs.to_vec(), measures: vec![Measure::clock(minutes)] }
}

#[test]
fn a_match_limit_draws_set_ups_together_across_days() {
    let jobs =
        vec![job(0, 30, &[(0, 480, 800)]), job(0, 30, &[(1, 480, 1000)]), job(0, 30, &[(0, 900, 1000)])];
    let mut free = problem(2, jobs);
    assert_eq!(solved(&free).worth.weight, 3);
    free.matches = vec![within(&[0, 1], 60)];
    let plan = solved(&free);
    let start =
        |job: usize| plan.days.iter().flat_map(|day| &day.set_ups).find(|one| one.job == job).unwrap().start;
    assert_eq!(plan.worth.weight, 3);
    assert!((start(0) - start(1)).abs() <= 30);
    free.matches = vec![within(&[0, 2], 60)];
    assert_eq!(solved(&free).worth.weight, 2, "100 minutes apart at least");
}

#[test]
fn a_day_begins_when_everybody_has_rested() {
    // Wrapped at 22:00 at the earliest; eleven hours later it is nine.
    let evening = job(0, 30, &[(0, 1200, 1320)]);
    let morning = job(0, 30, &[(1, 400, 700)]);
    let mut two = problem(2, vec![evening.clone(), morning]);
    let call = |plan: &Solution| plan.days[1].call - (plan.days[0].wrap - 1440);
    assert!(call(&solved(&two)) < 660);
    two.rests = vec![Rest { before: 0, after: 1, least: 660 - 1440 }];
    let plan = solved(&two);
    assert!(plan.proved && plan.worth.weight == 2 && call(&plan) >= 660, "{plan:?}");
    // Where both cannot be had, one is left over.
    let early = job(0, 30, &[(1, 300, 400)]);
    two.jobs = vec![evening, early];
    assert_eq!(solved(&two).worth.weight, 1);
}

#[test]
fn a_set_up_alone_has_nothing_to_match() {
    let mut free = problem(1, vec![job(0, 60, &[(0, 480, 600)]), job(0, 30, &[])]);
    free.matches = vec![within(&[0, 1], 20)];
    assert_eq!(solved(&free).worth.weight, 1);
}

/// Light that goes up and down by the minute: two set-ups of ten minutes find a place if and only if some pair of starts
/// keeps the limit.
fn both_fit(light: &[i32], most: i32, [one, other]: [(Minutes, Minutes); 2]) -> bool {
    let starts = |(from, to): (Minutes, Minutes)| from..=to - 10;
    let extent = |start: Minutes| {
        light[start as usize..=start as usize + 10]
            .iter()
            .fold((i32::MAX, i32::MIN), |(low, high), value| (low.min(*value), high.max(*value)))
    };
    starts(one).any(|a| {
        starts(other).any(|b| {
            let ((low, high), (least, largest)) = (extent(a), extent(b));
            (a - b).abs() >= 10 && high.max(largest) - low.min(least) <= most
        })
    })
}

#[test]
fn more_set_ups_than_can_be_proved_are_packed_all_the_same() {
    let windows: Vec<(usize, Minutes, Minutes)> = (0..4).map(|day| (day, 300, 1320)).collect();
    let plan = solved(&problem(4, (0..24).map(|n| job(n % 2, 60, &windows)).collect()));
    assert!(!plan.proved);
    assert_eq!((plan.worth.weight, plan.most_weight, plan.undone.len()), (24, 24, 0));
    assert!(plan.worth.days <= 4 && plan.worth.days >= plan.least_days, "{:?}", plan.worth);
}

#[test]
fn what_has_no_window_is_undone() {
    let plan = solved(&problem(1, vec![job(0, 30, &[]), job(0, 30, &[(0, 600, 700)])]));
    assert_eq!(plan.undone, [0]);
    assert!(solved(&problem(0, Vec::new())).days.is_empty());
}

fn some_problem() -> impl Strategy<Value = Problem> {
    let window = (0_usize..2, 300_i16..1200, 0_i16..200);
    let one = (0_usize..2, 15_i16..60, proptest::collection::vec(window, 1..3));
    proptest::collection::vec(one, 1..6).prop_map(|jobs| {
        let jobs = jobs.into_iter().map(|(location, minutes, windows)| {
            let windows: Vec<_> =
                windows.iter().map(|(day, from, more)| (*day, *from, from + minutes + more)).collect();
            job(location, minutes, &windows)
        });
        problem(2, jobs.collect())
    })
}

proptest! {
    #[test]
    fn a_looser_rule_never_hurts(tight in some_problem(), more in 0_i16..120) {
        let before = solved(&tight).worth.rank();
        let mut loose = tight.clone();
        for window in loose.jobs.iter_mut().flat_map(|job| &mut job.windows) {
            window.to += more;
        }
        prop_assert!(solved(&loose).worth.rank() <= before);
        for day in &mut loose.days {
            day.longest += more;
        }
        prop_assert!(solved(&loose).worth.rank() <= before);
    }

    #[test]
    fn light_matches_wherever_it_can(
        steps in proptest::collection::vec(-6_i32..7, 400),
        from in (300_i16..340, 300_i16..340),
        more in (10_i16..50, 10_i16..50),
        most in 3_i32..40,
    ) {
        let mut light: Vec<i32> = steps.iter().scan(0, |sum, step| { *sum += step; Some(*sum) }).collect();
        light[320] = NOTHING;
        let windows = [(from.0, from.0 + more.0), (from.1, from.1 + more.1)];
        let jobs = windows.map(|(from, to)| job(0, 10, &[(0, from, to)])).to_vec();
        let measure = Measure { most, scale: Scale::Light(vec![light.clone()].into()) };
        let matches = vec![Match { jobs: vec![0, 1], measures: vec![measure] }];
        let plan = solved(&Problem { matches, ..problem(1, jobs) });
        prop_assert!(plan.proved);
        prop_assert_eq!(plan.worth.weight == 2, both_fit(&light, most, windows));
    }

    #[test]
    fn slices_change_nothing(problem in some_problem()) {
        let mut at_once = Solver::new(problem.clone());
        while !at_once.step(usize::MAX) {}
        prop_assert_eq!(at_once.solution(), solved(&problem));
    }
}
