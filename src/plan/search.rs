//! The search for slots: on the project's dates, in the next six weeks, in the year.
//!
//! When the wish is met at all is found by [`self::met`]; here that time is parted into slots with their reasons.

pub mod above;
pub mod answers;
pub(in crate::plan) mod course;
pub mod free_lens;
pub mod met;
pub mod on_mark;
pub mod on_mark_year;
pub mod only_here;
pub mod otherwise;
pub mod reason;
pub mod runs;
pub mod same_light;
pub(in crate::plan) mod scan;
pub mod slot;
pub mod through_window;
pub mod uncertainty;
pub mod weeks;
pub mod words;
pub mod year;

use chrono::NaiveDate;

use crate::plan::calendar;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Span, Spans};
use met::met;
use slot::Slot;
use weeks::Weeks;

/// How many days ahead a production looks first when it has no dates yet: six weeks. Our own choice.
const SOON: u32 = 42;

/// How many days are searched in all: every date of the year comes, whichever day it is today.
const YEAR: u32 = 366;

/// What was found, by how near it is.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// On the project's own dates.
    pub on_dates: Vec<Slot>,
    /// Within six weeks from today.
    pub soon: Vec<Slot>,
    /// Within a year from today, the first six weeks included.
    pub year: Vec<Slot>,
}

/// Which part of what was found is shown first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// The project's dates.
    ProjectDates,
    /// The next six weeks.
    SixWeeks,
    /// The year from today.
    Year,
}

impl Found {
    /// The nearest part that holds a slot; the year, perhaps empty, where none does.
    pub fn first(&self) -> (Reach, &[Slot]) {
        if !self.on_dates.is_empty() {
            (Reach::ProjectDates, &self.on_dates)
        } else if !self.soon.is_empty() {
            (Reach::SixWeeks, &self.soon)
        } else {
            (Reach::Year, &self.year)
        }
    }
}

/// A search of the year from a date, week by week.
#[derive(Clone, Debug)]
pub struct Search {
    on_dates: Vec<Slot>,
    today: NaiveDate,
    year: Weeks,
    /// In the light that is over by the end of the last week.
    of_year: Vec<Slot>,
}

impl Search {
    /// The project's dates are looked through at once, of the year from `today` nothing yet.
    pub fn new(sun: &Sun, stage: &Stage, project_dates: &[DateRange], today: NaiveDate) -> Self {
        let year = DateRange { from: today, to: calendar::later(today, YEAR - 1) };
        let on_dates = slots(sun, stage, project_dates);
        Self { on_dates, today, year: Weeks::new(&stage.zone, year), of_year: Vec::new() }
    }

    /// Looks through another week; whether that was the last.
    pub fn step(&mut self, sun: &Sun, stage: &Stage) -> bool {
        if let Some(over) = self.year.next(|week| light(sun, stage, week)) {
            self.of_year.extend(parted(sun, stage, &over));
        }
        self.year.is_looked_through()
    }

    /// Share of the year that has been looked through.
    pub fn share(&self) -> f64 {
        self.year.share()
    }

    /// Whether the six weeks have been looked through.
    pub fn knows_soon(&self) -> bool {
        self.year.looked() * weeks::WEEK >= SOON
    }

    /// What has been found so far.
    pub fn found(&self, sun: &Sun, stage: &Stage) -> Found {
        let mut year = self.of_year.clone();
        year.extend(parted(sun, stage, &self.year.light()));
        let last = calendar::later(self.today, SOON - 1);
        let soon = year.iter().filter(|slot| slot.date <= last).cloned().collect();
        Found { on_dates: self.on_dates.clone(), soon, year }
    }
}

/// Slots on local `dates`, in order; they are cut at the first and the last midnight. Where the lens is free, each
/// stretch of light has the slot of the bearing that holds longest.
pub fn slots(sun: &Sun, stage: &Stage, dates: &[DateRange]) -> Vec<Slot> {
    let all = Spans::gather(dates.iter().filter_map(|range| calendar::whole(&stage.zone, *range)).collect());
    let found = all.iter().flat_map(|within| light(sun, stage, within).iter().collect::<Vec<_>>());
    parted(sun, stage, &Spans::gather(found.collect()))
}

/// The same for all of `dates`, found as they are asked for.
pub fn one_by_one<'a>(sun: &'a Sun, stage: &'a Stage, dates: DateRange) -> impl Iterator<Item = Slot> + 'a {
    let mut weeks = Weeks::new(&stage.zone, dates);
    let next = move || weeks.next(|week| light(sun, stage, week));
    core::iter::from_fn(next).flat_map(|light| parted(sun, stage, &light))
}

/// The light within a span in which the set-up may be shot, with some lens where the lens is free.
fn light(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    if stage.free.is_some() { free_lens::any_lens(sun, stage, within) } else { met(sun, stage, within) }
}

/// The slots of such light.
fn parted(sun: &Sun, stage: &Stage, light: &Spans) -> Vec<Slot> {
    if let Some(lenses) = &stage.free {
        return free_lens::slots(sun, stage, light, lenses);
    }
    light
        .iter()
        .flat_map(|span| calendar::by_days(&stage.zone, span))
        .filter(|span| span.duration() >= stage.takes)
        .map(|span| Slot::new(sun, stage, span))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::class::{Class, Side};
    use crate::plan::fixture::{at, field, loft, on, site, time, wish};
    use crate::plan::wish::{ClockRange, SunOnMark};
    use crate::units::{Duration, Height};
    use reason::Reason;

    fn year() -> [DateRange; 1] {
        [DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) }]
    }

    fn found(stage: &Stage) -> Vec<Slot> {
        slots(&Sun::new(stage.site), stage, &year())
    }

    #[test]
    fn the_loft_has_late_sun_in_spring_and_autumn() {
        let stage = loft();
        let slots = found(&stage);
        assert!(slots.len() > 20, "{}", slots.len());
        for slot in &slots {
            assert!(slot.hold() >= stage.takes);
            assert!([Class::ThreeQuarterBack, Class::Back].contains(&slot.light.class));
            assert_eq!(slot.light.side, Side::Right);
            assert!(slot.heights.0 > slot.heights.1, "an evening sun sinks");
            assert!(!slot.openings.is_empty());
            assert_ne!(slot.starts, Reason::DatesSearched);
            assert_ne!(slot.ends, Reason::DatesSearched);
        }
        assert!(slots.iter().any(|slot| slot.ends == Reason::TooLow(Height::clamped(4.0))));
    }

    #[test]
    fn the_clock_of_the_place_decides_the_date() {
        let stage = loft();
        for slot in found(&stage) {
            let local = stage.zone.local(slot.span.start());
            assert_eq!(slot.date, local.date());
        }
    }

    #[test]
    fn hours_cut_at_both_ends_and_say_so() {
        let mut stage = field();
        stage.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Any);
        stage.wish.hours = Some(ClockRange { from: time(10, 0), to: time(11, 30) });
        let slots = found(&stage);
        assert_eq!(slots.len(), 365);
        for slot in slots {
            assert_eq!(slot.hold(), Duration::from_minutes(90));
            assert_eq!((slot.starts, slot.ends), (Reason::Hours, Reason::Hours));
            assert_eq!(stage.zone.local(slot.span.start()).time(), time(10, 0));
        }
    }

    #[test]
    fn a_slot_may_cross_midnight() {
        // High summer near the polar circle: the sun is low around local midnight.
        let mut stage = field();
        stage.site = site(66.5, -8.0);
        stage.wish = wish((0.0, 360.0), (-2.0, 6.0), SunOnMark::Any);
        stage.wish.hours = Some(ClockRange { from: time(22, 0), to: time(3, 0) });
        let june = [DateRange { from: on(2027, 6, 10), to: on(2027, 6, 30) }];
        let slots = slots(&Sun::new(stage.site), &stage, &june);
        let crossing = slots.iter().filter(|slot| {
            stage.zone.local(slot.span.end()).date() > slot.date && slot.hold() > Duration::from_minutes(60)
        });
        assert!(crossing.count() >= 20);
    }

    #[test]
    fn a_midnight_sun_is_parted_into_days() {
        let mut stage = field();
        stage.site = site(78.0, 15.0);
        stage.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Yes);
        let june = [DateRange { from: on(2027, 6, 10), to: on(2027, 6, 14) }];
        let slots = slots(&Sun::new(stage.site), &stage, &june);
        assert_eq!(slots.len(), 5);
        assert!(slots.iter().all(|slot| slot.hold() == Duration::DAY && slot.ends == Reason::DatesSearched));
    }

    #[test]
    fn polar_night_grants_nothing_but_blue() {
        let mut stage = field();
        stage.site = site(69.5, 25.0);
        stage.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Any);
        let december = [DateRange { from: on(2027, 12, 15), to: on(2027, 12, 20) }];
        let sun = Sun::new(stage.site);
        assert_eq!(slots(&sun, &stage, &december), []);
        stage.wish = wish((0.0, 360.0), (-6.0, -4.0), SunOnMark::Any);
        assert_eq!(slots(&sun, &stage, &december).len(), 12, "each day before and after noon");
    }

    #[test]
    fn summer_time_moves_the_clock_and_not_the_sun() {
        let stage = field();
        let days = [DateRange { from: on(2027, 3, 27), to: on(2027, 3, 28) }];
        let found = slots(
            &Sun::new(stage.site),
            &Stage { wish: wish((0.0, 360.0), (2.0, 20.0), SunOnMark::Any), ..stage.clone() },
            &days,
        );
        let evening: Vec<_> =
            found.iter().filter(|slot| slot.span.start() > at("2027-03-27T12:00:00Z")).collect();
        let evenings: Vec<_> =
            [evening[0], evening[2]].iter().map(|slot| stage.zone.local(slot.span.end())).collect();
        let later = evenings[1] - evenings[0];
        assert!((24 * 60 + 58..=24 * 60 + 64).contains(&later.num_minutes()), "{later}");
    }

    fn find(sun: &Sun, stage: &Stage, project_dates: &[DateRange], today: NaiveDate) -> Found {
        let mut search = Search::new(sun, stage, project_dates, today);
        assert!(!search.knows_soon() && search.share() == 0.0);
        while !search.step(sun, stage) {}
        assert!(search.knows_soon() && search.share() == 1.0);
        search.found(sun, stage)
    }

    #[test]
    fn project_dates_come_first_then_six_weeks_then_the_year() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let dates = [DateRange { from: on(2028, 3, 8), to: on(2028, 3, 9) }];
        let found = find(&sun, &stage, &dates, on(2027, 5, 1));
        assert_eq!(found.first().0, Reach::ProjectDates);
        assert!(found.on_dates.iter().all(|slot| slot.date >= dates[0].from && slot.date <= dates[0].to));
        let found = find(&sun, &stage, &[], on(2027, 5, 1));
        assert_eq!(found.first().0, Reach::Year);
        assert!(found.soon.is_empty() && !found.year.is_empty());
        let found = find(&sun, &stage, &[], on(2027, 2, 20));
        assert_eq!(found.first().0, Reach::SixWeeks);
        assert!(found.soon.iter().all(|slot| slot.date < on(2027, 4, 3)));
        assert_eq!(found.soon[..], found.year[..found.soon.len()]);
    }

    #[test]
    fn covered_or_missing_openings_let_nothing_in() {
        let stage = Stage { openings: Some(vec![]), ..loft() };
        assert_eq!(found(&stage), []);
    }
}
