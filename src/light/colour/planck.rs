//! Black bodies: the line of glowing things.

use super::Chromaticity;
use super::spectrum::{sums, wavelengths};
use crate::maths;
use crate::units::Kelvin;

/// Second radiation constant, micrometre kelvins (convention of colour temperature, ITS-90).
const C2: f64 = 14_388.0;

/// Spectral power of a black body at a wavelength in micrometres, in any unit: `λ⁻⁵/(e^(c₂/λT) − 1)` (Planck).
pub(super) fn power(kelvin: f64, wavelength: f64) -> f64 {
    let square = wavelength * wavelength;
    1.0 / (square * square * wavelength * maths::expm1(C2 / (wavelength * kelvin)))
}

/// Chromaticity of a black body, over the standard observer.
///
/// ```
/// # use slantlight::{light::colour::planck::black_body, units::Kelvin};
/// let lamp = black_body(Kelvin::clamped(3200.0));
/// assert!((lamp.x() - 0.4234).abs() < 5e-5 && (lamp.y() - 0.3990).abs() < 5e-5);
/// ```
pub fn black_body(temperature: Kelvin) -> Chromaticity {
    Chromaticity::from_sums(sums(wavelengths().map(|wavelength| power(temperature.kelvin(), wavelength))))
}
