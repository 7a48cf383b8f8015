//! Gathers tokens into angles: degrees, minutes, seconds, and which way they count.

use super::error::{CoordinateError, Trouble};
use super::token::{Axis, Number, Token, Unit, Way, What};

/// An angle as it was written.
#[derive(Clone, Debug, Default)]
pub(super) struct Angle {
    /// Where it begins, characters from the start, and what stands there.
    pub(super) at: usize,
    pub(super) piece: String,
    label: Option<Axis>,
    way: Option<Way>,
    minus: Option<bool>,
    parts: Vec<(Number, Option<Unit>)>,
    /// A letter has ended it.
    closed: bool,
}

/// All angles in order. Numbers without any mark are halved if they can stand for two angles.
pub(super) fn angles(tokens: &[Token]) -> Result<Vec<Angle>, CoordinateError> {
    let mut angles = vec![Angle::default()];
    for (index, token) in tokens.iter().enumerate() {
        let next = tokens.get(index + 1).map(|next| next.what);
        let angle = angles.last_mut().expect("there is always one");
        if angle.ends_before(token.what, next) {
            angles.push(Angle::default());
        }
        angles.last_mut().expect("there is always one").take(token)?;
    }
    angles.retain(|angle| !angle.parts.is_empty());
    Ok(match angles.as_slice() {
        [one] => one.halves().map_or_else(|| angles.clone(), Vec::from),
        _ => angles,
    })
}

impl Angle {
    /// Degrees, south and west negative.
    pub(super) fn degrees(&self) -> Result<f64, CoordinateError> {
        if self.parts.len() > 3 {
            return Err(self.error(Trouble::TooMany));
        }
        let mut sum = 0.0;
        for (place, (number, unit)) in self.parts.iter().enumerate() {
            let named = [Unit::Degrees, Unit::Minutes, Unit::Seconds][place];
            if unit.is_some_and(|unit| unit != named) {
                return Err(self.error(Trouble::BadNumber));
            }
            if number.decimals > 0 && place + 1 < self.parts.len() {
                return Err(self.error(Trouble::DecimalsTooEarly));
            }
            if place > 0 && number.size >= 60.0 {
                return Err(self.error(Trouble::Sixty));
            }
            sum += number.size / [1.0, 60.0, 3600.0][place];
        }
        if self.way.is_some() && self.minus == Some(true) {
            return Err(self.error(Trouble::SignAndLetter));
        }
        let negative = self.minus == Some(true) || matches!(self.way, Some(Way::South | Way::West));
        Ok(if negative { -sum } else { sum })
    }

    /// Latitude or longitude, if the text says which.
    pub(super) fn axis(&self) -> Result<Option<Axis>, CoordinateError> {
        let by_way = self.way.map(|way| match way {
            Way::North | Way::South => Axis::Latitude,
            Way::East | Way::West => Axis::Longitude,
        });
        match (self.label, by_way) {
            (Some(label), Some(way)) if label != way => Err(self.error(Trouble::SameAxis)),
            (label, way) => Ok(label.or(way)),
        }
    }

    /// How many numbers it has: 1 for degrees, 2 with minutes, 3 with seconds.
    pub(super) const fn parts(&self) -> usize {
        self.parts.len()
    }

    /// Decimals of its last number.
    pub(super) fn decimals(&self) -> usize {
        self.parts.last().map_or(0, |(number, _)| number.decimals)
    }

    /// Whether marks or letters show that it is an angle.
    pub(super) fn is_marked(&self) -> bool {
        self.way.is_some() || self.label.is_some() || self.parts.iter().any(|(_, unit)| unit.is_some())
    }

    pub(super) fn error(&self, trouble: Trouble) -> CoordinateError {
        CoordinateError::new(trouble, self.at, &self.piece)
    }

    /// Whether the next token begins another angle.
    fn ends_before(&self, what: What, next: Option<What>) -> bool {
        if self.parts.is_empty() {
            return false;
        }
        match what {
            What::Break | What::Comma { .. } | What::Axis(_) => true,
            What::Way(_) => self.way.is_some(),
            What::Number(number) => {
                let ended = self.parts.last().is_some_and(|(_, unit)| *unit == Some(Unit::Seconds));
                let degrees_again = next == Some(What::Unit(Unit::Degrees));
                self.closed || ended || degrees_again || number.minus.is_some()
            }
            What::Unit(_) | What::Foreign => false,
        }
    }

    fn take(&mut self, token: &Token) -> Result<(), CoordinateError> {
        let misplaced = || CoordinateError::new(Trouble::BadNumber, token.at, &token.text);
        match token.what {
            What::Number(number) => {
                if self.parts.is_empty() {
                    (self.at, self.minus) = (token.at, number.minus);
                } else {
                    self.piece.push(' ');
                }
                self.piece.push_str(&token.text);
                self.parts.push((number, None));
            }
            What::Unit(unit) => match self.parts.last_mut() {
                Some((_, mark)) if mark.is_none() => *mark = Some(unit),
                _ => return Err(misplaced()),
            },
            What::Way(way) if self.way.is_none() => {
                (self.way, self.closed) = (Some(way), !self.parts.is_empty());
            }
            What::Axis(axis) if self.label.is_none() => self.label = Some(axis),
            What::Way(_) | What::Axis(_) | What::Foreign => return Err(misplaced()),
            What::Break | What::Comma { .. } => {}
        }
        Ok(())
    }

    /// Two angles from 2, 4 or 6 numbers without marks.
    fn halves(&self) -> Option<[Self; 2]> {
        let half = self.parts.len() / 2;
        let plain = !self.is_marked() && self.parts.len().is_multiple_of(2) && (1..=3).contains(&half);
        let first = Self { parts: self.parts[..half].to_vec(), ..self.clone() };
        let second = Self { parts: self.parts[half..].to_vec(), minus: None, ..self.clone() };
        plain.then_some([first, second])
    }
}
