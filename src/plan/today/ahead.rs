//! What is left of the light, and what comes next: the one countdown of a shooting day.
//!
//! Three kinds of light are counted, the narrowest first: a slot of the set-up, the sun itself above the skyline, blue
//! hour. Inside one its end is counted, else the nearest begin.

use chrono::NaiveDate;

use super::{Today, What};
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::search;
use crate::plan::search::on_mark;
use crate::plan::search::slot::Slot;
use crate::plan::search::uncertainty::{self, Edges};
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span};

/// A slot further off is not counted in minutes: the sun's own day comes first. Our own choice.
const NEAR: Duration = Duration::from_minutes(12 * 60);

/// Days after the first in which the next slot is looked for: each date of the year comes.
const YEAR: u32 = 365;

/// A stretch of light.
#[derive(Clone, Debug, PartialEq)]
pub enum Light {
    /// The wish of the set-up is met, so exactly.
    Slot(Box<Slot>, Edges),
    /// The sun stands above the skyline.
    Sun,
    /// The sky is blue and still bright.
    Blue,
}

/// The light of a date and the next one, and the first slot after them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ahead {
    stretches: Vec<(Span, Light)>,
    later: Option<Box<Slot>>,
}

/// What is counted at an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counted<'a> {
    /// From when to when it lasts.
    pub span: Span,
    /// What it is.
    pub light: &'a Light,
    /// Whether it has begun, so that its end is counted.
    pub inside: bool,
}

impl Ahead {
    /// From the first instant of `date` on; without a stage the sun and the sky alone.
    pub fn of(sun: &Sun, stage: Option<&Stage>, (zone, line): (&Zone, &Skyline), date: NaiveDate) -> Self {
        let both = DateRange { from: date, to: calendar::later(date, 1) };
        let Some(days) = calendar::whole(zone, both) else { return Self::default() };
        let mut stretches: Vec<(Span, Light)> =
            on_mark::sun_up(sun, line, days).iter().map(|span| (span, Light::Sun)).collect();
        stretches.extend(blue(sun, days).map(|span| (span, Light::Blue)));
        let mut later = None;
        for (stage, slot) in
            stage.into_iter().flat_map(|stage| slots(sun, stage, date).map(move |slot| (stage, slot)))
        {
            if slot.date > both.to {
                later = Some(Box::new(slot));
                break;
            }
            let edges = uncertainty::edges(sun, stage, &slot);
            stretches.push((slot.span, Light::Slot(Box::new(slot), edges)));
        }
        Self { stretches, later }
    }

    /// What to count at `at`; nothing where neither sun nor blue hour begins or ends in two days.
    pub fn counted(&self, at: Instant) -> Option<Counted<'_>> {
        let now =
            self.stretches.iter().filter(|(span, _)| span.contains(at)).min_by_key(|(_, light)| rank(light));
        let coming = || self.coming(at).filter(|(_, light)| rank(light) == 0 || now.is_none());
        let slot_now = now.filter(|(_, light)| rank(light) == 0);
        let (span, light) = slot_now.or_else(coming).or(now)?;
        Some(Counted { span: *span, light, inside: span.contains(at) })
    }

    /// When a stretch began or ended last before `at`: from then on another may be counted.
    pub fn last_turn(&self, at: Instant) -> Option<Instant> {
        let edges = self.stretches.iter().flat_map(|(span, _)| [span.start(), span.end()]);
        edges.filter(|edge| *edge <= at).max()
    }

    /// The next slot after `at`, near or far.
    pub fn next_slot(&self, at: Instant) -> Option<&Slot> {
        let coming =
            self.slots().filter(|(slot, _)| slot.span.start() > at).min_by_key(|(slot, _)| slot.span.start());
        coming.map(|(slot, _)| slot).or(self.later.as_deref())
    }

    /// Slots of the two days.
    pub fn slots(&self) -> impl Iterator<Item = (&Slot, &Edges)> {
        self.stretches.iter().filter_map(|(_, light)| match light {
            Light::Slot(slot, edges) => Some((&**slot, edges)),
            _ => None,
        })
    }

    /// What begins next: a slot if one is near, else sun or blue hour.
    fn coming(&self, at: Instant) -> Option<&(Span, Light)> {
        let next = |slots: bool| {
            let wanted = self
                .stretches
                .iter()
                .filter(|(span, light)| (rank(light) == 0) == slots && span.start() > at);
            wanted.min_by_key(|(span, _)| span.start())
        };
        next(true).filter(|(span, _)| span.start() - at <= NEAR).or_else(|| next(false))
    }
}

impl Counted<'_> {
    /// What is left until the end, or until the begin.
    pub fn left(&self, at: Instant) -> Duration {
        (if self.inside { self.span.end() } else { self.span.start() }) - at
    }
}

/// The narrowest light first.
const fn rank(light: &Light) -> u8 {
    match light {
        Light::Slot(..) => 0,
        Light::Sun => 1,
        Light::Blue => 2,
    }
}

/// Slots of `date` and of every date of the year after it, in order.
fn slots<'a>(sun: &'a Sun, stage: &'a Stage, date: NaiveDate) -> impl Iterator<Item = Slot> + 'a {
    search::one_by_one(sun, stage, DateRange { from: date, to: calendar::later(date, YEAR) })
}

/// Blue hours.
fn blue(sun: &Sun, days: Span) -> impl Iterator<Item = Span> {
    let hours = Today::of(sun, days).happenings;
    let is_blue = |what| matches!(what, What::MorningBlue | What::EveningBlue);
    hours.into_iter().filter(move |one| is_blue(one.what)).filter_map(|one| Span::new(one.at, one.until?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, lisbon, loft, on, skyline};

    fn march() -> (Stage, Ahead) {
        let stage = Stage { zone: lisbon(), ..loft() };
        let sun = Sun::new(stage.site);
        let ahead = Ahead::of(&sun, Some(&stage), (&stage.zone, &stage.skyline), on(2027, 3, 11));
        (stage, ahead)
    }

    #[test]
    fn before_a_slot_its_begin_is_counted_and_inside_its_end() {
        let (_, ahead) = march();
        let slot = ahead.slots().next().unwrap().0.clone();
        let ten = Duration::from_minutes(10);
        let before = ahead.counted(slot.span.start() - ten).unwrap();
        assert!(!before.inside && matches!(before.light, Light::Slot(..)));
        assert_eq!(before.left(slot.span.start() - ten), ten);
        let within = ahead.counted(slot.span.end() - ten).unwrap();
        assert!(within.inside && matches!(within.light, Light::Slot(..)));
        assert_eq!(ahead.last_turn(slot.span.end() - ten), Some(slot.span.start()));
        assert_eq!(within.left(slot.span.end() - ten), ten);
    }

    #[test]
    fn after_the_last_slot_the_sun_is_counted_then_blue_hour_then_the_next_day() {
        let (_, ahead) = march();
        let slot = ahead.slots().next().unwrap().0.clone();
        let after = ahead.counted(slot.span.end() + Duration::from_minutes(1)).unwrap();
        assert!(after.inside && *after.light == Light::Sun, "{after:?}");
        let dusk = ahead.counted(after.span.end() + Duration::from_minutes(1)).unwrap();
        assert!(!dusk.inside && *dusk.light == Light::Blue, "{dusk:?}");
        let blue = ahead.counted(dusk.span.start() + Duration::from_minutes(1)).unwrap();
        assert!(blue.inside && *blue.light == Light::Blue);
        // The next slot is more than twelve hours off: the sun's own morning comes first.
        let night = ahead.counted(at("2027-03-11T23:00:00Z")).unwrap();
        assert!(
            !night.inside && *night.light == Light::Blue && night.span.start() > at("2027-03-12T05:00:00Z")
        );
        assert!(ahead.next_slot(at("2027-03-11T23:00:00Z")).unwrap().date == on(2027, 3, 12));
    }

    #[test]
    fn out_of_season_the_next_slot_is_found_in_the_year() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let ahead = Ahead::of(&sun, Some(&stage), (&stage.zone, &stage.skyline), on(2027, 6, 20));
        assert_eq!(ahead.slots().count(), 0);
        let next = ahead.next_slot(at("2027-06-20T12:00:00Z")).unwrap();
        assert!(next.date > on(2027, 7, 20), "{}", next.date);
        assert_eq!(*ahead.counted(at("2027-06-20T12:00:00Z")).unwrap().light, Light::Sun);
    }

    #[test]
    fn a_skyline_ends_the_sun_early_and_no_stage_is_needed() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let end = |line: &Skyline| {
            let ahead = Ahead::of(&sun, None, (&stage.zone, line), on(2027, 3, 11));
            let noon = ahead.counted(at("2027-03-11T13:00:00Z")).unwrap();
            assert_eq!(*noon.light, Light::Sun);
            noon.span.end()
        };
        let wall = skyline(&(0..36).map(|step| (f64::from(step) * 10.0, 10.0)).collect::<Vec<_>>());
        let early = end(&Skyline::default()) - end(&wall);
        assert!((40.0..70.0).contains(&early.minutes()), "{}", early.minutes());
    }

    #[test]
    fn a_midnight_sun_has_neither_begin_nor_end() {
        let mut stage = loft();
        stage.site = crate::plan::fixture::site(75.0, 20.0);
        let ahead =
            Ahead::of(&Sun::new(stage.site), None, (&stage.zone, &Skyline::default()), on(2027, 6, 21));
        let counted = ahead.counted(at("2027-06-21T12:00:00Z")).unwrap();
        assert!(counted.inside && *counted.light == Light::Sun);
        assert!(counted.left(at("2027-06-21T12:00:00Z")) > Duration::DAY);
    }
}
