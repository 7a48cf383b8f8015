//! A row of a list as the set-up it is to be, with everything that had to be decided.

use super::cell::{self, HourWord, Side};
use super::column::{Column, Layout, cell as cell_of};
use super::table::{Row, Table};
use crate::project::document::{At, Location, Project};
use crate::project::start;

/// What one row is to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The line of the text on which the row begins, from 1.
    pub line: u64,
    /// Number of the scene.
    pub scene: String,
    /// Name of the set-up; empty for the next free letter.
    pub set_up: String,
    /// What the scene is called; empty if the list does not say.
    pub title: String,
    /// Where, if the project knows the place.
    pub at: Option<At>,
    /// Minutes, if the list says so.
    pub minutes: Option<u32>,
    /// Dusk or dawn, day, night, if the list says so.
    pub hour: Option<HourWord>,
    /// Whatever the list says besides, line by line.
    pub notes: String,
    /// What had to be decided.
    pub doubts: Vec<Doubt>,
}

/// Something in a row that a person should look at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// No number of a scene: it goes to the scene of the row above, or to a new one.
    NoScene,
    /// No location is called so: the name is kept in the notes.
    UnknownPlace(String),
    /// Not a number of minutes: kept in the notes.
    NotMinutes(String),
    /// A part of a minute was rounded up.
    Rounded {
        /// As it was written.
        written: String,
        /// Whole minutes.
        whole: u32,
    },
    /// The cell of INT or EXT, or of the hour, says something else: kept in the notes.
    OddWord(String),
    /// A cell of several lines, as when a quote is missing.
    ManyLines(usize),
    /// Dusk, dawn or night: the wish starts with the blue hour.
    DarkHour,
}

/// All rows of a list but the one that names its columns.
pub fn entries(table: &Table, layout: &Layout, project: &Project) -> Vec<Entry> {
    let names = layout.has_names.then(|| table.rows.first()).flatten();
    let rows = table.rows.iter().skip(usize::from(names.is_some()));
    rows.map(|row| entry(row, names, layout, project)).collect()
}

fn entry(row: &Row, names: Option<&Row>, layout: &Layout, project: &Project) -> Entry {
    let says = |column| layout.find(row, column);
    let mut made = Entry {
        line: row.line,
        scene: says(Column::Scene).to_owned(),
        set_up: says(Column::SetUp).to_owned(),
        title: says(Column::Title).to_owned(),
        at: None,
        minutes: None,
        hour: None,
        notes: String::new(),
        doubts: Vec::new(),
    };
    if made.scene.is_empty() {
        made.doubts.push(Doubt::NoScene);
    }
    let side = made.side(says(Column::Side));
    made.hour(says(Column::Hour));
    made.place(says(Column::Place), side, project);
    made.minutes(says(Column::Minutes));
    made.note(says(Column::Light));
    for (at, _) in layout.columns.iter().enumerate().filter(|(_, held)| **held == Column::Notes) {
        let name = names.map_or("", |names| cell_of(names, at));
        made.named_note(name, cell_of(row, at));
    }
    let longest = row.cells.iter().map(|cell| cell.lines().count()).max().unwrap_or(0);
    if longest > 5 {
        made.doubts.push(Doubt::ManyLines(longest));
    }
    made
}

impl Entry {
    fn side(&mut self, text: &str) -> Option<Side> {
        let side = Side::read(text);
        match side {
            Some(side) => self.note(side.word()),
            None if !text.is_empty() => self.odd(text),
            None => {}
        }
        side
    }

    fn hour(&mut self, text: &str) {
        self.hour = cell::hour(text);
        match self.hour {
            None if !text.is_empty() => self.odd(text),
            Some(HourWord::Twilight | HourWord::Night) => self.doubts.push(Doubt::DarkHour),
            _ => {}
        }
        if self.hour.is_some() {
            self.note(text);
        }
    }

    fn place(&mut self, text: &str, side: Option<Side>, project: &Project) {
        self.at = (!text.is_empty()).then(|| spot(project, text, side)).flatten();
        if self.at.is_none() && !text.is_empty() {
            self.doubts.push(Doubt::UnknownPlace(text.to_owned()));
            self.named_note("Place", text);
        }
    }

    fn minutes(&mut self, text: &str) {
        if text.is_empty() {
            return;
        }
        match cell::minutes(text) {
            Ok(read) => {
                self.minutes = Some(read.whole);
                if read.rounded {
                    self.doubts.push(Doubt::Rounded { written: text.to_owned(), whole: read.whole });
                }
            }
            Err(()) => {
                self.doubts.push(Doubt::NotMinutes(text.to_owned()));
                self.named_note("Minutes", text);
            }
        }
    }

    fn odd(&mut self, text: &str) {
        self.doubts.push(Doubt::OddWord(text.to_owned()));
        self.note(text);
    }

    fn note(&mut self, text: &str) {
        self.named_note("", text);
    }

    fn named_note(&mut self, name: &str, text: &str) {
        if text.is_empty() {
            return;
        }
        if !self.notes.is_empty() {
            self.notes.push('\n');
        }
        if !name.is_empty() {
            self.notes.push_str(name);
            self.notes.push_str(": ");
        }
        self.notes.push_str(text);
    }
}

/// The mark a list means by the name of a location or a room: inside for INT, in the open for EXT.
fn spot(project: &Project, name: &str, side: Option<Side>) -> Option<At> {
    let is_named = |other: &str| other.trim().to_lowercase() == name.trim().to_lowercase();
    let of_location = project.locations.iter().find(|location| is_named(&location.name));
    if let Some(location) = of_location {
        return Some(if side == Some(Side::Outside) {
            in_the_open(location)
        } else {
            start::first_spot(location)
        });
    }
    let (location, room) = project.locations.iter().find_map(|location| {
        location.rooms.iter().find(|room| is_named(&room.name)).map(|room| (location, room))
    })?;
    Some(At {
        location: location.id.clone(),
        room: Some(room.id.clone()),
        mark: room.marks.first().map(|mark| mark.id.clone()),
    })
}

fn in_the_open(location: &Location) -> At {
    At { location: location.id.clone(), room: None, mark: location.marks.first().map(|mark| mark.id.clone()) }
}

#[cfg(test)]
mod tests {
    use super::super::table::read;
    use super::*;
    use crate::project::demo;

    fn rows(text: &str) -> Vec<Entry> {
        let table = read(text).unwrap();
        entries(&table, &Layout::of(&table), &demo::project())
    }

    #[test]
    fn a_row_becomes_a_set_up_at_a_place_of_the_project() {
        let [entry] = &rows("14 INT. SAIL LOFT - DAY - 25 min - low sun")[..] else { panic!("one row") };
        assert_eq!((entry.scene.as_str(), entry.minutes), ("14", Some(25)));
        assert!(entry.at.as_ref().unwrap().room.is_some());
        assert_eq!(entry.notes, "INT\nDAY\nlow sun");
        assert_eq!(entry.doubts, []);
    }

    #[test]
    fn nothing_is_guessed_in_silence() {
        let text = "Scene,INT/EXT,Day/night,Place,Minutes,Props\n,roof,DUSK,Old mill,1:30,\"rope, oil\"";
        let [entry] = &rows(text)[..] else { panic!("one row") };
        let said = |text: &str| text.to_owned();
        assert_eq!(
            entry.doubts,
            [
                Doubt::NoScene,
                Doubt::OddWord(said("roof")),
                Doubt::DarkHour,
                Doubt::UnknownPlace(said("Old mill")),
                Doubt::NotMinutes(said("1:30")),
            ]
        );
        assert_eq!(entry.notes, "roof\nDUSK\nPlace: Old mill\nMinutes: 1:30\nProps: rope, oil");
    }
}
