//! The gauge of a match by levels: ratio of the two cheeks and colour of the bright one, as [`crate::plan::levels`] models them.
//!
//! Levels cost a thousand times what the sun's place does, so that they are worked out once a minute, or less often
//! where many days are asked, and kept.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::Gauge;
use crate::light::colour::correlated::correlated;
use crate::light::daylight::Sky;
use crate::light::ratio::Ratio;
use crate::plan::levels::{Levels, Subject};
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Mired, Stops, Vector, World};

/// How often levels are worked out, unless somebody asks for less.
const OFTEN: Duration = Duration::from_minutes(1);

/// What levels say at a time.
type Said = (Option<Stops>, Option<Mired>);

/// A subject under a sky.
pub struct ByLevels<'a> {
    sun: &'a Sun,
    subject: &'a Subject,
    sky: Sky,
    every: Duration,
    said: RefCell<BTreeMap<i64, Said>>,
}

impl<'a> ByLevels<'a> {
    /// Of a subject under a sky.
    pub fn new(sun: &'a Sun, subject: &'a Subject, sky: Sky) -> Self {
        Self { sun, subject, sky, every: OFTEN, said: RefCell::default() }
    }

    /// Worked out only so often; between, it says what it said last.
    pub fn every(self, every: Duration) -> Self {
        Self { every, ..self }
    }

    fn say(&self, at: Instant) -> Said {
        let every = self.every.millis();
        let turn = at.unix_millis().div_euclid(every);
        if let Some(said) = self.said.borrow().get(&turn) {
            return *said;
        }
        let hour = self.subject.hour(self.sun, Instant::from_unix_millis(turn * every), self.sky);
        let levels = Levels::of(self.subject, &hour);
        let lit = levels.bright().total().lux() > 0.0;
        // Two cheeks that are alike have a ratio of nought stops.
        let ratio = lit.then(|| levels.ratio().map_or(Stops::default(), Ratio::stops));
        let colour = levels.bright().colour().and_then(correlated).map(|found| found.temperature.mired());
        let said = (ratio, colour);
        self.said.borrow_mut().insert(turn, said);
        said
    }
}

impl Gauge for ByLevels<'_> {
    fn ratio(&self, _: Vector<World>, at: Instant) -> Option<Stops> {
        self.say(at).0
    }

    fn colour(&self, _: Vector<World>, at: Instant) -> Option<Mired> {
        self.say(at).1
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::cutting::Match;
    use crate::plan::cutting::match_limit::MatchLimit;
    use crate::plan::levels::fixture::open;
    use crate::units::Span;

    #[test]
    fn a_limit_on_the_ratio_shortens_a_hold() {
        // The lens looks north; in the afternoon the sun comes round from front to side.
        let subject = open(0.0);
        let sun = Sun::new(subject.site);
        let noon = Instant::parse("2027-03-21T13:00:00Z").unwrap();
        let hours = Span::new(noon, Instant::parse("2027-03-21T16:00:00Z").unwrap()).unwrap();
        let gauge = ByLevels::new(&sun, &subject, Sky::Clear);
        let limit = |stops: f64| MatchLimit { ratio: Stops::from_stops(stops), ..MatchLimit::default() };
        let hold = |gauge: &dyn Gauge, stops: f64| {
            Match { sun: &sun, gauges: &[gauge], limit: limit(stops) }.hold(hours).unwrap().duration()
        };
        assert!(hold(&gauge, 0.1) < hold(&gauge, 5.0));
        let (ratio, colour) = gauge.say(noon);
        assert!(ratio.unwrap().stops() >= 0.0 && (120.0..260.0).contains(&colour.unwrap().mired()));
    }
}
