//! The light through an evening or a morning: how fast it goes, and when a lens runs out.
//!
//! Sampled; between samples it is taken as even in stops.

use crate::units::{Duration, Instant, Lux, Stops, TStop};

/// A light that changes faster than a stop in so long is said as a rate (our choice: slower, nobody pulls the stop for it).
const FAST: Duration = Duration::from_minutes(8);

/// One sample.
pub type Sample = (Instant, Lux);

/// How the light falls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fall {
    /// From when on it falls fast.
    pub from: Instant,
    /// How long a stop lasts from there, on the average of the next half hour.
    pub every: Duration,
}

/// Samples of a light every so often.
pub fn sampled(light: impl Fn(Instant) -> Lux, from: Instant, step: Duration, count: u32) -> Vec<Sample> {
    (0..count)
        .map(|n| from + Duration::from_millis(step.millis() * i64::from(n)))
        .map(|at| (at, light(at)))
        .collect()
}

/// When the light begins to fall fast, and how fast; `None` if it does not.
pub fn fall(samples: &[Sample]) -> Option<Fall> {
    let from = samples.iter().position(|(at, now)| {
        light_at(samples, *at + FAST).is_some_and(|later| now.stops_over(later).stops() >= 1.0)
    })?;
    let (start, light) = samples[from];
    let half_hour = Duration::from_minutes(30);
    let end = (start + half_hour).min(samples[samples.len() - 1].0);
    let lost = light.stops_over(light_at(samples, end)?).stops();
    (lost > 0.0).then(|| Fall { from: start, every: Duration::from_seconds((end - start).seconds() / lost) })
}

/// When a light that is enough first is not: it falls under `least`.
pub fn runs_out(samples: &[Sample], least: Lux) -> Option<Instant> {
    let pair = samples.windows(2).find(|pair| pair[0].1 >= least && pair[1].1 < least)?;
    Some(between(pair, least))
}

/// The times at which the light has fallen by one, two, three … whole stops from the first sample.
pub fn whole_stops(samples: &[Sample]) -> Vec<(Instant, Stops)> {
    let Some((_, first)) = samples.first() else { return Vec::new() };
    let times = (1..20).map(|down| (down, first.raised_by(Stops::from_stops(-f64::from(down)))));
    times
        .map_while(|(down, least)| Some((runs_out(samples, least)?, Stops::from_stops(f64::from(down)))))
        .collect()
}

/// A lens' opening that goes with the light: T-stops at the times of [`whole_stops`].
pub fn opened(from: TStop, down: Stops) -> TStop {
    TStop::clamped(from.number() / down.factor().sqrt())
}

/// The light at an instant; `None` outside the samples.
pub fn light_at(samples: &[Sample], at: Instant) -> Option<Lux> {
    let pair = samples.windows(2).find(|pair| pair[0].0 <= at && at <= pair[1].0)?;
    let whole = (pair[1].0 - pair[0].0).seconds();
    let share = if whole > 0.0 { (at - pair[0].0).seconds() / whole } else { 0.0 };
    let change = pair[1].1.stops_over(pair[0].1).stops();
    Some(pair[0].1.raised_by(Stops::from_stops(change * share)))
}

/// When the light is at `least` between two samples.
fn between(pair: &[Sample], least: Lux) -> Instant {
    let whole = pair[0].1.stops_over(pair[1].1).stops();
    let part = if whole > 0.0 { pair[0].1.stops_over(least).stops() / whole } else { 0.0 };
    pair[0].0 + Duration::from_seconds((pair[1].0 - pair[0].0).seconds() * part)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::daylight::twilight::brown;
    use crate::plan::levels::fixture;
    use crate::sky::sun::Sun;

    fn from() -> Instant {
        Instant::parse("2026-03-20T17:00:00Z").unwrap()
    }

    /// The evening of the equinox at site T, by Brown's curve.
    fn evening() -> Vec<Sample> {
        let sun = Sun::new(fixture::site());
        sampled(|at| brown(sun.apparent(at).height()), from(), Duration::from_minutes(2), 60)
    }

    #[test]
    fn civil_twilight_loses_a_stop_every_four_to_seven_minutes() {
        // Handbook C3: the light halves every 0.65 to 1.0° of depression, every 4 to 7 minutes at mid latitudes.
        let fall = fall(&evening()).unwrap();
        assert!((4.0..7.0).contains(&fall.every.minutes()), "{fall:?}");
        let day = sampled(|_| Lux::from_lux(1000.0), from(), Duration::from_minutes(2), 60);
        assert_eq!(super::fall(&day), None);
        assert_eq!(super::fall(&[]), None);
    }

    #[test]
    fn a_lens_runs_out_when_the_light_is_what_it_needs() {
        let samples = evening();
        let least = Lux::from_lux(60.0);
        let out = runs_out(&samples, least).unwrap();
        assert!((light_at(&samples, out).unwrap().lux() / 60.0 - 1.0).abs() < 1e-3);
        let exact = brown(Sun::new(fixture::site()).apparent(out).height());
        assert!(exact.stops_over(least).stops().abs() < 0.03, "between samples it is nearly even in stops");
        assert_eq!(runs_out(&samples, Lux::from_lux(1e6)), None, "it never was enough");
    }

    #[test]
    fn whole_stops_follow_each_other() {
        let stops = whole_stops(&evening());
        assert!(stops.len() > 5 && stops.is_sorted_by(|one, other| one.0 < other.0));
        assert!((opened(TStop::clamped(4.0), Stops::from_stops(2.0)).number() - 2.0).abs() < 1e-9);
    }
}
