//! The one position in a message or a link.
//!
//! Tried are `geo:` URIs, pairs of keys as links have them, and every run of the text that can be nothing but a
//! position: two numbers with three decimals or more, or angles with their marks. Two different ones are a question.

use super::error::{CoordinateError, Trouble};
use super::pair;
use super::token::{Token, What, tokens};
use super::{Form, Found, geo_uri};
use crate::place::site::Site;
use crate::units::{Latitude, Longitude, Metres};

/// Keys of links after which latitude and longitude stand.
const KEYS: [(&str, &str); 4] =
    [("!3d", "!4d"), ("lat=", "lon="), ("lat=", "lng="), ("latitude=", "longitude=")];

/// Positions closer than this are one, degrees: a centimetre.
const SAME: f64 = 1e-7;

/// Reads the only position in a text.
pub(super) fn read(text: &str) -> Result<Found, CoordinateError> {
    let text = &decoded(text);
    let mut sites: Vec<Site> = Vec::new();
    let uris = text.split_whitespace().filter(|word| word.starts_with("geo:"));
    let by_uri = uris.filter_map(|uri| geo_uri::read(uri.trim_end_matches(['.', ',', ')'])).ok());
    let by_key = KEYS.iter().filter_map(|keys| by_keys(text, *keys));
    let tokens = tokens(text);
    let by_run = tokens.split(Token::is_foreign).flat_map(in_run);
    for site in by_uri.map(|found| found.site).chain(by_key).chain(by_run) {
        if !sites.iter().any(|known| is_same(*known, site)) {
            sites.push(site);
        }
    }
    match sites.as_slice() {
        [] => Err(CoordinateError::new(Trouble::Nothing, 0, text)),
        [one] => Ok(Found::at(*one, Form::Message)),
        _ => Err(CoordinateError::new(Trouble::Several(sites), 0, text)),
    }
}

/// Positions in a run of tokens: the whole of it, or else numbers that follow each other.
fn in_run(run: &[Token]) -> Vec<Site> {
    let run = without_ends(run);
    if let Some(site) = pair::convincing(run) {
        return vec![site];
    }
    let mut sites = Vec::new();
    let numbers: Vec<usize> = (0..run.len()).filter(|index| run[*index].number().is_some()).collect();
    let mut used = 0;
    for ends in numbers.windows(2) {
        if ends[0] >= used
            && let Some(site) = pair::convincing(&run[ends[0]..=ends[1]])
        {
            sites.push(site);
            used = ends[1] + 1;
        }
    }
    sites
}

/// From the first number to the last, with the letters before the one and the marks behind the other: the commas
/// of the sentence around it, and a "second" floor, are no part of it.
fn without_ends(run: &[Token]) -> &[Token] {
    let is_number = |token: &Token| token.number().is_some();
    let (Some(first), Some(last)) = (run.iter().position(is_number), run.iter().rposition(is_number)) else {
        return &[];
    };
    let before =
        run[..first].iter().rev().take_while(|token| matches!(token.what, What::Way(_) | What::Axis(_)));
    let behind =
        run[last + 1..].iter().take_while(|token| matches!(token.what, What::Way(_) | What::Unit(_)));
    &run[first - before.count()..=last + behind.count()]
}

/// Numbers right after two keys of a link.
fn by_keys(text: &str, (latitude, longitude): (&str, &str)) -> Option<Site> {
    Some(Site {
        latitude: Latitude::from_degrees(after(text, latitude)?).ok()?,
        longitude: Longitude::from_degrees(after(text, longitude)?).ok()?,
        elevation: Metres::default(),
    })
}

fn after(text: &str, key: &str) -> Option<f64> {
    let (_, rest) = text.split_once(key)?;
    let number: String = rest.chars().take_while(|c| c.is_ascii_digit() || matches!(c, '-' | '.')).collect();
    number.contains('.').then(|| number.parse().ok())?
}

/// Without the escapes that links put for commas and spaces.
fn decoded(text: &str) -> String {
    let text = text.replace("%2C", ",").replace("%2c", ",").replace("%20", " ").replace("%2B", "+");
    text.replace(",+", ", ")
}

fn is_same(a: Site, b: Site) -> bool {
    let apart = |a: f64, b: f64| (a - b).abs() < SAME;
    apart(a.latitude.degrees(), b.latitude.degrees()) && apart(a.longitude.degrees(), b.longitude.degrees())
}
