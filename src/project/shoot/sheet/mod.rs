//! The day sheet: one day of the plan in the words the crew reads. Screens, print, message and files all say this.

mod about;
mod rows;

use super::cautions::cautions;
use super::conflicts::{Conflict, Reading, conflicts};
use super::day::{Run, runs};
use super::matching::Bound;
use super::problem::{Lit, Zones, lit, zone_of};
use crate::plan::calendar;
use crate::plan::today::{Today, What};
use crate::plan::wish::DateRange;
use crate::project::document::{Project, SetUp};
use crate::sky::sun::Sun;
use crate::units::{Instant, Span};
use crate::words::{self, Clock};

/// What a row of the run of the day is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The crew comes.
    Call,
    /// A set-up, by id.
    SetUp(String),
    /// To another place.
    Move,
    /// The meal.
    Meal,
    /// The crew goes.
    Wrap,
}

/// A row of the run of the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What it is.
    pub kind: Kind,
    /// From when to when; a call and a wrap have no length.
    pub span: (Instant, Instant),
    /// "17:38".
    pub clock: String,
    /// "4 · Mending the sail".
    pub title: String,
    /// "¾ back · holds 36 min, needs 25 · ready by 17:33".
    pub sub: String,
    /// How much of its light the set-up takes, percent.
    pub bar: Option<u8>,
    /// Whether it is pinned.
    pub pinned: bool,
    /// Why it cannot be so.
    pub faults: Vec<String>,
}

/// A place of the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlaceLine {
    /// "Salt pans".
    pub name: String,
    /// "40.64000 N 8.65000 W".
    pub coordinates: String,
    /// What the crew must know, crowds and hours included.
    pub notes: String,
}

/// One day's sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// What is shot: the project's title.
    pub production: String,
    /// "Day 2 of 3".
    pub heading: String,
    /// "Thu 11 Mar 2027".
    pub date: String,
    /// Values with their names: sunrise, sunset, call, wrap.
    pub facts: Vec<(String, String)>,
    /// Low sun, blue hour, moon.
    pub sky: Vec<String>,
    /// Where, in the order of the day.
    pub places: Vec<PlaceLine>,
    /// The run of the day.
    pub rows: Vec<Row>,
    /// What is wrong with the day as a whole.
    pub faults: Vec<String>,
    /// What must be brought.
    pub kit: Vec<String>,
    /// What to beware of.
    pub cautions: Vec<String>,
    /// What can be shot when it clouds over.
    pub cover: Vec<String>,
    /// The money the places cost, if somebody has said.
    pub cost: Option<u32>,
    /// What comes tomorrow.
    pub next: Option<String>,
}

/// Fields left blank on the sheet, to be filled in by hand.
pub const BLANKS: [&str; 5] =
    ["Production's telephone", "Emergency number", "Nearest hospital", "Parking", "Weather, looked up on"];

/// The sheets of all days of the plan.
pub fn sheets(project: &Project, zones: Zones<'_>, style: Clock) -> Vec<Sheet> {
    let read = Reading { zone: zone_of(project, zones), style };
    let lit = lit(project, zones);
    let runs = runs(project, &lit, &read.zone);
    let conflicts = conflicts(project, &lit, &runs, &read);
    let of = |(n, run): (usize, &Run)| {
        let maker = Maker { project, lit: &lit, read: &read, run, conflicts: &conflicts[n] };
        maker.sheet(n, &runs)
    };
    runs.iter().enumerate().map(of).collect()
}

/// Set-ups that stand on no day, with the reason where there is one.
pub fn unplaced(project: &Project, zones: Zones<'_>) -> Vec<(String, String, String)> {
    let idle = lit(project, zones).into_iter().filter(|one| project.shoot.placed(&one.set_up).is_none());
    let words = |one: Lit| {
        let (scene, set_up) = project.set_up(&one.set_up)?;
        let crowded = match project.shoot.bound(scene) {
            Bound::Free => "no room beside what matters more; another day, or a longer one, would help",
            _ => {
                "no room, or no light that matches the rest of its scene, beside what matters more; another day would help"
            }
        };
        let open = if project.shoot.plan.is_empty() { "not placed yet" } else { crowded };
        let why = one.without.unwrap_or_else(|| open.to_owned());
        Some((one.set_up, title(&scene.heading(), set_up), why))
    };
    idle.filter_map(words).collect()
}

/// "3 days · 11 set-ups · all wishes met but one".
pub fn summary(project: &Project, zones: Zones<'_>) -> String {
    let all = project.set_ups().count();
    let zone = zone_of(project, zones);
    let placed: Vec<_> =
        project.shoot.plan.iter().filter(|one| project.set_up(&one.set_up).is_some()).collect();
    let mut days: Vec<_> = placed.iter().map(|one| zone.date(one.start)).collect();
    crate::order::by(&mut days, Ord::cmp);
    days.dedup();
    let met = match all.saturating_sub(placed.len()) {
        _ if placed.is_empty() => "not planned yet".to_owned(),
        0 => "all placed".to_owned(),
        1 => "all placed but one".to_owned(),
        left => format!("all placed but {left}"),
    };
    let count = |number: usize, what: &str| format!("{number} {what}{}", if number == 1 { "" } else { "s" });
    format!("{} · {} · {met}", count(days.len(), "day"), count(all, "set-up"))
}

/// "4 · Mending the sail, A".
fn title(heading: &str, set_up: &SetUp) -> String {
    if set_up.name.is_empty() { heading.to_owned() } else { format!("{heading}, {}", set_up.name) }
}

struct Maker<'a> {
    project: &'a Project,
    lit: &'a [Lit],
    read: &'a Reading,
    run: &'a Run,
    conflicts: &'a [Conflict],
}

impl Maker<'_> {
    fn sheet(&self, n: usize, runs: &[Run]) -> Sheet {
        let day = self.whole_day();
        let today = self.first_site().zip(day).map(|(site, day)| Today::of(&Sun::new(site), day));
        let clock = |what| {
            let at = today.as_ref().and_then(|today| today.first(what));
            at.map_or_else(|| "–".to_owned(), |at| self.read.clock(at.at))
        };
        let fact = |value: String, name: &str| (value, name.to_owned());
        Sheet {
            production: self.project.title.clone(),
            heading: format!("Day {} of {}", n + 1, runs.len()),
            date: words::date(self.run.date),
            facts: vec![
                fact(clock(What::Sunrise), "sunrise"),
                fact(clock(What::Sunset), "sunset"),
                fact(self.read.clock(self.run.morning.call), "call"),
                fact(self.read.clock(self.run.wrap), "wrap"),
            ],
            sky: today.map(|today| self.sky(&today)).unwrap_or_default(),
            places: self.places(),
            rows: self.rows(),
            faults: self.faults(None),
            kit: self.kit(),
            cautions: cautions(self.project, self.lit, self.run).into_iter().map(str::to_owned).collect(),
            cover: self.cover(),
            cost: self.cost(),
            next: runs.get(n + 1).map(|next| self.advance(next)),
        }
    }

    fn whole_day(&self) -> Option<Span> {
        calendar::whole(&self.read.zone, DateRange { from: self.run.date, to: self.run.date })
    }

    fn first_site(&self) -> Option<crate::place::site::Site> {
        self.run.stops.iter().find_map(|stop| Some(self.project.location(&stop.location)?.site))
    }

    fn faults(&self, set_up: Option<&str>) -> Vec<String> {
        let of = self.conflicts.iter().filter(|one| one.set_up.as_deref() == set_up);
        of.map(|one| words::capital(&one.why) + ".").collect()
    }
}
