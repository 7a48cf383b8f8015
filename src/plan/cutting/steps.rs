//! What must match between takes, as a schedule counts it: whole numbers at each minute of each day.
//!
//! The light's bearing in hundredths of a degree, the shadow's length in ten-thousandths of a doubling, the ratio in
//! thousandths of a stop, the colour in hundredths of a mired.

use super::Match;
pub use super::range::MEASURES;
use super::range::most;
use crate::plan::schedule::matching::NOTHING;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Duration, Instant, Span, Stops};
use crate::words;

/// Steps in a degree, a doubling, a stop, a mired.
const STEPS: [f64; MEASURES] = [100.0, 10_000.0, 1_000.0, 100.0];

impl Match<'_> {
    /// The numbers at an instant, of the first set-up. Bearings are told from `noon`, see [`noon`].
    pub fn steps(&self, at: Instant, noon: Bearing) -> [i32; MEASURES] {
        let values = self.look(0, at).values(noon);
        core::array::from_fn(|n| values[n].map_or(NOTHING, |value| in_steps(n, value)))
    }

    /// How far each may be apart.
    pub fn most(&self) -> [i32; MEASURES] {
        let most = most(&self.limit);
        core::array::from_fn(|n| in_steps(n, most[n]))
    }
}

pub(super) fn in_steps(n: usize, value: f64) -> i32 {
    (value * STEPS[n]).round() as i32
}

/// Where the sun stands when it is highest: bearings told from there do not jump while it is up.
pub fn noon(sun: &Sun, day: Span) -> Bearing {
    let hours = (0..24).map(|hour| sun.apparent(day.start() + Duration::from_minutes(60 * hour)));
    let highest = hours.max_by(|a, b| a.height().degrees().total_cmp(&b.height().degrees()));
    highest.map_or_else(Bearing::default, |sun| sun.bearing())
}

/// "its shadows are 46 % longer or shorter": the measure numbered `n`, so many steps apart.
pub fn apart(n: usize, steps: i32) -> String {
    let value = f64::from(steps) / STEPS[n];
    match (n, steps > NOTHING.unsigned_abs() as i32 / 2) {
        (0, _) => format!("the light comes from {value:.0}° further round"),
        (1, true) => "there are no shadows in one of them".to_owned(),
        (1, false) => format!(
            "shadows are {:.0} % longer or shorter",
            (Stops::from_stops(value).factor() - 1.0) * 100.0
        ),
        (2, true) => "there is no light on the face in one of them".to_owned(),
        (2, false) => format!("the ratio is {} away", words::stops::stops(Stops::from_stops(value))),
        (_, true) => "the light has no colour temperature in one of them".to_owned(),
        (_, false) => format!("the colour is {value:.0} mired away"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::cutting::match_limit::MatchLimit;
    use crate::plan::fixture::{ClearSun, field};

    /// Two takes cut together if and only if no number is further apart than it may be.
    #[test]
    fn the_numbers_say_what_cuts_together() {
        let sun = Sun::new(field().site);
        let held = Match { sun: &sun, gauges: &[&ClearSun], limit: MatchLimit::default() };
        let midnight = Instant::parse("2027-03-11T00:00:00Z").unwrap();
        let at = |minute: i64| midnight + Duration::from_minutes(minute);
        let noon = noon(&sun, Span::new(at(0), at(1440)).unwrap());
        let (mut same, mut all) = (0, 0);
        for one in (400..1150).step_by(7) {
            for other in (one..1150).step_by(11) {
                let (a, b) = (held.steps(at(one), noon), held.steps(at(other), noon));
                let most = held.most();
                let near = (0..MEASURES).all(|n| (a[n] - b[n]).abs() <= most[n]);
                all += 1;
                same += i32::from(near == held.cuts(at(one), at(other)));
            }
        }
        assert_eq!(same, all);
    }
}
