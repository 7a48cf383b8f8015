//! A plain line as scripts head their scenes: number, INT or EXT, place, hour, then whatever follows.
//!
//! The form is the trade's (common practice, no source): "4A INT. SAIL LOFT - DAY - 25 min - low sun". Dashes with
//! blanks around them part the words; the number and INT or EXT stand before the place.

use super::cell::{self, Side};

/// Whether a line begins like a scene heading: a number, then INT or EXT.
pub(super) fn is_one(line: &str) -> bool {
    let (number, side, _) = begin(line);
    !number.is_empty() && !side.is_empty()
}

/// Number, INT or EXT, place, hour, minutes, and the rest of a line; what is not there is empty.
pub(super) fn cells(line: &str) -> Vec<String> {
    let (number, side, rest) = begin(line);
    let mut parts = pieces(rest);
    let mut take = |is: fn(&str) -> bool| {
        let found = parts.iter().position(|part| is(part));
        found.map(|at| parts.remove(at)).unwrap_or_default()
    };
    let hour = take(|part| cell::hour(part).is_some());
    let minutes = take(|part| part.ends_with(char::is_alphabetic) && cell::minutes(part).is_ok());
    let place = if parts.is_empty() || side.is_empty() { String::new() } else { parts.remove(0) };
    [number.to_owned(), side.to_owned(), place, hour, minutes, parts.join(" - ")].into()
}

/// The number and INT or EXT at the start of a line, and what follows them.
fn begin(line: &str) -> (&str, &str, &str) {
    let (first, after) = word(line);
    let is_number = first.starts_with(|letter: char| letter.is_ascii_digit());
    let (number, after) = if is_number { (first, after) } else { ("", line.trim()) };
    let (second, rest) = word(after);
    if Side::read(second).is_some() { (number, second, rest) } else { (number, "", after) }
}

/// The first word, without a full stop or colon behind it, and the rest.
fn word(text: &str) -> (&str, &str) {
    let text = text.trim();
    let (first, rest) = text.split_once(char::is_whitespace).unwrap_or((text, ""));
    (first.trim_end_matches([':', ')', '.']), rest.trim())
}

/// What dashes with blanks around them part.
fn pieces(text: &str) -> Vec<String> {
    let dashed = text.replace(" – ", " - ").replace(" — ", " - ");
    dashed.split(" - ").map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heading_falls_into_its_parts() {
        assert_eq!(
            cells("4A INT. SAIL LOFT - DAY - 25 min - low sun, no fill"),
            ["4A", "INT", "SAIL LOFT", "DAY", "25 min", "low sun, no fill"]
        );
        assert_eq!(cells("12. EXT ferry slip — dusk"), ["12", "EXT", "ferry slip", "dusk", "", ""]);
    }

    #[test]
    fn a_line_that_is_no_heading_is_kept_whole() {
        assert_eq!(cells("she looks up"), ["", "", "", "", "", "she looks up"]);
        assert_eq!(cells("7 she looks up - again"), ["7", "", "", "", "", "she looks up - again"]);
        assert!(!is_one("INTERVAL") && !is_one("7 into the light"));
    }
}
