//! Instants and durations, UTC, to the millisecond.
//!
//! Local time is not here: it exists only through a [`crate::place::zone::Zone`].

use core::fmt;
use core::ops::{Add, Neg, Sub};

use chrono::{DateTime, Datelike, NaiveDateTime, Timelike, Utc};
use serde::{Deserialize, Serialize};

/// Milliseconds in a minute.
const MINUTE: i64 = 60_000;

/// Julian date of the Unix epoch.
const UNIX_EPOCH_JD: f64 = 2_440_587.5;

/// A length of time, milliseconds, signed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Duration(i64);

impl Duration {
    /// No time.
    pub const ZERO: Self = Self(0);
    /// Twenty-four hours.
    pub const DAY: Self = Self(86_400_000);

    /// From milliseconds.
    pub const fn from_millis(millis: i64) -> Self {
        Self(millis)
    }

    /// From seconds, rounded to the millisecond.
    pub fn from_seconds(seconds: f64) -> Self {
        Self((seconds * 1000.0).round() as i64)
    }

    /// From whole minutes.
    pub const fn from_minutes(minutes: i64) -> Self {
        Self(minutes * MINUTE)
    }

    /// In milliseconds.
    pub const fn millis(self) -> i64 {
        self.0
    }

    /// In seconds.
    pub fn seconds(self) -> f64 {
        self.0 as f64 / 1000.0
    }

    /// In minutes.
    pub fn minutes(self) -> f64 {
        self.0 as f64 / MINUTE as f64
    }
}

impl Add for Duration {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Duration {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Neg for Duration {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

/// An instant, UTC, to the millisecond. Saved as RFC 3339 with `Z`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Instant(i64);

impl Instant {
    /// From milliseconds since 1970-01-01T00:00Z.
    pub const fn from_unix_millis(millis: i64) -> Self {
        Self(millis)
    }

    /// Milliseconds since 1970-01-01T00:00Z.
    pub const fn unix_millis(self) -> i64 {
        self.0
    }

    /// Seconds since 1970-01-01T00:00Z.
    pub fn unix_seconds(self) -> f64 {
        self.0 as f64 / 1000.0
    }

    /// From a UTC date and clock time.
    pub fn from_utc(utc: NaiveDateTime) -> Self {
        Self(utc.and_utc().timestamp_millis())
    }

    /// The UTC date and clock time; the ends of the calendar for instants no calendar holds.
    pub fn to_utc(self) -> NaiveDateTime {
        DateTime::<Utc>::from_timestamp_millis(self.0).unwrap_or_default().naive_utc()
    }

    /// Julian date, UTC.
    pub fn julian_date(self) -> f64 {
        self.0 as f64 / 86_400_000.0 + UNIX_EPOCH_JD
    }

    /// From a Julian date, UTC; good to about 0.04 ms in our century.
    pub fn from_julian_date(julian_date: f64) -> Self {
        Self(((julian_date - UNIX_EPOCH_JD) * 86_400_000.0).round() as i64)
    }

    /// Read from RFC 3339, with any offset.
    ///
    /// # Errors
    /// The text is not an RFC 3339 time stamp.
    pub fn parse(text: &str) -> Result<Self, NotAnInstant> {
        DateTime::parse_from_rfc3339(text)
            .map(|stamp| Self(stamp.timestamp_millis()))
            .map_err(|_| NotAnInstant(text.chars().take(40).collect()))
    }
}

impl fmt::Display for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // By hand: chrono's formatter would cost the browser 15 kB.
        let utc = self.to_utc();
        let (year, month, day) = (utc.year(), utc.month(), utc.day());
        let (hour, minute, second) = (utc.hour(), utc.minute(), utc.second());
        write!(f, "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}")?;
        match self.0.rem_euclid(1000) {
            0 => f.write_str("Z"),
            millis => write!(f, ".{millis:03}Z"),
        }
    }
}

impl Add<Duration> for Instant {
    type Output = Self;
    fn add(self, duration: Duration) -> Self {
        Self(self.0.saturating_add(duration.millis()))
    }
}

impl Sub<Duration> for Instant {
    type Output = Self;
    fn sub(self, duration: Duration) -> Self {
        Self(self.0.saturating_sub(duration.millis()))
    }
}

impl Sub for Instant {
    type Output = Duration;
    fn sub(self, other: Self) -> Duration {
        Duration::from_millis(self.0.saturating_sub(other.0))
    }
}

impl From<Instant> for String {
    fn from(instant: Instant) -> Self {
        instant.to_string()
    }
}

impl TryFrom<String> for Instant {
    type Error = NotAnInstant;
    fn try_from(text: String) -> Result<Self, NotAnInstant> {
        Self::parse(&text)
    }
}

/// A text that is not an RFC 3339 time stamp (its first 40 characters).
#[derive(Clone, Debug, PartialEq)]
pub struct NotAnInstant(pub String);

impl fmt::Display for NotAnInstant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "'{}' is not a time stamp like 2027-03-11T17:38:00Z", self.0)
    }
}

impl core::error::Error for NotAnInstant {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_writes_rfc_3339() {
        let instant = Instant::parse("2027-03-11T17:38:00Z").unwrap();
        assert_eq!(instant.to_string(), "2027-03-11T17:38:00Z");
        assert_eq!(Instant::parse("2027-03-11T18:38:00+01:00").unwrap(), instant);
        assert!(Instant::parse("11 March").is_err());
    }

    #[test]
    fn julian_date_of_the_millennium() {
        let noon = Instant::parse("2000-01-01T12:00:00Z").unwrap();
        assert_eq!(noon.julian_date(), 2_451_545.0);
        assert_eq!(Instant::from_julian_date(2_451_545.0), noon);
    }
}
