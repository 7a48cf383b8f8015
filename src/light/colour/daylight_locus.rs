//! Daylight: the line of sun and sky.
//!
//! A little greener than black bodies of the same temperature.

use super::Chromaticity;
use super::planck::black_body;
use crate::units::Kelvin;

/// Where the formula holds, kelvins.
const RANGE: (f64, f64) = (4000.0, 25_000.0);

/// Chromaticity of a phase of daylight; beyond 4000 to 25 000 K the nearer end.
///
/// # Source
/// CIE 15 (Judd, MacAdam, Wyszecki 1964): cubics in 1/T below and above 7000 K, `y = −3x² + 2.87x − 0.275`.
///
/// ```
/// # use slantlight::{light::colour::daylight_locus::daylight, units::Kelvin};
/// let d65 = daylight(Kelvin::clamped(6504.0));
/// assert!((d65.x() - 0.3127).abs() < 5e-5 && (d65.y() - 0.3291).abs() < 5e-5);
/// ```
pub fn daylight(temperature: Kelvin) -> Chromaticity {
    let t = temperature.kelvin().clamp(RANGE.0, RANGE.1);
    let x = if t <= 7000.0 {
        0.244_063 + (99.11 + (2.967_8e6 - 4.607_0e9 / t) / t) / t
    } else {
        0.237_040 + (247.48 + (1.901_8e6 - 2.006_4e9 / t) / t) / t
    };
    let y = -3.0 * x * x + 2.87 * x - 0.275;
    Chromaticity::from_xy(x, y).expect("the daylight locus lies among the colours")
}

/// White light of a temperature: daylight from 4000 K on, below it a glowing body (our choice, as lamps are made).
pub fn white(temperature: Kelvin) -> Chromaticity {
    if temperature.kelvin() < RANGE.0 { black_body(temperature) } else { daylight(temperature) }
}
