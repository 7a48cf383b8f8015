//! What does not go together in a plan, and why. It looks at the plan as it stands and knows nothing of the solver.

use std::sync::Arc;

use super::day::Run;
use super::matching::unmatched;
use super::problem::Lit;
use crate::place::zone::Zone;
use crate::project::document::Project;
use crate::units::{Duration, Instant};
use crate::words::{self, Clock};

/// A conflict.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Conflict {
    /// The set-up it belongs to; `None` for the whole day.
    pub set_up: Option<String>,
    /// Why, a sentence without its stop.
    pub why: String,
}

/// Where times are read.
#[derive(Clone, Debug)]
pub struct Reading {
    /// The clock of the shoot.
    pub zone: Arc<Zone>,
    /// How hours are counted.
    pub style: Clock,
}

impl Reading {
    /// "17:38".
    pub fn clock(&self, at: Instant) -> String {
        words::clock(words::to_the_minute(self.zone.local(at)).time(), self.style)
    }
}

/// The conflicts of each day, in the order of the days.
pub fn conflicts(project: &Project, lit: &[Lit], runs: &[Run], read: &Reading) -> Vec<Vec<Conflict>> {
    let mut all: Vec<Vec<Conflict>> = runs.iter().map(|run| of_day(project, lit, run, read)).collect();
    for (n, pair) in runs.windows(2).enumerate() {
        let rest = pair[1].morning.call - pair[0].wrap;
        let rule = &project.shoot.rest;
        if rest < Duration::from_minutes(i64::from(rule.minutes)) {
            let slept = words::duration(rest.max(Duration::ZERO));
            all[n + 1].push(whole(format!(
                "only {slept} since the last wrap; the rule '{}' asks for more",
                rule.name
            )));
        }
    }
    unmatched(project, lit, runs, read, &mut all);
    all
}

fn whole(why: String) -> Conflict {
    Conflict { set_up: None, why }
}

fn of_day(project: &Project, lit: &[Lit], run: &Run, read: &Reading) -> Vec<Conflict> {
    let shoot = &project.shoot;
    let mut found = Vec::new();
    for (n, stop) in run.stops.iter().enumerate() {
        let mut say = |why: String| found.push(Conflict { set_up: Some(stop.set_up.clone()), why });
        if stop.light.is_none() {
            say(no_light(lit, &stop.set_up, run, read));
        }
        if n > 0 {
            let before = run.stops[n - 1].span.end();
            let travel =
                run.moves.iter().find(|one| one.before == n).map_or(Duration::ZERO, |one| one.takes());
            if before + travel > stop.span.start() {
                say(format!("the crew is not ready here before {}", read.clock(before + travel)));
            }
        }
    }
    if !shoot.days.contains(&run.date) {
        found.push(whole("this date is not among the shoot days".to_owned()));
    }
    let length = run.wrap - run.morning.call;
    if length > Duration::from_minutes(i64::from(shoot.limits.longest_minutes)) {
        found.push(whole(format!(
            "{} from call to wrap is longer than a day may be",
            words::duration(length)
        )));
    }
    let call = read.zone.local(run.morning.call);
    if call.date() != run.date || call.time() < shoot.limits.call {
        let limit = words::clock(shoot.limits.call, read.style);
        found.push(whole(format!("call at {} is before {limit}", read.clock(run.morning.call))));
    }
    let late = read.zone.instant(closing(run, project)).first();
    if run.wrap > late {
        found.push(whole(format!("wrap at {} is after {}", read.clock(run.wrap), read.clock(late))));
    }
    if run.meal_missing {
        found.push(whole(format!("no gap for a meal that keeps the rule '{}'", shoot.meal.name)));
    }
    found
}

/// The latest wrap of a day, on the local clock.
fn closing(run: &Run, project: &Project) -> chrono::NaiveDateTime {
    let limits = &project.shoot.limits;
    let date = if limits.wrap > limits.call { run.date } else { crate::plan::calendar::later(run.date, 1) };
    date.and_time(limits.wrap)
}

/// Why a set-up has no light where it stands.
fn no_light(lit: &[Lit], set_up: &str, run: &Run, read: &Reading) -> String {
    let Some(one) = lit.iter().find(|one| one.set_up == set_up) else {
        return "it is not in the project".to_owned();
    };
    let today = one.open.iter().filter(|span| read.zone.date(span.start()) == run.date);
    let windows: Vec<String> =
        today.map(|span| format!("{}–{}", read.clock(span.start()), read.clock(span.end()))).collect();
    match (windows.is_empty(), &one.without) {
        (false, _) => format!("its light is {}", windows.join(" and ")),
        (true, Some(why)) => why.clone(),
        (true, None) => "it has no light on this date".to_owned(),
    }
}
