//! The moon from the Earth's centre, in the mean ecliptic of the date.
//!
//! A printed series of 120 terms, good to 3″ (root mean square; 18″ at worst from 1950 to 2100) and 6 km, and on top of it 88
//! small ones of our own fit, which bring it to 1″ (6″). It says where the moon *is*; when its light arrives it has gone
//! on by 0.7″. [`super::moon`] turns this into what is seen.

use super::lunar_fit_table as fit;
use super::lunar_table::{LATITUDE, LONGITUDE_AND_DISTANCE, Multiples};
use crate::maths;
use crate::units::{Degrees, Metres};

/// Mean distance, metres (the series' fixed term).
const MEAN_DISTANCE: f64 = 385_000_560.0;

/// Place of the moon in the mean ecliptic and equinox of the date, seen from the Earth's centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ecliptic {
    /// Longitude from the mean equinox, any number of turns.
    pub longitude: Degrees,
    /// Latitude.
    pub latitude: Degrees,
    /// From centre to centre.
    pub distance: Metres,
}

/// Where the moon is, `centuries` of terrestrial time after J2000.0.
///
/// # Source
/// Meeus, *Astronomical Algorithms* (1998), chapter 47, as carried by `moon98` of ERFA 2.0.1 (its mean longitude by
/// Simon et al., Astron. Astrophys. 282 (1994) 663, light's way left out); the small terms of [`super::lunar_fit_table`].
pub fn ecliptic(centuries: f64) -> Ecliptic {
    let arguments = Arguments::at(centuries);
    let printed = arguments.printed();
    let small = |drift, terms: &[fit::Term]| arguments.fitted(drift, terms, centuries);
    Ecliptic {
        longitude: Degrees::from_degrees(printed.longitude + small(fit::LONGITUDE_DRIFT, &fit::LONGITUDE)),
        latitude: Degrees::from_degrees(printed.latitude + small(fit::LATITUDE_DRIFT, &fit::LATITUDE)),
        distance: Metres::from_metres(printed.distance),
    }
}

/// Mean longitudes of Venus, the Earth, Mars and Jupiter at J2000.0 and their way in a century, degrees (Meeus 1998, table
/// 31.A, in the short form that the small terms were fitted with).
const PLANETS: [(f64, f64); 4] = [
    (181.979_801, 58_519.213_030_2),
    (100.466_457, 36_000.769_827_8),
    (355.433, 19_141.696_447_1),
    (34.351_519, 3_036.302_774_8),
];

/// A place, degrees and metres.
struct Place {
    longitude: f64,
    latitude: f64,
    distance: f64,
}

/// Fundamental arguments, degrees.
struct Arguments {
    mean_longitude: f64,
    /// Moon's elongation, sun's anomaly, moon's anomaly, moon's way from its node.
    four: [f64; 4],
    /// Towards Venus, towards Jupiter, and along the moon's sidereal way (Meeus' A₁, A₂, A₃).
    further: [f64; 3],
    /// Factor of terms with the sun's anomaly, whose orbit becomes rounder.
    eccentricity: f64,
}

impl Arguments {
    fn at(t: f64) -> Self {
        let power = |c: [f64; 5]| c[0] + t * (c[1] + t * (c[2] + t * (c[3] + t * c[4])));
        Self {
            mean_longitude: power([
                218.316_654_36,
                481_267.881_234_21,
                -0.001_578_6,
                1.0 / 538_841.0,
                -1.0 / 65_194_000.0,
            ]),
            four: [
                power([297.850_192_1, 445_267.111_403_4, -0.001_881_9, 1.0 / 545_868.0, 1.0 / 113_065_000.0]),
                power([357.529_109_2, 35_999.050_290_9, -0.000_153_6, 1.0 / 24_490_000.0, 0.0]),
                power([134.963_396_4, 477_198.867_505_5, 0.008_741_4, 1.0 / 69_699.0, -1.0 / 14_712_000.0]),
                power([
                    93.272_095_0,
                    483_202.017_523_3,
                    -0.003_653_9,
                    1.0 / 3_526_000.0,
                    1.0 / 863_310_000.0,
                ]),
            ],
            further: [119.75 + 131.849 * t, 53.09 + 479_264.29 * t, 313.45 + 481_266.484 * t],
            eccentricity: 1.0 + t * (-0.002_516 + t * -0.000_007_4),
        }
    }

    /// The printed series.
    fn printed(&self) -> Place {
        let (longitude, latitude) = self.further_terms();
        let longitude = self.mean_longitude + longitude;
        let mut place = Place { longitude, latitude, distance: MEAN_DISTANCE };
        for (multiples, longitude, distance) in LONGITUDE_AND_DISTANCE {
            let (sin, cos) = self.term(multiples);
            place.longitude += longitude * sin;
            place.distance += distance * cos;
        }
        for (multiples, latitude) in LATITUDE {
            place.latitude += latitude * self.term(multiples).0;
        }
        place
    }

    /// Small terms, degrees.
    fn fitted(&self, drift: [f64; 3], terms: &[fit::Term], t: f64) -> f64 {
        let [d, m, a, f] = self.four;
        let [venus, earth, mars, jupiter] = PLANETS.map(|(start, way)| start + way * t);
        let angles = [d, m, a, f, venus, earth, mars, jupiter];
        let sum = terms.iter().map(|(multiples, with_sin, with_cos)| {
            let argument: f64 =
                multiples.iter().zip(angles).map(|(times, angle)| f64::from(*times) * angle).sum();
            let (sin, cos) = maths::sin_cos(Degrees::from_degrees(argument).signed().radians());
            with_sin * sin + with_cos * cos
        });
        (drift[0] + t * (drift[1] + t * drift[2]) + sum.sum::<f64>()) / 3600.0
    }

    /// Sine and cosine of a term's argument, times its share of the eccentricity.
    fn term(&self, multiples: Multiples) -> (f64, f64) {
        let argument: f64 =
            multiples.iter().zip(self.four).map(|(times, angle)| f64::from(*times) * angle).sum();
        let (sin, cos) = maths::sin_cos(Degrees::from_degrees(argument).signed().radians());
        let factor = match multiples[1].abs() {
            0 => 1.0,
            1 => self.eccentricity,
            _ => self.eccentricity * self.eccentricity,
        };
        (sin * factor, cos * factor)
    }

    /// Meeus' additive terms in longitude and latitude: the planets and the Earth's flattening.
    fn further_terms(&self) -> (f64, f64) {
        let [venus, jupiter, sidereal] = self.further;
        let [_, _, anomaly, node] = self.four;
        let mean = self.mean_longitude;
        let sin = |degrees: f64| maths::sin(Degrees::from_degrees(degrees).signed().radians());
        let longitude = 0.003_958 * sin(venus) + 0.001_962 * sin(mean - node) + 0.000_318 * sin(jupiter);
        let latitude = -0.002_235 * sin(mean)
            + 0.000_382 * sin(sidereal)
            + 0.000_175 * (sin(venus - node) + sin(venus + node))
            + 0.000_127 * sin(mean - anomaly)
            - 0.000_115 * sin(mean + anomaly);
        (longitude, latitude)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_printed_example_of_the_series() {
        // Meeus, example 47.a, 1992 April 12.0 TD: λ 133.162655°, β −3.229126°, Δ 368 409.7 km. His longitude holds
        // 0.70″ of light's way and an older mean longitude, together 0.000 207° less than ERFA's constant.
        let moon = Arguments::at((2_448_724.5 - 2_451_545.0) / 36_525.0).printed();
        assert!((moon.longitude.rem_euclid(360.0) - 133.162_655 - 0.000_207).abs() < 2e-6);
        assert!((moon.latitude + 3.229_126).abs() < 1e-6);
        assert!((moon.distance - 368_409_700.0).abs() < 100.0);
    }

    #[test]
    fn the_small_terms_stay_small() {
        for year in -50..=100 {
            let t = f64::from(year) / 100.0;
            let (whole, printed) = (ecliptic(t), Arguments::at(t).printed());
            // Their sum: 18″ is what the printed series is off at worst.
            assert!((whole.longitude.degrees() - printed.longitude).abs() * 3600.0 < 18.0);
            assert!((whole.latitude.degrees() - printed.latitude).abs() * 3600.0 < 6.0);
        }
    }
}
