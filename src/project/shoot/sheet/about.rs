//! What stands around the run of the day: sky, places, kit, cover set, cost, what comes next.

use super::{Maker, PlaceLine, title};
use crate::plan::today::{Today, What};
use crate::plan::wish::{Sky, SunOnMark};
use crate::project::document::SetUp;
use crate::project::shoot::day::Run;
use crate::sky::delta_t;
use crate::sky::moon;
use crate::sky::moon_day::{Horizon, moon_day};
use crate::units::Instant;
use crate::words;

impl Maker<'_> {
    pub(super) fn sky(&self, today: &Today) -> Vec<String> {
        let clock = |at: Instant| self.read.clock(at);
        let named = |what, words: &str, until: bool| {
            let found = today.happenings.iter().find(|one| one.what == what)?;
            let end = found.until.map(|end| format!("–{}", clock(end))).filter(|_| until).unwrap_or_default();
            Some(format!("{words} {}{end}", clock(found.at)))
        };
        let sun = [
            named(What::MorningBlue, "blue hour", true),
            named(What::LowUntil, "low sun until", false),
            named(What::LowFrom, "low sun from", false),
            named(What::EveningBlue, "blue hour", true),
        ];
        sun.into_iter().flatten().chain(self.moon()).collect()
    }

    fn moon(&self) -> Option<String> {
        let (site, day) = (self.first_site()?, self.whole_day()?);
        let clock = delta_t::Clock::at(day.middle());
        let lit = moon::phase(day.middle(), clock).lit.fraction() * 100.0;
        let times = |word: &str, at: &[Instant]| {
            at.first().map(|at| format!(", {word} {}", self.read.clock(*at))).unwrap_or_default()
        };
        let path = match moon_day(site, day, clock).horizon {
            Horizon::Crosses { rises, sets } => times("rises", &rises) + &times("sets", &sets),
            Horizon::AlwaysUp => ", up all day".to_owned(),
            Horizon::AlwaysDown => ", below the horizon all day".to_owned(),
        };
        Some(format!("moon {lit:.0} % lit{path}"))
    }

    pub(super) fn places(&self) -> Vec<PlaceLine> {
        let mut seen: Vec<&str> = Vec::new();
        for stop in &self.run.stops {
            if !seen.contains(&stop.location.as_str()) {
                seen.push(&stop.location);
            }
        }
        let line = |id: &&str| {
            let location = self.project.location(id)?;
            let work = self.project.shoot.place(id);
            let hours = work.hours.map(|hours| {
                let range = words::clock_from_to(hours.from, hours.to, self.read.style);
                format!("permission {range}")
            });
            let notes = [hours, Some(work.crowd), Some(location.notes.clone())];
            let notes: Vec<String> = notes.into_iter().flatten().filter(|note| !note.is_empty()).collect();
            let coordinates = words::position(location.site);
            Some(PlaceLine { name: location.name.clone(), coordinates, notes: notes.join(" · ") })
        };
        seen.iter().filter_map(line).collect()
    }

    /// Cameras with their lenses, and what stands in the day's set-ups.
    pub(super) fn kit(&self) -> Vec<String> {
        let set_ups = || self.run.stops.iter().filter_map(|stop| Some(self.project.set_up(&stop.set_up)?.1));
        let lens = |set_up: &SetUp| format!("{} mm", words::to_edit(set_up.lens.focal_mm, 0));
        let mut lenses: Vec<String> = set_ups().map(lens).collect();
        crate::order::by_key(&mut lenses, |words| (words.len(), words.clone()));
        lenses.dedup();
        let placed = set_ups().flat_map(|set_up| &set_up.rig.placed);
        let mut gear: Vec<String> = placed
            .filter_map(|placed| self.project.kit.iter().find(|gear| gear.id == placed.gear))
            .map(|gear| gear.name.clone())
            .collect();
        crate::order::by(&mut gear, Ord::cmp);
        gear.dedup();
        [vec![format!("lenses {}", lenses.join(", "))], gear].concat()
    }

    /// Set-ups that need no sun and do not stand on an earlier row of this day.
    pub(super) fn cover(&self) -> Vec<String> {
        let suits = |set_up: &SetUp| {
            set_up.wish.sun_on_mark != SunOnMark::Yes
                && matches!(set_up.wish.sky, Sky::Any | Sky::Overcast | Sky::Broken)
                && set_up.at.as_ref().is_some_and(|at| at.room.is_some())
        };
        let all = self.project.set_ups().filter(|(_, set_up)| suits(set_up));
        all.map(|(scene, set_up)| title(&scene.heading(), set_up)).collect()
    }

    pub(super) fn cost(&self) -> Option<u32> {
        let mut ids: Vec<&str> = self.run.stops.iter().map(|stop| stop.location.as_str()).collect();
        crate::order::by(&mut ids, Ord::cmp);
        ids.dedup();
        let costs: Vec<u32> = ids.iter().filter_map(|id| self.project.shoot.place(id).day_cost).collect();
        (!costs.is_empty()).then(|| costs.iter().fold(0_u32, |sum, cost| sum.saturating_add(*cost)))
    }

    pub(super) fn advance(&self, next: &Run) -> String {
        let place = next.stops.first().and_then(|stop| self.project.location(&stop.location));
        let place = place.map(|location| location.name.clone()).unwrap_or_default();
        format!("{}, call {} at {place}", words::date(next.date), self.read.clock(next.morning.call))
    }
}
