//! The moon: where it is seen from a place, how far, and how much of it is lit.
//!
//! Directions are topocentric: seen from a place, the moon stands up to one degree lower than from the Earth's
//! centre. They agree with the ephemeris DE440 within 0.0016° (root mean square 0.0003°) from 1950 to 2100, given the
//! right clocks; UTC is taken as UT1 (see [`super::delta_t`]). Rise and set are in [`super::moon_day`], light in `light`.

use super::delta_t::Clock;
use super::equinox::Equinox;
use super::lunar;
use super::refraction::{self, Air};
use super::solar;
use super::sun::SiteTurn;
use crate::maths;
use crate::place::site::Site;
use crate::units::{Bearing, Degrees, Height, Instant, Metres, Share, Vector, World};

/// Constant of aberration, degrees (IAU 1976, 20.4955″).
const ABERRATION: f64 = 20.4955 / 3600.0;

/// Days in a Julian century.
const CENTURY: f64 = 36_525.0;

/// Milliseconds from 1970-01-01 to J2000.0, the noon of 2000-01-01, and in a day.
const J2000_MILLIS: i64 = 946_728_000_000;
const DAY_MILLIS: f64 = 86_400_000.0;

/// Seconds in a day.
const DAY_SECONDS: f64 = 86_400.0;

/// How old the moon's light is, seconds, at its mean distance; 0.1 s more or less moves it by 0.05″.
const LIGHT_WAY: f64 = 1.282;

/// Equatorial radius of the Earth (WGS 84), metres.
const EARTH_RADIUS: f64 = 6_378_137.0;

/// Mean radius of the moon (IAU), metres.
const MOON_RADIUS: f64 = 1_737_400.0;

/// Metres in an astronomical unit (IAU 2012, exact).
const ASTRONOMICAL_UNIT: f64 = 149_597_870_700.0;

/// Where the moon is seen from a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Bearing of the centre.
    pub bearing: Bearing,
    /// Airless topocentric height of the centre.
    pub height: Height,
    /// The height at which it is seen, refraction by Saemundsson in standard air.
    pub apparent_height: Height,
    /// From the place to the moon's centre.
    pub distance: Metres,
}

impl Position {
    /// Airless unit vector to the centre.
    pub fn direction(&self) -> Vector<World> {
        Vector::towards(self.bearing, self.height)
    }

    /// Angle from the centre to the limb.
    pub fn radius(&self) -> Degrees {
        radius(self.distance.metres())
    }
}

/// The moon as seen from the Earth's centre, true equator and equinox of date.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geocentric {
    /// Apparent right ascension, 0° to 360°.
    pub right_ascension: Degrees,
    /// Apparent declination.
    pub declination: Degrees,
    /// From centre to centre.
    pub distance: Metres,
}

/// How the moon is lit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Phase {
    /// Angle at the moon between sun and Earth: 0° full, 180° new.
    pub angle: Degrees,
    /// Lit share of the disc.
    pub lit: Share,
    /// Ecliptic longitude less the sun's: 0° new, 90° first quarter, 180° full, 270° last quarter.
    pub elongation: Degrees,
}

/// Where the moon is seen from `site`.
///
/// # Source
/// [`super::lunar`] for the place in the ecliptic; Meeus, *Astronomical Algorithms* (1998), chapter 40, for the
/// parallax, here by vectors.
///
/// ```
/// use slantlight::sky::{delta_t::Clock, moon};
/// use slantlight::{place::site::Site, units::Instant};
/// let at = Instant::parse("2026-03-03T11:34:00Z")?; // a lunar eclipse: opposite the sun
/// assert!(moon::phase(at, Clock::at(at)).lit.fraction() > 0.999);
/// assert!(moon::position(Site::default(), at, Clock::at(at)).height.degrees() < -50.0);
/// # Ok::<(), Box<dyn core::error::Error>>(())
/// ```
pub fn position(site: Site, at: Instant, clock: Clock) -> Position {
    let seen = topocentric(&SiteTurn::new(site), at, clock);
    let height = seen.height();
    Position {
        bearing: seen.bearing(),
        height,
        apparent_height: refraction::apparent(height, Air::STANDARD),
        distance: Metres::from_metres(seen.norm()),
    }
}

/// Where the moon is seen from the Earth's centre.
pub fn geocentric(at: Instant, clock: Clock) -> Geocentric {
    let [x, y, z] = Apparent::at(at, clock).equatorial;
    Geocentric {
        right_ascension: Degrees::from_radians(maths::atan2(y, x)).positive(),
        declination: Degrees::from_radians(maths::atan2(z, maths::hypot(x, y))),
        distance: Metres::from_metres((x * x + y * y + z * z).sqrt()),
    }
}

/// How the moon is lit, seen from the Earth's centre.
///
/// # Source
/// Meeus, *Astronomical Algorithms* (1998), equations 48.1 to 48.3. The phase angle takes the sun where it stands, the
/// elongation where it is seen: 20.5″ of aberration lie between.
pub fn phase(at: Instant, clock: Clock) -> Phase {
    let (moon, sun) = (Apparent::at(at, clock), solar::geocentric(at, clock));
    let seen = longitude(unit(sun.right_ascension, sun.declination), moon.obliquity);
    let stands = Degrees::from_degrees(seen.degrees() + ABERRATION);
    let apart = moon.ecliptic.angle_to(unit(stands, Degrees::default()));
    let (sin, cos) = maths::sin_cos(apart.radians());
    let sun_distance = sun.distance.au() * ASTRONOMICAL_UNIT;
    let towards_sun = moon.ecliptic.norm() - sun_distance * cos;
    let angle = Degrees::from_radians(maths::atan2(sun_distance * sin, towards_sun));
    Phase {
        angle,
        lit: Share::clamped((1.0 + maths::cos(angle.radians())) / 2.0),
        elongation: Degrees::from_degrees(moon.longitude.degrees() - seen.degrees()).positive(),
    }
}

/// Angle from the centre to the limb at a distance in metres.
pub(super) fn radius(distance: f64) -> Degrees {
    Degrees::from_radians(maths::asin((MOON_RADIUS / distance).min(1.0)))
}

/// From the place to the moon's centre, metres.
pub(super) fn topocentric(site: &SiteTurn, at: Instant, clock: Clock) -> Vector<World> {
    let (meridian, east, axis) = hourly(site, at, clock);
    let north = axis * site.cos_latitude - meridian * site.sin_latitude - EARTH_RADIUS * site.centre_north;
    let up = axis * site.sin_latitude + meridian * site.cos_latitude - EARTH_RADIUS * site.centre_up;
    Vector::new(east, north, up)
}

/// From the Earth's centre, metres: towards the meridian's south, the east, the celestial pole.
pub(super) fn hourly(site: &SiteTurn, at: Instant, clock: Clock) -> (f64, f64, f64) {
    let apparent = Apparent::at(at, clock);
    let [x, y, z] = apparent.equatorial;
    let (sin_time, cos_time) = maths::sin_cos(apparent.sidereal_time.radians());
    let cos = cos_time * site.cos_longitude - sin_time * site.sin_longitude;
    let sin = sin_time * site.cos_longitude + cos_time * site.sin_longitude;
    (x * cos + y * sin, y * cos - x * sin, z)
}

/// The moon from the Earth's centre as it is seen at an instant.
struct Apparent {
    /// Along the true equator and equinox of date, metres.
    equatorial: [f64; 3],
    /// The same along ecliptic and true equinox of date.
    ecliptic: Vector<World>,
    /// From the true equinox of date.
    longitude: Degrees,
    obliquity: Degrees,
    /// Apparent, at Greenwich.
    sidereal_time: Degrees,
}

impl Apparent {
    fn at(at: Instant, clock: Clock) -> Self {
        let days = at.unix_millis().saturating_sub(J2000_MILLIS) as f64 / DAY_MILLIS
            + clock.dut1.seconds() / DAY_SECONDS;
        let centuries = (days + clock.delta_t.seconds() / DAY_SECONDS) / CENTURY;
        let equinox = Equinox::at(centuries);
        let moon = lunar::ecliptic(centuries - LIGHT_WAY / DAY_SECONDS / CENTURY);
        let longitude =
            Degrees::from_degrees(moon.longitude.degrees() + equinox.nutation.degrees()).positive();
        let ecliptic = unit(longitude, moon.latitude) * moon.distance.metres();
        let (sin, cos) = maths::sin_cos(equinox.obliquity.radians());
        Self {
            equatorial: [
                ecliptic.x,
                ecliptic.y * cos - ecliptic.z * sin,
                ecliptic.y * sin + ecliptic.z * cos,
            ],
            ecliptic,
            longitude,
            obliquity: equinox.obliquity,
            sidereal_time: equinox.sidereal_time(days, centuries),
        }
    }
}

/// Unit vector of a longitude and latitude, or of a right ascension and declination, on their own axes.
fn unit(longitude: Degrees, latitude: Degrees) -> Vector<World> {
    let (sin, cos) = maths::sin_cos(longitude.radians());
    let (up, flat) = maths::sin_cos(latitude.radians());
    Vector::new(cos * flat, sin * flat, up)
}

/// Ecliptic longitude of a direction on the equator's axes.
fn longitude(direction: Vector<World>, obliquity: Degrees) -> Degrees {
    let (sin, cos) = maths::sin_cos(obliquity.radians());
    Degrees::from_radians(maths::atan2(direction.y * cos + direction.z * sin, direction.x))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Latitude, Longitude};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn parallax_lowers_the_moon_by_a_degree_at_most(
            millis in 0i64..4_000_000_000_000, latitude in -90.0..=90.0f64, longitude in -180.0..=180.0f64,
        ) {
            let site = Site {
                latitude: Latitude::from_degrees(latitude).unwrap(),
                longitude: Longitude::from_degrees(longitude).unwrap(),
                elevation: Metres::default(),
            };
            let at = Instant::from_unix_millis(millis);
            let clock = Clock::at(at);
            let turn = SiteTurn::new(site);
            let (meridian, east, axis) = hourly(&turn, at, clock);
            let north = axis * turn.cos_latitude - meridian * turn.sin_latitude;
            let up = axis * turn.sin_latitude + meridian * turn.cos_latitude;
            let from_centre = Vector::<World>::new(east, north, up);
            let seen = topocentric(&turn, at, clock);
            prop_assert!(seen.angle_to(from_centre).degrees() < 1.03);
            // The vertical misses the Earth's centre by up to 0.2°, which tilts the parallax a little.
            prop_assert!(seen.height().degrees() < from_centre.height().degrees() + 0.004);
            prop_assert!((300e6..420e6).contains(&seen.norm()));
        }

        #[test]
        fn lit_share_follows_elongation(millis in 0i64..4_000_000_000_000) {
            let at = Instant::from_unix_millis(millis);
            let phase = phase(at, Clock::at(at));
            // Up to 5° of latitude and 0.15° of the sun's own parallax stand between the two.
            let apart = phase.elongation.signed().abs().degrees() + phase.angle.degrees() - 180.0;
            prop_assert!(apart.abs() < 5.6, "{phase:?}");
        }
    }
}
