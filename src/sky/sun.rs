//! The sun at one site: any instant in some 10 ns, a minute of a day in 2 ns.
//!
//! Within 1.0e-5° of the full method from 1950 to 2100, everywhere (0.00014° of the ephemeris DE421); UTC is taken as
//! UT1, see [`super::delta_t`]. A [`Day`] of the [`Ephemeris`] is turned to the site's
//! longitude by two products, to the minute by two more from one shared table, and tilted to its latitude: no
//! trigonometry.

use super::ephemeris::{DAY_MILLIS, Day, Ephemeris};
use super::refraction::{self, Air};
use super::turn;
use crate::maths;
use crate::place::site::Site;
use crate::units::{Instant, Vector, World};

/// Flattening and equatorial radius of the Earth as NREL's algorithm has them (Reda and Andreas 2004, section 3.11).
const POLAR_AXIS: f64 = 0.996_647_19;
const RADIUS_METRES: f64 = 6_378_140.0;

/// The sun as seen from one site.
#[derive(Clone, Copy, Debug)]
pub struct Sun {
    ephemeris: &'static Ephemeris,
    pub(super) site: SiteTurn,
}

/// A site as the sun's track needs it.
#[derive(Clone, Copy, Debug)]
pub(super) struct SiteTurn {
    pub(super) sin_latitude: f64,
    pub(super) cos_latitude: f64,
    pub(super) sin_longitude: f64,
    pub(super) cos_longitude: f64,
    /// Longitude as a part of a turn, −½ to ½.
    pub(super) longitude_turns: f64,
    /// North and up parts of the way from the Earth's centre, equatorial radii.
    pub(super) centre_north: f64,
    pub(super) centre_up: f64,
}

impl Sun {
    /// At a site.
    pub fn new(site: Site) -> Self {
        Self::with(Ephemeris::shared(), site)
    }

    /// At a site, with a store of its own.
    pub fn with(ephemeris: &'static Ephemeris, site: Site) -> Self {
        Self { ephemeris, site: SiteTurn::new(site) }
    }

    /// Airless topocentric direction of the centre.
    pub fn direction(&self, at: Instant) -> Vector<World> {
        let number = at.unix_millis().div_euclid(DAY_MILLIS);
        let part = at.unix_millis().rem_euclid(DAY_MILLIS) as f64 * (1.0 / DAY_MILLIS as f64);
        let direction = self.in_day(number, part);
        direction * (1.0 / direction.norm())
    }

    /// Direction in which the centre is seen, through standard air.
    pub fn apparent(&self, at: Instant) -> Vector<World> {
        refraction::lifted(self.direction(at), Air::STANDARD)
    }

    /// Airless direction `days` after 1970-01-01; its length is one within 4e-5, the parallax being left in it.
    pub(super) fn at(&self, days: f64) -> Vector<World> {
        let number = turn::floor(days);
        self.in_day(number, days - number as f64)
    }

    /// The UTC day of a number.
    pub(super) fn day(&self, number: i64) -> Day {
        self.ephemeris.day(number)
    }

    /// At a time: cos δ cos H, −cos δ sin H, sin δ from the Earth's centre, and the parallax.
    pub(super) fn geocentric(&self, days: f64) -> (f64, f64, f64, f64) {
        let number = turn::floor(days);
        self.turned(&self.ephemeris.day(number), days - number as f64)
    }

    fn in_day(&self, number: i64, part: f64) -> Vector<World> {
        let (meridian, east, s, parallax) = self.turned(&self.ephemeris.day(number), part);
        let site = &self.site;
        let north = s * site.cos_latitude - meridian * site.sin_latitude - parallax * site.centre_north;
        let up = s * site.sin_latitude + meridian * site.cos_latitude - parallax * site.centre_up;
        Vector::new(east, north, up)
    }

    fn turned(&self, day: &Day, part: f64) -> (f64, f64, f64, f64) {
        let at = |c: [f64; 3]| c[0] + part * (c[1] + part * c[2]);
        let (a, b, s) = (at(day.a), at(day.b), at(day.s));
        let (cos, sin) = turn::cos_sin(part);
        let cos_turn = cos * self.site.cos_longitude - sin * self.site.sin_longitude;
        let sin_turn = sin * self.site.cos_longitude + cos * self.site.sin_longitude;
        (a * cos_turn - b * sin_turn, -(a * sin_turn + b * cos_turn), s, day.parallax)
    }
}

impl SiteTurn {
    pub(super) fn new(site: Site) -> Self {
        let (sin_latitude, cos_latitude) = maths::sin_cos(site.latitude.radians());
        let (sin_longitude, cos_longitude) = maths::sin_cos(site.longitude.radians());
        // Reda and Andreas 2004, equations 34 to 36.
        let (sin_u, cos_u) = maths::sin_cos(maths::atan2(POLAR_AXIS * sin_latitude, cos_latitude));
        let high = site.elevation.metres() / RADIUS_METRES;
        let (x, y) = (cos_u + high * cos_latitude, POLAR_AXIS * sin_u + high * sin_latitude);
        Self {
            sin_latitude,
            cos_latitude,
            sin_longitude,
            cos_longitude,
            longitude_turns: site.longitude.degrees() / 360.0,
            centre_north: y * cos_latitude - x * sin_latitude,
            centre_up: x * cos_latitude + y * sin_latitude,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::delta_t::Clock;
    use super::super::solar;
    use super::*;
    use crate::units::{Latitude, Longitude, Metres};
    use proptest::prelude::*;

    /// Largest angle to the full method, degrees.
    const TOLERANCE: f64 = 2e-5;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2000))]

        #[test]
        fn agrees_with_the_full_method(
            millis in -631_152_000_000i64..4_133_980_800_000,
            latitude in -90.0..=90.0f64, longitude in -180.0..=180.0f64, elevation in 0.0..5000.0f64,
        ) {
            let site = Site {
                latitude: Latitude::from_degrees(latitude).unwrap(),
                longitude: Longitude::from_degrees(longitude).unwrap(),
                elevation: Metres::from_metres(elevation),
            };
            let at = Instant::from_unix_millis(millis);
            let full = solar::position(site, at, Clock::at(at), Air::STANDARD).direction();
            let track = Sun::new(site).direction(at);
            prop_assert!(track.angle_to(full).degrees() <= TOLERANCE, "{}", track.angle_to(full).degrees());
            prop_assert!((track.norm() - 1.0).abs() < 1e-14);
        }

        #[test]
        fn never_fails_outside_its_years(millis in any::<i64>(), latitude in -90.0..=90.0f64) {
            let site = Site { latitude: Latitude::from_degrees(latitude).unwrap(), ..Site::default() };
            let sun = Sun::new(site).direction(Instant::from_unix_millis(millis));
            prop_assert!((sun.norm() - 1.0).abs() < 1e-14);
        }
    }
}
