//! Numbers as people type them.
//!
//! A comma is as good as a point, a true minus sign as good as a hyphen, and a unit behind the number is
//! allowed. What is read is never guessed: two numbers where one is wanted are an error.

use core::fmt;

use super::length::Units;
use crate::units::Metres;

/// A text that is not one number (its first 40 characters).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotANumber(pub String);

impl fmt::Display for NotANumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "'{}' is not a number", self.0)
    }
}

impl core::error::Error for NotANumber {}

/// Reads one number.
///
/// ```
/// # use slantlight::words::read_number;
/// assert_eq!(read_number(" −3,5° "), Ok(-3.5));
/// assert!(read_number("40,6 8,7").is_err());
/// ```
///
/// # Errors
/// The text is not one finite number, with or without its unit.
pub fn read_number(text: &str) -> Result<f64, NotANumber> {
    let bare =
        text.trim().trim_end_matches(|end: char| end.is_alphabetic() || end == '°' || end == '%').trim_end();
    let plain: String = bare.chars().map(as_typed_on_a_keyboard).collect();
    let allowed = plain.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'-' | b'+'));
    let number = plain.parse().ok().filter(|number: &f64| allowed && number.is_finite());
    number.ok_or_else(|| NotANumber(text.chars().take(40).collect()))
}

/// Reads a length: metres ("1,2", "120 cm") or, for those who measure so, feet and inches ("5'6\"", "5 6", "5.5").
/// A unit that is written out counts, whatever the habit.
///
/// ```
/// # use slantlight::{units::Metres, words::{read_length, Units}};
/// assert_eq!(read_length("120 cm", Units::FeetInches), Ok(Metres::from_metres(1.2)));
/// assert_eq!(read_length("5' 6\"", Units::FeetInches), Ok(Metres::from_feet(5.5)));
/// ```
///
/// # Errors
/// The text is not one length.
pub fn read_length(text: &str, units: Units) -> Result<Metres, NotANumber> {
    let lower = text.trim().to_lowercase();
    if let Some(number) = lower.strip_suffix("cm") {
        return read_number(number).map(|centimetres| Metres::from_metres(centimetres / 100.0));
    }
    let in_feet =
        lower.contains(['\'', '"', '′', '″', '’', '”']) || lower.contains("ft") || lower.contains("in");
    let in_metres = lower.ends_with('m');
    if in_feet || (units == Units::FeetInches && !in_metres) {
        return read_feet(&lower).ok_or_else(|| NotANumber(text.chars().take(40).collect()));
    }
    read_number(&lower).map(Metres::from_metres)
}

/// Reads several lengths with semicolons or line ends between them; a minus before one makes it negative.
///
/// ```
/// # use slantlight::{units::Metres, words::{read_lengths, Units}};
/// assert_eq!(read_lengths("6,2; -3", Units::Metric), Ok([6.2, -3.0].map(Metres::from_metres).to_vec()));
/// assert!(read_lengths("6.2; wide", Units::Metric).is_err());
/// ```
///
/// # Errors
/// One of them is not a length.
pub fn read_lengths(text: &str, units: Units) -> Result<Vec<Metres>, NotANumber> {
    let pieces = text.split([';', '\n']).map(str::trim).filter(|piece| !piece.is_empty());
    let read = |piece: &str| match piece.strip_prefix(['-', '−']) {
        Some(rest) => read_length(rest, units).map(|length| Metres::from_metres(-length.metres())),
        None => read_length(piece, units),
    };
    pieces.map(read).collect()
}

/// A number as it stands in a field to be edited: no more decimals than it needs, at most `decimals`.
pub fn to_edit(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    let short = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

/// Feet, then perhaps inches; inches alone when only they are marked. Either may end with a fraction, as tapes have them.
fn read_feet(lower: &str) -> Option<Metres> {
    let marked: String = lower.replace("ft", "'").replace("in", "\"").chars().map(as_on_a_tape).collect();
    let marked = marked.replace('½', " 1/2").replace('¼', " 1/4").replace('¾', " 3/4");
    let parts = marked.split(['\'', '"', ' ']).map(str::trim).filter(|part| !part.is_empty());
    let mut numbers: Vec<f64> = Vec::new();
    for part in parts {
        match (read_fraction(part), numbers.last_mut()) {
            (Some(share), Some(whole)) => *whole += share.copysign(*whole),
            (Some(share), None) => numbers.push(share),
            (None, _) => numbers.push(read_number(part).ok()?),
        }
    }
    let inches_only = marked.ends_with('"') && !marked.contains('\'');
    match numbers[..] {
        [inches] if inches_only => Some(Metres::from_feet(inches / 12.0)),
        [feet] => Some(Metres::from_feet(feet)),
        [feet, inches] if inches >= 0.0 => {
            let is_back = marked.trim_start().starts_with(['-', '−']);
            Some(Metres::from_feet(if is_back { feet - inches / 12.0 } else { feet + inches / 12.0 }))
        }
        _ => None,
    }
}

/// "1/2", less than one.
fn read_fraction(part: &str) -> Option<f64> {
    let (over, under) = part.split_once('/')?;
    let [over, under]: [u32; 2] = [over.parse().ok()?, under.parse().ok()?];
    (over < under).then(|| f64::from(over) / f64::from(under))
}

/// The plain mark of feet or inches.
fn as_on_a_tape(mark: char) -> char {
    match mark {
        '′' | '’' => '\'',
        '″' | '”' => '"',
        other => other,
    }
}

/// The character that `parse` knows for this one.
fn as_typed_on_a_keyboard(typed: char) -> char {
    match typed {
        ',' | '٫' => '.',
        '−' | '–' => '-',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn words_are_no_numbers() {
        for text in ["", "-", "inf", "NaN", "1e9", "1.2.3", "west", "1,2,3", "°"] {
            assert!(read_number(text).is_err(), "{text}");
        }
        assert_eq!(read_number("+2,50 m"), Ok(2.5));
    }

    #[test]
    fn feet_in_the_usual_forms() {
        let feet = |text| read_length(text, Units::FeetInches).map(|length| (length.feet() * 12.0).round());
        assert_eq!(
            [feet("5'6\""), feet("5 6"), feet("5.5"), feet("5 ft 6 in"), feet("66\"")].map(Result::unwrap),
            [66.0; 5]
        );
        assert_eq!(read_length("1.2 m", Units::FeetInches), Ok(Metres::from_metres(1.2)));
        assert!(read_length("5 6 7", Units::FeetInches).is_err());
    }

    #[test]
    fn fractions_of_an_inch() {
        let inches =
            |text| read_length(text, Units::FeetInches).map(|length| (length.feet() * 120.0).round() / 10.0);
        assert_eq!(
            [inches("6 1/2\""), inches("6½\""), inches("6.5\""), inches("0' 6 1/2\""), inches("0 6 1/2")]
                .map(Result::unwrap),
            [6.5; 5]
        );
        assert_eq!(
            [inches("1/4\""), inches("-1' 6 1/2\""), inches("2 1/2")].map(Result::unwrap),
            [0.3, -18.5, 30.0]
        );
        for wrong in ["6 3/2\"", "1/0\"", "/2\"", "1/2/3\"", "6 1/-2\""] {
            assert!(inches(wrong).is_err(), "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn no_text_makes_it_fall(text in ".{0,60}") {
            let _ = read_number(&text);
            let _ = read_length(&text, Units::Metric);
            let _ = read_length(&text, Units::FeetInches);
        }

        #[test]
        fn what_is_shown_to_edit_reads_back(number in -1e6..1e6f64) {
            let read = read_number(&to_edit(number, 2)).unwrap();
            prop_assert!((read - number).abs() <= 0.005 + 1e-9);
        }
    }
}
