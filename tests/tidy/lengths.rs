//! Heads and lengths: a file says what it is for, and is short enough to be read.

use crate::files::{Text, assert_none, texts};

/// Lines a file may have.
const LIMIT: usize = 300;

/// Files that may be longer, each with its reason.
const LONGER: [(&str, &str); 0] = [];

#[test]
fn every_source_file_says_what_it_is_for() {
    let headless = |text: &Text| match text.ending() {
        "rs" => !text.body.starts_with("//!"),
        "js" | "mjs" => !text.body.starts_with("//"),
        "css" => !text.body.starts_with("/*"),
        _ => false,
    };
    let found: Vec<_> = sources().into_iter().filter(headless).map(|text| text.path).collect();
    assert_none(&found, "no comment at the head");
}

#[test]
fn no_source_file_is_too_long() {
    let too_long =
        |text: &Text| text.body.lines().count() > LIMIT && !LONGER.iter().any(|(path, _)| *path == text.path);
    let found: Vec<_> = sources().into_iter().filter(too_long).map(|text| text.path).collect();
    assert_none(&found, "longer than 300 lines: split by idea, or list it with a reason");
}

#[test]
fn every_exception_is_still_needed() {
    for (path, reason) in LONGER {
        let text = sources().into_iter().find(|text| text.path == path);
        let lines = text.map_or(0, |text| text.body.lines().count());
        assert!(lines > LIMIT && !reason.is_empty(), "{path} needs no exception any more");
    }
}

#[test]
fn every_table_says_where_it_comes_from() {
    // Published tables are kept to the byte; the README beside them is their header.
    let kept = |text: &Text| text.path.starts_with("tests/data/published/");
    let bare = |text: &Text| text.ending() == "csv" && !kept(text) && !text.body.starts_with('#');
    let found: Vec<_> = texts("tests/data").into_iter().filter(bare).map(|text| text.path).collect();
    assert_none(&found, "no header with source, date, units");
}

fn sources() -> Vec<Text> {
    let found: Vec<_> = ["src", "tests", "style", "public", "benches"].into_iter().flat_map(texts).collect();
    assert!(found.iter().any(|text| text.path == "src/lib.rs"), "the walk found nothing");
    found.into_iter().filter(|text| matches!(text.ending(), "rs" | "js" | "mjs" | "css")).collect()
}
