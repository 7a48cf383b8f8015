//! Plus codes (Open Location Code, specification of 2014 to 2024): cells of latitude and longitude as short words.
//!
//! All arithmetic is in whole numbers, so that cell edges fall on the right side. Full codes only: a short one means
//! nothing without a town, and a list of towns is not here.

use core::fmt;

use crate::place::site::Site;
use crate::units::{Latitude, Longitude, Metres};

/// The twenty digits, chosen by the specification to spell no words.
const DIGITS: [char; 20] =
    ['2', '3', '4', '5', '6', '7', '8', '9', 'C', 'F', 'G', 'H', 'J', 'M', 'P', 'Q', 'R', 'V', 'W', 'X'];

/// The mark after eight digits, and the filler before it.
const MARK: char = '+';
const FILLER: char = '0';
const MARK_AT: usize = 8;

/// Digits in pairs, then digits of a grid of 5 rows and 4 columns; no code has more than both together.
const PAIRED: usize = 10;
const LONGEST: usize = 15;
const ROWS: u64 = 5;
const COLUMNS: u64 = 4;

/// Finest cells in a degree: 8000 × 5⁵ of latitude, 8000 × 4⁵ of longitude.
const NORTH_PARTS: u64 = 25_000_000;
const EAST_PARTS: u64 = 8_192_000;

/// Metres in a degree of latitude, to the metre: ten million from equator to pole.
const DEGREE: f64 = 111_111.0;

/// A cell of the Earth's surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    south: u64,
    west: u64,
    height: u64,
    width: u64,
}

/// Why a text is not a full plus code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotACode {
    /// It is a short code, which needs a town to be understood.
    Short,
    /// It is no plus code.
    Other,
}

impl fmt::Display for NotACode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Short => "a short plus code; the full one has eight characters before the +",
            Self::Other => "not a plus code",
        })
    }
}

impl core::error::Error for NotACode {}

impl Cell {
    /// Reads a full code, in capitals or not.
    ///
    /// # Errors
    /// A short code, or no code at all.
    pub fn decode(code: &str) -> Result<Self, NotACode> {
        let code: Vec<char> = code.chars().map(|letter| letter.to_ascii_uppercase()).collect();
        let digits = digits(&code)?;
        let mut cell = Self { south: 0, west: 0, height: NORTH_PARTS * 400, width: EAST_PARTS * 400 };
        for pair in digits[..digits.len().min(PAIRED)].chunks(2) {
            cell = cell.part(20, 20, (pair[0], *pair.get(1).unwrap_or(&0)));
        }
        for digit in digits.iter().skip(PAIRED) {
            cell = cell.part(ROWS, COLUMNS, (digit / COLUMNS, digit % COLUMNS));
        }
        if cell.south >= NORTH_PARTS * 180 || cell.west >= EAST_PARTS * 360 {
            return Err(NotACode::Other);
        }
        Ok(cell)
    }

    /// South-west corner: latitude and longitude, degrees.
    pub fn low(&self) -> [f64; 2] {
        degrees(self.south, self.west)
    }

    /// North-east corner: latitude and longitude, degrees.
    pub fn high(&self) -> [f64; 2] {
        degrees(self.south + self.height, self.west + self.width)
    }

    /// The point in its middle.
    pub fn middle(&self) -> Site {
        let ([south, west], [north, east]) = (self.low(), self.high());
        Site {
            latitude: Latitude::from_degrees(((south + north) / 2.0).clamp(-90.0, 90.0)).unwrap_or_default(),
            longitude: Longitude::from_degrees(((west + east) / 2.0).clamp(-180.0, 180.0))
                .unwrap_or_default(),
            elevation: Metres::default(),
        }
    }

    /// From its middle to its northern edge.
    pub fn reach(&self) -> Metres {
        Metres::from_metres(self.height as f64 / NORTH_PARTS as f64 / 2.0 * DEGREE)
    }

    /// One of `rows` × `columns` parts.
    const fn part(self, rows: u64, columns: u64, (row, column): (u64, u64)) -> Self {
        let (height, width) = (self.height / rows, self.width / columns);
        Self { south: self.south + row * height, west: self.west + column * width, height, width }
    }
}

/// The full code of a place, ten digits: a cell of 14 m from south to north.
///
/// ```
/// # use slantlight::{place::{plus_code, site::Site}, units::{Latitude, Longitude}};
/// let latitude = Latitude::from_degrees(47.365590).unwrap();
/// let longitude = Longitude::from_degrees(8.524997).unwrap();
/// let site = Site { latitude, longitude, ..Site::default() };
/// assert_eq!(plus_code::of(site), "8FVC9G8F+6X");
/// ```
pub fn of(site: Site) -> String {
    let (north, east) = parts(site);
    encode(north, east, PAIRED).unwrap_or_default()
}

/// A place in finest cells, counted from the south pole and from 180° west.
pub fn parts(site: Site) -> (u64, u64) {
    let north = (site.latitude.degrees() * NORTH_PARTS as f64).floor() as i64 + 90 * NORTH_PARTS as i64;
    let east = (site.longitude.degrees() * EAST_PARTS as f64).floor() as i64 + 180 * EAST_PARTS as i64;
    (north.max(0) as u64, east.rem_euclid(360 * EAST_PARTS as i64) as u64)
}

/// The code with `length` digits of a place in finest cells; `None` for a length that no code has.
pub fn encode(north: u64, east: u64, length: usize) -> Option<String> {
    if length < 2 || length < PAIRED && length % 2 == 1 {
        return None;
    }
    let length = length.min(LONGEST);
    let (mut north, mut east) = (north.min(NORTH_PARTS * 180 - 1), east % (EAST_PARTS * 360));
    let mut digits = [0; LONGEST];
    for place in (PAIRED..LONGEST).rev() {
        digits[place] = north % ROWS * COLUMNS + east % COLUMNS;
        (north, east) = (north / ROWS, east / COLUMNS);
    }
    for place in (0..PAIRED).step_by(2).rev() {
        (digits[place], digits[place + 1]) = (north % 20, east % 20);
        (north, east) = (north / 20, east / 20);
    }
    let digit = |place: usize| if place < length { DIGITS[digits[place] as usize] } else { FILLER };
    let before = (0..MARK_AT).map(digit);
    Some(before.chain([MARK]).chain((MARK_AT..length).map(digit)).collect())
}

/// Values of a full code's digits, fillers left out.
fn digits(code: &[char]) -> Result<Vec<u64>, NotACode> {
    let value = |letter: &char| DIGITS.iter().position(|digit| digit == letter).map(|index| index as u64);
    let mark = code.iter().position(|letter| *letter == MARK).ok_or(NotACode::Other)?;
    let (before, after) = (&code[..mark], &code[mark + 1..]);
    let filled = before.iter().rev().take_while(|letter| **letter == FILLER).count();
    let front: Option<Vec<u64>> = before[..mark - filled].iter().map(value).collect();
    let back: Option<Vec<u64>> = after.iter().map(value).collect();
    let (front, back) = front.zip(back).ok_or(NotACode::Other)?;
    let odd = mark % 2 == 1 || filled % 2 == 1 || mark > MARK_AT || back.len() == 1;
    let padded_wrongly = filled > 0 && (mark != MARK_AT || filled == MARK_AT || !back.is_empty());
    if odd || padded_wrongly || mark == 0 && back.is_empty() {
        return Err(NotACode::Other);
    }
    if mark < MARK_AT {
        return Err(NotACode::Short);
    }
    let mut digits = [front, back].concat();
    digits.truncate(LONGEST);
    Ok(digits)
}

fn degrees(north: u64, east: u64) -> [f64; 2] {
    // Taken apart first, so that whole degrees are exact.
    let degrees =
        |count: u64, parts: u64, least: i64| (count as i64 + least * parts as i64) as f64 / parts as f64;
    [degrees(north, NORTH_PARTS, -90), degrees(east, EAST_PARTS, -180)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn short_codes_are_told_from_nonsense() {
        assert_eq!(Cell::decode("9G8F+6X"), Err(NotACode::Short));
        assert_eq!(Cell::decode("+6X"), Err(NotACode::Short));
        for other in
            ["", "+", "8FVC9G8F6X", "8FVC9G8F+6", "8FVC9G8+6X", "8FVC0000+2X", "00000000+", "WWWW2222+"]
        {
            assert_eq!(Cell::decode(other), Err(NotACode::Other), "{other}");
        }
    }

    proptest! {
        #[test]
        fn a_place_lies_in_its_own_cell(north in 0..NORTH_PARTS * 180, east in 0..EAST_PARTS * 360, length in 1usize..8) {
            let length = [2, 4, 6, 8, 10, 11, 15][length - 1];
            let cell = Cell::decode(&encode(north, east, length).unwrap()).unwrap();
            prop_assert!(cell.south <= north && north < cell.south + cell.height);
            prop_assert!(cell.west <= east && east < cell.west + cell.width);
        }

        #[test]
        fn no_text_panics(text in "\\PC*", code in "[2-9CFGHJMPQRVWX0+]{0,18}") {
            let _ = (Cell::decode(&text), Cell::decode(&code));
        }
    }
}
