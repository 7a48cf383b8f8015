//! Planning by hand: each act gives the shoot as it is after it. Nothing is refused; what does not go together is shown
//! as a conflict.

use chrono::{NaiveDate, NaiveTime, Timelike};

use super::conflicts::{Conflict, Reading, conflicts};
use super::day::runs;
use super::problem::{Lit, Zones, lit, zone_of};
use super::typing::time;
use super::{Placed, Shoot};
use crate::project::document::Project;
use crate::units::{Duration, Instant, Span};
use crate::words::{self, Clock};

/// A set-up taken in the hand: what can be done with it, and all that stays the same while it is moved.
#[derive(Clone, Debug)]
pub struct Held {
    /// "4 · Mending the sail, A".
    pub title: String,
    /// When it begins, minutes of the clock; `None` while it stands nowhere.
    pub clock: Option<u16>,
    /// Place of its day in the list.
    pub day: usize,
    /// The days of the shoot in words.
    pub days: Vec<(NaiveDate, String)>,
    /// Other set-ups of the plan, id and words.
    pub others: Vec<(String, String)>,
    /// Whether it is pinned.
    pub pinned: bool,
    /// Whether it matters more than others.
    pub matters: bool,
    /// First and last minute of the clock at which anything may stand.
    pub hours: (u16, u16),
    set_up: String,
    lit: Vec<Lit>,
    read: Reading,
}

/// Minutes of a day.
const DAY: u16 = 24 * 60;

impl Held {
    /// Takes a set-up; `None` if the project has it no more.
    pub fn of(project: &Project, set_up: &str, zones: Zones<'_>, style: Clock) -> Option<Self> {
        let (shoot, zone) = (&project.shoot, zone_of(project, zones));
        let title = |id: &str| {
            let (scene, set_up) = project.set_up(id)?;
            Some(format!("{}, {}", scene.heading(), set_up.name))
        };
        let placed = shoot.placed(set_up);
        let local = placed.map(|placed| words::to_the_minute(zone.local(placed.start)));
        let mut days = shoot.days.clone();
        days.extend(local.map(|local| local.date()).filter(|date| !shoot.days.contains(date)));
        let day = local.and_then(|local| days.iter().position(|day| *day == local.date())).unwrap_or(0);
        let others = shoot.plan.iter().filter(|other| other.set_up != set_up);
        let minute = |time: NaiveTime| (time.num_seconds_from_midnight() / 60) as u16;
        let (call, wrap) = (minute(shoot.limits.call), minute(shoot.limits.wrap));
        Some(Self {
            title: title(set_up)?,
            clock: local.map(|local| minute(local.time())),
            day,
            days: days.into_iter().map(|day| (day, words::date(day))).collect(),
            others: others.filter_map(|other| Some((other.set_up.clone(), title(&other.set_up)?))).collect(),
            pinned: placed.is_some_and(|placed| placed.pinned),
            matters: shoot.weights.contains_key(set_up),
            hours: if wrap > call { (call, wrap) } else { (0, DAY - 1) },
            set_up: set_up.to_owned(),
            lit: lit(project, zones),
            read: Reading { zone, style },
        })
    }

    fn open(&self, day: usize) -> Option<(&Lit, Vec<Span>)> {
        let (date, _) = self.days.get(day)?;
        let one = self.lit.iter().find(|one| one.set_up == self.set_up)?;
        let today = one.open.iter().filter(|span| self.read.zone.date(span.start()) == *date);
        Some((one, today.collect()))
    }

    /// "Its light that day: 17:20–18:26", or why there is none.
    pub fn light(&self, day: usize) -> String {
        let Some((one, open)) = self.open(day) else { return "Choose a shoot day first.".to_owned() };
        let clock =
            |span: &Span| format!("{}–{}", self.read.clock(span.start()), self.read.clock(span.end()));
        match (open.is_empty(), &one.without) {
            (false, _) => {
                format!("Its light that day: {}.", open.iter().map(clock).collect::<Vec<_>>().join(", "))
            }
            (true, Some(why)) => format!("{}.", words::capital(why)),
            (true, None) => "It has no light on this date.".to_owned(),
        }
    }

    /// Where it would begin on a day: where it does, else with the day's first light.
    pub fn begin(&self, day: usize) -> u16 {
        let first = || {
            let first = self.open(day)?.1.first()?.start() + Duration::from_millis(59_999);
            Some((self.read.zone.clock(first).1.minutes() as u16).min(DAY - 1))
        };
        self.clock.or_else(first).unwrap_or(self.hours.0)
    }

    /// The shoot with it on a day at a minute of the clock.
    pub fn at(&self, shoot: &Shoot, day: usize, minute: u16) -> Option<Shoot> {
        let (date, _) = self.days.get(day)?;
        let clock = Duration::from_minutes(i64::from(minute));
        Some(shoot.moved(&self.set_up, self.read.zone.at_clock(*date, clock)))
    }

    /// What would not go together there, a sentence each: its own conflicts and those of its day.
    pub fn faults(&self, project: &Project, shoot: &Shoot) -> Vec<String> {
        let moved = Project { shoot: shoot.clone(), ..project.clone() };
        let runs = runs(&moved, &self.lit, &self.read.zone);
        let all = conflicts(&moved, &self.lit, &runs, &self.read);
        let here = runs.iter().position(|run| run.stops.iter().any(|stop| stop.set_up == self.set_up));
        let own = |one: &&Conflict| one.set_up.as_ref().is_none_or(|id| *id == self.set_up);
        let found = here.and_then(|day| all.get(day)).into_iter().flatten().filter(own);
        found.map(|one| format!("{}.", words::capital(&one.why))).collect()
    }

    /// A minute of the clock as it was typed, "17:38".
    ///
    /// # Errors
    /// A sentence: no such time.
    pub fn typed(text: &str) -> Result<u16, &'static str> {
        Ok((time(text)?.num_seconds_from_midnight() / 60) as u16)
    }
}

impl Shoot {
    /// With a set-up at `start`, moved there or placed anew; where it was pinned it stays so.
    pub fn moved(&self, set_up: &str, start: Instant) -> Self {
        let mut after = self.clone();
        match after.plan.iter_mut().find(|placed| placed.set_up == set_up) {
            Some(placed) => placed.start = start,
            None => after.plan.push(Placed { set_up: set_up.to_owned(), start, pinned: false }),
        }
        after
    }

    /// With a set-up pinned, or let go.
    pub fn pinned(&self, set_up: &str, pinned: bool) -> Self {
        let mut after = self.clone();
        for placed in after.plan.iter_mut().filter(|placed| placed.set_up == set_up) {
            placed.pinned = pinned;
        }
        after
    }

    /// With two set-ups in each other's place.
    pub fn swapped(&self, one: &str, other: &str) -> Self {
        let (Some(first), Some(second)) = (self.placed(one), self.placed(other)) else { return self.clone() };
        self.moved(one, second.start).moved(other, first.start)
    }

    /// Without a set-up.
    pub fn removed(&self, set_up: &str) -> Self {
        let mut after = self.clone();
        after.plan.retain(|placed| placed.set_up != set_up);
        after
    }

    /// With a set-up mattering more, or as much as others again.
    pub fn weighted(&self, set_up: &str, weight: u16) -> Self {
        let mut after = self.clone();
        if weight > 1 {
            after.weights.insert(set_up.to_owned(), weight);
        } else {
            after.weights.remove(set_up);
        }
        after
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::place::zone::Zone;
    use crate::project::demo;

    #[test]
    fn what_is_held_shows_its_light_and_what_would_not_go_together() {
        let utc = |name: &str| Arc::new(Zone::fixed(name, Duration::ZERO));
        let mut project = demo::project();
        project.shoot.days = vec!["2027-03-24".parse().unwrap()];
        let held = Held::of(&project, "set-up-4a", &utc, Clock::TwentyFour).unwrap();
        assert!(
            held.clock.is_none() && held.light(0).starts_with("Its light that day: 17:"),
            "{}",
            held.light(0)
        );
        let good = held.at(&project.shoot, 0, held.begin(0)).unwrap();
        assert!(held.faults(&project, &good).is_empty(), "{:?}", held.faults(&project, &good));
        let noon = held.at(&project.shoot, 0, Held::typed("12:00").unwrap()).unwrap();
        assert!(
            held.faults(&project, &noon)[0].starts_with("Its light is 17:"),
            "{:?}",
            held.faults(&project, &noon)
        );
        assert!(held.at(&project.shoot, 7, 0).is_none() && Held::typed("noon").is_err());
    }

    fn at(hour: i64) -> Instant {
        Instant::from_unix_millis(hour * 3_600_000)
    }

    #[test]
    fn each_act_changes_what_it_says() {
        let plan = Shoot::default().moved("a", at(1)).moved("b", at(2)).pinned("b", true);
        let swapped = plan.swapped("a", "b");
        assert_eq!((swapped.placed("a").unwrap().start, swapped.placed("b").unwrap().start), (at(2), at(1)));
        assert!(swapped.placed("b").unwrap().pinned && !swapped.placed("a").unwrap().pinned);
        assert_eq!(plan.swapped("a", "nobody"), plan);
        assert_eq!(plan.removed("a").plan.len(), 1);
        assert_eq!(plan.weighted("a", 3).weighted("a", 1), plan);
    }
}
