//! The day line: the hours of one day's clock, spans of light as boxes on it, and a marker for the instant.
//!
//! Times are counted from the day's midnight on the local clock, as people read it.

use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Point};
use crate::units::Duration;
use crate::words::{self, Clock};

/// The paper: 358 of a phone 390 wide.
const WIDTH: f64 = 358.0;
const HEIGHT: f64 = 60.0;

/// Height of the line, of the boxes on it, and of the numbers below.
const AXIS: f64 = 28.0;
const BOX: (f64, f64) = (14.0, 42.0);
const NUMBERS: f64 = 58.0;

/// Room left and right of the line for half a number.
const SIDE: f64 = 8.0;

/// Nearer than this to an edge of the paper, a number begins or ends there.
const EDGE: f64 = 20.0;

/// Shown when the light of a day is shorter. Our own choice.
const USUAL: (i64, i64) = (6, 20);

/// Most numbers below the line. Our own choice: more would touch each other.
const MOST_NUMBERS: i64 = 9;

/// The hours that a line shows, whole hours from midnight, and a way from times to the paper and back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayLine {
    from: i64,
    to: i64,
}

impl DayLine {
    /// A line that holds these spans, and at least the usual hours.
    pub fn around(spans: &[(Duration, Duration)]) -> Self {
        let hour = |time: Duration| time.minutes() / 60.0;
        let from = spans.iter().map(|span| hour(span.0).floor() as i64).fold(USUAL.0, i64::min);
        let to = spans.iter().map(|span| hour(span.1).ceil() as i64).fold(USUAL.1, i64::max);
        Self { from: from.max(0), to: to.min(24) }
    }

    /// First time on it.
    pub const fn from(&self) -> Duration {
        Duration::from_minutes(self.from * 60)
    }

    /// Last time on it.
    pub const fn to(&self) -> Duration {
        Duration::from_minutes(self.to * 60)
    }

    /// Where a time stands, from the left; brought onto the line.
    pub fn across(&self, time: Duration) -> f64 {
        let share = (time.minutes() / 60.0 - self.from as f64) / (self.to - self.from) as f64;
        SIDE + share.clamp(0.0, 1.0) * (WIDTH - 2.0 * SIDE)
    }

    /// The minute at a point of the paper; the ends of the line beyond them.
    pub fn at(&self, point: Point) -> Duration {
        let share = ((point.x - SIDE) / (WIDTH - 2.0 * SIDE)).clamp(0.0, 1.0);
        let hours = self.from as f64 + share * (self.to - self.from) as f64;
        Duration::from_minutes((hours * 60.0).round() as i64)
    }

    /// The drawing: spans as boxes, the instant as a marker.
    pub fn draw(&self, spans: &[(Duration, Duration)], now: Duration, clock: Clock) -> Drawing {
        let mut drawing = Drawing::sized(WIDTH, HEIGHT);
        self.add_hours(&mut drawing, clock);
        self.add_spans(&mut drawing, spans);
        let x = self.across(now);
        let mut marker = Path::new();
        marker.polygon(&[Point::new(x - 7.0, 0.0), Point::new(x + 7.0, 0.0), Point::new(x, 11.0)]);
        drawing.fill(Paint::AccentFill, marker);
        let mut line = Path::new();
        line.polyline(&[Point::new(x, 11.0), Point::new(x, BOX.1)]);
        drawing.stroke(Paint::Accent, 2.0, line);
        drawing.text = match spans.len() {
            0 => "no light on this day".to_owned(),
            1 => "light once on this day".to_owned(),
            times => format!("light {times} times on this day"),
        };
        drawing
    }

    fn add_hours(&self, drawing: &mut Drawing, clock: Clock) {
        let mut line = Path::new();
        line.polyline(&[Point::new(0.0, AXIS), Point::new(WIDTH, AXIS)]);
        drawing.stroke(Paint::Tick, 2.0, line);
        let mut ticks = Path::new();
        for hour in self.numbered() {
            let x = self.across(Duration::from_minutes(hour * 60));
            ticks.polyline(&[Point::new(x, AXIS - 6.0), Point::new(x, AXIS + 6.0)]);
            let (at, anchor) = match x {
                x if x < EDGE => (0.0, Anchor::Start),
                x if x > WIDTH - EDGE => (WIDTH, Anchor::End),
                x => (x, Anchor::Middle),
            };
            drawing.label(Point::new(at, NUMBERS), words::hour(hour as u32, clock), anchor, Ink::Plain);
        }
        drawing.stroke(Paint::Tick, 1.5, ticks);
    }

    /// Hours that carry a number: every second, third, …, so that they stay apart.
    fn numbered(&self) -> impl Iterator<Item = i64> {
        let step = (2..).find(|step| (self.to - self.from) / step < MOST_NUMBERS).unwrap_or(12);
        let to = self.to;
        // On multiples of the step, as a clock has them.
        (self.from..=to).filter(move |hour| hour % step == 0)
    }

    fn add_spans(&self, drawing: &mut Drawing, spans: &[(Duration, Duration)]) {
        let mut boxes = Path::new();
        for (from, to) in spans.iter().filter(|span| span.0 < span.1) {
            let (left, right) = (Point::new(self.across(*from), BOX.0), Point::new(self.across(*to), BOX.1));
            boxes.rectangle(left, right);
        }
        drawing.fill(Paint::Lit, boxes.clone()).stroke(Paint::Line, 1.5, boxes);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn clock(hours: i64, minutes: i64) -> Duration {
        Duration::from_minutes(hours * 60 + minutes)
    }

    #[test]
    fn the_line_holds_the_light() {
        let usual = DayLine::around(&[(clock(15, 54), clock(18, 14))]);
        assert_eq!((usual.from(), usual.to()), (clock(6, 0), clock(20, 0)));
        let summer = DayLine::around(&[(clock(4, 40), clock(22, 10))]);
        assert_eq!((summer.from(), summer.to()), (clock(4, 0), clock(23, 0)));
    }

    #[test]
    fn numbers_stay_apart() {
        let drawn = |line: DayLine| -> Vec<String> {
            line.draw(&[], clock(12, 0), Clock::TwentyFour)
                .labels
                .into_iter()
                .map(|label| label.text)
                .collect()
        };
        assert_eq!(drawn(DayLine { from: 6, to: 20 }), ["06", "08", "10", "12", "14", "16", "18", "20"]);
        assert_eq!(
            drawn(DayLine { from: 0, to: 24 }),
            ["00", "03", "06", "09", "12", "15", "18", "21", "24"]
        );
    }

    #[test]
    fn each_span_is_a_box() {
        let spans = [(clock(8, 0), clock(9, 0)), (clock(16, 0), clock(18, 20))];
        let drawing = DayLine::around(&spans).draw(&spans, clock(16, 20), Clock::Twelve);
        assert_eq!(drawing.layer(Paint::Lit).unwrap().path.text().matches('Z').count(), 2);
        assert_eq!(drawing.text, "light 2 times on this day");
    }

    proptest! {
        #[test]
        fn time_there_and_back(minute in 0i64..=840) {
            let line = DayLine { from: 6, to: 20 };
            let time = Duration::from_minutes(360 + minute);
            prop_assert_eq!(line.at(Point::new(line.across(time), 0.0)), time);
        }
    }
}
