//! A skyline pasted as two columns, bearing and height in degrees, a point a line.
//!
//! Columns are parted by a semicolon, by spaces or tabs, or else by a comma; where something else parts them a comma may
//! mark decimals. Empty lines, lines that begin with # and one heading are passed over. Nothing else is.

use core::fmt;

use super::{Point, Skyline};
use crate::units::{Bearing, Height};
use crate::words::read_number;

/// Bearings that people write, degrees.
const BEARINGS: core::ops::RangeInclusive<f64> = -180.0..=360.0;

/// A line that is no point.
#[derive(Clone, Debug, PartialEq)]
pub struct BadLine {
    /// Its number, counted from 1.
    pub line: usize,
    /// What it says, at most 40 characters.
    pub text: String,
    /// What is wrong with it.
    pub trouble: Trouble,
}

/// What is wrong with a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trouble {
    /// So many columns instead of two.
    Columns(usize),
    /// A column holds no number.
    NotANumber,
    /// No bearing: −180° to 360° are.
    Bearing(f64),
    /// No height: −90° to 90° are.
    Height(f64),
}

impl fmt::Display for BadLine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, '{}': ", self.line, self.text)?;
        match self.trouble {
            Trouble::Columns(count) => write!(f, "{count} columns; write bearing and height"),
            Trouble::NotANumber => f.write_str("not two numbers"),
            Trouble::Bearing(given) => write!(f, "bearing {given}° is outside -180° to 360°"),
            Trouble::Height(given) => write!(f, "height {given}° is outside -90° to 90°"),
        }
    }
}

impl core::error::Error for BadLine {}

impl Skyline {
    /// Reads two columns.
    ///
    /// ```
    /// # use slantlight::place::skyline::Skyline;
    /// let pasted = Skyline::from_columns("bearing;height\n120;4,5\n150;12\n").unwrap();
    /// assert_eq!(pasted.points().len(), 2);
    /// assert_eq!(Skyline::from_columns("120 4\n150 x").unwrap_err()[0].line, 2);
    /// ```
    ///
    /// # Errors
    /// Every line that is no point.
    pub fn from_columns(text: &str) -> Result<Self, Vec<BadLine>> {
        let said = |(_, line): &(usize, &str)| !line.is_empty() && !line.starts_with('#');
        let mut lines = text.lines().map(str::trim).enumerate().filter(said).peekable();
        let has_digit = |line: &str| line.contains(|letter: char| letter.is_ascii_digit());
        lines.next_if(|(_, line)| !has_digit(line));
        let (mut points, mut bad) = (Vec::new(), Vec::new());
        for (index, line) in lines {
            let text = || line.chars().take(40).collect();
            match point(line) {
                Ok(point) => points.push(point),
                Err(trouble) => bad.push(BadLine { line: index + 1, text: text(), trouble }),
            }
        }
        if bad.is_empty() { Ok(Self::new(points)) } else { Err(bad) }
    }
}

fn point(line: &str) -> Result<Point, Trouble> {
    let columns: Vec<&str> = if line.contains(';') {
        line.split(';').map(str::trim).collect()
    } else if line.contains(char::is_whitespace) {
        line.split_whitespace().map(|column| column.trim_end_matches(',')).collect()
    } else {
        line.split(',').collect()
    };
    let [bearing, height] = columns[..] else { return Err(Trouble::Columns(columns.len())) };
    let number = |column| read_number(column).map_err(|_| Trouble::NotANumber);
    let (bearing, height) = (number(bearing)?, number(height)?);
    if !BEARINGS.contains(&bearing) {
        return Err(Trouble::Bearing(bearing));
    }
    let height = Height::from_degrees(height).map_err(|_| Trouble::Height(height))?;
    Ok(Point { bearing: Bearing::from_degrees(bearing), height })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn columns_in_the_usual_forms() {
        let expected = Skyline::from_columns("120.5 4.25\n-30 12").unwrap();
        assert_eq!(expected.points().len(), 2);
        for text in [
            "120,5;4,25\n-30;12",
            "120.5,4.25\n-30,12",
            "120,5\t4,25\n-30\t12",
            "# from the jetty\n\nbearing height\n120.5, 4.25\n330° 12°\r\n",
        ] {
            assert_eq!(Skyline::from_columns(text).as_ref(), Ok(&expected), "{text}");
        }
        assert_eq!(Skyline::from_columns(""), Ok(Skyline::default()));
    }

    #[test]
    fn each_bad_line_is_named() {
        let bad = Skyline::from_columns("10 5\n20\n30 x\n400 5\n40 95\nend").unwrap_err();
        let found: Vec<_> = bad.iter().map(|bad| (bad.line, bad.trouble)).collect();
        let expected = [
            (2, Trouble::Columns(1)),
            (3, Trouble::NotANumber),
            (4, Trouble::Bearing(400.0)),
            (5, Trouble::Height(95.0)),
            (6, Trouble::Columns(1)),
        ];
        assert_eq!(found, expected);
        assert_eq!(bad[3].to_string(), "line 5, '40 95': height 95° is outside -90° to 90°");
    }

    proptest! {
        #[test]
        fn no_text_panics(text in "\\PC*", near in "[0-9 .,;\\t\\n#x−-]{0,60}") {
            let _ = (Skyline::from_columns(&text), Skyline::from_columns(&near));
        }
    }
}
