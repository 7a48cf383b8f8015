//! No check is blind: with one wrong value in its table it must fail, and name the file and the line.

use std::fs;
use std::path::{Path, PathBuf};

use super::colour;
use super::daylight;
use super::declination;
use super::kit::{self, Check, tables};
use super::moon;
use super::schedules;
use super::sun_events;
use super::sun_positions;
use super::window_light;
use super::window_sky;
use super::zones;

/// A table, the value to spoil, and the check that must notice.
struct Spoiled {
    check: Check,
    file: &'static str,
    /// Column whose first filled cell is spoiled.
    column: &'static str,
    /// The wrong value.
    value: &'static str,
}

/// One line for each table that has a check.
const SPOILED: &[Spoiled] = &[
    Spoiled { check: colour::check, file: "colour.csv", column: "cct_ohno_k", value: "4535.0" },
    Spoiled { check: daylight::check, file: "daylight.csv", column: "direct_normal_lux", value: "17632.9" },
    Spoiled {
        check: declination::check,
        file: "declination.csv",
        column: "declination_deg",
        value: "-99.76",
    },
    Spoiled { check: moon::check, file: "moon.csv", column: "azimuth_deg", value: "288.80414" },
    Spoiled { check: moon::check, file: "moon.csv", column: "moonset_utc", value: "2026-04-28T21:04:50Z" },
    Spoiled {
        check: sun_events::civil_dates,
        file: "sun_events.csv",
        column: "rise_set_up_utc",
        value: "2026-02-22T23:37:47Z",
    },
    Spoiled {
        check: sun_events::solar_days,
        file: "sun_events_solar_day.csv",
        column: "civil_down_utc",
        value: "2026-02-23T11:46:43Z",
    },
    Spoiled {
        check: sun_positions::check,
        file: "sun_positions.csv",
        column: "alt_airless_deg",
        value: "-9.682844",
    },
    Spoiled { check: window_light::check, file: "window_light.csv", column: "sun_reaches", value: "0" },
    Spoiled { check: window_light::check, file: "window_light.csv", column: "opening", value: "2" },
    Spoiled {
        check: window_sky::check,
        file: "window_sky.csv",
        column: "overcast_exact",
        value: "0.0533317",
    },
    Spoiled {
        check: window_sky::check,
        file: "window_sky.csv",
        column: "uniform_radiance",
        value: "0.0605924",
    },
    Spoiled { check: window_sky::check, file: "window_sky.csv", column: "clear_exact", value: "0.0459732" },
    Spoiled { check: zones::check, file: "zones.csv", column: "utc_first", value: "2026-02-22T23:30:01Z" },
];

#[test]
fn one_wrong_value_fails_each_check() {
    for spoiled in SPOILED {
        let folder = copy(spoiled.file, spoiled.column);
        let line = spoil(&folder.join(spoiled.file), spoiled.column, spoiled.value);
        let name = format!("{} with {} = {}", spoiled.file, spoiled.column, spoiled.value);
        let failure = (spoiled.check)(&folder).expect_err(&name);
        assert_eq!((failure.file.as_str(), failure.line), (spoiled.file, line), "{name}: {failure}");
        assert!(failure.to_string().starts_with(&format!("{}:{line}: ", spoiled.file)));
    }
}

#[test]
fn one_wrong_optimum_fails_the_schedules() {
    let folder = copy("schedules.json", "span");
    let path = folder.join("schedules.json");
    let text = fs::read_to_string(&path).unwrap();
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let (right, wrong) = ("\"span\":633}", "\"span\":632}");
    assert!(lines[1].contains(right));
    lines[1] = lines[1].replace(right, wrong);
    fs::write(&path, lines.join("\n")).unwrap();
    let failure = schedules::check(&folder).expect_err("a wrong optimum");
    assert_eq!((failure.file.as_str(), failure.line), ("schedules.json", 2), "{failure}");
}

/// A fresh folder with all tables.
fn copy(file: &str, column: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("spoiled-{file}-{column}"));
    fs::create_dir_all(&folder).unwrap();
    for name in tables::replaceable() {
        fs::copy(kit::committed().join(name), folder.join(name)).unwrap();
    }
    folder
}

/// Replaces one value and says in which line it stood.
fn spoil(path: &Path, column: &str, value: &str) -> usize {
    let text = fs::read_to_string(path).unwrap();
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let names = lines.iter().position(|line| !line.starts_with('#')).unwrap();
    let index = lines[names].split(',').position(|name| name == column).unwrap();
    let filled = |line: &String| !line.split(',').nth(index).unwrap().is_empty();
    let row = names + 1 + lines[names + 1..].iter().position(filled).unwrap();
    let mut cells: Vec<&str> = lines[row].split(',').collect();
    assert_ne!(cells[index], value, "the value must be wrong");
    cells[index] = value;
    lines[row] = cells.join(",");
    fs::write(path, lines.join("\n")).unwrap();
    row + 1
}

#[test]
fn every_table_is_whole() {
    for (name, _) in tables::ROWS {
        kit::Table::read(&kit::folder(), name).unwrap();
    }
}
