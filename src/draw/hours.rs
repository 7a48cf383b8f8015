//! The hours of one civil day as a scale to drag along.
//!
//! Counted from the day's first instant as time goes, so that on the days of a clock change no hour is skipped or
//! repeated; the names are those of the place's clock.

use super::scale::Scale;
use crate::place::zone::Zone;
use crate::units::{Duration, Instant, Span, Spans};
use crate::words::{self, Clock};

/// Shown when the sun is up for less. Our own choice.
const USUAL: (f64, f64) = (6.0, 20.0);

/// A handle moves by whole minutes.
const STEP: f64 = 1.0 / 60.0;

/// Most names along the line. Our own choice: more would touch each other on a phone.
const MOST_NAMES: f64 = 9.0;

/// A day's hours, and the way from instants to them and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hours {
    day: Span,
    from: f64,
    to: f64,
}

impl Hours {
    /// The usual hours of a day, and all in which the sun is up.
    pub fn around(day: Span, sun_up: &Spans) -> Self {
        let hour = |at: Instant| hours(at - day.start());
        let from = sun_up.iter().map(|span| hour(span.start()).floor()).fold(USUAL.0, f64::min);
        let to = sun_up.iter().map(|span| hour(span.end()).ceil()).fold(USUAL.1, f64::max);
        Self { day, from: from.max(0.0), to: to.min(hours(day.duration())) }
    }

    /// The scale of the line.
    pub fn scale(&self) -> Scale {
        Scale::line(self.from, self.to, STEP)
    }

    /// Where an instant stands.
    pub fn hour_of(&self, at: Instant) -> f64 {
        hours(at - self.day.start())
    }

    /// The instant at an hour, to the minute.
    pub fn at_hour(&self, hour: f64) -> Instant {
        self.day.start() + Duration::from_minutes((hour * 60.0).round() as i64)
    }

    /// Full hours of the clock with their names, few enough to stay apart.
    pub fn named(&self, zone: &Zone, style: Clock) -> Vec<(f64, String)> {
        let every =
            [2, 3, 4, 6].into_iter().find(|step| (self.to - self.from) / f64::from(*step) < MOST_NAMES);
        let every = every.unwrap_or(6);
        let quarters = (self.from * 4.0) as i64..=(self.to * 4.0) as i64;
        let named = quarters.filter_map(|quarter| {
            let at = self.day.start() + Duration::from_minutes(quarter * 15);
            let name = words::full_hour(zone.local(at), style)?;
            clock_hour(zone, at).is_multiple_of(every).then(|| (self.hour_of(at), name))
        });
        named.collect()
    }
}

fn clock_hour(zone: &Zone, at: Instant) -> u32 {
    chrono::Timelike::hour(&zone.local(at).time())
}

fn hours(length: Duration) -> f64 {
    length.minutes() / 60.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(zone: &Zone) -> Span {
        zone.day("2027-03-28".parse().unwrap()).unwrap()
    }

    #[test]
    fn hours_there_and_back() {
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let line = Hours::around(day(&zone), &Spans::none());
        assert_eq!(line.scale(), Scale::line(6.0, 20.0, 1.0 / 60.0));
        for minute in [360, 977, 1200] {
            let at = day(&zone).start() + Duration::from_minutes(minute);
            assert_eq!(line.at_hour(line.hour_of(at)), at);
        }
        let names: Vec<String> =
            line.named(&zone, Clock::TwentyFour).into_iter().map(|(_, name)| name).collect();
        assert_eq!(names, ["06", "08", "10", "12", "14", "16", "18", "20"]);
    }

    #[test]
    fn a_long_day_is_shown_whole() {
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let up = Spans::from(day(&zone));
        let line = Hours::around(day(&zone), &up);
        assert_eq!((line.scale().from, line.scale().to), (0.0, 24.0));
        assert_eq!(line.named(&zone, Clock::Twelve).len(), 9);
    }

    #[test]
    fn a_day_with_a_clock_change_has_names_of_its_clock() {
        // An hour ahead from 01:00 UTC on, as in western Europe.
        let from = Instant::parse("2027-03-28T01:00:00Z").unwrap();
        let ask = |at: Instant| Some(Duration::from_minutes(if at < from { 0 } else { 60 }));
        let year = Span::new(from - Duration::DAY, from + Duration::DAY).unwrap();
        let zone = Zone::by_asking("west", year, ask).unwrap();
        let line = Hours::around(day(&zone), &Spans::from(day(&zone)));
        assert_eq!(line.scale().to, 23.0);
        let six = line.named(&zone, Clock::TwentyFour).into_iter().find(|(_, name)| name == "06").unwrap();
        assert_eq!(six.0, 5.0);
    }
}
