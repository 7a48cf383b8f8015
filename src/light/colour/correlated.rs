//! Correlated colour temperature: the glowing body nearest to a light, and how far the light is off it.
//!
//! Duv is the distance in CIE 1960 u v, positive above the line of black bodies (greenish), negative below (pinkish). A light
//! farther off than 0.05 has no colour temperature (CIE 15).

use std::sync::LazyLock;

use super::Chromaticity;
use super::planck::black_body;
use crate::maths;
use crate::solve::{self, Bracket};
use crate::units::{Kelvin, Mired};

/// Farthest from the line of black bodies at which a colour temperature means anything (convention, CIE 15).
const FARTHEST: f64 = 0.05;

/// Ends of the search, mireds: 100 000 K to 1000 K.
const MIREDS: (f64, f64) = (10.0, 1000.0);

/// Steps of the coarse search, even in the logarithm.
const STEPS: usize = 128;

/// To a ten-thousandth of a mired.
const TOLERANCE: f64 = 1e-4;

/// A light by its nearest black body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correlated {
    /// Temperature of that body.
    pub temperature: Kelvin,
    /// How far above it the light is.
    pub duv: f64,
}

/// Black bodies in u v, from the hottest to the coolest.
static COARSE: LazyLock<Vec<(f64, (f64, f64))>> = LazyLock::new(|| {
    let ratio = maths::log(MIREDS.1 / MIREDS.0);
    let mired = |step: usize| MIREDS.0 * maths::exp(ratio * step as f64 / STEPS as f64);
    (0..=STEPS).map(|step| (mired(step), body(mired(step)))).collect()
});

/// The nearest black body; `None` for a light too far from all of them.
///
/// # Source
/// The definition of CIE 15; Y. Ohno, Leukos 10 (2014) 47, computes the same by tables. Within 0.03 mired and 1e-5 Duv of
/// his, the observer being taken every 5 nm.
///
/// ```
/// # use slantlight::light::colour::{Chromaticity, correlated};
/// let d65 = correlated(Chromaticity::from_xy(0.3127, 0.3290)?).unwrap();
/// assert!((d65.temperature.kelvin() - 6504.0).abs() < 2.0 && (d65.duv - 0.0032).abs() < 1e-4);
/// # Ok::<(), slantlight::units::OutOfRange>(())
/// ```
pub fn correlated(light: Chromaticity) -> Option<Correlated> {
    let uv = light.uv_1960();
    let nearest = COARSE
        .iter()
        .enumerate()
        .min_by(|(_, one), (_, two)| distance(uv, one.1).total_cmp(&distance(uv, two.1)))
        .map(|(index, _)| index)
        .filter(|index| (1..STEPS).contains(index))?;
    let (from, to) = (COARSE[nearest - 1].0, COARSE[nearest + 1].0);
    let bracket = Bracket { from, to, rising: false };
    let mired = solve::root(|mired| ahead(uv, mired), bracket, (COARSE[nearest].0, 0.0), TOLERANCE);
    let on_line = body(mired);
    let far = distance(uv, on_line);
    (far <= FARTHEST).then(|| Correlated {
        temperature: Mired::from_mired(mired).kelvin(),
        duv: if uv.1 >= on_line.1 { far } else { -far },
    })
}

/// McCamy's cubic: `449n³ + 3525n² + 6823.3n + 5520.33`, `n = (x − 0.3320)/(0.1858 − y)`.
///
/// C. S. McCamy, Color Res. Appl. 17 (1992) 142. Good from 2900 to 12 000 K near the daylight line, poor elsewhere;
/// [`correlated`] is what the app uses.
pub fn mccamy(light: Chromaticity) -> Kelvin {
    let n = (light.x() - 0.3320) / (0.1858 - light.y());
    Kelvin::clamped(5520.33 + n * (6823.3 + n * (3525.0 + n * 449.0)))
}

/// The chromaticity of a temperature and a Duv: what a meter with two numbers says.
pub fn with_duv(temperature: Kelvin, duv: f64) -> Chromaticity {
    let mired = temperature.mired().mired();
    let ((u, v), (du, dv)) = (body(mired), along(mired));
    let norm = maths::hypot(du, dv);
    // Along the line u grows with the mired, so this points up.
    Chromaticity::from_uv((u - dv / norm * duv, v + du / norm * duv))
}

/// How much farther along the line the nearest point lies: positive before it, negative past it.
fn ahead(uv: (f64, f64), mired: f64) -> f64 {
    let ((u, v), (du, dv)) = (body(mired), along(mired));
    (uv.0 - u) * du + (uv.1 - v) * dv
}

/// Direction of the line towards cooler bodies.
fn along(mired: f64) -> (f64, f64) {
    let step = mired * 1e-3;
    let (before, after) = (body(mired - step), body(mired + step));
    (after.0 - before.0, after.1 - before.1)
}

fn body(mired: f64) -> (f64, f64) {
    black_body(Mired::from_mired(mired).kelvin()).uv_1960()
}

fn distance(one: (f64, f64), two: (f64, f64)) -> f64 {
    maths::hypot(one.0 - two.0, one.1 - two.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_saturated_lamp_has_none() {
        let green = Chromaticity::from_xy(0.25, 0.65).unwrap();
        assert_eq!(correlated(green), None);
        let blue = Chromaticity::from_xy(0.16, 0.03).unwrap();
        assert_eq!(correlated(blue), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn temperature_and_duv_there_and_back(mired in 50.0..600.0f64, duv in -0.02..0.02f64) {
            let light = with_duv(Mired::from_mired(mired).kelvin(), duv);
            let back = correlated(light).unwrap();
            prop_assert!((back.temperature.mired().mired() - mired).abs() < 0.01, "{back:?}");
            prop_assert!((back.duv - duv).abs() < 1e-7, "{back:?}");
        }
    }
}
