//! Full hours on a scale: "06", "18"; "6 am", "noon".

use super::clock::Clock;

/// An hour of the day, 0 to 24, as a scale prints it.
///
/// ```
/// # use slantlight::words::{hour, Clock};
/// assert_eq!(hour(6, Clock::TwentyFour), "06");
/// assert_eq!(hour(18, Clock::Twelve), "6 pm");
/// assert_eq!(hour(12, Clock::Twelve), "noon");
/// ```
pub fn hour(hour: u32, style: Clock) -> String {
    match (style, hour) {
        (Clock::TwentyFour, hour) => format!("{hour:02}"),
        (Clock::Twelve, 0 | 24) => "12 am".to_owned(),
        (Clock::Twelve, 12) => "noon".to_owned(),
        (Clock::Twelve, hour) if hour < 12 => format!("{hour} am"),
        (Clock::Twelve, hour) => format!("{} pm", hour - 12),
    }
}
