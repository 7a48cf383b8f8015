//! The year sheet: dates across, the local clock down; where the sun is up, where the wish is met.
//!
//! Times are counted from midnight on the local clock, so that the change to and from summer time is a step.
//! Spans that touch from one day to the next are drawn as one outline: columns side by side would show seams.

use chrono::{Datelike, Days, NaiveDate};

use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Point};
use crate::plan::calendar as plan;
use crate::plan::search::year::DayRow;
use crate::units::Duration;
use crate::words::{self, Clock};

/// The paper: 358 of a phone 390 wide.
const WIDTH: f64 = 358.0;
const HEIGHT: f64 = 286.0;

/// The field of days and hours.
const LEFT: f64 = 38.0;
const RIGHT: f64 = 350.0;
const TOP: f64 = 6.0;
const FOOT: f64 = 264.0;

/// Minutes of a clock's day.
const DAY: f64 = 1440.0;

/// From one time of the local clock to another, counted from midnight, at most 24 hours.
pub type ClockSpan = (Duration, Duration);

/// One day of the sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct YearDay {
    /// While the sun is up.
    pub up: Vec<ClockSpan>,
    /// While the wish is met.
    pub wish: Vec<ClockSpan>,
}

impl From<&DayRow> for YearDay {
    fn from(row: &DayRow) -> Self {
        let pairs = |spans: &[plan::ClockSpan]| spans.iter().map(|span| (span.from, span.to)).collect();
        Self { up: pairs(&row.sun_up), wish: pairs(&row.met) }
    }
}

/// Consecutive days from the first on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YearSheet<'a> {
    /// Date of the first day.
    pub first: NaiveDate,
    /// All days; the sheet is as wide as they are many.
    pub days: &'a [YearDay],
}

impl YearSheet<'_> {
    /// The drawing; `chosen` is a date and a time of the local clock.
    pub fn draw(&self, chosen: Option<(NaiveDate, Duration)>, clock: Clock) -> Drawing {
        let mut drawing = Drawing::sized(WIDTH, HEIGHT);
        let mut field = Path::new();
        field.rectangle(Point::new(LEFT, TOP), Point::new(RIGHT, FOOT));
        drawing.fill(Paint::Night, field);
        drawing.fill(Paint::Day, self.outlines(|day| &day.up));
        drawing.fill(Paint::Lit, self.outlines(|day| &day.wish));
        self.add_scales(&mut drawing, clock);
        if let Some((date, time)) = chosen {
            self.add_chosen(&mut drawing, date, time);
        }
        let met = self.days.iter().filter(|day| !day.wish.is_empty()).count();
        drawing.text = format!("wish met on {met} of {} days", self.days.len());
        drawing
    }

    /// The date and the minute of the local clock at a point; the nearest ones outside the field.
    pub fn at(&self, point: Point) -> (NaiveDate, Duration) {
        let last = self.days.len().saturating_sub(1) as f64;
        let day = ((point.x - LEFT) / self.column()).floor().clamp(0.0, last);
        let minute = ((point.y - TOP) / (FOOT - TOP) * DAY).round().clamp(0.0, DAY - 1.0);
        let date = self.first.checked_add_days(Days::new(day as u64)).unwrap_or(self.first);
        (date, Duration::from_minutes(minute as i64))
    }

    /// The middle of a date's column at a time of the local clock.
    pub fn point(&self, date: NaiveDate, time: Duration) -> Point {
        let day = (date - self.first).num_days() as f64;
        Point::new(self.left_of(day + 0.5), down(time))
    }

    fn column(&self) -> f64 {
        (RIGHT - LEFT) / (self.days.len().max(1)) as f64
    }

    fn left_of(&self, day: f64) -> f64 {
        LEFT + day * self.column()
    }

    /// One path of everything that `spans` picks.
    fn outlines(&self, spans: impl Fn(&YearDay) -> &Vec<ClockSpan>) -> Path {
        let mut path = Path::new();
        for run in runs(self.days.iter().map(|day| spans(day).as_slice())) {
            let edge = |index: usize, pick: fn(&ClockSpan) -> Duration| {
                let (day, y) = ((run.first + index) as f64, down(pick(&run.spans[index])));
                [Point::new(self.left_of(day), y), Point::new(self.left_of(day + 1.0), y)]
            };
            let upper = (0..run.spans.len()).flat_map(|index| edge(index, |span| span.0));
            let lower = (0..run.spans.len()).flat_map(|index| edge(index, |span| span.1));
            let mut outline: Vec<Point> = upper.collect();
            outline.extend(lower.collect::<Vec<_>>().into_iter().rev());
            path.polygon(&without_straights(&outline));
        }
        path
    }

    fn add_scales(&self, drawing: &mut Drawing, clock: Clock) {
        for hour in [0, 6, 12, 18, 24] {
            let y = down(Duration::from_minutes(hour * 60)).clamp(TOP + 8.0, FOOT);
            drawing.label(
                Point::new(LEFT - 4.0, y),
                words::hour(hour as u32, clock),
                Anchor::End,
                Ink::Plain,
            );
        }
        for day in 0..self.days.len() {
            let Some(date) = self.first.checked_add_days(Days::new(day as u64)) else { break };
            if date.day() == 15 {
                let at = Point::new(self.left_of(day as f64 + 0.5), FOOT + 14.0);
                drawing.label(at, &words::month(date)[..1], Anchor::Middle, Ink::Plain);
            }
        }
    }

    fn add_chosen(&self, drawing: &mut Drawing, date: NaiveDate, time: Duration) {
        let at = self.point(date, time);
        if !(LEFT..=RIGHT).contains(&at.x) {
            return;
        }
        let mut line = Path::new();
        line.polyline(&[Point::new(at.x, TOP), Point::new(at.x, FOOT)]);
        drawing.stroke(Paint::Accent, 1.2, line);
        let mut ring = Path::new();
        ring.ellipse(at, 5.5, 5.5);
        drawing.stroke(Paint::Accent, 2.4, ring);
    }
}

fn down(time: Duration) -> f64 {
    TOP + time.minutes().clamp(0.0, DAY) / DAY * (FOOT - TOP)
}

/// Spans of neighbouring days that overlap, one a day.
struct Run {
    first: usize,
    spans: Vec<ClockSpan>,
}

/// Joins each span to one of the day before that it overlaps, if there is one still free.
fn runs<'a>(days: impl Iterator<Item = &'a [ClockSpan]>) -> Vec<Run> {
    let mut done: Vec<Run> = Vec::new();
    for (index, spans) in days.enumerate() {
        for span in spans.iter().filter(|span| span.0 < span.1) {
            let before = done.iter_mut().find(|run| run.meets(index, span));
            match before {
                Some(run) => run.spans.push(*span),
                None => done.push(Run { first: index, spans: vec![*span] }),
            }
        }
    }
    done
}

impl Run {
    /// Whether it ended the day before, and overlaps `span` there.
    fn meets(&self, day: usize, span: &ClockSpan) -> bool {
        let last = self.spans[self.spans.len() - 1];
        self.first + self.spans.len() == day && last.0 < span.1 && span.0 < last.1
    }
}

/// Leaves out points in the middle of level lines.
fn without_straights(outline: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::with_capacity(outline.len());
    for point in outline {
        if let [.., a, b] = kept[..]
            && a.y == b.y
            && b.y == point.y
        {
            kept.pop();
        }
        kept.push(*point);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn clock(hours: i64) -> Duration {
        Duration::from_minutes(hours * 60)
    }

    fn date(month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2027, month, day).unwrap()
    }

    fn day(from: i64, to: i64) -> YearDay {
        YearDay { up: vec![(clock(from), clock(to))], wish: vec![] }
    }

    #[test]
    fn days_alike_are_one_outline_and_summer_time_is_a_step() {
        let days = [day(6, 18), day(6, 18), day(7, 19), day(7, 19)];
        let sheet = YearSheet { first: date(3, 27), days: &days };
        let outline = sheet.draw(None, Clock::TwentyFour).layer(Paint::Day).unwrap().path.text().to_owned();
        // A column is 78 wide; six o'clock lies 64.5 below the top.
        assert_eq!(
            outline,
            "M38 70.5L194 70.5L194 81.25L350 81.25L350 210.25L194 210.25L194 199.5L38 199.5Z"
        );
    }

    #[test]
    fn polar_night_leaves_a_gap_and_polar_day_fills() {
        let days = [day(0, 24), YearDay::default(), day(10, 11)];
        let sheet = YearSheet { first: date(1, 1), days: &days };
        let drawing = sheet.draw(None, Clock::TwentyFour);
        assert_eq!(drawing.layer(Paint::Day).unwrap().path.text().matches('M').count(), 2);
        assert!(drawing.layer(Paint::Lit).is_none());
        assert_eq!(drawing.text, "wish met on 0 of 3 days");
    }

    #[test]
    fn each_month_has_its_letter() {
        let days = vec![day(6, 18); 365];
        let sheet = YearSheet { first: date(1, 1), days: &days };
        let letters: String =
            sheet.draw(None, Clock::TwentyFour).labels[5..].iter().map(|l| l.text.as_str()).collect();
        assert_eq!(letters, "JFMAMJJASOND");
    }

    proptest! {
        #[test]
        fn date_and_time_there_and_back(day_of_year in 0u64..365, minute in 0i64..1440) {
            let days = vec![YearDay::default(); 365];
            let sheet = YearSheet { first: date(1, 1), days: &days };
            let chosen = (date(1, 1) + Days::new(day_of_year), Duration::from_minutes(minute));
            prop_assert_eq!(sheet.at(sheet.point(chosen.0, chosen.1)), chosen);
        }

        #[test]
        fn a_point_off_the_sheet_is_the_nearest_day(x in -500.0..900.0f64, y in -500.0..900.0f64) {
            let days = vec![YearDay::default(); 365];
            let (found, time) = YearSheet { first: date(1, 1), days: &days }.at(Point::new(x, y));
            prop_assert!(found.year() == 2027 && time < Duration::DAY && time >= Duration::ZERO);
        }
    }
}
