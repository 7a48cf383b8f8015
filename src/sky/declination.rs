//! How far a compass is off true north, and how far to trust it.
//!
//! East positive: true bearing = magnetic bearing + declination. The field comes from [`super::wmm`]. Steel, magnets,
//! cars and loudspeakers turn a compass by ten degrees and more; no model knows them.

use chrono::{Datelike, NaiveDate};

use super::wmm::{self, Field};
use crate::place::site::Site;
use crate::units::{Degrees, Instant, Nanoteslas};

/// First year of the model, and the first year past it (fact: WMM 2025 holds from 2025.0 to 2030.0).
const YEARS: (f64, f64) = (2025.0, 2030.0);

/// Level fields below which a compass is unreliable and of no use (the model's own warning zones).
const CAUTION_BELOW: Nanoteslas = Nanoteslas::from_nanoteslas(6000.0);
const BLACKOUT_BELOW: Nanoteslas = Nanoteslas::from_nanoteslas(2000.0);

/// How much of the field is left to turn a compass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// Enough.
    Ok,
    /// Level field under 6000 nT: a compass is unreliable.
    Caution,
    /// Level field under 2000 nT: a compass is of no use.
    Blackout,
}

/// What a compass needs to become true.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Declination {
    /// Magnetic north from true north, east positive.
    pub value: Degrees,
    /// Whether a compass works here.
    pub zone: Zone,
    /// The instant lies outside the model's years: the value drifts off by some minutes of arc a year.
    pub outside_years: bool,
}

/// Declination at `site` and `at`.
///
/// # Source
/// World Magnetic Model 2025 (NOAA/NCEI and British Geological Survey); the warning zones are its own.
///
/// # Accuracy
/// Follows the model to 0.0001°. The model itself is good to about 0.3°, less in the zones of caution.
///
/// ```
/// use slantlight::{place::site::Site, sky::declination::declination, units::Instant};
/// let at = Instant::parse("2026-07-01T12:00:00Z").unwrap();
/// assert!((declination(Site::default(), at).value.degrees() + 3.7).abs() < 0.5);
/// ```
pub fn declination(site: Site, at: Instant) -> Declination {
    let year = decimal_year(at);
    let field = wmm::field(site, year);
    Declination {
        value: field.declination(),
        zone: zone(field),
        outside_years: !(YEARS.0..YEARS.1).contains(&year),
    }
}

fn zone(field: Field) -> Zone {
    let level = field.level();
    if level < BLACKOUT_BELOW {
        Zone::Blackout
    } else if level < CAUTION_BELOW {
        Zone::Caution
    } else {
        Zone::Ok
    }
}

/// The year with the part of it that has passed: 2026.5 is the middle of 2026.
pub fn decimal_year(at: Instant) -> f64 {
    let year = at.to_utc().year();
    let starts = |year| NaiveDate::from_ymd_opt(year, 1, 1).and_then(|day| day.and_hms_opt(0, 0, 0));
    match (starts(year), starts(year + 1)) {
        (Some(first), Some(next)) => {
            let (first, next) = (Instant::from_utc(first), Instant::from_utc(next));
            f64::from(year) + (at - first).seconds() / (next - first).seconds()
        }
        // The last year of the calendar: nothing of ours happens there.
        _ => f64::from(year),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    #[test]
    fn leap_years_are_longer() {
        assert_eq!(decimal_year(at("2026-07-02T12:00:00Z")), 2026.5);
        assert_eq!(decimal_year(at("2028-07-02T00:00:00Z")), 2028.5);
    }

    #[test]
    fn years_of_the_model_are_half_open() {
        let outside = |text| declination(Site::default(), at(text)).outside_years;
        assert!(outside("2024-12-31T23:59:59Z"));
        assert!(!outside("2025-01-01T00:00:00Z"));
        assert!(!outside("2029-12-31T23:59:59Z"));
        assert!(outside("2030-01-01T00:00:00Z"));
    }
}
