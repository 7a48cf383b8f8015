//! Radiation of sun and clear sky by the haze of the air.
//!
//! Linke turbidity says how many clean, dry atmospheres would take as much from the beam: 2 in the mountains, 3 over
//! flat land, 4 to 5 over towns and in damp heat, 6 and more in thick haze. [`super::efficacy`] makes light of it.

use super::AirMass;
use crate::maths;
use crate::units::{Height, Metres, WattsPerSquareMetre};

/// Radiation of the sun outside the air at its mean distance (the value this model's tables are made with).
pub const SOLAR_CONSTANT: WattsPerSquareMetre = WattsPerSquareMetre::from_watts_per_square_metre(1364.0);

/// Haze of the air; 1 is clean and dry.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Turbidity(f64);

impl Turbidity {
    /// From a Linke turbidity; under 1 there is no air, so 1 is taken.
    pub const fn from_linke(linke: f64) -> Self {
        // A plain comparison, so that what is not a number becomes 1 as well.
        if linke >= 1.0 { Self(linke) } else { Self(1.0) }
    }

    /// As Linke's number.
    pub const fn linke(self) -> f64 {
        self.0
    }
}

/// Radiation that arrives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Irradiance {
    /// Of the beam, on a surface that faces the sun.
    pub beam: WattsPerSquareMetre,
    /// Of the sky, on level ground.
    pub sky: WattsPerSquareMetre,
}

/// Clear sky over a place at `elevation`, by apparent height of the sun; nothing below the horizon.
///
/// # Source
/// P. Ineichen, R. Perez, *A new airmass independent formulation for the Linke turbidity coefficient*, Solar Energy 73
/// (2002) 151–157, as carried by pvlib 0.16 (BSD 3-clause), without the enhancement for low suns.
pub fn ineichen_perez(sun: Height, turbidity: Turbidity, elevation: Metres) -> Irradiance {
    let up = sun.sin();
    if up <= 0.0 {
        return Irradiance { beam: WattsPerSquareMetre::default(), sky: WattsPerSquareMetre::default() };
    }
    let (linke, metres, outside) =
        (turbidity.linke(), elevation.metres(), SOLAR_CONSTANT.watts_per_square_metre());
    let air = AirMass::kasten_young(sun).at_elevation(elevation).number();
    let (high, low) = (maths::exp(-metres / 8000.0), maths::exp(-metres / 1250.0));
    let fades = (3.92e-5 * metres + 0.0387) * air * (high + low * (linke - 1.0));
    let level = (5.09e-5 * metres + 0.868) * outside * up * maths::exp(-fades);
    let beam = (0.664 + 0.163 / high) * outside * maths::exp(-0.09 * air * (linke - 1.0));
    // The authors' empirical ceiling for clean air.
    let ceiling = level * (1.0 - (0.1 - 0.2 * maths::exp(-linke)) / (0.1 + 0.882 / high)) / up;
    let beam = beam.min(ceiling.max(0.0));
    Irradiance {
        beam: WattsPerSquareMetre::from_watts_per_square_metre(beam),
        sky: WattsPerSquareMetre::from_watts_per_square_metre(level - beam * up),
    }
}
