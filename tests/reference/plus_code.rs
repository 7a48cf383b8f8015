//! The published test vectors of Open Location Code, which another folder never replaces.
//!
//! Codes are compared as text and cells within half of the last digit that the vectors print. The vectors allow whole
//! numbers made from degrees to be one off, because floats sit on cell edges there.
//! shortCodeTests.csv is not used: short codes are refused with a word of their own.

use std::fs;

use slantlight::place::plus_code::{self, Cell, NotACode};
use slantlight::place::site::Site;
use slantlight::units::{Latitude, Longitude};

use super::kit;

/// The vectors print cells to 1e-11 degrees at most.
const PRINTED: f64 = 1e-10;

#[test]
fn codes_are_written_as_published() {
    let mut used = 0;
    for (line, cells) in rows("encoding.csv", 302) {
        let whole = |index: usize| cells[index].parse::<i64>().unwrap();
        let (north, east) = (whole(2).max(0) as u64, whole(3).rem_euclid(360 * 8_192_000) as u64);
        let length = whole(4).max(0) as usize;
        let got = plus_code::encode(north, east, length).unwrap_or_default();
        assert_eq!(got, cells[5], "encoding.csv:{line}");
        used += 1;
    }
    println!("encoding.csv: {used} codes agree");
}

#[test]
fn degrees_become_the_published_whole_numbers() {
    let mut used = 0;
    for (line, cells) in rows("encoding.csv", 302) {
        let degrees = |index: usize| cells[index].parse::<f64>().unwrap();
        let Ok(latitude) = Latitude::from_degrees(degrees(0)) else { continue };
        let Ok(longitude) = Longitude::from_degrees(degrees(1)) else { continue };
        let (north, east) = plus_code::parts(Site { latitude, longitude, ..Site::default() });
        let apart = |got: u64, index: usize| got.abs_diff(cells[index].parse().unwrap());
        let pole = 180 * 25_000_000;
        assert!(apart(north, 2) <= 1 || north >= pole, "encoding.csv:{line}: {north}");
        assert!([0, 1, 360 * 8_192_000].contains(&apart(east, 3)), "encoding.csv:{line}: {east}");
        used += 1;
    }
    println!("encoding.csv: {used} places agree");
}

#[test]
fn cells_are_read_as_published() {
    let mut worst: f64 = 0.0;
    for (line, cells) in rows("decoding.csv", 420) {
        let cell = Cell::decode(&cells[0]).unwrap_or_else(|error| panic!("decoding.csv:{line}: {error}"));
        let got = [cell.low(), cell.high()].concat();
        for (got, printed) in got.iter().zip(&cells[2..6]) {
            let error = (got - printed.parse::<f64>().unwrap()).abs();
            worst = worst.max(error);
            assert!(error <= PRINTED, "decoding.csv:{line}: got {got}, expected {printed}");
        }
    }
    println!("decoding.csv: worst {worst:e}° of {PRINTED:e}°");
}

#[test]
fn validity_is_as_published() {
    for (line, cells) in rows("validityTests.csv", 25) {
        let expected = match (cells[1].as_str(), cells[2].as_str(), cells[3].as_str()) {
            ("true", "true", "false") => Err(NotACode::Short),
            ("true", "false", "true") => Ok(()),
            ("false", "false", "false") => Err(NotACode::Other),
            other => panic!("validityTests.csv:{line}: {other:?}"),
        };
        assert_eq!(Cell::decode(&cells[0]).map(|_| ()), expected, "validityTests.csv:{line}: {}", cells[0]);
    }
}

/// Rows with their lines; comments and empty lines left out.
fn rows(name: &str, count: usize) -> Vec<(usize, Vec<String>)> {
    let folder = kit::committed().join("published/open-location-code");
    let text = fs::read_to_string(folder.join(name)).unwrap();
    let lines = text.lines().enumerate().map(|(index, line)| (index + 1, line.trim()));
    let rows: Vec<_> = lines
        .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
        .map(|(line, text)| (line, text.split(',').map(str::to_owned).collect()))
        .collect();
    assert_eq!(rows.len(), count, "{name}");
    rows
}
