//! Coordinates as people have them: typed, pasted, in a message, in a link.
//!
//! Read are decimal degrees, degrees and minutes, degrees, minutes and seconds, `geo:` URIs (RFC 5870), ISO 6709 strings,
//! full plus codes, and the one pair of numbers in a longer text. Nothing is guessed: where two readings are
//! possible the error carries the likely one, so that the screen can ask. Latitudes come first unless a letter says
//! otherwise. Positions are WGS 84; no other datum is converted.

mod angle;
mod error;
mod geo_uri;
mod iso6709;
mod message;
mod pair;
#[cfg(test)]
mod tests;
mod token;

pub use error::{CoordinateError, Trouble};

use super::plus_code::{Cell, NotACode};
use super::site::Site;
use crate::units::Metres;

/// A position read from text.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The position.
    pub site: Site,
    /// How exact it is, if the text says so.
    pub accuracy: Option<Metres>,
    /// How it was written.
    pub form: Form,
    /// Parameters of a `geo:` URI that mean nothing here, by name, kept for whoever passes it on.
    pub kept: Vec<(String, String)>,
}

/// How a position was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// 40.6405 N 8.6538 W
    Decimal,
    /// 40° 38.43′ N 8° 39.23′ W
    DegreesMinutes,
    /// 40° 38′ 25.8″ N 8° 39′ 13.7″ W
    DegreesMinutesSeconds,
    /// geo:40.6405,-8.6538
    GeoUri,
    /// +40.6405-008.6538/
    Iso6709,
    /// 8CHHJ8RW+6F
    PlusCode,
    /// One pair of numbers in a message or a link.
    Message,
}

impl Found {
    /// A position with nothing known but where it is.
    const fn at(site: Site, form: Form) -> Self {
        Self { site, accuracy: None, form, kept: Vec::new() }
    }
}

/// Reads a position.
///
/// ```
/// # use slantlight::place::coordinates::{parse, Trouble};
/// let found = parse("40° 38′ 25.8″ N, 8° 39′ 13.7″ W").unwrap();
/// assert!((found.site.latitude.degrees() - 40.6405).abs() < 1e-6);
/// // Two decimal commas or four numbers? It asks.
/// assert!(matches!(parse("40,6 8,7").unwrap_err().trouble, Trouble::Ambiguous(_)));
/// ```
///
/// # Errors
/// What is wrong, where in the text, and a reading to offer where there is one.
pub fn parse(text: &str) -> Result<Found, CoordinateError> {
    let trimmed = text.trim();
    let start = text.chars().take_while(|letter| letter.is_whitespace()).count();
    read(trimmed).map_err(|error| error.moved(start))
}

fn read(text: &str) -> Result<Found, CoordinateError> {
    if text.is_empty() {
        return Err(CoordinateError::new(Trouble::Empty, 0, ""));
    }
    if text.get(..4).is_some_and(|scheme| scheme.eq_ignore_ascii_case("geo:")) && !text.contains(' ') {
        return geo_uri::read(text);
    }
    if iso6709::looks_like(text) {
        return iso6709::read(text);
    }
    match plus_code(text) {
        Some(Ok(found)) => return Ok(found),
        Some(Err(short)) => return Err(short),
        None => {}
    }
    let tokens = token::tokens(text);
    if tokens.iter().any(token::Token::is_foreign) {
        return message::read(text);
    }
    pair::read(text, &tokens)
}

/// A plus code that stands alone or before a name of a town.
fn plus_code(text: &str) -> Option<Result<Found, CoordinateError>> {
    let mut words = text.split_whitespace();
    let code = words.find(|word| word.contains('+'))?.trim_matches([',', ';', '.']);
    match Cell::decode(code) {
        Ok(cell) => {
            let found = Found::at(cell.middle(), Form::PlusCode);
            Some(Ok(Found { accuracy: Some(cell.reach()), ..found }))
        }
        // Numbers with a plus sign look like short codes too, unless they hold a letter.
        Err(NotACode::Short) if code.chars().any(char::is_alphabetic) => {
            let at = text.find(code).map_or(0, |at| text[..at].chars().count());
            Some(Err(CoordinateError::new(Trouble::ShortPlusCode, at, code)))
        }
        Err(_) => None,
    }
}
