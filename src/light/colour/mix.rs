//! Two lights and more on one face: what colour they make.
//!
//! Linear in the light that arrives, not in watts and not in a dimmer's per cent.

use super::Chromaticity;
use crate::units::Lux;

/// A light that arrives, and its colour.
pub type Light = (Lux, Chromaticity);

/// The mixture; `None` if there is no light at all. Source: CIE 15 (tristimulus values add).
///
/// ```
/// # use slantlight::{light::colour::{Chromaticity, mix::mix}, units::Lux};
/// let (day, lamp) = (Chromaticity::from_xy(0.3302, 0.3455)?, Chromaticity::from_xy(0.4234, 0.3990)?);
/// let (light, colour) = mix(&[(Lux::from_lux(100.0), day), (Lux::from_lux(100.0), lamp)]).unwrap();
/// assert_eq!(light.lux(), 200.0);
/// assert!((colour.x() - 0.3735).abs() < 5e-5 && (colour.y() - 0.3703).abs() < 6e-5);
/// # Ok::<(), slantlight::units::OutOfRange>(())
/// ```
pub fn mix(lights: &[Light]) -> Option<Light> {
    let mut sums = [0.0; 3];
    for (light, colour) in lights {
        let scale = light.lux() / colour.y();
        let parts = [colour.x() * scale, light.lux(), (1.0 - colour.x() - colour.y()) * scale];
        for (sum, part) in sums.iter_mut().zip(parts) {
            *sum += part;
        }
    }
    (sums[1] > 0.0).then(|| (Lux::from_lux(sums[1]), Chromaticity::from_sums(sums)))
}

#[cfg(test)]
mod tests {
    use super::super::correlated::mccamy;
    use super::super::daylight_locus::daylight;
    use super::super::planck::black_body;
    use super::*;
    use crate::units::Kelvin;

    #[test]
    fn day_and_tungsten() {
        // T-H10: share of daylight, x, y, temperature by McCamy, mean of the mireds as temperature.
        let (day, lamp) = (daylight(Kelvin::clamped(5600.0)), black_body(Kelvin::clamped(3200.0)));
        assert!((day.x() - 0.3302).abs() < 5.1e-5 && (day.y() - 0.3455).abs() < 5.1e-5);
        assert!((lamp.x() - 0.4234).abs() < 5.1e-5 && (lamp.y() - 0.3990).abs() < 5.1e-5);
        let table = [
            (0.25, 0.3975, 0.3841, 3635.0, 3584.0),
            (0.5, 0.3735, 0.3703, 4160.0, 4073.0),
            (0.6, 0.3643, 0.3651, 4402.0, 4308.0),
            (0.75, 0.3511, 0.3575, 4805.0, 4716.0),
        ];
        // The table mixes chromaticities of four digits.
        let day = Chromaticity::from_xy(0.3302, 0.3455).unwrap();
        let lamp = Chromaticity::from_xy(0.4234, 0.3990).unwrap();
        for (share, x, y, temperature, by_mired) in table {
            let lights = [(Lux::from_lux(share), day), (Lux::from_lux(1.0 - share), lamp)];
            let (_, colour) = mix(&lights).unwrap();
            assert!((colour.x() - x).abs() < 6e-5 && (colour.y() - y).abs() < 6e-5, "{share}: {colour:?}");
            assert!((mccamy(colour).kelvin() - temperature).abs() < 1.0, "{share}: {:?}", mccamy(colour));
            let mean = share * 1e6 / 5600.0 + (1.0 - share) * 1e6 / 3200.0;
            assert!((1e6 / mean - by_mired).abs() < 0.6, "{share}");
        }
    }

    #[test]
    fn no_light_has_no_colour() {
        assert_eq!(mix(&[]), None);
        assert_eq!(mix(&[(Lux::default(), daylight(Kelvin::clamped(6500.0)))]), None);
    }
}
