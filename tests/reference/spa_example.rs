//! The example printed with NREL's algorithm, to its digits.
//!
//! I. Reda, A. Andreas, NREL/TP-560-34302, revised January 2008, appendix A.5: 2003-10-17 12:30:30, UTC−7, delta-T 67 s,
//! 39.742476 N, 105.1786 W, 1830.14 m, 820 mbar, 11 °C. Handbook T-A1.

use slantlight::place::site::Site;
use slantlight::sky::delta_t::Clock;
use slantlight::sky::events::RISE_AND_SET;
use slantlight::sky::refraction::Air;
use slantlight::sky::solar;
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Instant, Latitude, Longitude, Metres, Span};

fn site() -> Site {
    Site {
        latitude: Latitude::from_degrees(39.742476).unwrap(),
        longitude: Longitude::from_degrees(-105.1786).unwrap(),
        elevation: Metres::from_metres(1830.14),
    }
}

const CLOCK: Clock = Clock { delta_t: Duration::from_millis(67_000), dut1: Duration::ZERO };

fn printed(what: &str, got: f64, expected: &str) {
    let digits = expected.split('.').nth(1).map_or(0, str::len);
    assert_eq!(format!("{got:.digits$}"), expected, "{what}");
}

#[test]
fn positions_to_the_printed_digit() {
    let at = Instant::parse("2003-10-17T12:30:30-07:00").unwrap();
    let sun = solar::position(site(), at, CLOCK, Air::from_hpa_and_celsius(820.0, 11.0));
    printed("zenith", 90.0 - sun.apparent_height.degrees(), "50.11162");
    printed("azimuth", sun.bearing.degrees(), "194.34024");
    printed("height without refraction", sun.height.degrees(), "39.872046");
    printed("radius vector", sun.distance.au(), "0.9965422974");
    let centre = solar::geocentric(at, CLOCK);
    printed("right ascension", centre.right_ascension.degrees(), "202.22741");
    printed("declination", centre.declination.degrees(), "-9.31434");
}

/// Transit within 0.02 s and rise and set within 1 s; the printed sunset belongs to the UT date.
#[test]
fn events_of_the_date() {
    let sun = Sun::new(Site { elevation: Metres::default(), ..site() });
    let start = Instant::parse("2003-10-17T00:00:00Z").unwrap();
    let day = Span::new(start, start + Duration::DAY).unwrap();
    let passage = sun.passage(RISE_AND_SET, day);
    for (what, found, expected, tolerance) in [
        ("transit", sun.transits(day), "2003-10-17T18:46:04.970Z", 0.02),
        ("rise", passage.up().to_vec(), "2003-10-17T13:12:43.460Z", 1.0),
        ("set", passage.down().to_vec(), "2003-10-17T00:20:19.190Z", 1.0),
    ] {
        assert_eq!(found.len(), 1, "{what}");
        let off = (found[0] - Instant::parse(expected).unwrap()).seconds();
        println!("{what}: {off} s of {tolerance} s");
        assert!(off.abs() <= tolerance, "{what}: {} is {off} s off", found[0]);
    }
}
