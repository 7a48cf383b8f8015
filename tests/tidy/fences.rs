//! The fences between the rooms: light flows one way, only the screens know the browser, and they hold no formula.

use crate::files::{assert_none, texts};

/// What a room must not mention in code.
const FENCES: [(&str, &[&str]); 7] = [
    (
        "src/units",
        &["crate::sky", "crate::place", "crate::light", "crate::plan", "crate::project", "crate::draw"],
    ),
    (
        "src/sky",
        &["place::room", "place::opening", "place::mark", "crate::light", "crate::plan", "crate::project"],
    ),
    ("src/place", &["crate::light", "crate::plan", "crate::project", "crate::draw"]),
    ("src/light", &["crate::plan", "crate::project", "crate::draw"]),
    ("src/plan", &["crate::draw"]),
    ("src/project", &["crate::draw"]),
    ("src/app", &FORMULAS),
];

/// Names of browser crates; `src/app` alone may use them.
const BROWSER: [&str; 5] = ["web_sys", "js_sys", "wasm_bindgen", "leptos", "gloo"];

/// Signs of a formula. Dates and light are the library's work as well, but have no sign of their own.
const FORMULAS: [&str; 13] = [
    ".sin(",
    ".cos(",
    ".tan(",
    ".sin_cos(",
    ".asin(",
    ".acos(",
    ".atan(",
    ".atan2(",
    ".hypot(",
    ".to_radians(",
    ".to_degrees(",
    "libm::",
    "crate::maths",
];

#[test]
fn rooms_keep_to_their_fences() {
    let mut found = Vec::new();
    for (room, banned) in FENCES {
        for text in texts(room) {
            found.extend(text.lines_where(|line| crosses(line, banned)));
        }
    }
    assert_none(&found, "a room looks over its fence");
}

#[test]
fn the_library_knows_no_browser() {
    let library = texts("src").into_iter().filter(|text| !text.path.starts_with("src/app"));
    let found: Vec<_> = library.flat_map(|text| text.lines_where(|line| crosses(line, &BROWSER))).collect();
    assert_none(&found, "a browser crate below the screens");
}

#[test]
fn the_fence_is_felt() {
    assert!(crosses("use crate::plan::wish::Wish;", &["crate::plan"]));
    assert!(crosses("let x = angle.sin();", &FORMULAS));
    assert!(!crosses("//! [`crate::plan`] asks for this.", &["crate::plan"]));
}

/// Whether code on this line, comments aside, mentions one of `banned`.
fn crosses(line: &str, banned: &[&str]) -> bool {
    let code = line.split("//").next().unwrap_or("");
    banned.iter().any(|name| code.contains(name))
}
