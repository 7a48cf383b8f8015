//! The hours of a day at a location: what the sun does, when it reaches the mark, which slots begin and end.

use chrono::NaiveDate;

use super::at_hand::AtHand;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::plan::search;
use crate::plan::search::on_mark::{self, OnMark};
use crate::plan::search::slot::Slot;
use crate::plan::search::words as say;
use crate::plan::today::Today;
use crate::plan::today::ahead::Ahead;
use crate::plan::wish::DateRange;
use crate::sky::delta_t::Clock;
use crate::sky::moon;
use crate::sky::moon_day::{Horizon, moon_day};
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span};
use crate::words;

/// The sun comes over the skyline with the sunrise, or goes with the sunset, if they are no further apart. Our choice.
const TOGETHER: Duration = Duration::from_minutes(2);

/// Something that happens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// When, or from when.
    pub at: Instant,
    /// Until when, for what lasts.
    pub until: Option<Instant>,
    /// "saved slot begins, 36 min".
    pub says: String,
}

/// The sun's own day, and what the skyline makes of it.
pub fn of_the_sun(today: &Today, up: impl Iterator<Item = Span>, line: &Skyline) -> Vec<Line> {
    let mut lines: Vec<Line> = today
        .happenings
        .iter()
        .map(|one| Line { at: one.at, until: one.until, says: one.what.name().to_owned() })
        .collect();
    if !line.is_level() {
        let edges = up.flat_map(|span| {
            [(span.start(), "sun clears the skyline"), (span.end(), "sun behind the skyline")]
        });
        let more: Vec<Line> =
            edges.filter(|(at, _)| apart(&lines, *at)).map(|(at, says)| plain(at, says)).collect();
        lines.extend(more);
    }
    lines
}

/// The moon's rise and set, with how much of it is lit.
pub fn of_the_moon(site: Site, day: Span) -> Vec<Line> {
    let clock = Clock::at(day.middle());
    let Horizon::Crosses { rises, sets } = moon_day(site, day, clock).horizon else { return Vec::new() };
    let says = |what: &str, at: Instant| {
        let lit = moon::phase(at, clock).lit.percent();
        plain(at, &format!("moon {what}, {lit:.0} % lit"))
    };
    let rises = rises.into_iter().map(|at| says("rises", at));
    rises.chain(sets.into_iter().map(|at| says("sets", at))).collect()
}

/// When the sun reaches and leaves the mark of a set-up in a room, unless one of `said` is the same; nothing in the open,
/// where it is day.
pub fn of_the_mark(sun: &Sun, one: &AtHand, (date, said): (NaiveDate, &[Line])) -> Vec<Line> {
    if one.stage.openings.is_none() {
        return Vec::new();
    }
    let mark = if one.mark.is_empty() { "the mark" } else { &one.mark };
    let lit = OnMark::on(sun, &one.stage, date);
    let edges = |span: Span| {
        [
            plain(span.start(), &format!("sun reaches {mark}")),
            plain(span.end(), &format!("sun leaves {mark}")),
        ]
    };
    lit.spans.iter().flat_map(edges).filter(|edge| apart(said, edge.at)).collect()
}

/// Slots of a set-up that shows here now, with what ends them.
pub fn of_the_set_up(ahead: &Ahead, one: &AtHand, date: NaiveDate) -> Vec<Line> {
    let today = ahead.slots().filter(|(slot, _)| slot.date == date);
    today
        .flat_map(|(slot, _)| {
            let end = plain(slot.span.end(), &format!("{} ends: {}", one.name, say::ends(slot, &one.stage)));
            [begin(slot, one), end]
        })
        .collect()
}

/// When a slot of another set-up begins.
pub fn of_another(sun: &Sun, one: &AtHand, date: NaiveDate) -> Vec<Line> {
    let slots = search::slots(sun, &one.stage, &[DateRange { from: date, to: date }]);
    slots.iter().map(|slot| begin(slot, one)).collect()
}

/// When a set-up was shot.
pub fn of_the_shots(one: &AtHand, day: Span) -> Vec<Line> {
    let shot = |at: Instant| plain(at, &format!("{}, shot", one.name));
    one.shots.iter().filter(|one| day.contains(one.at)).map(|one| shot(one.at)).collect()
}

/// All of them in the order of time; what is said twice of one minute is said once.
pub fn in_order(mut lines: Vec<Line>) -> Vec<Line> {
    // Causes were put in before what they bring: at one instant they stay in that order.
    crate::order::by_key(&mut lines, |one| one.at);
    lines.dedup_by(|one, two| one.says == two.says && (one.at - two.at).millis().abs() < 60_000);
    lines
}

/// When the sun shows above the skyline on a day.
pub fn up(sun: &Sun, line: &Skyline, day: Span) -> Vec<Span> {
    on_mark::sun_up(sun, line, day).iter().collect()
}

fn begin(slot: &Slot, one: &AtHand) -> Line {
    let saved = one.saved.iter().any(|kept| kept.is_about(slot.span));
    let which = if saved { "saved slot" } else { "slot" };
    plain(slot.span.start(), &format!("{}: {which} begins, {}", one.name, words::duration(slot.hold())))
}

/// Whether nothing of `lines` happens about then.
fn apart(lines: &[Line], at: Instant) -> bool {
    lines.iter().all(|one| (one.at - at).millis().abs() > TOGETHER.millis())
}

fn plain(at: Instant, says: &str) -> Line {
    Line { at, until: None, says: says.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::super::at_hand::set_ups_at;
    use super::*;
    use crate::place::skyline::Point;
    use crate::place::zone::Zone;
    use crate::project::demo;
    use crate::units::{Bearing, Height};

    fn march() -> NaiveDate {
        NaiveDate::from_ymd_opt(2027, 3, 11).unwrap()
    }

    #[test]
    fn the_full_moon_rises_as_the_sun_sets() {
        // Full on 22 March 2027 at 10:44 UT (US Naval Observatory, phases of the moon).
        let loft = demo::project().locations[0].site;
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let day = zone.day("2027-03-22".parse().unwrap()).unwrap();
        let lines = of_the_moon(loft, day);
        let rise = lines.iter().find(|line| line.says == "moon rises, 100 % lit").unwrap();
        let sunset = Sun::new(loft).apparent(rise.at).height().degrees();
        assert!(sunset.abs() < 8.0, "{sunset}");
        assert!(lines.iter().any(|line| line.says.starts_with("moon sets, ")));
    }

    #[test]
    fn a_day_in_the_loft_has_its_hours() {
        let (project, zone) = (demo::project(), Zone::fixed("UTC", Duration::ZERO));
        let loft = project.location("sail-loft").unwrap();
        let at_hand = set_ups_at(&project, loft, &zone);
        let one = at_hand.iter().find(|one| one.id == "set-up-4a").unwrap();
        let sun = Sun::new(loft.site);
        let ahead = |date| Ahead::of(&sun, Some(&one.stage), (&zone, &one.stage.skyline), date);
        let (from, year) = (zone.day(march()).unwrap().start(), ahead(march()));
        let date = year.next_slot(from).unwrap().date;
        let (ahead, day) = (ahead(date), zone.day(date).unwrap());
        let up = up(&sun, &loft.skyline, day).into_iter();
        let lines = in_order(
            [
                of_the_sun(&Today::of(&sun, day), up, &loft.skyline),
                of_the_mark(&sun, one, (date, &[])),
                of_the_set_up(&ahead, one, date),
            ]
            .concat(),
        );
        assert!(lines.windows(2).all(|pair| pair[0].at <= pair[1].at));
        let place = |part: &str| lines.iter().position(|line| line.says.contains(part)).unwrap_or(usize::MAX);
        let order = [
            "sunrise",
            "sun reaches by the bench",
            "4 A: slot begins, ",
            "4 A ends: ",
            "sunset",
            "blue hour",
        ];
        let places: Vec<usize> = order.iter().map(|part| place(part)).collect();
        assert!(places[..5].windows(2).all(|pair| pair[0] < pair[1]), "{lines:?}");
    }

    #[test]
    fn a_wall_in_the_west_hides_the_sun_before_it_sets() {
        let sun = Sun::new(demo::project().locations[1].site);
        let point = |bearing, height| Point {
            bearing: Bearing::from_degrees(bearing),
            height: Height::clamped(height),
        };
        let line =
            Skyline::new(vec![point(200.0, 0.0), point(200.0, 12.0), point(320.0, 12.0), point(320.0, 0.0)]);
        let day = Zone::fixed("UTC", Duration::ZERO).day(march()).unwrap();
        let says = |line: &Skyline| -> Vec<String> {
            let up = up(&sun, line, day).into_iter();
            of_the_sun(&Today::of(&sun, day), up, line).into_iter().map(|one| one.says).collect()
        };
        assert!(says(&line).contains(&"sun behind the skyline".to_owned()));
        // In the east the wall is not there: the sunrise says it already.
        assert!(!says(&line).contains(&"sun clears the skyline".to_owned()));
        assert!(!says(&Skyline::default()).contains(&"sun behind the skyline".to_owned()));
    }
}
