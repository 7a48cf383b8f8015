//! Words in the wrong place: raw colours outside the tokens, places of one machine, addresses of other hosts.

use crate::files::{Text, assert_none, texts};

/// The only places that may name a colour, each with its reason.
const COLOURS_LIVE_IN: [(&str, &str); 3] = [
    ("style/tokens.css", "the tokens"),
    ("public/manifest.webmanifest", "read by the system, which knows no style sheet"),
    ("public/icons/", "pictures of their own"),
];

/// Folders that exist on one machine only; split, so that this file does not find itself.
const MACHINE: [&str; 4] =
    [concat!("/wo", "rk/"), concat!("/ro", "ot/"), concat!("/tm", "p/"), concat!("/ho", "me/")];

#[test]
fn colours_live_in_the_tokens() {
    let screens = ["style", "public", "src"].into_iter().flat_map(texts);
    let ours = screens.filter(|text| !COLOURS_LIVE_IN.iter().any(|(path, _)| text.path.starts_with(path)));
    let found: Vec<_> = ours.flat_map(|text| text.lines_where(names_colour)).collect();
    assert_none(&found, "a raw colour outside style/tokens.css");
}

#[test]
fn nothing_names_one_machine() {
    let found: Vec<_> = texts("")
        .iter()
        .flat_map(|text| text.lines_where(|line| MACHINE.iter().any(|place| line.contains(place))))
        .collect();
    assert_none(&found, "a folder that only one machine has");
}

#[test]
fn the_app_names_no_other_host() {
    let shipped =
        |text: &Text| text.path == "index.html" || text.path.starts_with("public/") && text.ending() != "svg";
    let found: Vec<_> = texts("")
        .into_iter()
        .filter(shipped)
        .flat_map(|text| text.lines_where(|line| line.contains("https://") || line.contains("http://")))
        .collect();
    assert_none(&found, "an address of another host in what is shipped");
}

#[test]
fn a_colour_is_recognised() {
    for colour in ["color: #fff;", "fill=\"#0f3155\"", "rgb(1 2 3)", "hsla(1, 2%, 3%, 1)", "#12345678"] {
        assert!(names_colour(colour), "{colour}");
    }
    for other in ["#cover {", "href=\"#/days\"", "#[test]", "#decade", "r#\"text\"#", "issue #12"] {
        assert!(!names_colour(other), "{other}");
    }
}

/// Whether a line holds `#rgb`, `#rrggbb` (with or without opacity) or a colour function.
fn names_colour(line: &str) -> bool {
    ["rgb(", "rgba(", "hsl(", "hsla(", "oklch("].iter().any(|name| line.contains(name))
        || line.match_indices('#').any(|(at, _)| is_hex_colour(&line[at + 1..]))
}

fn is_hex_colour(rest: &str) -> bool {
    let word: String =
        rest.chars().take_while(|letter| letter.is_ascii_alphanumeric() || *letter == '-').collect();
    matches!(word.len(), 3 | 4 | 6 | 8)
        && word.chars().all(|letter| letter.is_ascii_hexdigit())
        && (word.chars().any(|letter| letter.is_ascii_digit()) || word.len() == 3)
}
