//! When the sun reaches a mark on one date, and through which opening.
//!
//! The whole answer comes from all openings together; each opening is then asked alone, so that the screen can say
//! which one it is. Where two let the sun in at once, their spans overlap.

use chrono::NaiveDate;

use super::above::{shown, shows};
use super::met;
use super::through_window::{self, Through};
use super::uncertainty;
use crate::place::skyline::Skyline;
use crate::plan::calendar;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span, Spans, Vector, World};
use crate::words::{self, Clock};

/// Pieces of the day shorter than this are not told apart. Our own choice.
const BRIEF: Duration = Duration::from_minutes(1);

/// Sun on a mark on one date.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OnMark {
    /// When it is there at all.
    pub spans: Spans,
    /// The same by the name of each opening that lets it in; empty in the open.
    pub by: Vec<(String, Spans)>,
}

impl OnMark {
    /// On `date`, of the place's clock.
    pub fn on(sun: &Sun, stage: &Stage, date: NaiveDate) -> Self {
        let Some(day) = calendar::whole(&stage.zone, DateRange { from: date, to: date }) else {
            return Self::default();
        };
        let alone = |opening: &_| Stage { openings: Some(vec![Clone::clone(opening)]), ..stage.clone() };
        let by = stage
            .openings
            .iter()
            .flatten()
            .map(|opening| (opening.name.clone(), met::sun_on_mark(sun, &alone(opening), day)));
        let by = by.filter(|(_, spans)| !spans.is_empty()).collect();
        Self { spans: met::sun_on_mark(sun, stage, day), by }
    }

    /// How long altogether.
    pub fn total(&self) -> Duration {
        self.spans.total()
    }

    /// The day in pieces, each with the openings that let the sun in together, by their places in [`Self::by`].
    pub fn phases(&self) -> Vec<(Span, Vec<usize>)> {
        let mut edges: Vec<Instant> = self
            .by
            .iter()
            .flat_map(|(_, spans)| spans.iter().flat_map(|span| [span.start(), span.end()]))
            .collect();
        crate::order::by(&mut edges, Ord::cmp);
        let pieces = edges.windows(2).filter_map(|pair| Span::new(pair[0], pair[1]));
        let through = |piece: Span| {
            let lit = self.by.iter().enumerate().filter(|(_, (_, spans))| spans.contains(piece.middle()));
            (piece, lit.map(|(opening, _)| opening).collect::<Vec<_>>())
        };
        let all = pieces.filter(|piece| piece.duration() > BRIEF).map(through);
        all.filter(|(_, openings)| !openings.is_empty()).collect()
    }

    /// "Sun on the mark 15:54–18:14, ± 25 min: by Loft window, left from 15:54, by both from 17:12, by Loft window, right
    /// from 17:30", or the next day that has any.
    pub fn sentence(&self, sun: &Sun, stage: &Stage, date: NaiveDate, style: Clock) -> String {
        if self.spans.is_empty() {
            let next = through_window::through(sun, stage, date);
            return next_day(&next, stage, style);
        }
        let edges = self.spans.iter().map(|span| uncertainty::edges_of_sun(sun, stage, span).larger());
        let larger = words::plus_minus(edges.max().unwrap_or_default());
        let all = clocks(&self.spans, stage, style);
        match self.by.is_empty() {
            true => format!("Sun on the mark {all}."),
            false => format!("Sun on the mark {all}, {larger}{}.", self.by_which(stage, style)),
        }
    }

    /// "15:54–18:14: by Loft window, left from 15:54, by both from 17:12"; empty where it is there for less than a minute.
    pub(super) fn in_short(&self, stage: &Stage, style: Clock) -> String {
        let told = Spans::gather(self.spans.iter().filter(|span| span.duration() > BRIEF).collect());
        let by = if told.is_empty() { String::new() } else { self.by_which(stage, style) };
        format!("{}{by}", clocks(&told, stage, style))
    }

    /// ", through Loft window, left", ": by Loft window, left from 15:54, by both from 17:12".
    fn by_which(&self, stage: &Stage, style: Clock) -> String {
        match self.by.as_slice() {
            [] => String::new(),
            [(name, _)] => format!(", through {name}"),
            several => {
                let by = |(piece, openings): &(Span, Vec<usize>)| {
                    let from = words::to_the_minute(stage.zone.local(piece.start())).time();
                    let from = words::clock(from, style);
                    format!("by {} from {from}", together(openings, several))
                };
                let each: Vec<String> = self.phases().iter().map(by).collect();
                format!(": {}", each.join(", "))
            }
        }
    }
}

/// "Loft window, left", "both", "all three", or the names one by one.
fn together(openings: &[usize], all: &[(String, Spans)]) -> String {
    match openings.len() {
        2 if all.len() == 2 => "both".to_owned(),
        3 if all.len() == 3 => "all three".to_owned(),
        _ => {
            let names: Vec<&str> = openings.iter().filter_map(|at| Some(all.get(*at)?.0.as_str())).collect();
            names.join(" and ")
        }
    }
}

/// Where the sun is seen at an instant, unless the horizon or the skyline hides all of it.
pub fn sun_there(sun: &Sun, line: &Skyline, at: Instant) -> Option<Vector<World>> {
    Some(sun.apparent(at)).filter(|light| shows(line, *light))
}

/// When the sun is there within a day.
pub fn sun_up(sun: &Sun, line: &Skyline, day: Span) -> Spans {
    shown(sun, line, &day.into())
}

fn next_day(next: &Through, stage: &Stage, style: Clock) -> String {
    let sentence = through_window::words(next, stage, "on this day", style);
    format!("{}.", words::capital(&sentence))
}

fn clocks(spans: &Spans, stage: &Stage, style: Clock) -> String {
    let clock = |span: Span| super::words::clock(span, stage, style);
    spans.iter().map(clock).collect::<Vec<_>>().join(" and ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, loft, on, site, window};

    #[test]
    fn openings_alone_make_up_the_whole() {
        let west = window("west", 270.0, (-3.0, 3.0), (0.0, 3.0));
        let south = window("south", 180.0, (-3.0, 3.0), (0.0, 3.0));
        let stage = Stage { openings: Some(vec![south, west]), ..loft() };
        let sun = Sun::new(stage.site);
        let found = OnMark::on(&sun, &stage, on(2027, 3, 11));
        assert_eq!(found.by.len(), 2);
        let joined = found.by.iter().fold(Spans::none(), |all, (_, spans)| all.or(spans));
        let apart = |a: &Spans, b: &Spans| a.without(b).total().millis();
        assert!(apart(&joined, &found.spans) < 100 && apart(&found.spans, &joined) < 100);
        let words = found.sentence(&sun, &stage, on(2027, 3, 11), Clock::TwentyFour);
        assert!(
            words.contains("by south from ") && words.contains(", by west from ") && words.contains("± "),
            "{words}"
        );
        let phases = found.phases();
        assert!(phases.windows(2).all(|pair| pair[0].0.end() <= pair[1].0.start()));
        let total: i64 = phases.iter().map(|(piece, _)| piece.duration().millis()).sum();
        assert!((total - found.total().millis()).abs() < 61_000);
    }

    #[test]
    fn two_windows_that_share_the_sun_are_both() {
        let low = window("low", 248.0, (-0.6, 0.4), (0.0, 0.9));
        let high = window("high", 248.0, (-0.2, 0.8), (0.0, 0.9));
        let stage = Stage { openings: Some(vec![low, high]), ..loft() };
        let sun = Sun::new(stage.site);
        let found = OnMark::on(&sun, &stage, on(2027, 3, 11));
        let words = found.sentence(&sun, &stage, on(2027, 3, 11), Clock::TwentyFour);
        assert!(words.contains(", by both from "), "{words}");
        let twelve = found.sentence(&sun, &stage, on(2027, 3, 11), Clock::Twelve);
        let from = twelve.split(" from ").nth(1).and_then(|rest| rest.split(',').next());
        assert!(from.is_some_and(|from| from.ends_with(" pm")), "{twelve}");
    }

    #[test]
    fn a_day_without_sun_names_the_next_that_has_it() {
        let openings = Some(vec![window("north", 0.0, (-3.0, 3.0), (0.0, 3.0))]);
        let stage = Stage { site: site(55.0, -8.65), openings, ..loft() };
        let sun = Sun::new(stage.site);
        let found = OnMark::on(&sun, &stage, on(2027, 12, 1));
        assert_eq!((found.total(), found.by.len()), (Duration::ZERO, 0));
        let words = found.sentence(&sun, &stage, on(2027, 12, 1), Clock::TwentyFour);
        assert!(words.starts_with("The sun does not come through on this day; next on "), "{words}");
    }

    #[test]
    fn the_sun_is_there_by_day_only() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        assert!(sun_there(&sun, &stage.skyline, at("2027-03-11T16:20:00Z")).is_some());
        assert!(sun_there(&sun, &stage.skyline, at("2027-03-11T23:20:00Z")).is_none());
        let day = stage.zone.day(on(2027, 3, 11)).unwrap();
        let up = sun_up(&sun, &stage.skyline, day);
        assert_eq!(up.iter().len(), 1);
        for edge in [up.as_slice()[0].start(), up.as_slice()[0].end()] {
            let second = Duration::from_seconds(1.0);
            let there = |at| sun_there(&sun, &stage.skyline, at).is_some();
            assert_ne!(there(edge - second), there(edge + second));
        }
    }
}
