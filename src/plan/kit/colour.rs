//! The colour of a lamp, by the two numbers of a meter, or as a chromaticity where it has no colour temperature.

use serde::{Deserialize, Serialize};

use crate::light::colour::correlated::with_duv;
use crate::light::colour::daylight_locus::white;
use crate::light::colour::mix::mix;
use crate::light::colour::{Chromaticity, correlated};
use crate::units::{Degrees, Kelvin, Lux};

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

/// Corners of the colour wheel, red, green and blue, and how much of white's light each gives: those of IEC 61966-2-1. A
/// lamp's own are others (our choice, until its xy is known).
const WHEEL: [(f64, f64, f64); 3] = [(0.64, 0.33, 0.2126), (0.30, 0.60, 0.7152), (0.15, 0.06, 0.0722)];

impl LampColour {
    /// As white light, with or without a measured Duv.
    pub fn as_white(self, with_duv: bool) -> Self {
        let found = correlated(self.chromaticity());
        let cct = self.temperature().unwrap_or(Kelvin::clamped(5600.0));
        Self::White { cct, duv: with_duv.then(|| found.map_or(0.0, |found| found.duv)) }
    }

    /// As a chromaticity.
    pub fn as_xy(self) -> Self {
        let colour = self.chromaticity();
        Self::Xy { x: colour.x(), y: colour.y() }
    }

    /// Fully saturated, by its angle on the wheel: 0° red, 120° green, 240° blue, their lights mixed evenly between.
    pub fn of_hue(hue: Degrees) -> Self {
        let turn = hue.degrees().rem_euclid(360.0) / 60.0;
        let share = |corner: f64| {
            let apart = (turn - corner).abs();
            (2.0 - apart.min(6.0 - apart)).clamp(0.0, 1.0)
        };
        let lights = [0, 1, 2].map(|at| {
            let (x, y, light) = WHEEL[at];
            let colour = Chromaticity::from_xy(x, y).unwrap_or(white(Kelvin::clamped(5600.0)));
            (Lux::from_lux(light * share(2.0 * at as f64)), colour)
        });
        mix(&lights).map_or(Self::default(), |(_, colour)| Self::Xy { x: colour.x(), y: colour.y() })
    }

    /// The whole degree of the wheel that looks most like it.
    pub fn hue(self) -> Degrees {
        let own = self.chromaticity();
        let apart = |hue: &u16| {
            let other = Self::of_hue(Degrees::from_degrees(f64::from(*hue))).chromaticity();
            let (x, y) = (own.x() - other.x(), own.y() - other.y());
            x * x + y * y
        };
        let nearest = (0..360).min_by(|one, other| apart(one).total_cmp(&apart(other)));
        Degrees::from_degrees(f64::from(nearest.unwrap_or_default()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_wheel_has_its_corners_and_the_standards_yellow() {
        // sRGB's yellow, red and green alike: x 0.4193, y 0.5053 (IEC 61966-2-1's primaries added).
        let at = |hue: f64| LampColour::of_hue(Degrees::from_degrees(hue)).chromaticity();
        for (hue, x, y) in
            [(0.0, 0.64, 0.33), (120.0, 0.30, 0.60), (240.0, 0.15, 0.06), (60.0, 0.4193, 0.5053)]
        {
            assert!((at(hue).x() - x).abs() < 5e-4 && (at(hue).y() - y).abs() < 5e-4, "{hue}: {:?}", at(hue));
        }
        for hue in [0.0, 37.0, 199.0, 300.0] {
            assert_eq!(LampColour::of_hue(Degrees::from_degrees(hue)).hue().degrees(), hue);
        }
    }

    #[test]
    fn one_way_of_saying_it_leads_to_another() {
        let warm = LampColour::white(3200.0);
        assert_eq!(warm.as_white(false), warm);
        assert_eq!(warm.as_xy().chromaticity(), warm.chromaticity());
        assert!(matches!(warm.as_white(true), LampColour::White { duv: Some(duv), .. } if duv.abs() < 0.001));
        let red = LampColour::Xy { x: 0.68, y: 0.31 };
        assert_eq!(red.as_white(false), LampColour::white(5600.0));
    }

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
