//! The one error of quantities with bounds.

use core::fmt;

/// A number outside the range that its quantity allows.
#[derive(Clone, Debug, PartialEq)]
pub struct OutOfRange {
    /// What was being read, in the words of the glossary.
    pub quantity: &'static str,
    /// The number that was given.
    pub given: f64,
    /// Smallest number allowed.
    pub min: f64,
    /// Largest number allowed.
    pub max: f64,
    /// Unit of all three numbers.
    pub unit: &'static str,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { quantity, given, min, max, unit } = self;
        write!(f, "{quantity} {given} {unit} is outside {min} to {max} {unit}")
    }
}

impl core::error::Error for OutOfRange {}

/// `given` if it is a number within `min..=max`.
pub(super) fn within(
    quantity: &'static str,
    unit: &'static str,
    given: f64,
    (min, max): (f64, f64),
) -> Result<f64, OutOfRange> {
    if (min..=max).contains(&given) { Ok(given) } else { Err(OutOfRange { quantity, given, min, max, unit }) }
}
