//! Working a day backwards from its light: when to be called so as to be ready.
//!
//! call, walk, unload, pre-light, haze up, light the first set-up, ready. Lengths are the handbook's (common practice,
//! no source) unless somebody has said better. Nothing here claims that a rule is the law.

use serde::{Deserialize, Serialize};

use crate::units::{Duration, Instant};

/// From call to the place, on foot. Common practice, no source.
pub const WALK: u16 = 10;

/// Unloading. Common practice, no source.
pub const UNLOAD: u16 = 20;

/// Lighting the first set-up after the pre-light. Common practice, no source.
pub const FIRST_LIGHT: u16 = 15;

/// A move without its drive: pack 20, unload 20, find your feet 10. Common practice, no source.
pub const MOVE_BESIDE_DRIVE: u16 = 50;

/// Shortest move of a company. Common practice, no source.
pub const SHORTEST_MOVE: u16 = 60;

/// How long before a set-up begins everybody shall be ready. Our own choice.
pub const READY_BEFORE: Duration = Duration::from_minutes(5);

/// What a location takes before the first set-up and after the last, minutes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RigTimes {
    /// Lighting before cast.
    pub pre_light: u16,
    /// Filling with haze; 0 for none.
    pub haze: u16,
    /// Wrapping out.
    pub wrap_out: u16,
}

impl Default for RigTimes {
    fn default() -> Self {
        Self { pre_light: 45, haze: 0, wrap_out: 45 }
    }
}

impl RigTimes {
    /// From call to the first set-up of a day, minutes.
    pub const fn lead(self) -> u16 {
        WALK + UNLOAD + self.at_place()
    }

    /// From being there to the first set-up, minutes.
    pub const fn at_place(self) -> u16 {
        self.pre_light + self.haze + FIRST_LIGHT
    }
}

/// A first set-up, worked backwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Backwards {
    /// The crew is called.
    pub call: Instant,
    /// Unloading begins.
    pub unload: Instant,
    /// The crew is on the mark, and the pre-light begins.
    pub pre_light: Instant,
    /// The haze goes up, where there is any.
    pub haze: Option<Instant>,
    /// Everybody is ready.
    pub ready: Instant,
}

/// From the start of the first set-up back to call.
///
/// ```
/// use slantlight::{plan::today::backwards::{RigTimes, backwards}, units::Instant};
/// let day = backwards(Instant::parse("2026-06-21T18:30:00Z").unwrap(), RigTimes::default());
/// assert_eq!(day.pre_light.to_string(), "2026-06-21T17:30:00Z");
/// ```
pub fn backwards(start: Instant, times: RigTimes) -> Backwards {
    let before = |minutes: u16| start - Duration::from_minutes(i64::from(minutes));
    Backwards {
        call: before(times.lead()),
        unload: before(UNLOAD + times.at_place()),
        pre_light: before(times.at_place()),
        haze: (times.haze > 0).then(|| before(times.haze + FIRST_LIGHT)),
        ready: start - READY_BEFORE,
    }
}

/// So many set-ups fit into a window when a share of it is kept for weather and slips.
pub fn set_ups_in(window: Duration, margin_percent: i64, each: Duration) -> i64 {
    let usable = window.millis() * (100 - margin_percent) / 100;
    if each > Duration::ZERO { usable / each.millis() } else { 0 }
}

/// Minutes between two places that nobody has typed: the straight way made longer by the roads, at the speed of a loaded
/// van, rounded up to five minutes. Our own choice (1.4 times as far, 40 km/h); flagged wherever it is shown.
pub fn drive_minutes(straight_metres: f64) -> u16 {
    let minutes = straight_metres * 1.4 / (40_000.0 / 60.0);
    ((minutes / 5.0).ceil() * 5.0).clamp(5.0, 600.0) as u16
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    #[test]
    fn the_handbook_day_with_a_backlit_evening() {
        // T-I1: 18:30–19:19 on 2026-06-21, wrap 19:44 + 45.
        let window = Duration::from_seconds(48.8 * 60.0);
        assert_eq!(set_ups_in(window, 20, Duration::from_minutes(15)), 2);
        assert_eq!(set_ups_in(window, 0, Duration::from_minutes(15)), 3);
        let day = backwards(at("2026-06-21T18:30:00Z"), RigTimes::default());
        assert_eq!(day.pre_light, at("2026-06-21T17:30:00Z"));
        let wrap =
            at("2026-06-21T19:44:00Z") + Duration::from_minutes(i64::from(RigTimes::default().wrap_out));
        assert_eq!(wrap, at("2026-06-21T20:29:00Z"));
        let (longest, meal_within) = (Duration::from_minutes(11 * 60), Duration::from_minutes(6 * 60));
        let call = wrap - longest;
        assert_eq!((call, call + meal_within), (at("2026-06-21T09:29:00Z"), at("2026-06-21T15:29:00Z")));
        assert_eq!(wrap + Duration::from_minutes(11 * 60), at("2026-06-22T07:29:00Z"));
    }

    #[test]
    fn the_handbook_night() {
        // T-I2: 20:58 to 01:37.
        assert_eq!(set_ups_in(Duration::from_minutes(279), 10, Duration::from_minutes(30)), 8);
    }

    #[test]
    fn drives() {
        assert_eq!(drive_minutes(0.0), 5);
        assert_eq!(drive_minutes(10_000.0), 25);
    }
}
