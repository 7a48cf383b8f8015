//! The checks of the handbook on light have tests: each is named in the test that makes it, beside its numbers.
//!
//! The handbook (sections C to H) says for each formula where it is from; the formula's own comment repeats it.

use crate::files::{assert_none, texts};

/// Sections of the handbook, and how many checks each has.
const CHECKS: [(char, usize); 6] = [('C', 13), ('D', 6), ('E', 2), ('F', 5), ('G', 5), ('H', 11)];

#[test]
fn every_check_of_the_handbook_has_a_test() {
    let sources = texts("src");
    let is_tested = |check: &str| {
        sources.iter().any(|text| {
            let tests = text.body.find("#[cfg(test)]").map_or("", |from| &text.body[from..]);
            names(if text.path.ends_with("_tests.rs") { &text.body } else { tests }, check)
        })
    };
    let all = CHECKS.iter().flat_map(|(section, count)| (1..=*count).map(move |n| format!("T-{section}{n}")));
    let missing: Vec<String> = all.filter(|check| !is_tested(check)).collect();
    assert_none(&missing, "a check of the handbook that no test names");
}

/// Whether a text names a check, and not only one whose number begins alike.
fn names(text: &str, check: &str) -> bool {
    text.match_indices(check)
        .any(|(at, _)| !text[at + check.len()..].starts_with(|next: char| next.is_ascii_digit()))
}

#[test]
fn a_check_is_found_by_its_whole_number() {
    assert!(names("// T-C1.", "T-C1") && names("T-H3 and T-H4", "T-H4"));
    assert!(!names("// T-C12", "T-C1") && !names("", "T-C1"));
}
