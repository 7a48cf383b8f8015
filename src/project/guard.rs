//! Guards: people's own words on their way into formats that would take some of them for commands.
//!
//! Names and notes may come from strangers. A table cell must not start a formula, a calendar line must not start a
//! new property, and only an address of a harmless kind may be tapped. Names of files are cleaned by
//! [`file_stem`](super::send::file_stem).

/// What begins a formula in spreadsheets (OWASP, *CSV injection*), the wide forms of the same signs included.
const FORMULA_SIGNS: [char; 10] =
    ['=', '+', '-', '@', '\t', '\r', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// Longest line of a calendar in bytes, its end not counted (RFC 5545, 3.1).
const CALENDAR_LINE: usize = 75;

/// What a tap may lead to: a page, a mail, a call. Our own choice.
const LINK_STARTS: [&str; 4] = ["https://", "http://", "mailto:", "tel:"];

/// A text as a cell of a CSV table (RFC 4180), which no spreadsheet takes for a formula. Plain numbers stay numbers.
///
/// ```
/// use slantlight::project::guard::csv_cell;
/// assert_eq!(csv_cell("Sail loft"), "Sail loft");
/// assert_eq!(csv_cell("=HYPERLINK(\"x\")"), "\"'=HYPERLINK(\"\"x\"\")\"");
/// assert_eq!(csv_cell("-12.5"), "-12.5");
/// ```
pub fn csv_cell(text: &str) -> String {
    let kept: String = text.chars().filter(|letter| !is_hidden(*letter)).collect();
    let is_formula = kept.trim_start_matches(' ').starts_with(FORMULA_SIGNS) && !is_number(&kept);
    let guarded = if is_formula { format!("'{kept}") } else { kept };
    if guarded.contains(['"', ',', ';', '\n', '\r', '\t', '\'']) {
        format!("\"{}\"", guarded.replace('"', "\"\""))
    } else {
        guarded
    }
}

/// A text as the value of a calendar's property (RFC 5545, 3.3.11).
///
/// ```
/// use slantlight::project::guard::calendar_text;
/// assert_eq!(calendar_text("Loft; 2nd floor,\r\nEND:VEVENT"), "Loft\\; 2nd floor\\,\\nEND:VEVENT");
/// ```
pub fn calendar_text(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.replace("\r\n", "\n").chars() {
        match letter {
            '\n' | '\r' | '\u{85}' | '\u{2028}' | '\u{2029}' => escaped.push_str("\\n"),
            '\\' | ';' | ',' => escaped.extend(['\\', letter]),
            _ if is_hidden(letter) => {}
            _ => escaped.push(letter),
        }
    }
    escaped
}

/// A line of a calendar with its end, folded so that no piece is longer than the standard allows and no letter is cut.
pub fn calendar_line(line: &str) -> String {
    let (mut folded, mut length) = (String::with_capacity(line.len() + 2), 0);
    for letter in line.chars() {
        if length + letter.len_utf8() > CALENDAR_LINE {
            folded.push_str("\r\n ");
            length = 1;
        }
        folded.push(letter);
        length += letter.len_utf8();
    }
    folded.push_str("\r\n");
    folded
}

/// Whether a word of a note may be made something to tap. Scripts, files and unknown kinds of address may not.
///
/// ```
/// use slantlight::project::guard::is_link;
/// assert!(is_link("https://example.org/loft") && is_link("tel:+351234"));
/// assert!(!is_link("javascript:alert(1)") && !is_link("loft.example.org") && !is_link("https://"));
/// ```
pub fn is_link(word: &str) -> bool {
    let start = LINK_STARTS
        .iter()
        .find(|start| word.get(..start.len()).is_some_and(|front| front.eq_ignore_ascii_case(start)));
    let plain = |letter: char| !letter.is_whitespace() && !is_hidden(letter) && !"<>\"`\\".contains(letter);
    start.is_some_and(|start| word.len() > start.len() && word.chars().all(plain))
}

/// Control letters and those that turn the direction of writing: unseen, and misleading in a name. Ends of lines
/// and tabs are not among them.
fn is_hidden(letter: char) -> bool {
    let turns = ('\u{202a}'..='\u{202e}').contains(&letter) || ('\u{2066}'..='\u{2069}').contains(&letter);
    turns || (letter.is_control() && !"\n\r\t".contains(letter))
}

/// Digits with a sign and a point: nothing a spreadsheet would compute. Names of infinities are words here.
fn is_number(text: &str) -> bool {
    text.parse::<f64>().is_ok() && text.chars().all(|letter| "+-.0123456789eE".contains(letter))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn formulas_become_words() {
        for formula in ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", " =1", "\t=1", "\u{ff1d}1", "-inf"]
        {
            let cell = csv_cell(formula);
            assert!(cell.trim_start_matches('"').starts_with('\''), "{formula} became {cell}");
        }
        assert_eq!(csv_cell("\u{202e}=1"), "\"'=1\"", "a hidden letter does not hide a formula");
        assert_eq!(csv_cell("12, Quay \"Old\""), "\"12, Quay \"\"Old\"\"\"");
        assert_eq!(csv_cell(""), "");
    }

    #[test]
    fn only_harmless_addresses_are_links() {
        for bad in [
            "javascript:alert(1)",
            "JavaScript:alert(1)",
            "data:text/html,x",
            "file:///etc/passwd",
            "vbscript:x",
            "https:",
            "http://a\u{202e}b",
            "https://a b",
            "intent://x",
            "\u{1}https://x",
            "mailto:",
            "é",
        ] {
            assert!(!is_link(bad), "{bad}");
        }
        assert!(is_link("HTTPS://example.org") && is_link("mailto:a@example.org"));
    }

    proptest! {
        #[test]
        fn a_cell_is_one_cell(text in ".{0,60}|[=+@\"',;\n\r\t -]{0,8}") {
            let cell = csv_cell(&text);
            let inside = cell.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
            match inside {
                Some(inside) => prop_assert!(!inside.replace("\"\"", "").contains('"')),
                None => prop_assert!(!cell.contains(['"', ',', ';', '\n', '\r'])),
            }
        }

        #[test]
        fn a_value_stays_in_its_line(text in "(.|\n|\r){0,200}") {
            let value = calendar_text(&text);
            prop_assert!(!value.chars().any(char::is_control) || value.contains('\t'));
            let line = calendar_line(&format!("SUMMARY:{value}"));
            prop_assert!(line.ends_with("\r\n"));
            prop_assert!(line.split_terminator("\r\n").all(|piece| piece.len() <= CALENDAR_LINE));
            prop_assert_eq!(line.trim_end_matches("\r\n").replace("\r\n ", ""), format!("SUMMARY:{value}"));
        }
    }
}
