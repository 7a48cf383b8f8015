//! Where the equator and the equinox of a date are: obliquity, nutation, sidereal time.
//!
//! The sun's method carries its own; the moon, given in the ecliptic, needs these. Good to 0.1″.

use crate::maths;
use crate::units::Degrees;

/// Seconds of arc in a degree.
const SECONDS: f64 = 3600.0;

/// Days since J2000.0 to a turn of the Earth (IAU 2000, the Earth rotation angle): at the epoch, and a day.
const TURN_AT_EPOCH: f64 = 0.779_057_273_264_0;
const TURNS_A_DAY_BEYOND_ONE: f64 = 0.002_737_811_911_354_48;

/// Multiples of the moon's anomaly, the sun's anomaly, the moon's way from its node, its elongation and the node,
/// then longitude × sine and obliquity × cosine in 10⁻⁷ seconds of arc.
type Term = ([i8; 5], f64, f64);

/// The twelve largest terms of IAU 2000B (McCarthy and Luzum, Celest. Mech. Dyn. Astron. 85 (2003) 37), as printed in
/// `nut00b.c` of ERFA 2.0.1. What is left out stays under 0.1″.
const NUTATION: [Term; 12] = [
    ([0, 0, 0, 0, 1], -172_064_161.0, 92_052_331.0),
    ([0, 0, 2, -2, 2], -13_170_906.0, 5_730_336.0),
    ([0, 0, 2, 0, 2], -2_276_413.0, 978_459.0),
    ([0, 0, 0, 0, 2], 2_074_554.0, -897_492.0),
    ([0, 1, 0, 0, 0], 1_475_877.0, 73_871.0),
    ([0, 1, 2, -2, 2], -516_821.0, 224_386.0),
    ([1, 0, 0, 0, 0], 711_159.0, -6_750.0),
    ([0, 0, 2, 0, 1], -387_298.0, 200_728.0),
    ([1, 0, 2, 0, 2], -301_461.0, 129_025.0),
    ([0, -1, 2, -2, 2], 215_829.0, -95_929.0),
    ([-1, 0, 0, 2, 0], 156_994.0, -1_235.0),
    ([0, 0, 2, -2, 1], 128_227.0, -68_982.0),
];

/// The true equator and equinox of a date.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Equinox {
    /// Nutation in longitude: from the mean to the true equinox.
    pub nutation: Degrees,
    /// True obliquity of the ecliptic.
    pub obliquity: Degrees,
}

impl Equinox {
    /// `centuries` of terrestrial time after J2000.0.
    ///
    /// Mean obliquity: Capitaine et al., Astron. Astrophys. 412 (2003) 567 (IAU 2006), as in `obl06` of ERFA.
    pub fn at(centuries: f64) -> Self {
        let t = centuries;
        let mean = 84_381.406 + t * (-46.836_769 + t * (-0.000_183_1 + t * 0.002_003_4));
        let (longitude, obliquity) = nutation(t);
        Self {
            nutation: Degrees::from_degrees(longitude / SECONDS),
            obliquity: Degrees::from_degrees((mean + obliquity) / SECONDS),
        }
    }

    /// Apparent sidereal time at Greenwich, `days` of UT1 and `centuries` of terrestrial time after J2000.0.
    ///
    /// Capitaine et al. 2003 (IAU 2006), as in `era00` and `gmst06` of ERFA.
    pub fn sidereal_time(&self, days: f64, centuries: f64) -> Degrees {
        let turns = days.rem_euclid(1.0) + TURN_AT_EPOCH + TURNS_A_DAY_BEYOND_ONE * days;
        let precession = 0.014_506 + centuries * (4_612.156_534 + centuries * 1.391_581_7);
        let equation = self.nutation.degrees() * maths::cos(self.obliquity.radians());
        Degrees::from_degrees(turns * 360.0 + precession / SECONDS + equation).positive()
    }
}

/// Nutation in longitude and obliquity, seconds of arc.
fn nutation(t: f64) -> (f64, f64) {
    let arguments = [
        485_868.249_036 + 1_717_915_923.217_8 * t,
        1_287_104.793_05 + 129_596_581.048_1 * t,
        335_779.526_232 + 1_739_527_262.847_8 * t,
        1_072_260.703_69 + 1_602_961_601.209 * t,
        450_160.398_036 - 6_962_890.543_1 * t,
    ];
    let mut sum = (0.0, 0.0);
    for (multiples, longitude, obliquity) in NUTATION {
        let seconds: f64 =
            multiples.iter().zip(arguments).map(|(times, angle)| f64::from(*times) * angle).sum();
        let (sin, cos) = maths::sin_cos(Degrees::from_degrees(seconds / SECONDS).signed().radians());
        sum.0 += longitude * sin;
        sum.1 += obliquity * cos;
    }
    (sum.0 * 1e-7, sum.1 * 1e-7)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_printed_example_of_nutation_and_sidereal_time() {
        // Meeus, examples 22.a and 12.a, 1987 April 10, 0 h: Δψ −3.788″, ε 23° 26′ 36.850″, apparent sidereal time
        // 13 h 10 m 46.1351 s. His mean obliquity of 1980 is 0.04″ more than that of 2006.
        let days = 2_446_895.5 - 2_451_545.0;
        let equinox = Equinox::at(days / 36_525.0);
        assert!((equinox.nutation.degrees() * 3600.0 + 3.788).abs() < 0.1);
        let obliquity = 23.0 + 26.0 / 60.0 + 36.85 / 3600.0;
        assert!((equinox.obliquity.degrees() - obliquity).abs() * 3600.0 < 0.1);
        let time = (13.0 + 10.0 / 60.0 + 46.135_1 / 3600.0) * 15.0;
        assert!((equinox.sidereal_time(days, days / 36_525.0).degrees() - time).abs() * 3600.0 < 0.1);
    }
}
