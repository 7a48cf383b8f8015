//! Why no position was read: what, where in the text, and what to do.

use core::fmt;

use crate::place::site::Site;
use crate::units::OutOfRange;

/// Longest piece of the text that is quoted, characters.
const QUOTED: usize = 40;

/// Why no position was read from a text.
#[derive(Clone, Debug, PartialEq)]
pub struct CoordinateError {
    /// What is wrong.
    pub trouble: Trouble,
    /// Where it begins, characters from the start of the text.
    pub at: usize,
    /// The piece of text it is about, at most 40 characters.
    pub piece: String,
}

/// What is wrong with a text.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// There is nothing.
    Empty,
    /// Commas may part numbers or decimals: ask whether this is meant.
    Ambiguous(Option<Site>),
    /// Several positions: ask which one.
    Several(Vec<Site>),
    /// No position in it.
    Nothing,
    /// Only one of latitude and longitude.
    OnlyOne,
    /// More numbers than two angles have.
    TooMany,
    /// A number that does not fit where it stands.
    BadNumber,
    /// Minutes or seconds of 60 or more.
    Sixty,
    /// Decimals before the last part of an angle.
    DecimalsTooEarly,
    /// Two latitudes or two longitudes.
    SameAxis,
    /// Both a sign and a letter say which way.
    SignAndLetter,
    /// Beyond a pole or the date line. Latitude comes first.
    OutOfRange(OutOfRange),
    /// A short plus code.
    ShortPlusCode,
    /// Another reference system than WGS 84.
    UnknownReference,
}

impl CoordinateError {
    pub(super) fn new(trouble: Trouble, at: usize, piece: &str) -> Self {
        Self { trouble, at, piece: piece.chars().take(QUOTED).collect() }
    }

    /// The same, so many characters later in the text.
    pub(super) fn moved(self, by: usize) -> Self {
        Self { at: self.at + by, ..self }
    }
}

impl fmt::Display for CoordinateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { trouble, at, piece } = self;
        let what = match trouble {
            Trouble::Empty => return f.write_str("there is nothing to read: type 40.6405, -8.6538"),
            Trouble::Ambiguous(_) => {
                "the commas can be read in two ways: write 40.6 8.7, or part the two with ;"
            }
            Trouble::Several(_) => "there are several positions in it: choose one",
            Trouble::Nothing => "there is no position in it: write 40.6405, -8.6538",
            Trouble::OnlyOne => "latitude and longitude are both needed: write 40.6405, -8.6538",
            Trouble::TooMany => "there are too many numbers: write 40.6405, -8.6538",
            Trouble::BadNumber => "this is not a number that fits here",
            Trouble::Sixty => "minutes and seconds are less than 60",
            Trouble::DecimalsTooEarly => "only the last part of an angle has decimals",
            Trouble::SameAxis => "both are latitudes or both are longitudes",
            Trouble::SignAndLetter => "a minus and a letter: use one of them",
            Trouble::OutOfRange(out) => {
                return write!(f, "{out}, at '{piece}' (character {}); latitude comes first", at + 1);
            }
            Trouble::ShortPlusCode => "a short plus code needs its town: use the full one, like 8CHHJ8RW+6F",
            Trouble::UnknownReference => "another reference system than WGS 84: convert it first",
        };
        write!(f, "{what}, at '{piece}' (character {})", at + 1)
    }
}

impl core::error::Error for CoordinateError {
    fn source(&self) -> Option<&(dyn core::error::Error + 'static)> {
        match &self.trouble {
            Trouble::OutOfRange(out) => Some(out),
            _ => None,
        }
    }
}
