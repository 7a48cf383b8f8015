//! Which column of a list holds what: read from its first row, else from what stands in it; the person may say
//! otherwise.

use super::cell::{self, Side};
use super::table::{Row, Table};

/// What a column holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Column {
    /// Number of the scene.
    Scene,
    /// Name of the set-up in its scene.
    SetUp,
    /// INT or EXT.
    Side,
    /// DAY, DUSK, NIGHT.
    Hour,
    /// Where.
    Place,
    /// What the scene is called.
    Title,
    /// Minutes.
    Minutes,
    /// The light that is wanted, in words.
    Light,
    /// Anything else, kept in the notes under the column's name.
    #[default]
    Notes,
    /// Nothing that shall be taken in.
    LeftOut,
}

/// All of them, as a person chooses among them.
pub const COLUMNS: [(Column, &str); 10] = [
    (Column::Scene, "scene number"),
    (Column::SetUp, "set-up"),
    (Column::Side, "INT or EXT"),
    (Column::Hour, "day or night"),
    (Column::Place, "place"),
    (Column::Title, "what happens"),
    (Column::Minutes, "minutes"),
    (Column::Light, "light"),
    (Column::Notes, "notes"),
    (Column::LeftOut, "left out"),
];

/// What each column holds, and whether the first row names them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// One for each column of the table.
    pub columns: Vec<Column>,
    /// Whether the first row is names and no set-up.
    pub has_names: bool,
}

impl Layout {
    /// The likeliest layout of a table.
    pub fn of(table: &Table) -> Self {
        let width = table.width();
        let named: Vec<_> =
            (0..width).map(|at| table.rows.first().and_then(|row| from_name(cell(row, at)))).collect();
        let has_names = named.iter().flatten().count() >= 2;
        let mut columns = Vec::with_capacity(width);
        for (at, name) in named.into_iter().enumerate() {
            let likely = if has_names { name } else { from_cells(table, at) };
            // One column each: a second "Scene" is something else that must not be lost.
            let free = likely.filter(|column| !columns.contains(column));
            columns.push(free.unwrap_or_default());
        }
        Self { columns, has_names }
    }

    /// What `row` says in the column that holds `column`; empty if there is none.
    pub(super) fn find<'a>(&self, row: &'a Row, column: Column) -> &'a str {
        self.columns.iter().position(|held| *held == column).map_or("", |at| cell(row, at))
    }
}

/// A cell, or an empty one where the row is too short.
pub(super) fn cell(row: &Row, at: usize) -> &str {
    row.cells.get(at).map_or("", String::as_str)
}

/// What a column of this name holds.
fn from_name(name: &str) -> Option<Column> {
    let name = name.trim_end_matches(['.', ':']).to_lowercase();
    Some(match name.as_str() {
        "scene" | "sc" | "scene number" | "scene no" | "no" | "number" | "#" => Column::Scene,
        "set-up" | "setup" | "set up" | "shot" => Column::SetUp,
        "int/ext" | "i/e" | "int or ext" | "inside/outside" => Column::Side,
        "day/night" | "d/n" | "time of day" | "day or night" => Column::Hour,
        "place" | "location" | "where" | "set" => Column::Place,
        "title" | "description" | "action" | "what happens" | "what" => Column::Title,
        "minutes" | "min" | "mins" | "time" | "duration" | "takes" | "est. minutes" => Column::Minutes,
        "light" | "lighting" | "light note" | "look" => Column::Light,
        "notes" | "note" | "remarks" => Column::Notes,
        _ => return None,
    })
}

/// What a column holds in which most cells read as that.
fn from_cells(table: &Table, at: usize) -> Option<Column> {
    let filled: Vec<_> = table.rows.iter().map(|row| cell(row, at)).filter(|cell| !cell.is_empty()).collect();
    let mostly =
        |reads: fn(&str) -> bool| 2 * filled.iter().filter(|cell| reads(cell)).count() > filled.len();
    let starts_with_digit = |text: &str| text.starts_with(|letter: char| letter.is_ascii_digit());
    match () {
        () if filled.is_empty() => None,
        () if mostly(|text| Side::read(text).is_some()) => Some(Column::Side),
        () if mostly(|text| cell::hour(text).is_some()) => Some(Column::Hour),
        () if at == 0 && mostly(starts_with_digit) => Some(Column::Scene),
        () if mostly(|text| cell::minutes(text).is_ok()) => Some(Column::Minutes),
        () => by_order(table, at),
    }
}

/// Words alone: the column behind INT or EXT is the place, the last one the light.
fn by_order(table: &Table, at: usize) -> Option<Column> {
    let sides = |at: usize| {
        let filled = table.rows.iter().map(|row| cell(row, at)).filter(|cell| !cell.is_empty());
        filled.clone().count() > 0
            && 2 * filled.clone().filter(|c| Side::read(c).is_some()).count() > filled.count()
    };
    match at {
        at if at > 0 && sides(at - 1) => Some(Column::Place),
        at if at + 1 == table.width() => Some(Column::Light),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::table::read;
    use super::*;

    #[test]
    fn names_in_the_first_row_say_what_is_what() {
        let layout = Layout::of(&read("Sc,Shot,Location,Min,Props\n4,A,Loft,25,sail").unwrap());
        use Column::{Minutes, Notes, Place, Scene, SetUp};
        assert_eq!(layout, Layout { columns: vec![Scene, SetUp, Place, Minutes, Notes], has_names: true });
    }

    #[test]
    fn without_names_the_cells_say_it() {
        let layout = Layout::of(&read("4A INT. LOFT - DAY - 25 min - low sun\n5 EXT. PANS - DUSK").unwrap());
        use Column::{Hour, Light, Minutes, Place, Scene, Side};
        assert_eq!(
            layout,
            Layout { columns: vec![Scene, Side, Place, Hour, Minutes, Light], has_names: false }
        );
    }

    #[test]
    fn no_column_is_given_twice() {
        let layout = Layout::of(&read("Scene,No,Minutes\n4,9,25").unwrap());
        assert_eq!(layout.columns, [Column::Scene, Column::Notes, Column::Minutes]);
    }
}
