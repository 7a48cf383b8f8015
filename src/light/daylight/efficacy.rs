//! Light from radiation: what a forecast or a pyranometer gives in watts, in lux.
//!
//! R. Perez et al., *Modeling daylight availability and irradiance components from direct and global irradiance*, Solar
//! Energy 44 (1990) 271–289, tables 1 and 4: eight classes of sky clearness.

use super::clear_sky::Irradiance;
use super::efficacy_table::{BEAM, CLASSES_FROM, Row, SKY};
use super::{AirMass, Daylight};
use crate::maths;
use crate::units::{Degrees, Height, Lux};

/// Radiation of the sun outside the air (the paper's brightness is relative to it), W/m².
const OUTSIDE: f64 = 1360.0;

/// Weight of the sun's zenith distance in the clearness.
const KAPPA: f64 = 1.041;

/// Water in the air above, as depth of rain in centimetres: 2 for want of better (convention).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water(f64);

impl Water {
    /// For want of better.
    pub const USUAL: Self = Self(2.0);

    /// From centimetres.
    pub const fn from_centimetres(centimetres: f64) -> Self {
        Self(centimetres)
    }
}

/// Light of a radiation, by apparent height of the sun; nothing below the horizon.
///
/// # Accuracy
/// The published coefficients followed to the digit; a second program that carries them differs by 0.5 % in the beam
/// and 3 % in the sky.
pub fn perez(radiation: Irradiance, sun: Height, water: Water) -> Daylight {
    if sun.degrees() <= 0.0 {
        return Daylight::default();
    }
    let state = State::of(radiation, sun);
    let (sky, beam) = (SKY[state.class], BEAM[state.class]);
    let zenith = state.zenith.radians();
    let sky_efficacy = linear(sky, water, maths::cos(zenith)) + sky.brightness * maths::log(state.brightness);
    let beam_efficacy =
        linear(beam, water, maths::exp(5.73 * zenith - 5.0)) + beam.brightness * state.brightness;
    let lux = |watts: f64, efficacy: f64| Lux::from_lux((watts * efficacy).max(0.0));
    Daylight {
        beam: lux(radiation.beam.watts_per_square_metre(), beam_efficacy),
        sky: lux(radiation.sky.watts_per_square_metre(), sky_efficacy),
    }
}

/// The part of both efficacies that has one form.
fn linear(row: Row, water: Water, height: f64) -> f64 {
    row.constant + row.water * water.0 + row.height * height
}

/// The sky in the paper's terms.
#[derive(Clone, Copy, Debug)]
struct State {
    zenith: Degrees,
    /// Class of clearness, 0 overcast to 7 clear.
    class: usize,
    /// Radiation of the sky through its air mass, relative to the sun outside.
    brightness: f64,
}

impl State {
    fn of(radiation: Irradiance, sun: Height) -> Self {
        // A sky without any radiation has no clearness; the least there is stands for it.
        let sky = radiation.sky.watts_per_square_metre().max(0.1);
        let zenith = Degrees::from_degrees(90.0 - sun.degrees());
        let tilt = KAPPA * zenith.radians() * zenith.radians() * zenith.radians();
        let clearness = ((sky + radiation.beam.watts_per_square_metre()) / sky + tilt) / (1.0 + tilt);
        Self {
            zenith,
            class: CLASSES_FROM.iter().filter(|from| clearness >= **from).count(),
            brightness: sky * AirMass::kasten_young(sun).number() / OUTSIDE,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::WattsPerSquareMetre;

    fn irradiance(beam: f64, sky: f64) -> Irradiance {
        let watts = WattsPerSquareMetre::from_watts_per_square_metre;
        Irradiance { beam: watts(beam), sky: watts(sky) }
    }

    #[test]
    fn a_clear_and_an_overcast_sky() {
        // T-C8: h 40°, 800 and 120 W/m²: class 7, Δ 0.141 (with 1367 W/m² × 0.967), sky 139 lm/W, beam 101 lm/W;
        // overcast, 250 W/m²: 115 lm/W. Printed to three digits.
        let sun = Height::clamped(40.0);
        let state = State::of(irradiance(800.0, 120.0), sun);
        assert_eq!(state.class, 6);
        assert!((state.brightness * OUTSIDE / 1367.0 / 0.967 - 0.141).abs() < 0.0006);
        let clear = perez(irradiance(800.0, 120.0), sun, Water::USUAL);
        assert!(
            (clear.sky.lux() / 120.0 - 139.0).abs() < 0.6 && (clear.beam.lux() / 800.0 - 101.0).abs() < 0.6
        );
        let overcast = perez(irradiance(0.0, 250.0), sun, Water::USUAL);
        assert!((overcast.sky.lux() / 250.0 - 115.0).abs() < 0.6);
        assert_eq!(overcast.beam, Lux::default());
    }

    #[test]
    fn night_is_dark() {
        assert_eq!(perez(irradiance(0.0, 0.0), Height::clamped(-1.0), Water::USUAL), Daylight::default());
        let dark = perez(irradiance(0.0, 0.0), Height::clamped(20.0), Water::USUAL);
        assert_eq!(dark, Daylight::default());
    }
}
