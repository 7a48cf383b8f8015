//! The earth's magnetic field by the World Magnetic Model 2025.
//!
//! A spherical harmonic series of degree 12 that moves linearly in time; good from 2025.0 to 2030.0. It holds the
//! field of the earth's core: no iron nearby, no ore below, no solar storm. North, east and down are geodetic
//! (WGS 84). What a compass makes of it is in [`super::declination`].

use super::wmm_table::{COEFFICIENTS, Coefficient, DEGREE, EPOCH};
use crate::maths;
use crate::place::site::Site;
use crate::units::{Degrees, Nanoteslas};

/// Radius of the sphere the coefficients refer to, metres (the model's convention).
const REFERENCE_RADIUS: f64 = 6_371_200.0;

/// WGS 84: equatorial radius, metres, and the square of the first eccentricity (facts of the datum).
const EQUATORIAL_RADIUS: f64 = 6_378_137.0;
const ECCENTRICITY_SQUARED: f64 = 0.006_694_379_990_141_33;

/// The field at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Towards true north.
    pub north: Nanoteslas,
    /// Towards the east.
    pub east: Nanoteslas,
    /// Towards the ground.
    pub down: Nanoteslas,
}

impl Field {
    /// The level part, which turns a compass.
    pub fn level(self) -> Nanoteslas {
        Nanoteslas::from_nanoteslas(maths::hypot(self.north.nanoteslas(), self.east.nanoteslas()))
    }

    /// Magnetic north from true north, east positive.
    pub fn declination(self) -> Degrees {
        Degrees::from_radians(maths::atan2(self.east.nanoteslas(), self.north.nanoteslas()))
    }
}

/// The field at `site` in `decimal_year` (2026.5 is the middle of 2026); the site's elevation is taken as height
/// above the ellipsoid, which is at most 0.1 km off and turns no compass.
///
/// # Source
/// NOAA/NCEI and British Geological Survey, *The US/UK World Magnetic Model for 2025–2030: Technical Report*, its
/// chapter of model equations. The functions of latitude are carried as P and P/cos φ, so that the poles need no
/// special case.
///
/// # Accuracy
/// The series itself is followed to 0.001 nT. The published model errs by about 0.3° in declination where the level
/// part is strong, more where it is weak.
pub fn field(site: Site, decimal_year: f64) -> Field {
    let (spherical, tilt) = spherical(site);
    let years = decimal_year - EPOCH;
    let (sin, cos) = maths::sin_cos(spherical.latitude);
    let legendre = Legendre::at(sin, cos);
    let mut sum = Sum::default();
    for coefficient in &COEFFICIENTS {
        sum.add(coefficient, years, &legendre, spherical);
    }
    let (sin_tilt, cos_tilt) = maths::sin_cos(tilt);
    Field {
        north: Nanoteslas::from_nanoteslas(sum.north * cos_tilt - sum.down * sin_tilt),
        east: Nanoteslas::from_nanoteslas(sum.east),
        down: Nanoteslas::from_nanoteslas(sum.north * sin_tilt + sum.down * cos_tilt),
    }
}

/// A point in the coordinates of the series: geocentric, radians; `radius` in reference radii.
#[derive(Clone, Copy)]
struct Spherical {
    latitude: f64,
    longitude: f64,
    radius: f64,
}

/// The site in geocentric coordinates, and its geocentric less its geodetic latitude, radians.
fn spherical(site: Site) -> (Spherical, f64) {
    let (sin, cos) = maths::sin_cos(site.latitude.radians());
    let normal = EQUATORIAL_RADIUS / (1.0 - ECCENTRICITY_SQUARED * sin * sin).sqrt();
    let elevation = site.elevation.metres();
    let out = (normal + elevation) * cos;
    let up = (normal * (1.0 - ECCENTRICITY_SQUARED) + elevation) * sin;
    let latitude = maths::atan2(up, out);
    let radius = maths::hypot(up, out) / REFERENCE_RADIUS;
    (Spherical { latitude, longitude: site.longitude.radians(), radius }, latitude - site.latitude.radians())
}

/// Associated Legendre functions of degree n and order m, Schmidt semi-normalised, at one latitude.
struct Legendre {
    sin: f64,
    /// P of n, m.
    value: [[f64; DEGREE + 1]; DEGREE + 1],
    /// P of n, m divided by the cosine of the latitude; order 0 is left at 0, nothing asks for it.
    over_cos: [[f64; DEGREE + 1]; DEGREE + 1],
}

impl Legendre {
    fn at(sin: f64, cos: f64) -> Self {
        let mut over_cos = [[0.0; DEGREE + 1]; DEGREE + 1];
        let mut value = [[0.0; DEGREE + 1]; DEGREE + 1];
        for m in 0..=DEGREE {
            let table = if m == 0 { &mut value } else { &mut over_cos };
            table[m][m] = match m {
                0 | 1 => 1.0,
                _ => table[m - 1][m - 1] * cos * ((2 * m - 1) as f64 / (2 * m) as f64).sqrt(),
            };
            for n in m + 1..=DEGREE {
                let before = if n > m + 1 { table[n - 2][m] * root(n - 1, m) } else { 0.0 };
                table[n][m] = ((2 * n - 1) as f64 * sin * table[n - 1][m] - before) / root(n, m);
            }
        }
        for n in 1..=DEGREE {
            for m in 1..=n {
                value[n][m] = over_cos[n][m] * cos;
            }
        }
        Self { sin, value, over_cos }
    }

    /// Derivative by colatitude.
    fn slope(&self, n: usize, m: usize) -> f64 {
        match m {
            0 => -self.value[n][1] * ((n * (n + 1)) as f64 / 2.0).sqrt(),
            _ => n as f64 * self.sin * self.over_cos[n][m] - root(n, m) * self.over_cos[n - 1][m],
        }
    }
}

/// √(n² − m²).
fn root(n: usize, m: usize) -> f64 {
    ((n * n - m * m) as f64).sqrt()
}

/// The series so far, geocentric, nT.
#[derive(Default)]
struct Sum {
    north: f64,
    east: f64,
    down: f64,
}

impl Sum {
    fn add(&mut self, coefficient: &Coefficient, years: f64, legendre: &Legendre, at: Spherical) {
        let (n, m) = (coefficient.degree, coefficient.order);
        let g = coefficient.g + coefficient.g_yearly * years;
        let h = coefficient.h + coefficient.h_yearly * years;
        let (sin, cos) = maths::sin_cos(m as f64 * at.longitude);
        let falls = at.radius.powi(-(n as i32 + 2));
        self.north += falls * (g * cos + h * sin) * legendre.slope(n, m);
        self.east += falls * m as f64 * (g * sin - h * cos) * legendre.over_cos[n][m];
        self.down -= falls * (n + 1) as f64 * (g * cos + h * sin) * legendre.value[n][m];
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Latitude, Longitude, Metres};

    fn site(latitude: f64, longitude: f64) -> Site {
        Site {
            latitude: Latitude::from_degrees(latitude).unwrap(),
            longitude: Longitude::from_degrees(longitude).unwrap(),
            elevation: Metres::default(),
        }
    }

    #[test]
    fn the_poles_are_ordinary_places() {
        for pole in [90.0, -90.0] {
            let (at, near) =
                (field(site(pole, 30.0), 2026.0), field(site(pole * (1.0 - 1e-9), 30.0), 2026.0));
            assert!((at.level().nanoteslas() - near.level().nanoteslas()).abs() < 1e-2);
            assert!((at.declination().degrees() - near.declination().degrees()).abs() < 1e-4);
        }
    }

    #[test]
    fn the_date_line_has_no_seam() {
        let (east, west) = (field(site(-17.0, 180.0), 2027.0), field(site(-17.0, -180.0), 2027.0));
        assert!((east.declination().degrees() - west.declination().degrees()).abs() < 1e-9);
    }
}
