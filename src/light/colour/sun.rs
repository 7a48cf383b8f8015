//! Colour of the sun's beam by its height and the haze of the air.
//!
//! A black body through air: Rayleigh scattering, haze, ozone. Sunsets that disagree do so for their haze, not for an error
//! here; worth 5 %.

use std::sync::OnceLock;

use super::Chromaticity;
use super::correlated::correlated;
use super::planck;
use super::spectrum::{sums, wavelengths};
use crate::light::daylight::AirMass;
use crate::maths;
use crate::units::{Height, Kelvin};

/// Effective temperature of the sun, kelvins (fact, IAU nominal 5772, older tables 5778).
const SUN: f64 = 5778.0;

/// Ozone above, centimetres of pure gas (convention).
const OZONE: f64 = 0.35;

/// Ozone's band in the visible (Chappuis): peak absorption a centimetre, its wavelength and width, micrometres. A bell
/// through the table of Iqbal, *An Introduction to Solar Radiation* (1983), within 0.02.
const CHAPPUIS: (f64, f64, f64) = (0.125, 0.600, 0.060);

/// Haze of the air by Ångström's coefficient β (for haze that takes λ^−1.3).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Haze(f64);

impl Haze {
    /// Clear air.
    pub const CLEAR: Self = Self(0.05);
    /// Middling.
    pub const MIDDLING: Self = Self(0.10);
    /// Hazy.
    pub const HAZY: Self = Self(0.20);

    /// From Ångström's β, 0 to 1.
    pub const fn from_beta(beta: f64) -> Self {
        Self(if beta >= 1.0 {
            1.0
        } else if beta >= 0.0 {
            beta
        } else {
            0.0
        })
    }
}

/// One wavelength of the beam: what is the same at every hour.
struct Band {
    /// Of the black body.
    power: f64,
    /// What one air mass of pure air and ozone takes, as the exponent.
    air: f64,
    /// What one air mass takes with a haze of β = 1.
    haze: f64,
}

impl Band {
    /// All of the observer's wavelengths. Worked out once: three powers a wavelength took most of a search's time.
    fn all() -> &'static [Self] {
        static ALL: OnceLock<Vec<Band>> = OnceLock::new();
        ALL.get_or_init(|| wavelengths().map(Self::at).collect())
    }

    fn at(wavelength: f64) -> Self {
        let (peak, at, width) = CHAPPUIS;
        let off = (wavelength - at) / width;
        let ozone = OZONE * peak * maths::exp(-0.5 * off * off);
        let rayleigh = 0.008_735 * maths::pow(wavelength, -4.08);
        Self {
            power: planck::power(SUN, wavelength),
            air: rayleigh + ozone,
            haze: maths::pow(wavelength, -1.3),
        }
    }
}

/// Chromaticity of the beam for a sun at an apparent height.
///
/// # Source
/// Transmittances of Rayleigh air `exp(−0.008735 m λ^−4.08)`, haze `exp(−β m λ^−1.3)` and ozone: Iqbal 1983, as in Preetham,
/// Shirley and Smits, SIGGRAPH 1999, appendix; λ in micrometres.
pub fn beam(sun: Height, haze: Haze) -> Chromaticity {
    let air = AirMass::kasten_young(sun).number();
    let through = |band: &Band| band.power * maths::exp(-air * (band.air + haze.0 * band.haze));
    Chromaticity::from_sums(sums(Band::all().iter().map(through)))
}

/// Colour temperature of the beam; `None` for a sun so low and red that it has none.
///
/// ```
/// # use slantlight::{light::colour::sun::{Haze, temperature}, units::Height};
/// let evening = temperature(Height::clamped(20.0), Haze::CLEAR).unwrap();
/// assert!((evening.kelvin() - 4420.0).abs() < 150.0);
/// ```
pub fn temperature(sun: Height, haze: Haze) -> Option<Kelvin> {
    correlated(beam(sun, haze)).map(|correlated| correlated.temperature)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_of_the_handbook() {
        // H7, T-H9: height, temperature with β 0.05, 0.10, 0.20; stated to 5 %.
        let table = [
            (1.0, [1680.0, 1330.0, 0.0]),
            (2.0, [2090.0, 1700.0, 1230.0]),
            (3.0, [2430.0, 2030.0, 1510.0]),
            (5.0, [2960.0, 2560.0, 1990.0]),
            (8.0, [3480.0, 3120.0, 2550.0]),
            (10.0, [3730.0, 3380.0, 2830.0]),
            (15.0, [4170.0, 3850.0, 3340.0]),
            (20.0, [4420.0, 4170.0, 3700.0]),
            (30.0, [4760.0, 4520.0, 4130.0]),
            (45.0, [5000.0, 4830.0, 4500.0]),
            (60.0, [5130.0, 4980.0, 4670.0]),
        ];
        for (height, row) in table {
            for (haze, kelvin) in [Haze::CLEAR, Haze::MIDDLING, Haze::HAZY].into_iter().zip(row) {
                if kelvin > 0.0 {
                    let got = temperature(Height::clamped(height), haze).unwrap().kelvin();
                    assert!((got / kelvin - 1.0).abs() < 0.05, "{height} {haze:?}: {got} beside {kelvin}");
                }
            }
        }
    }

    #[test]
    fn higher_is_bluer() {
        let at = |height| temperature(Height::clamped(height), Haze::CLEAR).map_or(0.0, Kelvin::kelvin);
        for height in 1..90 {
            assert!(at(f64::from(height)) < at(f64::from(height) + 1.0), "{height}");
        }
    }
}
