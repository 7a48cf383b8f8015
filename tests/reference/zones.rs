//! zones.csv: local civil times and the instants they stand for, through our own table of clock changes.
//!
//! The table is filled from jiff's bundled database, as the app fills it from the browser. Whole seconds, no tolerance.

use std::collections::HashMap;
use std::path::Path;

use chrono::NaiveDateTime;
use slantlight::place::zone::{LocalTime, Zone};
use slantlight::units::{Duration, Instant, Span};

use super::kit::{self, Failure, Row, Table, Worst};

#[test]
fn local_times_agree() {
    kit::verify(check);
}

/// Every row of zones.csv.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let table = Table::read(folder, "zones.csv")?;
    let mut worst = Worst::of("zones.csv");
    let mut zones = HashMap::new();
    for row in table.rows() {
        let name = row.text("zone")?;
        if !zones.contains_key(name) {
            let zone = zone(name).ok_or_else(|| row.differs("zone", "not known", name))?;
            zones.insert(name.to_owned(), zone);
        }
        compare(&row, &zones[name])?;
        worst.row();
    }
    Ok(worst)
}

fn compare(row: &Row<'_>, zone: &Zone) -> Result<(), Failure> {
    let local = row.read("local", "a local time", |text| text.parse::<NaiveDateTime>().ok())?;
    let (first, second) = (row.instant("utc_first")?, row.instant("utc_second")?);
    let expected = match row.text("kind")? {
        "plain" => LocalTime::Once(first),
        "gap" => LocalTime::Skipped { before: first, after: second },
        _ => LocalTime::Twice { first, second },
    };
    let got = zone.instant(local);
    if got != expected {
        return Err(row.differs("instant", format!("{got:?}"), format!("{expected:?}")));
    }
    // In a gap the table's offsets are those before and after the change, not those in force at the two instants.
    if let LocalTime::Skipped { before, after } = got {
        let read = Instant::from_utc(local);
        return offsets(row, (read - before, read - after));
    }
    offsets(row, (zone.offset_at(first), zone.offset_at(second)))
}

fn offsets(row: &Row<'_>, (first, second): (Duration, Duration)) -> Result<(), Failure> {
    for (column, got) in [("offset_first_s", first), ("offset_second_s", second)] {
        let expected = row.number(column)?;
        if got.seconds() != expected {
            return Err(row.differs(column, got.seconds(), expected));
        }
    }
    Ok(())
}

/// A zone from 1960 to 2105, asked of jiff.
fn zone(name: &str) -> Option<Zone> {
    let known = jiff::tz::TimeZoneDatabase::bundled().get(name).ok()?;
    let ask = |at: Instant| {
        let stamp = jiff::Timestamp::from_millisecond(at.unix_millis()).ok()?;
        Some(Duration::from_seconds(f64::from(known.to_offset(stamp).seconds())))
    };
    let at = |text| Instant::parse(text).ok();
    let years = Span::new(at("1960-01-01T00:00:00Z")?, at("2105-01-01T00:00:00Z")?)?;
    Zone::by_asking(name, years, ask)
}
