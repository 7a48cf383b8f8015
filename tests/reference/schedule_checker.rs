//! Whether a plan keeps every rule of the problem, by the statement in `tests/data/make/schedules.py`; it shares nothing
//! with the search but the types. With leads and tails the day runs from call to wrap.

use slantlight::plan::schedule::matching::{Match, Scale};
use slantlight::plan::schedule::problem::{MealFrom, Problem};
use slantlight::plan::schedule::solution::{DayPlan, Solution};

/// Weight, days, travel, span, counted here.
pub type Counted = [i64; 4];

/// The four objectives of a plan that breaks no rule, or the rule that it breaks.
pub fn check(problem: &Problem, solution: &Solution) -> Result<Counted, String> {
    let mut seen = vec![false; problem.jobs.len()];
    let mut counted = [0, 0, 0, 0];
    let mut last_day = None;
    for day in &solution.days {
        if last_day.is_some_and(|last| day.day <= last) || day.set_ups.is_empty() {
            return Err(format!("day {} is empty, twice, or out of order", day.day));
        }
        last_day = Some(day.day);
        for one in &day.set_ups {
            if std::mem::replace(&mut seen[one.job], true) {
                return Err(format!("set-up {} is done twice", one.job));
            }
            counted[0] += i64::from(problem.jobs[one.job].weight);
        }
        let (travel, span) = one_day(problem, day).map_err(|words| format!("day {}: {words}", day.day))?;
        counted = [counted[0], counted[1] + 1, counted[2] + travel, counted[3] + span];
    }
    let undone: Vec<usize> = (0..seen.len()).filter(|job| !seen[*job]).collect();
    if undone != solution.undone {
        return Err(format!("undone are {undone:?}, said are {:?}", solution.undone));
    }
    for one in &problem.matches {
        matched(one, solution)?;
    }
    for rest in &problem.rests {
        let on = |day: usize| solution.days.iter().find(|plan| plan.day == day);
        if let (Some(before), Some(after)) = (on(rest.before), on(rest.after))
            && after.call - before.wrap < rest.least
        {
            return Err(format!("wrap {} and call {} leave too little rest", before.wrap, after.call));
        }
    }
    Ok(counted)
}

/// No two minutes of set-ups that must match are further apart than allowed; one alone is free.
fn matched(one: &Match, solution: &Solution) -> Result<(), String> {
    for measure in &one.measures {
        let mut values = Vec::new();
        let mut set_ups = 0;
        for (day, planned) in solution.days.iter().flat_map(|d| d.set_ups.iter().map(move |p| (d.day, p))) {
            if one.jobs.contains(&planned.job) {
                set_ups += 1;
                values.extend((planned.start..=planned.end).map(|minute| match &measure.scale {
                    Scale::Clock => i64::from(minute),
                    Scale::Light(days) => i64::from(days[day][minute as usize]),
                }));
            }
        }
        if let (Some(least), Some(most)) = (values.iter().min(), values.iter().max())
            && set_ups > 1
            && most - least > i64::from(measure.most)
        {
            return Err(format!("{least}–{most} is more than {}, which must match", measure.most));
        }
    }
    Ok(())
}

fn one_day(problem: &Problem, plan: &DayPlan) -> Result<(i64, i64), String> {
    let day = &problem.days[plan.day];
    let mut travel = 0;
    for one in &plan.set_ups {
        let job = &problem.jobs[one.job];
        let inside = job.windows.iter().any(|w| w.day == plan.day && w.from <= one.start && one.end <= w.to);
        if !inside || one.end - one.start != job.minutes {
            return Err(format!(
                "set-up {} at {}–{} lies in none of its windows",
                one.job, one.start, one.end
            ));
        }
    }
    let place = |n: usize| problem.jobs[plan.set_ups[n].job].location;
    for n in 1..plan.set_ups.len() {
        let (before, after) = (&plan.set_ups[n - 1], &plan.set_ups[n]);
        let mut gap = problem.moves[place(n - 1)][place(n)];
        travel += i64::from(gap);
        if let Some(meal) = plan.meal.filter(|meal| meal.before == n) {
            let (from, to) = if meal.after_move {
                (before.end + gap, after.start)
            } else {
                (before.end, after.start - gap)
            };
            if meal.start < from || meal.end > to || meal.end - meal.start != problem.meal.minutes {
                return Err(format!("the meal {}–{} is not within {from}–{to}", meal.start, meal.end));
            }
            gap += problem.meal.minutes;
        }
        if before.end + gap > after.start {
            return Err(format!("set-up {} begins before the crew is there", after.job));
        }
    }
    let (first, last) = (&plan.set_ups[0], &plan.set_ups[plan.set_ups.len() - 1]);
    let (lead, tail) = (problem.leads[place(0)], problem.tails[place(plan.set_ups.len() - 1)]);
    if plan.call + lead > first.start
        || plan.call < day.open
        || plan.wrap != last.end + tail
        || plan.wrap > day.close
    {
        return Err(format!("call {} and wrap {} do not hold the day", plan.call, plan.wrap));
    }
    let span = plan.wrap - plan.call;
    if span > day.longest {
        return Err(format!("{span} min are longer than {}", day.longest));
    }
    let count = match problem.meal.from {
        MealFrom::Call => plan.call,
        MealFrom::FirstSetUp => first.start,
    };
    match plan.meal {
        None if last.end - count > problem.meal.within => Err("a long day without a meal".to_owned()),
        Some(meal) if meal.before == 0 || meal.before >= plan.set_ups.len() => Err("no such gap".to_owned()),
        Some(meal) if meal.start > count + problem.meal.within => Err("the meal is too late".to_owned()),
        Some(meal) if meal.end < last.end - problem.meal.within => Err("the meal is too early".to_owned()),
        _ => Ok((travel, i64::from(span))),
    }
}
