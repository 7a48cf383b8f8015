//! Lengths: 5.3 m, 17′ 5″.

use serde::{Deserialize, Serialize};

use crate::units::Metres;

/// How lengths are written and read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Units {
    /// 5.3 m
    #[default]
    Metric,
    /// 17′ 5″
    FeetInches,
}

/// A length one walks or throws light over: to 0.1 m or 1 inch.
///
/// ```
/// # use slantlight::{units::Metres, words::{length, Units}};
/// assert_eq!(length(Metres::from_metres(5.31), Units::Metric), "5.3 m");
/// assert_eq!(length(Metres::from_metres(5.31), Units::FeetInches), "17′ 5″");
/// ```
pub fn length(length: Metres, units: Units) -> String {
    match units {
        Units::Metric => format!("{} m", signed(length.metres(), 1)),
        Units::FeetInches => feet_and_inches(length),
    }
}

/// A length one measures with a tape: to 0.01 m or 1 inch.
pub fn measure(length: Metres, units: Units) -> String {
    match units {
        Units::Metric => format!("{} m", signed(length.metres(), 2)),
        Units::FeetInches => feet_and_inches(length),
    }
}

/// Several sizes of one thing, each in the words of `say`: "6.0 × 8.0 × 3.4 m".
///
/// ```
/// # use slantlight::{units::Metres, words::{Units, measure, sizes}};
/// let window = [1.2, 1.7].map(Metres::from_metres);
/// assert_eq!(sizes(&window, Units::Metric, measure), "1.20 × 1.70 m");
/// assert_eq!(sizes(&window, Units::FeetInches, measure), "3′ 11″ × 5′ 7″");
/// ```
pub fn sizes(sizes: &[Metres], units: Units, say: fn(Metres, Units) -> String) -> String {
    let said: Vec<String> = sizes.iter().map(|size| say(*size, units)).collect();
    said.join(" × ").replace(" m × ", " × ")
}

/// Slowest and fastest of something in a minute, with the unit: "1.4–3.9" and "cm/min".
///
/// ```
/// # use slantlight::{units::Metres, words::{Units, per_minute}};
/// let drift = [0.0137, 0.0391].map(Metres::from_metres);
/// assert_eq!(per_minute(drift, Units::Metric), ("1.4–3.9".to_owned(), "cm/min"));
/// assert_eq!(per_minute(drift, Units::FeetInches), ("0.5–1.5".to_owned(), "in/min"));
/// ```
pub fn per_minute([slow, fast]: [Metres; 2], units: Units) -> (String, &'static str) {
    let (each, unit) = match units {
        Units::Metric => (100.0, "cm/min"),
        Units::FeetInches => (12.0 / 0.3048, "in/min"),
    };
    let [slow, fast] = [slow, fast].map(|speed| signed(speed.metres() * each, 1));
    (if slow == fast { slow } else { format!("{slow}–{fast}") }, unit)
}

/// An area from its square metres: "1.8 m²", "19 ft²".
///
/// ```
/// # use slantlight::words::{Units, area};
/// assert_eq!((area(1.84, Units::Metric), area(1.84, Units::FeetInches)), ("1.8 m²".into(), "20 ft²".into()));
/// ```
pub fn area(square_metres: f64, units: Units) -> String {
    let foot = Metres::from_feet(1.0).metres();
    match units {
        Units::Metric => format!("{} m²", signed(square_metres, 1)),
        Units::FeetInches => format!("{} ft²", signed(square_metres / (foot * foot), 0)),
    }
}

/// How many times something: "4.3×".
pub fn times(ratio: f64) -> String {
    format!("{}×", signed(ratio, 1))
}

/// A number with so many decimals, a true minus sign, and no minus before nought.
fn signed(number: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", number.abs());
    let is_nought = text.bytes().all(|byte| matches!(byte, b'0' | b'.'));
    if number < 0.0 && !is_nought { format!("−{text}") } else { text }
}

/// To the inch, carried over into feet.
fn feet_and_inches(length: Metres) -> String {
    let inches = (length.feet().abs() * 12.0).round() as u64;
    let sign = if length.metres() < 0.0 && inches > 0 { "−" } else { "" };
    format!("{sign}{}′ {}″", inches / 12, inches % 12)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twelve_inches_make_a_foot() {
        assert_eq!(measure(Metres::from_feet(5.99), Units::FeetInches), "6′ 0″");
        assert_eq!(measure(Metres::from_feet(-0.5), Units::FeetInches), "−0′ 6″");
        assert_eq!(measure(Metres::from_metres(0.9), Units::Metric), "0.90 m");
        assert_eq!(length(Metres::from_metres(-0.04), Units::Metric), "0.0 m");
    }
}
