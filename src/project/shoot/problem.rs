//! From the document to the schedule: set-ups become jobs with windows, days become limits, and a plan comes back.
//!
//! Minutes are counted on the clock of the shoot, which is that of the first set-up's location.

use std::collections::HashMap;
use std::sync::Arc;

use chrono::{NaiveDate, NaiveTime, Timelike};

use super::matching::matches;
use super::{Placed, Shoot};
use crate::place::site::Site;
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::schedule::problem::{Day, Job, Meal, Minutes, Problem, Rest, Window};
use crate::plan::schedule::solution::Solution;
use crate::plan::search::slot::Slot;
use crate::plan::search::slots;
use crate::plan::stage::Stage;
use crate::plan::today::backwards::{MOVE_BESIDE_DRIVE, SHORTEST_MOVE, drive_minutes};
use crate::plan::wish::DateRange;
use crate::project::document::{Project, SetUp};
use crate::project::stage;
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span, Spans};

/// How far ahead the nearest date is looked for: a year. Our own choice.
const AHEAD: u32 = 366;

/// Mean radius of the Earth, metres (IUGG).
const EARTH: f64 = 6_371_008.8;

/// Gives the zone of a name.
pub type Zones<'a> = &'a dyn Fn(&str) -> Arc<Zone>;

/// A set-up with its light on the days of the shoot.
#[derive(Clone, Debug)]
pub struct Lit {
    /// Its id.
    pub set_up: String,
    /// What the search needs; `None` while it stands nowhere.
    pub stage: Option<Stage>,
    /// Slots on the days of the shoot, longer than it takes.
    pub slots: Vec<Slot>,
    /// When it may be shot: its slots within the hours of the place and of all it needs.
    pub open: Spans,
    /// Why, for those that have no such time.
    pub without: Option<String>,
}

/// A schedule's problem with what its numbers stand for.
#[derive(Clone, Debug)]
pub struct Brief {
    /// The problem.
    pub problem: Problem,
    /// Every set-up of the project, in the order of the problem's jobs.
    pub lit: Vec<Lit>,
    /// The clock of the shoot.
    pub zone: Arc<Zone>,
    days: Vec<NaiveDate>,
}

/// The light of every set-up on the days of the shoot.
pub fn lit(project: &Project, zones: Zones<'_>) -> Vec<Lit> {
    project.set_ups().map(|(_, set_up)| lit_set_up(project, set_up, zones)).collect()
}

fn lit_set_up(project: &Project, set_up: &SetUp, zones: Zones<'_>) -> Lit {
    let nowhere = |why: String| Lit {
        set_up: set_up.id.clone(),
        stage: None,
        slots: Vec::new(),
        open: Spans::none(),
        without: Some(why),
    };
    let Some(location) = set_up.at.as_ref().and_then(|at| project.location(&at.location)) else {
        return nowhere("it has no place yet".to_owned());
    };
    let zone = zones(&location.zone);
    let stage = match stage::of_set_up(project, &set_up.id, Zone::clone(&zone)) {
        Ok(stage) => stage,
        Err(why) => return nowhere(why.to_string()),
    };
    let shoot = &project.shoot;
    let sun = Sun::new(stage.site);
    let dates: Vec<DateRange> = shoot.days.iter().map(|day| DateRange { from: *day, to: *day }).collect();
    let found = slots(&sun, &stage, &dates);
    let light = Spans::gather(found.iter().map(|slot| slot.span).collect());
    let open = allowed(shoot, &set_up.id, &location.id, &zone, &light);
    let fits = open.iter().any(|span| span.duration() >= stage.takes);
    let without = (!fits).then(|| match light.is_empty() {
        true => no_light(&sun, &stage, shoot),
        false => "its light comes when the place is closed or somebody it needs is away".to_owned(),
    });
    Lit { set_up: set_up.id.clone(), stage: Some(stage), slots: found, open, without }
}

/// Light within the hours of the place and of people and things.
fn allowed(shoot: &Shoot, set_up: &str, location: &str, zone: &Zone, light: &Spans) -> Spans {
    let (Some(first), Some(last)) = (light.as_slice().first(), light.as_slice().last()) else {
        return Spans::none();
    };
    let whole = Span::new(first.start(), last.end()).expect("a set of spans runs forwards");
    let needed = shoot
        .free
        .iter()
        .filter(|free| free.set_ups.is_empty() || free.set_ups.iter().any(|id| id == set_up));
    let hours = shoot.place(location).hours.into_iter().chain(needed.map(|free| free.hours));
    hours.fold(light.clone(), |left, hours| left.and(&calendar::hours(zone, hours, whole)))
}

/// "no window on any chosen date; the nearest is 14 Mar".
fn no_light(sun: &Sun, stage: &Stage, shoot: &Shoot) -> String {
    let Some(first) = shoot.days.iter().min() else { return "no date is chosen yet".to_owned() };
    let from = calendar::moved(*first, -i64::from(AHEAD) / 2);
    let around = DateRange { from, to: calendar::later(from, AHEAD) };
    let away = |slot: &Slot| shoot.days.iter().map(|day| calendar::days_between(*day, slot.date).abs()).min();
    match slots(sun, stage, &[around]).iter().min_by_key(|slot| away(slot)) {
        Some(slot) => {
            format!("no window on any chosen date; the nearest is {}", crate::words::date_short(slot.date))
        }
        None => "no window in half a year before and after; its wish asks for too much".to_owned(),
    }
}

/// The whole problem. What cannot be placed has no windows and its reason.
pub fn brief(project: &Project, zones: Zones<'_>) -> Brief {
    let shoot = &project.shoot;
    let lit = lit(project, zones);
    let zone = zone_of(project, zones);
    let mut days = shoot.days.clone();
    crate::order::by(&mut days, Ord::cmp);
    days.dedup();
    let places: Vec<&str> = project.locations.iter().map(|location| location.id.as_str()).collect();
    let job = |(one, (_, set_up)): (&Lit, (_, &SetUp))| Job {
        location: set_up
            .at
            .as_ref()
            .and_then(|at| places.iter().position(|id| *id == at.location))
            .unwrap_or(0),
        minutes: whole_minutes(set_up.minutes),
        weight: weight(shoot, &set_up.id),
        windows: windows(shoot, one, &days, &zone, set_up),
    };
    let jobs: Vec<Job> = lit.iter().zip(project.set_ups()).map(job).collect();
    let problem = Problem {
        days: vec![limits(shoot); days.len()],
        moves: moves(project),
        leads: times(project, |place| place.times.lead()),
        tails: times(project, |place| place.times.wrap_out),
        meal: Meal {
            minutes: short(shoot.meal.minutes),
            within: short(shoot.meal.within_minutes.max(1)),
            from: shoot.meal.from.into(),
        },
        matches: matches(project, (&lit, &jobs), (&days, &zone)),
        rests: rests(shoot, &days),
        jobs,
    };
    Brief { problem, lit, zone, days }
}

/// The clock of the shoot.
pub fn zone_of(project: &Project, zones: Zones<'_>) -> Arc<Zone> {
    let first = project.set_ups().find_map(|(_, set_up)| project.location(&set_up.at.as_ref()?.location));
    let location = first.or(project.locations.first().map(|location| &**location));
    location.map_or_else(|| zones("UTC"), |location| zones(&location.zone))
}

impl Brief {
    /// A solution as a plan of the document; what is pinned stays, even where nothing fits around it.
    pub fn plan(&self, shoot: &Shoot, solution: &Solution) -> Vec<Placed> {
        let place = |day: usize, job: usize, start: Minutes| {
            let set_up = self.lit[job].set_up.clone();
            let old = shoot.placed(&set_up).filter(|placed| placed.pinned);
            let clock = Duration::from_minutes(i64::from(start));
            let start = old.map_or_else(|| self.zone.at_clock(self.days[day], clock), |placed| placed.start);
            Placed { set_up, start, pinned: old.is_some() }
        };
        let days = solution.days.iter();
        let found = days.flat_map(|day| day.set_ups.iter().map(|one| place(day.day, one.job, one.start)));
        let left = solution.undone.iter().filter_map(|job| shoot.placed(&self.lit[*job].set_up));
        found.chain(left.filter(|placed| placed.pinned).cloned()).collect()
    }
}

fn weight(shoot: &Shoot, set_up: &str) -> u32 {
    // What is pinned outweighs everything that is not: it stays.
    let pinned = shoot.placed(set_up).is_some_and(|placed| placed.pinned);
    let said = shoot.weights.get(set_up).map_or(1, |weight| u32::from((*weight).clamp(1, 9)));
    if pinned { said + 10_000 } else { said }
}

/// Windows in whole minutes within the light; of a pinned set-up only its own place.
fn windows(shoot: &Shoot, lit: &Lit, days: &[NaiveDate], zone: &Zone, set_up: &SetUp) -> Vec<Window> {
    let place = |at: Instant| {
        let (date, clock) = zone.clock(at);
        Some((days.iter().position(|day| *day == date)?, clock.minutes()))
    };
    if let Some(pinned) = shoot.placed(&set_up.id).filter(|placed| placed.pinned) {
        let at = place(pinned.start).map(|(day, clock)| (day, clock.round() as Minutes));
        let to = |from: Minutes| from + whole_minutes(set_up.minutes);
        return at.map(|(day, from)| Window { day, from, to: to(from) }).into_iter().collect();
    }
    let window = |span: Span| {
        let (day, from) = place(span.start())?;
        let from = from.ceil() as Minutes;
        let to = (from as f64 + span.duration().minutes()).floor().min(f64::from(LATEST)) as Minutes;
        (to - from >= whole_minutes(set_up.minutes)).then_some(Window { day, from, to })
    };
    lit.open.iter().filter_map(window).collect()
}

/// The end of the next day.
const LATEST: Minutes = 48 * 60;

fn limits(shoot: &Shoot) -> Day {
    let minute = |time: NaiveTime| (time.num_seconds_from_midnight() / 60) as Minutes;
    let (open, wrap) = (minute(shoot.limits.call), minute(shoot.limits.wrap));
    let close = if wrap > open { wrap } else { wrap + 24 * 60 };
    Day { open, close, longest: short(shoot.limits.longest_minutes) }
}

/// Between days so near that the rule could be broken.
fn rests(shoot: &Shoot, days: &[NaiveDate]) -> Vec<Rest> {
    let pair = |before: usize, after: usize| {
        let apart = calendar::days_between(days[before], days[after]) * 24 * 60;
        let least = i64::from(shoot.rest.minutes) - apart;
        // A day reaches to the end of the next one.
        (least > -i64::from(LATEST)).then_some(Rest { before, after, least: least as Minutes })
    };
    (0..days.len())
        .flat_map(|before| (before + 1..days.len()).filter_map(move |after| pair(before, after)))
        .collect()
}

fn times(project: &Project, of: impl Fn(&super::PlaceWork) -> u16) -> Vec<Minutes> {
    let all = project.locations.iter().map(|location| short(of(&project.shoot.place(&location.id))));
    let all: Vec<Minutes> = all.collect();
    if all.is_empty() { vec![0] } else { all }
}

/// Minutes from one location's last set-up to another's first: wrapping, the road, unloading, rigging.
pub(in crate::project) fn moves(project: &Project) -> Vec<Vec<Minutes>> {
    let all = &project.locations;
    let rig: HashMap<&str, u16> = all
        .iter()
        .map(|place| (place.id.as_str(), project.shoot.place(&place.id).times.at_place()))
        .collect();
    let between = |from: &str, to: &str| match from == to {
        true => 0,
        false => short(move_minutes(project, from, to).0 + rig[to]),
    };
    let rows = all.iter().map(|from| all.iter().map(|to| between(&from.id, &to.id)).collect());
    let rows: Vec<Vec<Minutes>> = rows.collect();
    if rows.is_empty() { vec![vec![0]] } else { rows }
}

/// Minutes of a move without the rigging there, and whether the drive is an estimate.
pub fn move_minutes(project: &Project, from: &str, to: &str) -> (u16, bool) {
    let (drive, estimated) = drive(project, from, to);
    ((MOVE_BESIDE_DRIVE + drive).max(SHORTEST_MOVE), estimated)
}

/// Minutes on the road, and whether they are an estimate.
pub fn drive(project: &Project, from: &str, to: &str) -> (u16, bool) {
    let is = |drive: &&super::Drive| {
        (drive.from == from && drive.to == to) || (drive.from == to && drive.to == from)
    };
    if let Some(typed) = project.shoot.drives.iter().find(is) {
        return (typed.minutes.min(600), false);
    }
    let sites = (project.location(from).map(|l| l.site), project.location(to).map(|l| l.site));
    match sites {
        (Some(from), Some(to)) => (drive_minutes(straight(from, to)), true),
        _ => (0, true),
    }
}

/// The straight way between two places on a round Earth, metres: the angle between their directions from its middle.
fn straight(from: Site, to: Site) -> f64 {
    let up = |site: Site| {
        let (lat, lon) = (site.latitude.radians(), site.longitude.radians());
        let flat = crate::maths::cos(lat);
        [flat * crate::maths::cos(lon), flat * crate::maths::sin(lon), crate::maths::sin(lat)]
    };
    let (a, b) = (up(from), up(to));
    let chord: f64 = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum();
    EARTH * chord.sqrt()
}

fn whole_minutes(minutes: u32) -> Minutes {
    minutes.clamp(1, 24 * 60) as Minutes
}

pub(in crate::project) fn short(minutes: u16) -> Minutes {
    minutes.min(36 * 60) as Minutes
}
