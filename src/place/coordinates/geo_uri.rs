//! `geo:` URIs (A. Mayrhofer, C. Spanring, RFC 5870, June 2010).
//!
//! Three numbers are latitude, longitude and altitude: a comma never marks decimals here.

use super::error::{CoordinateError, Trouble};
use super::{Form, Found, message};
use crate::place::site::Site;
use crate::units::{Latitude, Longitude, Metres};

/// Characters of "geo:".
const SCHEME: usize = 4;

/// Reads a URI that begins with "geo:".
pub(super) fn read(uri: &str) -> Result<Found, CoordinateError> {
    let body = uri.get(SCHEME..).unwrap_or_default();
    // Some phones put the place into a query and noughts before it, which the standard does not know.
    if let Some((_, query)) = body.split_once('?') {
        return message::read(query);
    }
    let mut pieces = body.split(';');
    let numbers = pieces.next().unwrap_or_default();
    let mut found = Found::at(site(numbers)?, Form::GeoUri);
    let mut at = SCHEME + numbers.chars().count() + 1;
    for piece in pieces {
        parameter(piece, at, &mut found)?;
        at += piece.chars().count() + 1;
    }
    crate::order::by(&mut found.kept, Ord::cmp);
    Ok(found)
}

fn site(numbers: &str) -> Result<Site, CoordinateError> {
    let mut read = Vec::new();
    let mut at = SCHEME;
    for piece in numbers.split(',') {
        read.push((number(piece, at)?, piece, at));
        at += piece.chars().count() + 1;
    }
    let (latitude, longitude, altitude) = match read.as_slice() {
        [latitude, longitude] => (latitude, longitude, 0.0),
        [latitude, longitude, (altitude, ..)] => (latitude, longitude, *altitude),
        [.., (_, piece, at)] => {
            let trouble = if read.len() < 2 { Trouble::OnlyOne } else { Trouble::TooMany };
            return Err(CoordinateError::new(trouble, *at, piece));
        }
        [] => return Err(CoordinateError::new(Trouble::Nothing, SCHEME, numbers)),
    };
    let fails = |(_, piece, at): &(f64, &str, usize)| {
        let (piece, at) = ((*piece).to_owned(), *at);
        move |out| CoordinateError::new(Trouble::OutOfRange(out), at, &piece)
    };
    // Section 3.4.4: at a pole the longitude means nothing, and both sides of the date line are one.
    let east = match (latitude.0.abs(), longitude.0) {
        (90.0, _) => 0.0,
        (_, -180.0) => 180.0,
        (_, east) => east,
    };
    Ok(Site {
        latitude: Latitude::from_degrees(latitude.0).map_err(fails(latitude))?,
        longitude: Longitude::from_degrees(east).map_err(fails(longitude))?,
        elevation: Metres::from_metres(altitude),
    })
}

fn parameter(piece: &str, at: usize, found: &mut Found) -> Result<(), CoordinateError> {
    let (name, value) = piece.split_once('=').unwrap_or((piece, ""));
    let at_value = at + name.chars().count() + 1;
    match name.to_ascii_lowercase().as_str() {
        "crs" if value.eq_ignore_ascii_case("wgs84") => {}
        "crs" => return Err(CoordinateError::new(Trouble::UnknownReference, at_value, value)),
        "u" => {
            let uncertainty = number(value, at_value)?;
            if uncertainty < 0.0 {
                return Err(CoordinateError::new(Trouble::BadNumber, at_value, value));
            }
            found.accuracy = Some(Metres::from_metres(uncertainty));
        }
        "" => return Err(CoordinateError::new(Trouble::BadNumber, at, piece)),
        name => found.kept.push((name.to_owned(), percent_decoded(value))),
    }
    Ok(())
}

/// A number as the grammar has it: a minus perhaps, digits, a point and digits perhaps; no exponent, no plus.
fn number(piece: &str, at: usize) -> Result<f64, CoordinateError> {
    let digits = piece.strip_prefix('-').unwrap_or(piece);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    let all_digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let read = piece.parse().ok().filter(|number: &f64| number.is_finite());
    read.filter(|_| all_digits(whole) && all_digits(part))
        .ok_or_else(|| CoordinateError::new(Trouble::BadNumber, at, piece))
}

/// `%2d` as `-`; what is no escape or no text stays as it is.
fn percent_decoded(value: &str) -> String {
    let bytes = value.as_bytes();
    let mut decoded = Vec::with_capacity(bytes.len());
    let mut at = 0;
    while at < bytes.len() {
        let escape = value.get(at + 1..at + 3).filter(|_| bytes[at] == b'%');
        match escape.and_then(|hex| u8::from_str_radix(hex, 16).ok()) {
            Some(byte) => (decoded.push(byte), at += 3).1,
            None => (decoded.push(bytes[at]), at += 1).1,
        }
    }
    String::from_utf8(decoded).unwrap_or_else(|_| value.to_owned())
}
