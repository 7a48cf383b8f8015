//! The quick question: when does the sun come through this opening onto this spot?
//!
//! No wish, no lens: an opening (measured or sighted), a mark and a date. The answer is that day's spans with
//! their ±, or the next day that has any. Also when an opening must not be sighted, since nobody shall look
//! along a phone at the sun.

use chrono::NaiveDate;

use super::met;
use super::uncertainty::{self, Edges, Outcome};
use crate::plan::calendar;
use crate::plan::stage::{Stage, StageOpening};
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Height, Span, Vector, World};
use crate::words::{self, Clock};

/// How many days ahead the next day with sun is looked for.
const YEAR: u32 = 366;

/// Nearer to the sun than this nothing is sighted. Our own choice: the phone is held by hand and the eye roams
/// beside it.
const KEEP_OFF: Degrees = Degrees::from_degrees(10.0);

/// Sun on a mark, on one date.
#[derive(Clone, Debug, PartialEq)]
pub struct SunnyDay {
    /// Local date.
    pub date: NaiveDate,
    /// From when to when, and how far each edge may be off.
    pub spans: Vec<(Span, Edges)>,
}

/// When the sun comes through.
#[derive(Clone, Debug, PartialEq)]
pub enum Through {
    /// On the date asked.
    ThatDay(SunnyDay),
    /// Not on that date; on this one next.
    Later(SunnyDay),
    /// Not within a year.
    Never,
}

/// When the sun comes through the openings of `stage` onto its mark on `date`, or on which day next.
pub fn through(sun: &Sun, stage: &Stage, date: NaiveDate) -> Through {
    match day(sun, stage, date) {
        Some(day) => Through::ThatDay(day),
        None => next(sun, stage, date).map_or(Through::Never, Through::Later),
    }
}

/// "tomorrow 15:54–18:14, ± 25 min", where `day` is what the date asked is called.
pub fn words(answer: &Through, stage: &Stage, day: &str, style: Clock) -> String {
    match answer {
        Through::ThatDay(sunny) => format!("{day} {}", spans(sunny, stage, style)),
        Through::Later(sunny) => format!(
            "the sun does not come through {day}; next on {} {}",
            words::date(sunny.date),
            spans(sunny, stage, style)
        ),
        Through::Never => "the sun does not come through within a year".into(),
    }
}

/// Whether an opening must not be sighted now: the sun stands in it, or near it.
pub fn sun_in_opening(light: Vector<World>, opening: &StageOpening) -> bool {
    // Every plane of the cone moved outwards by the angle kept off.
    let least = -Height::clamped(KEEP_OFF.degrees()).sin();
    let near = |normal: Vector<World>, at: f64| normal.dot(light) >= at + least;
    is_up(light)
        && opening.cones.iter().any(|cone| cone.sides.iter().all(|side| near(side.normal, side.least)))
}

/// Whether nobody may sight along `sight` now: the sun stands near it.
pub fn sun_in_sight(light: Vector<World>, sight: Vector<World>) -> bool {
    is_up(light) && light.angle_to(sight) <= KEEP_OFF
}

/// Whether the sun gives direct light at all.
fn is_up(light: Vector<World>) -> bool {
    super::reason::above_horizon().contains(light)
}

/// The spans of one date, if it has any.
fn day(sun: &Sun, stage: &Stage, date: NaiveDate) -> Option<SunnyDay> {
    let lit = met::sun_on_mark(sun, stage, calendar::whole(&stage.zone, DateRange { from: date, to: date })?);
    let spans: Vec<_> = lit.iter().map(|span| (span, uncertainty::edges_of_sun(sun, stage, span))).collect();
    (!spans.is_empty()).then_some(SunnyDay { date, spans })
}

/// The next date after `date` that has sun.
fn next(sun: &Sun, stage: &Stage, date: NaiveDate) -> Option<SunnyDay> {
    let range = DateRange { from: calendar::later(date, 1), to: calendar::later(date, YEAR) };
    let lit = met::sun_on_mark(sun, stage, calendar::whole(&stage.zone, range)?);
    let first = lit.as_slice().first()?;
    day(sun, stage, stage.zone.date(first.start()))
}

/// "15:54–18:14, ± 25 min"; several spans are joined, the ± is the largest.
fn spans(sunny: &SunnyDay, stage: &Stage, style: Clock) -> String {
    let clocks: Vec<_> =
        sunny.spans.iter().map(|(span, _)| super::words::clock(*span, stage, style)).collect();
    let larger = sunny.spans.iter().map(|(_, edges)| edges.larger()).max().unwrap_or_default();
    let vanishing = sunny.spans.iter().any(|(_, edges)| edges.outcome == Outcome::MayVanish);
    let caution = if vanishing { "; may vanish if the bearing is off" } else { "" };
    format!("{}, {}{caution}", clocks.join(" and "), words::plus_minus(larger))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, loft, on, site, window};
    use crate::units::{Bearing, Duration};

    #[test]
    fn the_loft_tomorrow() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let answer = through(&sun, &stage, on(2027, 3, 11));
        let Through::ThatDay(day) = &answer else { panic!("{answer:?}") };
        for (span, edges) in &day.spans {
            let lit = |when| {
                let light = sun.apparent(when);
                stage.openings.as_ref().unwrap().iter().any(|opening| opening.contains(light))
            };
            let second = Duration::from_seconds(1.0);
            assert!(lit(span.start() + second) && lit(span.middle()) && lit(span.end() - second));
            assert!(!lit(span.start() - second) && !lit(span.end() + second));
            assert!(edges.larger() > Duration::from_minutes(5));
        }
        let words = words(&answer, &stage, "tomorrow", Clock::TwentyFour);
        assert!(words.starts_with("tomorrow 1") && words.contains("–1") && words.contains(", ± "), "{words}");
    }

    #[test]
    fn a_north_window_waits_for_summer() {
        let north = |latitude| Stage {
            site: site(latitude, -8.65),
            openings: Some(vec![window("north", 0.0, (-3.0, 3.0), (0.0, 3.0))]),
            ..loft()
        };
        let stage = north(55.0);
        let sun = Sun::new(stage.site);
        let answer = through(&sun, &stage, on(2027, 12, 1));
        let Through::Later(day) = &answer else { panic!("{answer:?}") };
        assert!(day.date > on(2028, 3, 1) && day.date < on(2028, 6, 1), "{}", day.date);
        let words = words(&answer, &stage, "tomorrow", Clock::TwentyFour);
        assert!(words.starts_with("the sun does not come through tomorrow; next on "), "{words}");
        let before = calendar::later(on(2027, 12, 1), 0);
        assert!(super::day(&sun, &stage, before).is_none());
        assert!(super::day(&sun, &stage, day.date.pred_opt().unwrap()).is_none());
    }

    #[test]
    fn a_skylight_to_the_pole_never_has_sun() {
        // A south window as steep as the sun never gets.
        let stage = Stage { openings: Some(vec![window("slit", 0.0, (-0.1, 0.1), (0.2, 1.0))]), ..loft() };
        let answer = through(&Sun::new(stage.site), &stage, on(2027, 3, 11));
        assert_eq!(answer, Through::Never);
        assert_eq!(
            words(&answer, &stage, "tomorrow", Clock::Twelve),
            "the sun does not come through within a year"
        );
    }

    #[test]
    fn nobody_sights_the_sun() {
        let opening = window("west", 270.0, (-0.2, 0.2), (0.0, 0.5));
        let light = |bearing: f64, height: f64| {
            Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
        };
        assert!(sun_in_opening(light(270.0, 10.0), &opening));
        assert!(sun_in_opening(light(288.0, 10.0), &opening), "just beside it");
        assert!(!sun_in_opening(light(300.0, 10.0), &opening));
        assert!(!sun_in_opening(light(90.0, 10.0), &opening), "behind the back");
        assert!(!sun_in_opening(light(270.0, -5.0), &opening), "below the horizon");
        assert!(sun_in_sight(light(100.0, 10.0), light(105.0, 14.0)));
        assert!(!sun_in_sight(light(100.0, 10.0), light(120.0, 10.0)));
        let stage = loft();
        let day = through(&Sun::new(stage.site), &stage, on(2027, 3, 11));
        let Through::ThatDay(day) = day else { panic!("{day:?}") };
        let now = day.spans[0].0.middle();
        let light = Sun::new(stage.site).apparent(now);
        assert!(stage.openings.unwrap().iter().any(|opening| sun_in_opening(light, opening)));
        assert!(at("2027-03-11T00:00:00Z") < now);
    }
}
