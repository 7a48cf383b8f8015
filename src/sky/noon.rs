//! The sun about one mean noon: what closed forms need to know of a day.
//!
//! A window is the day from one mean midnight of a site to the next, 24 h exactly; windows follow one another without
//! gap. Windows from solar midnight keep a morning and an evening together, which UTC days do not.

use super::sun::{SiteTurn, Sun};
use super::turn::{self, TURN};

/// The sun at a site's mean noon.
#[derive(Clone, Copy, Debug)]
pub(super) struct Noon {
    /// Days since 1970-01-01.
    pub(super) time: f64,
    hour_angle: f64,
    pub(super) sin_declination: f64,
    pub(super) cos_declination: f64,
    pub(super) parallax: f64,
}

impl Noon {
    /// The noon of window `number`.
    pub(super) fn of(sun: &Sun, number: i64) -> Self {
        let time = number as f64 + 0.5 - sun.site.longitude_turns;
        let (meridian, east, sin_declination, parallax) = sun.geocentric(time);
        let cos_declination = (meridian * meridian + east * east).sqrt();
        // The equation of time keeps this below 0.08 rad: two terms are good to 2e-7.
        let sine = -east / cos_declination;
        let hour_angle = sine + sine * sine * sine * (1.0 / 6.0);
        Self { time, hour_angle, sin_declination, cos_declination, parallax }
    }

    /// When the hour angle is about `hour_angle`, radians, ± a whole number of days.
    pub(super) fn time_of(&self, hour_angle: f64) -> f64 {
        self.time + (hour_angle - self.hour_angle) * (1.0 / TURN)
    }
}

/// The number of the window in which a time lies.
pub(super) fn window_of(site: &SiteTurn, days: f64) -> i64 {
    turn::floor(days + site.longitude_turns)
}

/// Start of window `number`, days since 1970-01-01.
pub(super) fn start_of(site: &SiteTurn, number: i64) -> f64 {
    number as f64 - site.longitude_turns
}
