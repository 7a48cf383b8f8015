//! A long list from a spreadsheet goes in whole: every cell of every row is found again in a field or in the notes.

use proptest::prelude::*;
use slantlight::project::demo;
use slantlight::project::shot_list::{Column, Entry, Layout, Table, entries, read, take_in};

const NAMES: [&str; 9] =
    ["Scene", "Set-up", "INT/EXT", "Day/Night", "Location", "Action", "Minutes", "Light", "Props"];

/// Cells as spreadsheets of several countries write them.
fn row() -> impl Strategy<Value = Vec<String>> {
    let words = "[a-zäßñ ,;\"'\n-]{0,18}";
    let number = prop_oneof!["[1-9][0-9]?[A-C]?", Just(String::new())];
    let minutes = prop_oneof!["[1-9][0-9]?", "[1-9],5", "[1-9] min", "[0-9]:[0-5][0-9]", Just(String::new())];
    let side = prop_oneof![Just("INT"), Just("ext."), Just("I/E"), Just(""), Just("roof")];
    let hour = prop_oneof![Just("DAY"), Just("dusk"), Just(""), Just("later")];
    let place = prop_oneof![Just("Sail loft"), Just("salt pans"), Just("Mill; old"), Just("")];
    (number, "[A-Z]?", side, hour, place, words, minutes, words, words, 1usize..=9).prop_map(
        |(number, name, side, hour, place, action, minutes, light, props, kept)| {
            let all = [number, name, side.into(), hour.into(), place.into(), action, minutes, light, props];
            // Columns at the end are missing where a person stopped typing.
            all.into_iter().take(kept).collect()
        },
    )
}

fn written(rows: &[Vec<String>], delimiter: u8) -> String {
    let mut writer = csv::WriterBuilder::new().flexible(true).delimiter(delimiter).from_writer(Vec::new());
    writer.write_record(NAMES).expect("memory takes all");
    rows.iter().for_each(|row| writer.write_record(row).expect("memory takes all"));
    let bytes = writer.into_inner().expect("memory takes all");
    String::from_utf8(bytes).expect("made of text")
}

/// Everything an entry holds, as one text.
fn all_of(entry: &Entry) -> String {
    let minutes = entry.minutes.map(|minutes| minutes.to_string()).unwrap_or_default();
    [&entry.scene, &entry.set_up, &entry.title, &entry.notes, &minutes].map(String::as_str).join("\u{1}")
}

fn is_kept(entry: &Entry, column: usize, cell: &str) -> bool {
    match (column, cell.trim()) {
        (_, "") => true,
        // Words of scripts are written one way; a place of the project is a reference; parts of minutes go up.
        (2, "ext.") => entry.notes.contains("EXT"),
        (2, "I/E") => entry.notes.contains("INT/EXT"),
        (4, "Sail loft" | "salt pans") => entry.at.is_some(),
        (6, minutes) if entry.minutes.is_some() => {
            let number: f64 =
                minutes.trim_end_matches(" min").replace(',', ".").parse().expect("read as one");
            entry.minutes == Some(number.ceil() as u32)
        }
        (_, cell) => all_of(entry).contains(cell),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn sixty_rows_lose_nothing(rows in proptest::collection::vec(row(), 60), delimiter in prop_oneof![Just(b','), Just(b';'), Just(b'\t')]) {
        let project = demo::project();
        let table: Table = read(&written(&rows, delimiter)).unwrap();
        let layout = Layout::of(&table);
        prop_assert_eq!(layout.columns[8], Column::Notes);
        let read = entries(&table, &layout, &project);
        let filled: Vec<_> = rows.iter().filter(|row| row.iter().any(|cell| !cell.trim().is_empty())).collect();
        prop_assert_eq!(read.len(), filled.len());
        for (entry, row) in read.iter().zip(filled) {
            for (column, cell) in row.iter().enumerate() {
                prop_assert!(is_kept(entry, column, cell), "{cell:?} of column {column} in {entry:?}");
            }
        }
        let mut next = 0;
        let taken = take_in(&project, &read, || { next += 1; format!("new-{next}") });
        prop_assert_eq!(taken.set_ups, read.len());
        let after = slantlight::project::edit::apply(&project, taken.edit).unwrap();
        prop_assert_eq!(after.set_ups().count(), project.set_ups().count() + read.len());
        let notes: usize = read.iter().filter(|entry| !entry.notes.is_empty()).count();
        prop_assert!(after.set_ups().filter(|(_, set_up)| !set_up.notes.is_empty()).count() >= notes);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".{0,400}") {
        if let Ok(table) = read(&text) {
            let read = entries(&table, &Layout::of(&table), &demo::project());
            prop_assert!(read.len() <= table.rows.len());
        }
    }
}
