//! Planning by hand: each act gives the shoot as it is after it. Nothing is refused; what does not go together is shown
//! as a conflict.

use chrono::{NaiveDate, Timelike};

use super::problem::{Zones, zone_of};
use super::typing::time;
use super::{Placed, Shoot};
use crate::project::document::Project;
use crate::units::{Duration, Instant};
use crate::words::{self, Clock};

/// What can be done with a set-up of the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// "4 · Mending the sail".
    pub title: String,
    /// When it begins, "17:38"; empty while it stands nowhere.
    pub clock: String,
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
}

/// The choices for a set-up; `None` if the project has it no more.
pub fn choice(project: &Project, set_up: &str, zones: Zones<'_>) -> Option<Choice> {
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
    Some(Choice {
        title: title(set_up)?,
        clock: local.map(|local| words::clock(local.time(), Clock::TwentyFour)).unwrap_or_default(),
        day,
        days: days.into_iter().map(|day| (day, words::date(day))).collect(),
        others: others.filter_map(|other| Some((other.set_up.clone(), title(&other.set_up)?))).collect(),
        pinned: placed.is_some_and(|placed| placed.pinned),
        matters: shoot.weights.contains_key(set_up),
    })
}

/// The shoot with a set-up on one of `days` at a typed time of the clock.
///
/// # Errors
/// A sentence: no such day, or no such time.
pub fn at(
    project: &Project,
    set_up: &str,
    (days, day): (&[(NaiveDate, String)], usize),
    typed: &str,
    zones: Zones<'_>,
) -> Result<Shoot, &'static str> {
    let (date, _) = days.get(day).ok_or("Choose a shoot day first.")?;
    let clock = Duration::from_minutes(i64::from(time(typed)?.num_seconds_from_midnight() / 60));
    Ok(project.shoot.moved(set_up, zone_of(project, zones).at_clock(*date, clock)))
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
    use super::*;

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
