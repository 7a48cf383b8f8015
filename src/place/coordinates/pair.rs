//! Two angles as a position; and what commas mean in it.

use super::angle::{Angle, angles};
use super::error::{CoordinateError, Trouble};
use super::token::{Axis, Number, Token, What};
use super::{Form, Found};
use crate::place::site::Site;
use crate::units::{Latitude, Longitude, Metres};

/// Decimals at which bare numbers in a message are taken for coordinates: 0.001° is a hundred metres. Our choice.
const CONVINCING: usize = 3;

/// Reads a text that is nothing but a position.
pub(super) fn read(text: &str, tokens: &[Token]) -> Result<Found, CoordinateError> {
    let ambiguous = |site| Err(CoordinateError::new(Trouble::Ambiguous(site), 0, text));
    match commas(tokens) {
        Commas::Part => found(tokens).map(|(found, _)| found),
        Commas::Decimal => found(&with_decimals(tokens)).map(|(found, _)| found),
        Commas::Unclear => {
            let either = found(&with_decimals(tokens)).or_else(|_| found(tokens));
            ambiguous(either.ok().map(|(found, _)| found.site))
        }
    }
}

/// Reads one run of a longer text, if it is surely a position.
pub(super) fn convincing(tokens: &[Token]) -> Option<Site> {
    let resolved = match commas(tokens) {
        Commas::Part => tokens.to_vec(),
        Commas::Decimal => with_decimals(tokens),
        Commas::Unclear => return None,
    };
    found(&resolved).ok().filter(|(_, sure)| *sure).map(|(found, _)| found.site)
}

/// What the commas of a text mean.
enum Commas {
    Part,
    Decimal,
    Unclear,
}

fn commas(tokens: &[Token]) -> Commas {
    let dotted = tokens.iter().filter_map(Token::number).any(|number| number.decimals > 0);
    let tight = tokens.iter().filter(|token| token.what == What::Comma { tight: true }).count();
    let loose = tokens.iter().filter(|token| token.what == What::Comma { tight: false }).count();
    let structured =
        |token: &Token| matches!(token.what, What::Way(_) | What::Unit(_) | What::Axis(_) | What::Break);
    if dotted || tight == 0 {
        Commas::Part
    } else if tokens.iter().any(structured) || (tight, loose) == (2, 1) {
        Commas::Decimal
    } else {
        Commas::Unclear
    }
}

/// Numbers with a tight comma between them made one.
fn with_decimals(tokens: &[Token]) -> Vec<Token> {
    let mut joined: Vec<Token> = Vec::with_capacity(tokens.len());
    for token in tokens {
        let whole = match joined.as_slice() {
            [.., whole, comma] if comma.what == (What::Comma { tight: true }) => whole.number(),
            _ => None,
        };
        match (whole, token.number()) {
            (Some(whole), Some(part)) if whole.decimals == 0 && part.minus.is_none() => {
                joined.pop();
                let last = joined.last_mut().expect("the whole part stands there");
                let text = format!("{}.{}", last.text.trim_start_matches(['+', '-', '−', '–']), token.text);
                let number =
                    Number { size: text.parse().unwrap_or(f64::NAN), decimals: token.text.len(), ..whole };
                last.text = format!("{},{}", last.text, token.text);
                last.what = What::Number(number);
            }
            _ => joined.push(token.clone()),
        }
    }
    joined
}

/// A position from exactly two angles, and whether it is surely one.
fn found(tokens: &[Token]) -> Result<(Found, bool), CoordinateError> {
    let angles = angles(tokens)?;
    let (a, b) = match angles.as_slice() {
        [] => return Err(CoordinateError::new(Trouble::Nothing, 0, "")),
        [one] => return Err(one.error(if one.parts() > 3 { Trouble::TooMany } else { Trouble::OnlyOne })),
        [a, b] => in_order(a, b)?,
        [_, _, third, ..] => return Err(third.error(Trouble::TooMany)),
    };
    let form = match a.parts().max(b.parts()) {
        1 => Form::Decimal,
        2 => Form::DegreesMinutes,
        _ => Form::DegreesMinutesSeconds,
    };
    let sure = |angle: &Angle| angle.decimals() >= CONVINCING || angle.parts() > 1 && angle.is_marked();
    let marked = a.is_marked() && b.is_marked() && a.decimals() + b.decimals() > 0;
    Ok((Found::at(site(a, b)?, form), marked || sure(a) && sure(b)))
}

/// Latitude and longitude, in the order that letters say, or else as they stand.
fn in_order<'a>(a: &'a Angle, b: &'a Angle) -> Result<(&'a Angle, &'a Angle), CoordinateError> {
    use Axis::{Latitude, Longitude};
    match (a.axis()?, b.axis()?) {
        (Some(Latitude) | None, Some(Longitude) | None) => Ok((a, b)),
        (Some(Longitude), Some(Latitude) | None) | (None, Some(Latitude)) => Ok((b, a)),
        (Some(Latitude), Some(Latitude)) | (Some(Longitude), Some(Longitude)) => {
            Err(b.error(Trouble::SameAxis))
        }
    }
}

fn site(latitude: &Angle, longitude: &Angle) -> Result<Site, CoordinateError> {
    Ok(Site {
        latitude: Latitude::from_degrees(latitude.degrees()?)
            .map_err(|out| latitude.error(Trouble::OutOfRange(out)))?,
        longitude: Longitude::from_degrees(longitude.degrees()?)
            .map_err(|out| longitude.error(Trouble::OutOfRange(out)))?,
        elevation: Metres::default(),
    })
}
