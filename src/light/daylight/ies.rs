//! Light of sun and sky by height of the sun: the American recommended practice.
//!
//! IES, *Recommended Practice for the Calculation of Daylight Availability*, J. Illum. Eng. Soc. 13 (1984) 381–392 (RP-21).
//! Real clear days lie within 25 % of it, clouded ones within a factor of two to five. Good above 3°; lower down
//! [`super::twilight`] takes over. Half skies are in [`super::half_sky`].

use super::AirMass;
use crate::maths;
use crate::units::{Height, Lux};

/// Sunlight outside the air at the mean distance of the sun (RP-21; later works have 133 kilolux).
pub const SOLAR_CONSTANT: Lux = Lux::from_lux(127_500.0);

/// The three skies of the practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cover {
    /// 0 to 3 tenths of cloud.
    Clear,
    /// 4 to 7 tenths.
    PartlyCloudy,
    /// 8 to 10 tenths: no beam.
    Overcast,
}

impl Cover {
    /// Extinction of the beam for one air mass; nothing comes through an overcast sky.
    const fn extinction(self) -> Option<f64> {
        match self {
            Self::Clear => Some(0.21),
            Self::PartlyCloudy => Some(0.80),
            Self::Overcast => None,
        }
    }

    /// A, B (kilolux) and C of the sky's light on level ground, `A + B sin^C h`.
    const fn sky(self) -> (f64, f64, f64) {
        match self {
            Self::Clear => (0.8, 15.5, 0.5),
            Self::PartlyCloudy => (0.3, 45.0, 1.0),
            Self::Overcast => (0.3, 21.0, 1.0),
        }
    }
}

/// Sunlight outside the air on day `day_of_year` (1 to 366), in step with the Earth's distance.
pub fn outside(day_of_year: u32) -> Lux {
    let turn = 2.0 * core::f64::consts::PI * (f64::from(day_of_year) - 2.0) / 365.0;
    SOLAR_CONSTANT * (1.0 + 0.034 * maths::cos(turn))
}

/// The beam on a surface that faces the sun.
pub fn beam(cover: Cover, outside: Lux, air: AirMass) -> Lux {
    match cover.extinction() {
        Some(extinction) => outside * maths::exp(-extinction * air.number()),
        None => Lux::default(),
    }
}

/// The sky on level ground; none for a sun below the horizon.
pub fn sky(cover: Cover, sun: Height) -> Lux {
    if sun.degrees() <= 0.0 {
        return Lux::default();
    }
    let (a, b, c) = cover.sky();
    Lux::from_kilolux(a + b * maths::pow(sun.sin(), c))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: Lux, kilolux: f64, tolerance: f64) {
        assert!((got.kilolux() - kilolux).abs() <= tolerance, "{} beside {kilolux}", got.kilolux());
    }

    #[test]
    fn sunlight_outside_the_air() {
        // T-C1.
        near(outside(2), 131.84, 0.005);
        near(outside(172), 123.26, 0.005);
        near(outside(356), 131.76, 0.01);
    }

    #[test]
    fn the_practice_own_example() {
        // T-C3: latitude 0.68 rad, day 101, 10 h; its air lies in flat layers.
        let sun = Height::clamped(47.6);
        near(outside(101), 126.9, 0.05);
        let beam = beam(Cover::Clear, outside(101), AirMass::flat_layers(sun));
        near(beam, 95.5, 0.05);
        near(beam * sun.sin(), 70.6, 0.1);
    }

    #[test]
    fn the_table_of_the_handbook() {
        // T-C4: height, clear beam, clear sky, clear, partly cloudy and overcast on level ground, kilolux; 1 %, and
        // half the last digit.
        let table = [
            (1.0, 0.51, 2.85, 2.9, 1.1, 0.67),
            (2.0, 2.15, 3.70, 3.8, 1.9, 1.0),
            (3.0, 5.30, 4.35, 4.6, 2.7, 1.4),
            (5.0, 14.6, 5.38, 6.7, 4.2, 2.1),
            (10.0, 39.5, 7.26, 14.1, 8.4, 3.9),
            (15.0, 57.2, 8.69, 23.5, 13.5, 5.7),
            (20.0, 69.3, 9.86, 33.6, 20.0, 7.5),
            (30.0, 83.9, 11.8, 53.7, 35.7, 10.8),
            (40.0, 92.0, 13.2, 72.4, 52.9, 13.8),
            (50.0, 97.0, 14.4, 88.6, 69.2, 16.4),
            (60.0, 100.1, 15.2, 101.9, 83.1, 18.5),
            (90.0, 103.4, 16.3, 119.7, 102.6, 21.3),
        ];
        for (height, direct, diffuse, clear, partly, overcast) in table {
            let sun = Height::clamped(height);
            let air = AirMass::kasten_young(sun);
            let level = |cover| beam(cover, SOLAR_CONSTANT, air) * sun.sin() + sky(cover, sun);
            near(beam(Cover::Clear, SOLAR_CONSTANT, air), direct, direct * 0.01);
            near(sky(Cover::Clear, sun), diffuse, diffuse * 0.01);
            near(level(Cover::Clear), clear, clear * 0.01 + 0.05);
            near(level(Cover::PartlyCloudy), partly, partly * 0.01 + 0.05);
            near(level(Cover::Overcast), overcast, overcast * 0.01 + 0.05);
        }
    }
}
