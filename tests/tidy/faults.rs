//! The table of faults in DEVELOPERS.md names a test for each, and every test it names is there.

use crate::files::{Text, assert_none, texts};

/// The table's heading.
const HEADING: &str = "## What can go wrong with a file";

/// Fewest faults the table must hold, so that a lost heading is felt.
const FEWEST: usize = 15;

#[test]
fn every_fault_has_a_test_that_is_there() {
    let all = texts("");
    let paper = all.iter().find(|text| text.path == "DEVELOPERS.md").map_or("", |text| &text.body);
    let rows: Vec<(&str, &str)> = rows(paper).collect();
    assert!(rows.len() >= FEWEST, "{} faults", rows.len());
    let faults: Vec<String> = rows.iter().flat_map(|(fault, proof)| missing(fault, proof, &all)).collect();
    assert_none(&faults, "a fault without its test");
}

/// First and last cell of each row beneath the heading.
fn rows(paper: &str) -> impl Iterator<Item = (&str, &str)> {
    let table = paper.split_once(HEADING).map_or("", |(_, rest)| rest);
    let lines =
        table.lines().skip_while(|line| !line.starts_with('|')).take_while(|line| line.starts_with('|'));
    lines.skip(2).filter_map(|line| {
        let mut cells = line.trim_matches('|').split(" | ");
        Some((cells.next()?.trim(), cells.last()?.trim()))
    })
}

/// What a row names and the project does not have; a row that names nothing is a finding as well.
fn missing(fault: &str, proof: &str, all: &[Text]) -> Vec<String> {
    let (files, journeys) = (between(proof, '`'), between(proof, '"'));
    if files.is_empty() && journeys.is_empty() {
        return vec![format!("{fault}: names no test")];
    }
    let lost_files = files.into_iter().filter(|file| !all.iter().any(|text| is_test(text, file)));
    let lost_journeys = journeys.into_iter().filter(|name| !all.iter().any(|text| is_journey(text, name)));
    lost_files.chain(lost_journeys).map(|name| format!("{fault}: {name}")).collect()
}

/// What stands between pairs of `mark`.
fn between(text: &str, mark: char) -> Vec<&str> {
    text.split(mark).skip(1).step_by(2).collect()
}

fn is_test(text: &Text, file: &str) -> bool {
    text.path.ends_with(file) && (text.body.contains("#[test]") || text.body.contains("\njourney("))
}

/// A name may be cut off with an ellipsis.
fn is_journey(text: &Text, name: &str) -> bool {
    let begins = name.trim_end_matches('…').trim_end();
    let whole = if begins == name { "'" } else { "" };
    text.path.starts_with("tests/journeys/journeys/")
        && text.body.contains(&format!("\njourney('{begins}{whole}"))
}

#[test]
fn a_lost_test_is_felt() {
    let paper =
        format!("{HEADING}\n\n| fault | test |\n|---|---|\n| cut off | `a.rs`; journey \"it …\" |\n\nrest");
    assert_eq!(rows(&paper).collect::<Vec<_>>(), [("cut off", "`a.rs`; journey \"it …\"")]);
    let text = |path: &str, body: &str| Text { path: path.to_owned(), body: body.to_owned() };
    let there = [
        text("tests/a.rs", "#[test]"),
        text("tests/journeys/journeys/b.mjs", "\njourney('it holds', () => {})"),
    ];
    assert!(missing("cut off", "`a.rs`; journey \"it …\", \"it holds\"", &there).is_empty());
    assert_eq!(missing("cut off", "`b.rs`, journey \"it\"", &there), ["cut off: b.rs", "cut off: it"]);
    assert_eq!(missing("cut off", "by hand", &there), ["cut off: names no test"]);
}
