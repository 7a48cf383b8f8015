//! The days of a plan: calls, moves, meals and wraps that follow from what stands when.

use std::sync::Arc;

use chrono::NaiveDate;

use super::problem::{Lit, move_minutes};
use super::{CountedFrom, Placed, Shoot};
use crate::place::zone::Zone;
use crate::plan::today::backwards::{Backwards, READY_BEFORE, backwards};
use crate::project::document::Project;
use crate::units::{Duration, Instant, Span};

/// A set-up in its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stop {
    /// Set-up.
    pub set_up: String,
    /// Location; empty where it has none.
    pub location: String,
    /// From begin to end.
    pub span: Span,
    /// Everybody shall be ready by then.
    pub ready_by: Instant,
    /// Whether the solver must leave it there.
    pub pinned: bool,
    /// The open light that it stands in, if it does.
    pub light: Option<Span>,
}

/// A move between two stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Move {
    /// Place of the stop that follows.
    pub before: usize,
    /// Packing begins.
    pub at: Instant,
    /// To the other place, minutes.
    pub minutes: u16,
    /// Rigging there, minutes.
    pub rig: u16,
    /// Whether nobody has typed the drive.
    pub estimated: bool,
}

/// A day of the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run {
    /// Local date.
    pub date: NaiveDate,
    /// In order of time.
    pub stops: Vec<Stop>,
    /// From call to the first set-up.
    pub morning: Backwards,
    /// Moves in order.
    pub moves: Vec<Move>,
    /// The meal, and the place of the stop that follows.
    pub meal: Option<(Span, usize)>,
    /// Whether the rule asks for a meal that has no room.
    pub meal_missing: bool,
    /// Wrapped out.
    pub wrap: Instant,
}

fn minutes(minutes: u16) -> Duration {
    Duration::from_minutes(i64::from(minutes))
}

/// Every day of the plan, in order.
pub fn runs(project: &Project, lit: &[Lit], zone: &Arc<Zone>) -> Vec<Run> {
    let mut stops: Vec<Stop> = project.shoot.plan.iter().filter_map(|one| stop(project, lit, one)).collect();
    crate::order::by(&mut stops, |a, b| (a.span.start(), &a.set_up).cmp(&(b.span.start(), &b.set_up)));
    let mut days: Vec<(NaiveDate, Vec<Stop>)> = Vec::new();
    for stop in stops {
        let date = zone.date(stop.span.start());
        match days.last_mut() {
            Some((last, stops)) if *last == date => stops.push(stop),
            _ => days.push((date, vec![stop])),
        }
    }
    days.into_iter().map(|(date, stops)| run(project, date, stops)).collect()
}

fn stop(project: &Project, lit: &[Lit], placed: &Placed) -> Option<Stop> {
    let (_, set_up) = project.set_up(&placed.set_up)?;
    let end = placed.start + Duration::from_minutes(i64::from(set_up.minutes.max(1)));
    let span = Span::new(placed.start, end)?;
    let light = lit.iter().find(|one| one.set_up == placed.set_up);
    // Times are kept in whole minutes, light is not.
    let near = Duration::from_minutes(1);
    let holds = |light: &Span| light.start() - near < span.start() && span.end() < light.end() + near;
    Some(Stop {
        set_up: placed.set_up.clone(),
        location: set_up.at.as_ref().map(|at| at.location.clone()).unwrap_or_default(),
        span,
        ready_by: placed.start - READY_BEFORE,
        pinned: placed.pinned,
        light: light.and_then(|one| one.open.iter().find(holds)),
    })
}

fn run(project: &Project, date: NaiveDate, stops: Vec<Stop>) -> Run {
    let shoot = &project.shoot;
    let (first, last) = (&stops[0], &stops[stops.len() - 1]);
    let morning = backwards(first.span.start(), shoot.place(&first.location).times);
    let wrap = last.span.end() + minutes(shoot.place(&last.location).times.wrap_out);
    let moves = (1..stops.len()).filter_map(|n| moved(project, &stops, n)).collect::<Vec<_>>();
    let (meal, meal_missing) = meal(shoot, &stops, &moves, morning);
    Run { date, morning, moves, meal, meal_missing, wrap, stops }
}

fn moved(project: &Project, stops: &[Stop], before: usize) -> Option<Move> {
    let (from, to) = (&stops[before - 1], &stops[before]);
    if from.location == to.location {
        return None;
    }
    let (minutes, estimated) = move_minutes(project, &from.location, &to.location);
    let rig = project.shoot.place(&to.location).times.at_place();
    Some(Move { before, at: from.span.end(), minutes, rig, estimated })
}

impl Move {
    /// All of it, rigging included.
    pub fn takes(&self) -> Duration {
        minutes(self.minutes + self.rig)
    }
}

/// The first place for a meal that keeps the rule, and whether one is missing.
fn meal(shoot: &Shoot, stops: &[Stop], moves: &[Move], morning: Backwards) -> (Option<(Span, usize)>, bool) {
    let rule = &shoot.meal;
    let (within, long) = (minutes(rule.within_minutes), minutes(rule.minutes));
    let first = match rule.from {
        CountedFrom::Call => morning.call,
        CountedFrom::FirstSetUp => stops[0].span.start(),
    };
    let last = stops[stops.len() - 1].span.end();
    if last - first <= within {
        return (None, false);
    }
    let fits = |from: Instant, to: Instant| {
        let start = from.max(last - within - long);
        (start <= first + within && start + long <= to).then(|| Span::new(start, start + long)).flatten()
    };
    for n in 1..stops.len() {
        let (from, to) = (stops[n - 1].span.end(), stops[n].span.start());
        let travel = moves.iter().find(|one| one.before == n).map_or(Duration::ZERO, Move::takes);
        if let Some(span) = fits(from + travel, to).or_else(|| fits(from, to - travel)) {
            return (Some((span, n)), false);
        }
    }
    (None, true)
}
