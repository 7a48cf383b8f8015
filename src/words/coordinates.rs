//! Positions in the other forms that people and machines read; each is read back by [`crate::place::coordinates`].

use crate::place::site::Site;
use crate::units::Metres;

/// Degrees and minutes to 0.001′ (2 m): 40° 38.430′ N 8° 39.228′ W.
pub fn minutes(site: Site) -> String {
    in_letters(site, |degrees| {
        let thousandths = (degrees * 60_000.0).round() as u64;
        let (whole, rest) = (thousandths / 60_000, thousandths % 60_000);
        format!("{whole}° {:02}.{:03}′", rest / 1000, rest % 1000)
    })
}

/// Degrees, minutes and seconds to 0.1″ (3 m).
///
/// ```
/// # use slantlight::{place::site::Site, units::{Latitude, Longitude}, words::coordinates};
/// let latitude = Latitude::from_degrees(40.6405).unwrap();
/// let longitude = Longitude::from_degrees(-8.6538).unwrap();
/// let site = Site { latitude, longitude, ..Site::default() };
/// assert_eq!(coordinates::seconds(site), "40° 38′ 25.8″ N 8° 39′ 13.7″ W");
/// assert_eq!(coordinates::geo_uri(site, None), "geo:40.640500,-8.653800");
/// assert_eq!(coordinates::iso_6709(site), "+40.640500-008.653800/");
/// ```
pub fn seconds(site: Site) -> String {
    in_letters(site, |degrees| {
        let tenths = (degrees * 36_000.0).round() as u64;
        let (whole, minutes, rest) = (tenths / 36_000, tenths / 600 % 60, tenths % 600);
        format!("{whole}° {minutes:02}′ {:02}.{}″", rest / 10, rest % 10)
    })
}

/// A `geo:` URI (RFC 5870), to a millionth of a degree (0.1 m), with elevation and uncertainty where known.
pub fn geo_uri(site: Site, accuracy: Option<Metres>) -> String {
    let Site { latitude, longitude, elevation } = site;
    let mut uri = format!("geo:{:.6},{:.6}", latitude.degrees(), longitude.degrees());
    if elevation != Metres::default() {
        uri.push_str(&format!(",{:.1}", elevation.metres()));
    }
    if let Some(accuracy) = accuracy {
        uri.push_str(&format!(";u={:.0}", accuracy.metres().max(0.0)));
    }
    uri
}

/// An ISO 6709 string, to a millionth of a degree.
pub fn iso_6709(site: Site) -> String {
    let Site { latitude, longitude, elevation } = site;
    let position = format!("{:+010.6}{:+011.6}", latitude.degrees(), longitude.degrees());
    if elevation == Metres::default() {
        return format!("{position}/");
    }
    format!("{position}{:+.1}CRSWGS_84/", elevation.metres())
}

/// Both angles without their signs, each with the letter of its side.
fn in_letters(site: Site, write: impl Fn(f64) -> String) -> String {
    let (latitude, longitude) = (site.latitude.degrees(), site.longitude.degrees());
    let north = if latitude < 0.0 { 'S' } else { 'N' };
    let east = if longitude < 0.0 { 'W' } else { 'E' };
    format!("{} {north} {} {east}", write(latitude.abs()), write(longitude.abs()))
}
