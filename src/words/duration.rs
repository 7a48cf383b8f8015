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
    fn spreads() {
        assert_eq!(plus_minus(Duration::from_minutes(6)), "± 6 min");
        assert_eq!(plus_minus(Duration::from_seconds(3.0)), "± under 1 min");
    }
}
