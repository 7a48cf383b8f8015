//! Where the sun stands, beside Skyfield with the ephemeris DE440.
//!
//! The full method with the table's own clocks, then the day track that users get, with the app's own delta-T.
//! Bearings are compared times the cosine of the height, being loose near the zenith.

use std::path::Path;

use slantlight::place::site::Site;
use slantlight::sky::delta_t::Clock;
use slantlight::sky::refraction::{self, Air};
use slantlight::sky::solar::{self, Position};
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Degrees, Duration, Height, Latitude, Longitude, Metres};

use super::kit::{self, Failure, Row, Table, Worst};

/// Degrees: NREL's stated accuracy.
const FULL_METHOD: f64 = 0.0003;

/// Degrees: the same, and half as much again for a delta-T that is estimated.
const DAY_TRACK: f64 = 0.0005;

/// The full method's distance in astronomical units; light's way of 8 minutes is not taken out of it.
const DISTANCE: f64 = 0.000_01;

/// The Earth turns one degree in this many seconds.
const SECONDS_A_DEGREE: f64 = 240.0;

/// The table's Bennett rounds 283/1010 to 0.28 and 1/60 to 0.016667.
const NOVAS_AIR: f64 = 0.28 * 1010.0 / 283.0 * 0.016_667 * 60.0;

/// Degrees: how far Bennett's formula falls below zero at the zenith, where ours says zero.
const BELOW_ZERO: f64 = 0.000_025;

#[test]
fn sun_positions() {
    kit::verify(check);
}

/// Every row of `sun_positions.csv`.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let mut worst = Worst::of("sun_positions.csv");
    for row in Table::read(folder, "sun_positions.csv")?.rows() {
        full_method(&row, &mut worst)?;
        day_track(&row, &mut worst)?;
        worst.row();
    }
    Ok(worst)
}

fn full_method(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let clock = Clock { delta_t: Duration::from_seconds(row.number("delta_t_s")?), dut1: Duration::ZERO };
    let air = Air::from_hpa_and_celsius(row.number("pressure_hpa")?, row.number("temp_c")?);
    let sun = solar::position(site(row)?, row.instant("utc")?, clock, air);
    direction(row, worst, ["full method: bearing·cos h", "full method: height"], &sun, FULL_METHOD)?;
    let seen = (sun.apparent_height.degrees(), row.number("alt_refr_saemundsson_deg")?);
    worst.near(row, ("full method: height seen", "°"), seen, FULL_METHOD)?;
    let distance = (sun.distance.au(), row.number("distance_au")?);
    worst.near(row, ("full method: distance", "au"), distance, DISTANCE)?;
    for_the_earth(row, worst, clock)?;
    by_bennett(row, worst, air)
}

/// The sun from the Earth's centre, and the equation of time.
fn for_the_earth(row: &Row<'_>, worst: &mut Worst, clock: Clock) -> Result<(), Failure> {
    let at = row.instant("utc")?;
    let sun = solar::geocentric(at, clock);
    let declination = (sun.declination.degrees(), row.number("dec_app_deg")?);
    worst.near(row, ("full method: declination", "°"), declination, FULL_METHOD)?;
    let ascension =
        (sun.right_ascension.degrees() - row.number("ra_app_deg")?) * declination.1.to_radians().cos();
    let off = Degrees::from_degrees(ascension).signed().degrees();
    worst.near(row, ("full method: right ascension·cos δ", "°"), (off, 0.0), FULL_METHOD)?;
    let mean_sun = (at.unix_seconds() / 86_400.0).rem_euclid(1.0) * 360.0 - 180.0;
    let ahead = Degrees::from_degrees(sun.greenwich_hour_angle.degrees() - mean_sun).signed();
    let seconds = (ahead.degrees() * SECONDS_A_DEGREE, row.number("equation_of_time_s")?);
    worst.near(row, ("full method: equation of time", "s"), seconds, FULL_METHOD * SECONDS_A_DEGREE)
}

fn day_track(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let direction_seen = Sun::new(site(row)?).direction(row.instant("utc")?);
    let sun = Position {
        bearing: direction_seen.bearing(),
        height: direction_seen.height(),
        apparent_height: direction_seen.height(),
        distance: solar::AstronomicalUnits::from_au(1.0),
    };
    direction(row, worst, ["day track: bearing·cos h", "day track: height"], &sun, DAY_TRACK)
}

fn direction(
    row: &Row<'_>,
    worst: &mut Worst,
    [bearing, height]: [&'static str; 2],
    sun: &Position,
    tolerance: f64,
) -> Result<(), Failure> {
    let expected = row.number("alt_airless_deg")?;
    worst.near(row, (height, "°"), (sun.height.degrees(), expected), tolerance)?;
    let off = Bearing::from_degrees(row.number("azimuth_deg")?).turn_to(sun.bearing).degrees();
    let flat = Height::clamped(expected).radians().cos();
    worst.near(row, (bearing, "°"), (off * flat, 0.0), tolerance)
}

/// Bennett's formula at the height that the table says is seen leads back to the airless height.
fn by_bennett(row: &Row<'_>, worst: &mut Worst, air: Air) -> Result<(), Failure> {
    let Some(seen) = row.optional("alt_refr_bennett_deg")? else { return Ok(()) };
    let lift = refraction::bennett(Height::clamped(seen), air).degrees() * NOVAS_AIR;
    let airless = row.number("alt_airless_deg")?;
    worst.near(row, ("Bennett: airless height", "°"), (seen - lift, airless), BELOW_ZERO)
}

fn site(row: &Row<'_>) -> Result<Site, Failure> {
    Ok(Site {
        latitude: row
            .read("lat_deg", "a latitude", |text| Latitude::from_degrees(text.parse().ok()?).ok())?,
        longitude: row
            .read("lon_deg", "a longitude", |text| Longitude::from_degrees(text.parse().ok()?).ok())?,
        elevation: row.optional("elev_m")?.map_or_else(Metres::default, Metres::from_metres),
    })
}
