//! The levels of a day as curves: bright side and shadow side in stops over the hours, with the band between them; beneath,
//! on a scale of its own, the ratio.

use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Point};
use crate::light::ratio::Ratio;
use crate::plan::levels::day::Sample;
use crate::units::{Duration, Lux, Stops};
use crate::words::{self, Clock};

/// The paper.
const PAPER: Point = Point::new(358.0, 190.0);

/// The curves stand between these heights.
const TOP: f64 = 10.0;
const FOOT: f64 = 108.0;

/// The ratio stands between these, a line of words above it and the hours below.
const RATIO_TOP: f64 = 130.0;
const RATIO_FOOT: f64 = 166.0;

/// Most stops that are shown: what lies under that is night (our choice).
const MOST: f64 = 14.0;

/// One time of the day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// On the day's clock.
    pub clock: Duration,
    /// Light of the bright side.
    pub bright: Lux,
    /// Light of the shadow side.
    pub shadow: Lux,
    /// The ratio; nought for sides alike.
    pub ratio: Stops,
}

impl From<&Sample> for Moment {
    fn from(one: &Sample) -> Self {
        let ratio = one.ratio.map_or(Stops::default(), Ratio::stops);
        Self { clock: one.clock, bright: one.bright, shadow: one.shadow, ratio }
    }
}

/// The drawing; `now` is the time shown.
pub fn draw(day: &[Moment], now: Duration, style: Clock) -> Drawing {
    let mut drawing = Drawing::sized(PAPER.x, PAPER.y);
    let Some(scale) = Scale::of(day) else {
        drawing.text = "no light on this day".to_owned();
        return drawing;
    };
    let line = |light: fn(&Moment) -> Lux| -> Vec<Point> {
        day.iter().map(|one| Point::new(scale.across(one.clock), scale.up(light(one)))).collect()
    };
    let (bright, shadow) = (line(|one| one.bright), line(|one| one.shadow));
    let mut ground = Path::new();
    ground.rectangle(Point::new(0.0, TOP), Point::new(PAPER.x, FOOT));
    drawing.fill(Paint::Sky, ground);
    let mut under = vec![Point::new(shadow[0].x, FOOT)];
    under.extend(&shadow);
    under.push(Point::new(shadow[shadow.len() - 1].x, FOOT));
    let mut shade = Path::new();
    shade.polygon(&under);
    drawing.fill(Paint::Shade, shade);
    let mut band = Path::new();
    band.polygon(&bright.iter().chain(shadow.iter().rev()).copied().collect::<Vec<_>>());
    drawing.fill(Paint::Lit, band);
    for (points, width) in [(&bright, 2.0), (&shadow, 1.2)] {
        let mut path = Path::new();
        path.polyline(points);
        drawing.stroke(Paint::Line, width, path);
    }
    scale.add_ratio(&mut drawing, day);
    scale.add_hours(&mut drawing, style);
    let x = scale.across(now);
    let mut marker = Path::new();
    marker.polyline(&[Point::new(x, 2.0), Point::new(x, RATIO_FOOT)]);
    drawing.stroke(Paint::Accent, 2.0, marker);
    drawing.text = text(day, style);
    drawing
}

/// "bright side brightest at 12:30, shadow side up to 3 stops under it at 16:15".
fn text(day: &[Moment], style: Clock) -> String {
    let apart = |one: &Moment| one.ratio.stops();
    let brightest = day.iter().max_by(|a, b| a.bright.lux().total_cmp(&b.bright.lux()));
    let widest = day.iter().filter(|one| apart(one).is_finite()).max_by(|a, b| apart(a).total_cmp(&apart(b)));
    let at = |one: &Moment| words::of_day(one.clock, style);
    match (brightest, widest) {
        (Some(brightest), Some(widest)) => format!(
            "bright side brightest at {}, shadow side up to {} under it at {}",
            at(brightest),
            words::stops::stops(widest.ratio),
            at(widest)
        ),
        _ => "no light on this day".to_owned(),
    }
}

/// From times and light to the paper.
struct Scale {
    from: f64,
    to: f64,
    most: Lux,
    stops: f64,
}

impl Scale {
    fn of(day: &[Moment]) -> Option<Self> {
        let (first, last) = (day.first()?, day.last()?);
        let most = day.iter().map(|one| one.bright.lux()).fold(0.0, f64::max);
        let least = day.iter().map(|one| one.shadow.lux()).filter(|lux| *lux > 0.0).fold(most, f64::min);
        let most = Lux::from_lux(most);
        let stops = most.stops_over(Lux::from_lux(least)).stops().clamp(1.0, MOST);
        (last.clock > first.clock && most.lux() > 0.0).then(|| Self {
            from: first.clock.minutes(),
            to: last.clock.minutes(),
            most,
            stops,
        })
    }

    fn across(&self, clock: Duration) -> f64 {
        ((clock.minutes() - self.from) / (self.to - self.from)).clamp(0.0, 1.0) * PAPER.x
    }

    fn up(&self, light: Lux) -> f64 {
        let under = self.most.stops_over(light).stops().clamp(0.0, self.stops);
        TOP + under / self.stops * (FOOT - TOP)
    }

    /// The ratio from nought to the most of the day, in whole stops.
    fn add_ratio(&self, drawing: &mut Drawing, day: &[Moment]) {
        let stops = |one: &Moment| one.ratio.stops().clamp(0.0, MOST);
        let most = day.iter().map(stops).fold(1.0, f64::max).ceil();
        let up = |stops: f64| RATIO_FOOT - stops / most * (RATIO_FOOT - RATIO_TOP);
        let mut scale = Path::new();
        for whole in 0..=most as i32 {
            scale.polyline(&[Point::new(0.0, up(whole.into())), Point::new(PAPER.x, up(whole.into()))]);
        }
        drawing.stroke(Paint::Tick, 0.6, scale);
        let mut path = Path::new();
        let points = day.iter().map(|one| Point::new(self.across(one.clock), up(stops(one))));
        path.polyline(&points.collect::<Vec<_>>());
        drawing.stroke(Paint::Line, 2.0, path);
        let most = words::stops::stops(Stops::from_stops(most));
        drawing.label(
            Point::new(0.0, RATIO_TOP - 6.0),
            format!("Ratio, up to {most}"),
            Anchor::Start,
            Ink::Plain,
        );
    }

    fn add_hours(&self, drawing: &mut Drawing, style: Clock) {
        let hours = (self.from / 60.0).ceil() as i64..=(self.to / 60.0).floor() as i64;
        for hour in hours.filter(|hour| hour % 3 == 0) {
            let x = self.across(Duration::from_minutes(hour * 60));
            if (16.0..PAPER.x - 16.0).contains(&x) {
                let name = words::hour(hour as u32, style);
                drawing.label(Point::new(x, PAPER.y - 6.0), name, Anchor::Middle, Ink::Plain);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moment(hour: i64, bright: f64, shadow: f64) -> Moment {
        let [bright, shadow] = [bright, shadow].map(Lux::from_lux);
        let ratio = if shadow.lux() > 0.0 { bright.stops_over(shadow) } else { Stops::default() };
        Moment { clock: Duration::from_minutes(hour * 60), bright, shadow, ratio }
    }

    #[test]
    fn the_band_is_the_ratio() {
        let day = [moment(6, 1000.0, 500.0), moment(12, 80_000.0, 10_000.0), moment(18, 1000.0, 1000.0)];
        let drawing = draw(&day, Duration::from_minutes(540), Clock::TwentyFour);
        assert!(drawing.layer(Paint::Lit).is_some() && drawing.layer(Paint::Shade).is_some());
        assert_eq!(
            drawing.text,
            "bright side brightest at 12:00, shadow side up to 3 stops under it at 12:00"
        );
        assert!(drawing.labels.iter().any(|label| label.text == "12"));
    }

    /// One stop at six, three at noon, none at eighteen, on a scale of three: two thirds up, at the top, at the foot.
    #[test]
    fn the_ratio_has_a_line_of_its_own() {
        let day = [moment(6, 1000.0, 500.0), moment(12, 80_000.0, 10_000.0), moment(18, 1000.0, 1000.0)];
        let drawing = draw(&day, Duration::from_minutes(540), Clock::TwentyFour);
        let line = "M0 154L179 130L358 166";
        let all: Vec<&str> = drawing.layers.iter().map(|layer| layer.path.text()).collect();
        assert!(all.contains(&line), "{all:?}");
        assert!(drawing.labels.iter().any(|label| label.text == "Ratio, up to 3 stops"));
    }

    #[test]
    fn a_day_without_light_is_a_sentence() {
        for day in [vec![], vec![moment(12, 5.0, 1.0)], vec![moment(6, 0.0, 0.0), moment(7, 0.0, 0.0)]] {
            assert_eq!(draw(&day, Duration::ZERO, Clock::TwentyFour).text, "no light on this day");
        }
    }
}
