//! ISO 6709:2008, annex H: `+48.8577+002.295/`, `+1234.7-09854.1/`, `+401213.1-0750015.1+20CRSWGS_84/`.
//!
//! Two, four or six digits before the point of a latitude (three, five or seven of a longitude) say whether they are
//! degrees, degrees and minutes, or degrees, minutes and seconds. A missing closing solidus is forgiven, and so is a missing
//! reference system.

use super::error::{CoordinateError, Trouble};
use super::{Form, Found};
use crate::place::site::Site;
use crate::units::{Latitude, Longitude, Metres};

/// Names of WGS 84.
const WGS_84: [&str; 4] = ["WGS_84", "WGS84", "EPSG:4326", "EPSG:4979"];

/// A signed number as it was written.
struct Signed<'a> {
    text: &'a str,
    at: usize,
}

/// Whether a text is of this form: a sign, digits in one of the three layouts, and another.
pub(super) fn looks_like(text: &str) -> bool {
    matches!(cut(text), Some(([latitude, longitude, ..], _))
        if latitude.layout(2).is_some() && longitude.layout(3).is_some())
}

/// Reads a text for which [`looks_like`] holds.
pub(super) fn read(text: &str) -> Result<Found, CoordinateError> {
    let nothing = || CoordinateError::new(Trouble::Nothing, 0, text);
    let ([latitude, longitude, altitude], rest) = cut(text).ok_or_else(nothing)?;
    if latitude.layout(2) != longitude.layout(3) {
        return Err(longitude.error(Trouble::BadNumber));
    }
    let (rest, at) = (rest.text.trim_end_matches('/'), rest.at);
    if !rest.is_empty() {
        let name =
            rest.strip_prefix("CRS").ok_or_else(|| CoordinateError::new(Trouble::BadNumber, at, rest))?;
        if !WGS_84.iter().any(|known| known.eq_ignore_ascii_case(name)) {
            return Err(CoordinateError::new(Trouble::UnknownReference, at, rest));
        }
    }
    let site = Site {
        latitude: Latitude::from_degrees(latitude.degrees(2)?)
            .map_err(|out| latitude.error(Trouble::OutOfRange(out)))?,
        longitude: Longitude::from_degrees(longitude.degrees(3)?)
            .map_err(|out| longitude.error(Trouble::OutOfRange(out)))?,
        elevation: Metres::from_metres(altitude.text.parse().unwrap_or(0.0)),
    };
    Ok(Found::at(site, Form::Iso6709))
}

/// Latitude, longitude, altitude (perhaps empty), and what comes after.
fn cut(text: &str) -> Option<([Signed<'_>; 3], Signed<'_>)> {
    let (latitude, rest) = signed(Signed { text, at: 0 })?;
    let (longitude, rest) = signed(rest)?;
    let at = rest.at;
    let (altitude, rest) = signed(Signed { ..rest }).unwrap_or((Signed { text: "", at }, rest));
    Some(([latitude, longitude, altitude], rest))
}

/// A sign, digits, and a point with digits perhaps.
fn signed(Signed { text, at }: Signed<'_>) -> Option<(Signed<'_>, Signed<'_>)> {
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let body = text.strip_prefix(['+', '-'])?;
    let whole = digits(body);
    let part = body[whole..].strip_prefix('.').map_or(0, digits);
    let length = 1 + whole + if part > 0 { 1 + part } else { 0 };
    let (number, rest) = text.split_at(length);
    (whole > 0).then_some((Signed { text: number, at }, Signed { text: rest, at: at + length }))
}

impl Signed<'_> {
    /// 0 for degrees, 1 with minutes, 2 with seconds, by the digits before the point.
    fn layout(&self, of_degrees: usize) -> Option<usize> {
        let whole = self.text.split('.').next().unwrap_or_default().len() - 1;
        let more = whole.checked_sub(of_degrees)?;
        (more % 2 == 0 && more <= 4).then_some(more / 2)
    }

    fn degrees(&self, of_degrees: usize) -> Result<f64, CoordinateError> {
        let layout = self.layout(of_degrees).ok_or_else(|| self.error(Trouble::BadNumber))?;
        let (sign, mut rest) = self.text.split_at(1);
        let mut sum = 0.0;
        for place in 0..=layout {
            let width = if place == 0 { of_degrees } else { 2 };
            let (part, after) = if place == layout { (rest, "") } else { rest.split_at(width) };
            let part: f64 = part.parse().map_err(|_| self.error(Trouble::BadNumber))?;
            if place > 0 && part >= 60.0 {
                return Err(self.error(Trouble::Sixty));
            }
            sum += part / [1.0, 60.0, 3600.0][place];
            rest = after;
        }
        Ok(if sign == "-" { -sum } else { sum })
    }

    fn error(&self, trouble: Trouble) -> CoordinateError {
        CoordinateError::new(trouble, self.at, self.text)
    }
}
