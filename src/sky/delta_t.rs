//! The clock of the heavens beside the clock on the wall.
//!
//! The sun is placed by terrestrial time, the Earth turned by UT1, and people read UTC. Two differences say it all:
//! delta-T (terrestrial time less UT1) and DUT1 (UT1 less UTC).
//!
//! **UTC is taken as UT1.** DUT1 stays within 0.9 s by international agreement, which turns the Earth by at most
//! 0.0039°; it is measured, not computed, so an app without network cannot know it for the days it plans. From 2024
//! to 2027 it is under 0.1 s (0.0004°). The full method takes it as an argument all the same.

use chrono::Datelike;

use crate::units::{Duration, Instant};

/// Years for which an estimate is made; outside, that of the nearer end is taken.
const YEARS: (f64, f64) = (1900.0, 2200.0);

/// What a position needs to know about clocks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clock {
    /// Terrestrial time less UT1.
    pub delta_t: Duration,
    /// UT1 less UTC.
    pub dut1: Duration,
}

impl Clock {
    /// The app's own at an instant: delta-T by [`delta_t`], UTC taken as UT1.
    pub fn at(instant: Instant) -> Self {
        Self { delta_t: delta_t(instant), dut1: Duration::ZERO }
    }
}

/// Terrestrial time less UT1.
///
/// Espenak and Meeus' polynomials (NASA/TP-2006-214141, 2006), from 2015 on refitted to measurements of the IERS up to
/// 2026 and to a forecast (crate `solar-positioning`). Within 0.3 s of what was measured since 1950; a forecast for
/// 2100 is worth ± 20 s. One second moves the sun by 0.00001°.
///
/// ```
/// use slantlight::{sky::delta_t::delta_t, units::Instant};
/// let seconds = delta_t(Instant::from_unix_millis(1_577_836_800_000)).seconds(); // 2020
/// assert!((seconds - 69.36).abs() < 0.1);
/// ```
pub fn delta_t(instant: Instant) -> Duration {
    let utc = instant.to_utc();
    let year = f64::from(utc.year()) + f64::from(utc.ordinal0()) / 365.25;
    let seconds = solar_positioning::delta_t::estimate(year.clamp(YEARS.0, YEARS.1));
    Duration::from_seconds(seconds.expect("the years are in the estimate's range"))
}
