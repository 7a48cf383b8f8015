//! Positions on Earth: 40.6405 N 8.6538 W.

use super::length::Units;
use crate::place::site::Site;
use crate::units::Metres;

/// Latitude and longitude to the ten-thousandth of a degree (about 11 m).
///
/// ```
/// # use slantlight::{place::site::Site, units::{Latitude, Longitude}, words::position};
/// let latitude = Latitude::from_degrees(40.6405).unwrap();
/// let longitude = Longitude::from_degrees(-8.6538).unwrap();
/// assert_eq!(position(Site { latitude, longitude, ..Site::default() }), "40.6405 N 8.6538 W");
/// ```
pub fn position(site: Site) -> String {
    let (latitude, longitude) = (site.latitude.degrees(), site.longitude.degrees());
    let north = if latitude < 0.0 { 'S' } else { 'N' };
    let east = if longitude < 0.0 { 'W' } else { 'E' };
    format!("{:.4} {north} {:.4} {east}", latitude.abs(), longitude.abs())
}

/// How exact a position is: "± 12 m".
pub fn accuracy(accuracy: Metres, units: Units) -> String {
    match units {
        Units::Metric => format!("± {:.0} m", accuracy.metres()),
        Units::FeetInches => format!("± {:.0} ft", accuracy.feet()),
    }
}
