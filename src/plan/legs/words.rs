//! A moving subject in words: the light of each leg, both ways, and when a run may start.

use chrono::NaiveDate;

use super::travel::{Travel, Way};
use crate::plan::legs::{self, LegLight};
use crate::plan::search::words as say;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Instant, Span, Spans};
use crate::words::{self, Clock};

/// What is on the screen of a way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// Each leg and way, then the whole run.
    pub lines: Vec<String>,
    /// Whether a low sun would blind a driver in some of that light.
    pub blinds: bool,
}

/// The light of a way on a date.
pub fn told(sun: &Sun, stage: &Stage, travel: &Travel, (date, style): (NaiveDate, Clock)) -> Told {
    let found = legs::legs(sun, stage, travel, date);
    let blinds = found.iter().any(|light| {
        let heading = travel.legs[light.leg].heading(light.way);
        light.spans.iter().any(|span| {
            [span.start(), span.middle(), span.end()]
                .into_iter()
                .any(|at: Instant| legs::blinds(sun.apparent(at), heading))
        })
    });
    let mut lines: Vec<String> = found.iter().map(|light| leg(light, travel, stage, style)).collect();
    if travel.legs.len() > 1 {
        for (way, words) in [(Way::Out, "out"), (Way::Back, "back")] {
            let starts = legs::starts(sun, stage, travel, way, date);
            lines.push(format!("All legs {words}: {}.", start_words(&starts, stage, style)));
        }
    }
    Told { lines, blinds }
}

/// "Leg 1 out, lens 250° WSW: 17:10–18:02."
fn leg(light: &LegLight, travel: &Travel, stage: &Stage, style: Clock) -> String {
    let way = if light.way == Way::Out { "out" } else { "back" };
    let takes = words::duration(travel.legs[light.leg].takes());
    let when = if light.spans.is_empty() {
        "no light as wished".to_owned()
    } else {
        clocks(&light.spans, stage, style)
    };
    format!("Leg {} {way}, {takes}, lens {}: {when}.", light.leg + 1, words::bearing(light.lens))
}

fn start_words(starts: &Spans, stage: &Stage, style: Clock) -> String {
    if starts.is_empty() {
        "never in light all along".to_owned()
    } else {
        format!("start {}", clocks(starts, stage, style))
    }
}

fn clocks(spans: &Spans, stage: &Stage, style: Clock) -> String {
    spans.iter().map(|span: Span| say::clock(span, stage, style)).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, on};
    use crate::plan::legs::travel::Leg;
    use crate::units::{Bearing, Degrees, Duration, Metres, Speed};

    #[test]
    fn a_drive_into_the_evening() {
        let leg = |heading: f64| Leg {
            heading: Bearing::from_degrees(heading),
            length: Metres::from_metres(2000.0),
            speed: Speed::from_km_per_hour(30.0),
        };
        let mut travel = Travel { mount: Degrees::from_degrees(0.0), legs: vec![leg(250.0)] };
        let stage = Stage { takes: Duration::ZERO, ..field() };
        let sun = Sun::new(stage.site);
        let day = (on(2027, 3, 20), Clock::default());
        let found = told(&sun, &stage, &travel, day);
        assert_eq!(found.lines.len(), 2);
        assert!(found.lines[0].starts_with("Leg 1 out, 4 min, lens 250° WSW: 1"), "{}", found.lines[0]);
        assert!(found.lines[1].starts_with("Leg 1 back, 4 min, lens 70° ENE: "), "{}", found.lines[1]);
        assert!(found.blinds);
        travel.legs.push(leg(340.0));
        assert_eq!(told(&sun, &stage, &travel, day).lines[4], "All legs out: never in light all along.");
    }
}
