//! The scout sheet of a location: what has to be known before a day there, and what is not known yet.
//!
//! Rows are the handbook's scout checklist (common practice, no source). A row that nobody has looked at is not on
//! the sheet; a row that was looked at without an answer is there as *not known*, and is asked on the recce.

use std::collections::BTreeMap;

use super::document::Location;

/// A row of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ScoutRow {
    /// Its name in the file.
    pub key: &'static str,
    /// Its name on the screen.
    pub name: &'static str,
    /// What to write down.
    pub asks: &'static str,
}

/// Every row, in the order of the sheet.
pub const ROWS: [ScoutRow; 12] = [
    row(
        "bearings",
        "Position and bearings",
        "true bearing of each window, door and street; the declination used",
    ),
    row("horizon", "Horizon", "height of what blocks the sky, every 15°; first and last direct sun"),
    row(
        "surfaces",
        "Surfaces",
        "walls and ground, how bright; glass, lamps, ceiling height, slope of the floor",
    ),
    row(
        "power",
        "Power",
        "outlets, amperes a circuit, where the panel is, what else hangs on it, a spot for a generator",
    ),
    row(
        "noise",
        "Noise",
        "by the hour: traffic, planes, bells, machines, fridges; where the air handling goes off",
    ),
    row("crowd", "People", "how many pass at the hours of the light; deliveries, rubbish days"),
    row("access", "Access", "stairs, door widths, lift, ramp, way from the car, keys, alarm"),
    row("permission", "Permission", "owner, who manages it, permit, hours, cost, until when"),
    row("amenity", "Amenities", "toilets, water, shade, a warm room, where to eat, signal"),
    row("parking", "Parking", "trucks, cast, permits, limits"),
    row("safety", "Safety", "edges, wiring, age, traffic, animals, smoke detectors, ways out"),
    row(
        "evidence",
        "Evidence",
        "photos at the planned hour, a panorama with bearings, a sound clip, a shadow photo",
    ),
];

const fn row(key: &'static str, name: &'static str, asks: &'static str) -> ScoutRow {
    ScoutRow { key, name, asks }
}

/// What the sheet says, by the key of the row; `None` is *not known*. Rows of other builds are kept.
pub type ScoutSheet = BTreeMap<String, Option<String>>;

/// What is written in one row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer<'a> {
    /// Nobody has looked.
    Empty,
    /// Somebody looked, and it has to be asked.
    NotKnown,
    /// What was found.
    Found(&'a str),
}

impl Location {
    /// What the scout sheet says in a row.
    pub fn scouted(&self, key: &str) -> Answer<'_> {
        match self.scout.get(key) {
            None => Answer::Empty,
            Some(None) => Answer::NotKnown,
            Some(Some(text)) => Answer::Found(text),
        }
    }

    /// Writes a row of the scout sheet; an empty text clears it.
    pub fn scout_row(&mut self, key: &str, answer: Answer<'_>) {
        match answer {
            Answer::Found(text) if !text.trim().is_empty() => {
                // As it was typed: trimming would eat the blank before the next word.
                self.scout.insert(key.to_owned(), Some(text.to_owned()));
            }
            Answer::Found(_) | Answer::Empty => {
                self.scout.remove(key);
            }
            Answer::NotKnown => {
                self.scout.insert(key.to_owned(), None);
            }
        }
    }
}

/// The rows that the recce has to bring: not known, and those that nobody has looked at.
pub fn to_ask(location: &Location) -> impl Iterator<Item = (&'static ScoutRow, bool)> + '_ {
    ROWS.iter().filter_map(|row| match location.scouted(row.key) {
        Answer::Found(_) => None,
        Answer::NotKnown => Some((row, true)),
        Answer::Empty => Some((row, false)),
    })
}

/// The recce's list as text for a message or a page.
pub fn recce(location: &Location) -> String {
    let mut text = format!("To find out at {}\n", location.name);
    for (row, asked) in to_ask(location) {
        let mark = if asked { "not known" } else { "empty" };
        text.push_str(&format!("[ ] {} ({mark}): {}\n", row.name, row.asks));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn not_known_is_not_empty() {
        let mut location = Location::clone(&demo::project().locations[0]);
        location.scout.clear();
        location.scout_row("power", Answer::Found("two sockets "));
        location.scout_row("noise", Answer::NotKnown);
        assert_eq!(location.scouted("power"), Answer::Found("two sockets "));
        assert_eq!(location.scouted("noise"), Answer::NotKnown);
        assert_eq!(location.scouted("crowd"), Answer::Empty);
        assert_eq!(to_ask(&location).count(), ROWS.len() - 1);
        assert!(recce(&location).contains("[ ] Noise (not known)"));
        location.scout_row("noise", Answer::Found(""));
        assert_eq!(location.scouted("noise"), Answer::Empty);
    }

    #[test]
    fn the_sheet_comes_back_from_the_file_with_rows_of_other_builds() {
        let mut location = Location::clone(&demo::project().locations[0]);
        location.scout.insert("drones".into(), Some("no".into()));
        location.scout_row("noise", Answer::NotKnown);
        let text = serde_json::to_string(&location).unwrap();
        assert_eq!(serde_json::from_str::<Location>(&text).unwrap().scout, location.scout);
    }
}
