//! The colour of a lamp, by the two numbers of a meter, or as a chromaticity where it has no colour temperature.

use serde::{Deserialize, Serialize};

use crate::light::colour::correlated::with_duv;
use crate::light::colour::daylight_locus::white;
use crate::light::colour::{Chromaticity, correlated};
use crate::units::Kelvin;

/// What colour a lamp is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LampColour {
    /// White, warm or cool.
    White {
        /// Correlated colour temperature.
        #[serde(rename = "cct_k")]
        cct: Kelvin,
        /// How far it is off white light's own line; positive is greenish. `None` where nobody has measured it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        duv: Option<f64>,
    },
    /// Saturated: x and y of CIE 1931.
    Xy {
        /// x.
        x: f64,
        /// y.
        y: f64,
    },
}

impl Default for LampColour {
    fn default() -> Self {
        Self::white(5600.0)
    }
}

impl LampColour {
    /// White of so many kelvins, nothing else known.
    pub const fn white(kelvin: f64) -> Self {
        Self::White { cct: Kelvin::clamped(kelvin), duv: None }
    }

    /// As a chromaticity; what is no colour counts as daylight.
    pub fn chromaticity(self) -> Chromaticity {
        match self {
            Self::White { cct, duv: None } => white(cct),
            Self::White { cct, duv: Some(duv) } => with_duv(cct, duv.clamp(-0.05, 0.05)),
            Self::Xy { x, y } => Chromaticity::from_xy(x, y).unwrap_or(white(Kelvin::clamped(5600.0))),
        }
    }

    /// Colour temperature; `None` for a saturated lamp.
    pub fn temperature(self) -> Option<Kelvin> {
        match self {
            Self::White { cct, .. } => Some(cct),
            Self::Xy { .. } => correlated(self.chromaticity()).map(|found| found.temperature),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_numbers_and_a_chromaticity_say_the_same() {
        let green = LampColour::White { cct: Kelvin::clamped(4000.0), duv: Some(0.006) };
        let found = correlated(green.chromaticity()).unwrap();
        assert!((found.temperature.kelvin() - 4000.0).abs() < 1.0 && (found.duv - 0.006).abs() < 1e-4);
    }

    #[test]
    fn a_red_lamp_has_no_temperature() {
        assert_eq!(LampColour::Xy { x: 0.68, y: 0.31 }.temperature(), None);
        let nonsense = LampColour::Xy { x: f64::NAN, y: 7.0 };
        assert_eq!(nonsense.chromaticity(), LampColour::default().chromaticity());
    }
}
