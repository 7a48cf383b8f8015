//! Lengths of time: "36 min", "2 h 20", "2 h", "± 6 min".

use crate::units::Duration;

/// "36 min", "2 h 20", "2 h"; below half a minute "under 1 min". Rounded to the nearest minute.
pub fn duration(length: Duration) -> String {
    let minutes = length.minutes().round() as i64;
    match (minutes / 60, minutes % 60) {
        (0, 0) if length > Duration::ZERO => "under 1 min".into(),
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes:02}"),
    }
}

/// "± 6 min"; "± under 1 min" where it rounds to nothing, "exact" where nothing is uncertain.
pub fn plus_minus(spread: Duration) -> String {
    if spread == Duration::ZERO { "exact".into() } else { format!("± {}", duration(spread)) }
}

/// How long ago something was: "just now", "5 min ago", "3 h ago", "yesterday", "4 days ago".
///
/// ```
/// # use slantlight::{units::Duration, words::ago};
/// assert_eq!(ago(Duration::from_minutes(200)), "3 h ago");
/// assert_eq!(ago(Duration::from_minutes(4 * 24 * 60)), "4 days ago");
/// ```
pub fn ago(length: Duration) -> String {
    let minutes = length.minutes() as i64;
    match (minutes / (24 * 60), minutes / 60, minutes) {
        (..=0, ..=0, ..=1) => "just now".into(),
        (..=0, ..=0, minutes) => format!("{minutes} min ago"),
        (..=0, hours, _) => format!("{hours} h ago"),
        (1, ..) => "yesterday".into(),
        (days, ..) => format!("{days} days ago"),
    }
}

/// Below this a countdown shows its seconds. Our own choice: the last minutes are counted on set.
const BY_SECONDS: i64 = 10 * 60;

/// What is left, cut off and never rounded up: "2 h 05", "36 min", and below ten minutes "9:42".
///
/// ```
/// # use slantlight::{units::Duration, words::countdown};
/// assert_eq!(countdown(Duration::from_seconds(2219.9)), "36 min");
/// assert_eq!(countdown(Duration::from_seconds(599.9)), "9:59");
/// ```
pub fn countdown(left: Duration) -> String {
    match left.millis().max(0) / 1000 {
        seconds if seconds < BY_SECONDS => format!("{}:{:02}", seconds / 60, seconds % 60),
        seconds if seconds < 3600 => format!("{} min", seconds / 60),
        seconds if seconds % 3600 < 60 => format!("{} h", seconds / 3600),
        seconds => format!("{} h {:02}", seconds / 3600, seconds / 60 % 60),
    }
}

/// How long a countdown still says the same.
///
/// ```
/// use slantlight::units::Duration;
/// use slantlight::words::countdown_holds;
/// let holds = |left| countdown_holds(Duration::from_seconds(left)).seconds();
/// assert_eq!((holds(754.0), holds(9.25)), (34.0, 0.25));
/// ```
pub fn countdown_holds(left: Duration) -> Duration {
    let millis = left.millis().max(0);
    Duration::from_millis(millis % if millis / 1000 < BY_SECONDS { 1000 } else { 60_000 })
}

/// The same for ears, to the minute, so that nothing is read out each second: "9 minutes".
pub fn countdown_aloud(left: Duration) -> String {
    let minutes = left.millis().max(0) / 60_000;
    let count = |number: i64, one: &str| format!("{number} {one}{}", if number == 1 { "" } else { "s" });
    match (minutes / 60, minutes % 60) {
        (0, 0) => "under a minute".to_owned(),
        (0, minutes) => count(minutes, "minute"),
        (hours, 0) => count(hours, "hour"),
        (hours, minutes) => format!("{} {}", count(hours, "hour"), count(minutes, "minute")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_and_hours() {
        let words = |seconds: f64| duration(Duration::from_seconds(seconds));
        assert_eq!(words(36.0 * 60.0), "36 min");
        assert_eq!(words(140.0 * 60.0), "2 h 20");
        assert_eq!(words(125.0 * 60.0), "2 h 05");
        assert_eq!(words(119.6 * 60.0), "2 h");
        assert_eq!(words(20.0), "under 1 min");
        assert_eq!(words(0.0), "0 min");
    }

    #[test]
    fn countdowns_are_cut_off() {
        let words = |seconds: f64| countdown(Duration::from_seconds(seconds));
        assert_eq!(words(7.9), "0:07");
        assert_eq!(words(-3.0), "0:00");
        assert_eq!(words(600.0), "10 min");
        assert_eq!(words(3599.0), "59 min");
        assert_eq!(words(3600.0), "1 h");
        assert_eq!(words(3661.0), "1 h 01");
        let aloud = |seconds: f64| countdown_aloud(Duration::from_seconds(seconds));
        assert_eq!(aloud(61.0), "1 minute");
        assert_eq!(aloud(59.0), "under a minute");
        assert_eq!(aloud(7500.0), "2 hours 5 minutes");
    }

    #[test]
    fn spreads() {
        assert_eq!(plus_minus(Duration::from_minutes(6)), "± 6 min");
        assert_eq!(plus_minus(Duration::from_seconds(3.0)), "± under 1 min");
    }
}
