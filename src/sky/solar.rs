//! The full solar method: NREL's Solar Position Algorithm.
//!
//! I. Reda, A. Andreas, *Solar Position Algorithm for Solar Radiation Applications*, Solar Energy 76 (2004) 577–589 and
//! NREL/TP-560-34302 (2008), as carried by the crate `solar-positioning`. Within 0.00024° of the ephemeris DE440 from
//! 1950 to 2100, given the right clocks. It costs some 4 µs; [`super::sun`] is what the app asks.

use solar_positioning::time::JulianDate;
use solar_positioning::{Location, PreparedPositions, SolarPositions};

use super::delta_t::Clock;
use super::refraction::{self, Air};
use crate::place::site::Site;
use crate::units::{Bearing, Degrees, Height, Instant, Vector, World};

/// Seconds in a day.
const DAY: f64 = 86_400.0;

/// Julian dates that the method serves; instants outside are taken to the nearer end.
const JULIAN_DATES: (f64, f64) = (1_000_000.0, 3_900_000.0);

/// Where the sun is seen from a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Bearing of the centre.
    pub bearing: Bearing,
    /// Airless topocentric height of the centre.
    pub height: Height,
    /// The height at which it is seen, refraction by Saemundsson.
    pub apparent_height: Height,
    /// From the Earth's centre.
    pub distance: AstronomicalUnits,
}

impl Position {
    /// Airless unit vector to the centre.
    pub fn direction(&self) -> Vector<World> {
        Vector::towards(self.bearing, self.height)
    }
}

/// A distance in astronomical units.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct AstronomicalUnits(f64);

impl AstronomicalUnits {
    /// From astronomical units.
    pub const fn from_au(au: f64) -> Self {
        Self(au)
    }

    /// In astronomical units.
    pub const fn au(self) -> f64 {
        self.0
    }
}

/// The sun as seen from the Earth's centre, true equator and equinox of date.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geocentric {
    /// Apparent right ascension, 0° to 360°.
    pub right_ascension: Degrees,
    /// Apparent declination.
    pub declination: Degrees,
    /// Hour angle at Greenwich, positive to the west, 0° to 360°.
    pub greenwich_hour_angle: Degrees,
    /// Distance.
    pub distance: AstronomicalUnits,
}

/// Where the sun is seen from `site` at `instant`.
///
/// ```
/// use slantlight::sky::{delta_t::Clock, refraction::Air, solar};
/// use slantlight::{place::site::Site, units::{Instant, Latitude, Longitude, Metres}};
/// let latitude = Latitude::from_degrees(48.0)?;
/// let site = Site { latitude, longitude: Longitude::from_degrees(11.0)?, elevation: Metres::from_metres(0.0) };
/// let instant = Instant::parse("2026-06-21T15:00:00Z")?;
/// let sun = solar::position(site, instant, Clock::at(instant), Air::STANDARD);
/// assert!((sun.height.degrees() - 40.02).abs() < 0.01 && (sun.bearing.degrees() - 261.01).abs() < 0.01);
/// # Ok::<(), Box<dyn core::error::Error>>(())
/// ```
pub fn position(site: Site, instant: Instant, clock: Clock, air: Air) -> Position {
    let prepared = prepare(instant, clock);
    let place = Location { latitude: site.latitude.degrees(), longitude: site.longitude.degrees() };
    let seen =
        prepared.at(place, site.elevation.metres(), None).expect("a site has finite coordinates in range");
    let height = Height::clamped(seen.elevation_angle());
    Position {
        bearing: Bearing::from_degrees(seen.azimuth()),
        height,
        apparent_height: refraction::apparent(height, air),
        distance: distance(&prepared),
    }
}

/// Where the sun stands for the Earth as a whole.
pub fn geocentric(instant: Instant, clock: Clock) -> Geocentric {
    let prepared = prepare(instant, clock);
    // From the pole the bearing is the hour angle: parallax does not change right ascension there.
    let pole = Location { latitude: 90.0, longitude: 0.0 };
    let seen = prepared.at(pole, 0.0, None).expect("the pole is a place");
    Geocentric {
        right_ascension: Degrees::from_degrees(prepared.right_ascension()),
        declination: Degrees::from_degrees(prepared.declination()),
        greenwich_hour_angle: Degrees::from_degrees(seen.azimuth() - 180.0).positive(),
        distance: distance(&prepared),
    }
}

fn prepare(instant: Instant, clock: Clock) -> PreparedPositions {
    let ut1 = instant.julian_date() + clock.dut1.seconds() / DAY;
    let date = JulianDate::new(ut1.clamp(JULIAN_DATES.0, JULIAN_DATES.1), clock.delta_t.seconds())
        .expect("clocks are finite");
    SolarPositions::new().for_time_from_julian(date).expect("the date is in the method's range")
}

fn distance(prepared: &PreparedPositions) -> AstronomicalUnits {
    AstronomicalUnits(prepared.earth_radius_vector().expect("the method knows the distance"))
}
