//! Clock times: "17:38", "5:38 pm", "17:38–18:14".

use chrono::{NaiveDateTime, NaiveTime, TimeDelta, Timelike};
use serde::{Deserialize, Serialize};

use crate::units::Duration;

/// How hours are counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Clock {
    /// 17:38.
    #[default]
    TwentyFour,
    /// 5:38 pm.
    Twelve,
}

/// The nearest full minute; 23:59:40 is midnight of the next day.
pub fn to_the_minute(local: NaiveDateTime) -> NaiveDateTime {
    let past = i64::from(local.second()) * 1000 + i64::from(local.nanosecond() / 1_000_000);
    let down = local
        - TimeDelta::milliseconds(past)
        - TimeDelta::nanoseconds(i64::from(local.nanosecond() % 1_000_000));
    if past >= 30_000 { down + TimeDelta::minutes(1) } else { down }
}

/// The nearest ten minutes, for "about 17:40"; 23:56 is about midnight.
pub fn to_ten_minutes(time: NaiveTime) -> NaiveTime {
    let tens = (time.num_seconds_from_midnight() + 300) / 600;
    NaiveTime::MIN + TimeDelta::minutes(i64::from(tens) * 10)
}

/// "17:38" or "5:38 pm"; seconds are cut off, so round first ([`to_the_minute`]).
pub fn clock(time: NaiveTime, style: Clock) -> String {
    match style {
        Clock::TwentyFour => format!("{:02}:{:02}", time.hour(), time.minute()),
        Clock::Twelve => format!("{} {}", twelve(time), half(time)),
    }
}

/// A time by what has passed since midnight: "17:38"; a clock has no more than a day.
pub fn of_day(since_midnight: Duration, style: Clock) -> String {
    let seconds = (since_midnight.millis() / 1000).rem_euclid(86_400);
    clock(NaiveTime::MIN + TimeDelta::seconds(seconds), style)
}

/// "17:38–18:14", "5:38–6:14 pm", "11:40 am–12:20 pm".
pub fn clock_from_to(from: NaiveTime, to: NaiveTime, style: Clock) -> String {
    match style {
        Clock::Twelve if half(from) == half(to) && from <= to => {
            format!("{}–{}", twelve(from), clock(to, style))
        }
        _ => format!("{}–{}", clock(from, style), clock(to, style)),
    }
}

/// A full hour as drawings name it, "17" or "5 pm"; `None` between full hours.
pub fn full_hour(local: NaiveDateTime, style: Clock) -> Option<String> {
    let time = local.time();
    (time.minute() == 0 && time.second() == 0).then(|| match style {
        Clock::TwentyFour => format!("{:02}", time.hour()),
        Clock::Twelve => format!("{} {}", time.hour12().1, half(time)),
    })
}

/// An offset from UTC: "UTC", "UTC+1", "UTC−3:30". Abbreviations differ between systems, offsets do not.
pub fn offset(offset: Duration) -> String {
    let minutes = offset.millis() / 60_000;
    let sign = if minutes < 0 { '−' } else { '+' };
    match (minutes.abs() / 60, minutes.abs() % 60) {
        (0, 0) => "UTC".to_owned(),
        (hours, 0) => format!("UTC{sign}{hours}"),
        (hours, minutes) => format!("UTC{sign}{hours}:{minutes:02}"),
    }
}

/// "5:38".
fn twelve(time: NaiveTime) -> String {
    format!("{}:{:02}", time.hour12().1, time.minute())
}

/// Half of the day.
fn half(time: NaiveTime) -> &'static str {
    if time.hour12().0 { "pm" } else { "am" }
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveDate;

    fn at(hour: u32, minute: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, minute, 0).unwrap()
    }

    #[test]
    fn both_clocks() {
        assert_eq!(clock(at(17, 38), Clock::TwentyFour), "17:38");
        assert_eq!(clock(at(17, 38), Clock::Twelve), "5:38 pm");
        assert_eq!(clock(at(0, 5), Clock::Twelve), "12:05 am");
        assert_eq!(clock(at(12, 0), Clock::Twelve), "12:00 pm");
        assert_eq!(clock(at(7, 5), Clock::TwentyFour), "07:05");
    }

    #[test]
    fn spans_say_the_half_once() {
        assert_eq!(clock_from_to(at(17, 38), at(18, 14), Clock::TwentyFour), "17:38–18:14");
        assert_eq!(clock_from_to(at(17, 38), at(18, 14), Clock::Twelve), "5:38–6:14 pm");
        assert_eq!(clock_from_to(at(11, 40), at(12, 20), Clock::Twelve), "11:40 am–12:20 pm");
        assert_eq!(clock_from_to(at(23, 40), at(0, 20), Clock::Twelve), "11:40 pm–12:20 am");
    }

    #[test]
    fn offsets_of_half_hours() {
        assert_eq!(offset(Duration::from_minutes(-210)), "UTC−3:30");
        assert_eq!(offset(Duration::from_minutes(60)), "UTC+1");
        assert_eq!(offset(Duration::ZERO), "UTC");
    }

    #[test]
    fn about_is_to_ten_minutes() {
        assert_eq!(to_ten_minutes(at(17, 38)), at(17, 40));
        assert_eq!(to_ten_minutes(at(17, 34)), at(17, 30));
        assert_eq!(to_ten_minutes(at(23, 56)), at(0, 0));
    }

    #[test]
    fn rounding_may_cross_midnight() {
        let date = NaiveDate::from_ymd_opt(2027, 2, 28).unwrap();
        let late = date.and_hms_milli_opt(23, 59, 30, 0).unwrap();
        assert_eq!(to_the_minute(late).to_string(), "2027-03-01 00:00:00");
        let early = date.and_hms_nano_opt(23, 59, 29, 999_999_999).unwrap();
        assert_eq!(to_the_minute(early).to_string(), "2027-02-28 23:59:00");
    }
}
