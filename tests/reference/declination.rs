//! declination.csv, and NOAA's own test values of the model: declination, level field and warning zone.
//!
//! Tolerances: NOAA prints declinations to 0.01°, the table's computed rows to 0.0001°, level fields to 0.01 nT, and
//! the table's header finds two programs to agree within 0.0007 nT; each tolerance is half a digit and that. Blackout
//! rows need no allowance: the header's 0.0050° includes them.

use std::path::Path;

use chrono::NaiveDate;
use slantlight::place::site::Site;
use slantlight::sky::declination::{Zone, declination};
use slantlight::sky::wmm;
use slantlight::units::{Duration, Instant, Latitude, Longitude, Metres};

use super::kit::{self, Failure, Row, Table, Worst};

/// Half the last digit of NOAA's declinations and the model's arithmetic, degrees.
const PUBLISHED: f64 = 0.005_01;
/// The same of the computed rows; their year is printed to a millionth, in which the compass turns 0.000 001°.
const COMPUTED: f64 = 0.000_052;
/// Half the last digit of the level field and what two programs differ by, nT.
const LEVEL: f64 = 0.005_7;

#[test]
fn declinations_agree() {
    kit::verify(check);
}

/// Every row of declination.csv.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let table = Table::read(folder, "declination.csv")?;
    let mut worst = Worst::of("declination.csv");
    for row in table.rows() {
        compare(&row, &mut worst)?;
        worst.row();
    }
    Ok(worst)
}

fn compare(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let (place, year) = (site(row)?, row.number("decimal_year")?);
    let got = declination(place, instant(year));
    let published = row.text("source")? == "NOAA-test";
    let (what, tolerance) =
        if published { ("declination, NOAA", PUBLISHED) } else { ("declination", COMPUTED) };
    let apart = (got.value.degrees() - row.number("declination_deg")? + 540.0).rem_euclid(360.0) - 180.0;
    worst.near(row, (what, "°"), (apart, 0.0), tolerance)?;
    let level = wmm::field(place, year).level().nanoteslas();
    worst.near(row, ("level field", "nT"), (level, row.number("h_nt")?), LEVEL)?;
    let zone = match got.zone {
        Zone::Ok => "ok",
        Zone::Caution => "caution",
        Zone::Blackout => "blackout",
    };
    if zone != row.text("zone")? {
        return Err(row.differs("zone", zone, row.text("zone")?));
    }
    if got.outside_years { Err(row.differs("outside the model's years", true, false)) } else { Ok(()) }
}

fn site(row: &Row<'_>) -> Result<Site, Failure> {
    Ok(Site {
        latitude: row
            .read("lat_deg", "a latitude", |text| Latitude::from_degrees(text.parse().ok()?).ok())?,
        longitude: row
            .read("lon_deg", "a longitude", |text| Longitude::from_degrees(text.parse().ok()?).ok())?,
        elevation: Metres::from_metres(row.number("alt_km")? * 1000.0),
    })
}

/// The instant at which `decimal_year` of a calendar year have passed.
fn instant(decimal_year: f64) -> Instant {
    let year = decimal_year.floor();
    let starts = |year: f64| {
        let day = NaiveDate::from_ymd_opt(year as i32, 1, 1).unwrap();
        Instant::from_utc(day.and_hms_opt(0, 0, 0).unwrap())
    };
    let whole = starts(year + 1.0) - starts(year);
    starts(year) + Duration::from_seconds(whole.seconds() * (decimal_year - year))
}

#[test]
fn published_components_agree() {
    let path = kit::committed().join("published/WMM2025_TEST_VALUES.txt");
    let text = std::fs::read_to_string(path).unwrap();
    let rows = text.lines().filter(|line| !line.starts_with('#') && !line.trim().is_empty());
    let (mut count, mut worst) = (0, 0.0_f64);
    for line in rows {
        let cells: Vec<f64> = line.split_whitespace().map(|cell| cell.parse().unwrap()).collect();
        let place = Site {
            latitude: Latitude::from_degrees(cells[2]).unwrap(),
            longitude: Longitude::from_degrees(cells[3]).unwrap(),
            elevation: Metres::from_metres(cells[1] * 1000.0),
        };
        let field = wmm::field(place, cells[0]);
        let got = [field.north, field.east, field.down].map(|part| part.nanoteslas());
        for (got, expected) in got.into_iter().zip(&cells[7..10]) {
            let error = (got - expected).abs();
            assert!(error <= 0.001, "{line}: got {got}, expected {expected}");
            worst = worst.max(error);
        }
        count += 1;
    }
    assert_eq!(count, 100);
    println!(
        "WMM2025_TEST_VALUES.txt: {count} rows agree; worst error of a component {worst:.7} nT of 0.001 nT"
    );
}
