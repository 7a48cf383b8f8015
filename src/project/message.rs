//! A project inside the text of a message: words around it, quoted lines, code fences, curly quotes.
//!
//! The first object that says it is a project of ours counts. A message is as little trusted as any other bytes.

use super::document::FORMAT;
use super::reading;
use super::restore::{RestoreError, Restored, restore};

/// Finds the project in a pasted message.
///
/// ```
/// use slantlight::project::{canonical, demo, message::parse_message};
/// let message = format!("Here it is:\n```\n{}```\nSee you!", canonical::to_text(&demo::project()));
/// assert_eq!(parse_message(&message).unwrap().project, demo::project());
/// ```
///
/// # Errors
/// There is none, or what is there cannot be read; the reason is that of the first object that looks like one.
pub fn parse_message(text: &str) -> Result<Restored, RestoreError> {
    let most = reading::MOST_BYTES;
    if text.len() > most {
        return Err(RestoreError::TooLarge { bytes: text.len(), most });
    }
    if text.trim().is_empty() {
        return Err(RestoreError::Empty);
    }
    let outcome = in_text(text);
    if outcome.is_ok() || matches!(outcome, Err(RestoreError::Newer { .. })) {
        return outcome;
    }
    // Messengers make quotes curly and mails put "> " before each line; try again without.
    in_text(&plain(text)).or(outcome)
}

/// Restores the object around the first mention of our format.
fn in_text(text: &str) -> Result<Restored, RestoreError> {
    let Some(mention) = text.find(FORMAT) else { return Err(RestoreError::Foreign) };
    let mut first = None;
    // An object may open before the one we look for, in the words around it; few do.
    for (start, _) in text[..mention].match_indices('{').take(MOST_STARTS) {
        match restore(object(&text[start..]).as_bytes()) {
            Err(error) => first = first.or(Some(error)),
            found => return found,
        }
    }
    Err(first.unwrap_or(RestoreError::Foreign))
}

/// Opening braces that are tried. Our own choice: members stand in the order of their names, and before `format`
/// come cameras and dates.
const MOST_STARTS: usize = 8;

/// From an opening brace to the one that closes it, braces in strings left out; all of it if none does.
fn object(text: &str) -> &str {
    let (mut depth, mut in_string, mut escaped) = (0usize, false, false);
    for (index, byte) in text.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = in_string,
            b'"' => in_string = !in_string,
            b'{' if !in_string => depth += 1,
            b'}' if !in_string => {
                depth -= 1;
                if depth == 0 {
                    return &text[..=index];
                }
            }
            _ => {}
        }
    }
    text
}

/// The text with straight quotes and plain spaces, quoted lines without their mark.
fn plain(text: &str) -> String {
    let unquoted = text.lines().map(|line| line.trim_start_matches(['>', ' ']));
    let lines: Vec<&str> = unquoted.collect();
    lines
        .join("\n")
        .replace(['\u{201c}', '\u{201d}', '\u{201e}', '\u{ab}', '\u{bb}'], "\"")
        .replace('\u{a0}', " ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{canonical, demo};
    use proptest::prelude::*;

    fn sent() -> String {
        canonical::to_text(&demo::project())
    }

    #[test]
    fn words_around_it_do_not_matter() {
        for message in [
            sent(),
            format!("Hi {{all}} :-}}, the plan:\n\n{}\n\nYours", sent()),
            format!("> {}", sent().replace('\n', "\n> ")),
            sent().replace("\": ", "\u{201d}: ").replace("  \"", "  \u{201c}"),
        ] {
            assert_eq!(parse_message(&message).unwrap().project, demo::project(), "{}", &message[..80]);
        }
    }

    #[test]
    fn what_is_no_project_is_refused_with_a_reason() {
        assert_eq!(parse_message(" \n"), Err(RestoreError::Empty));
        assert_eq!(parse_message("See you at the slip."), Err(RestoreError::Foreign));
        assert_eq!(parse_message("slantlight-project"), Err(RestoreError::Foreign));
        let cut = sent()[..900].to_owned();
        assert!(matches!(parse_message(&cut), Err(RestoreError::CutOff { .. })));
        let newer = r#"Look: {"format": "slantlight-project", "version": 9} new!"#;
        assert!(matches!(parse_message(newer), Err(RestoreError::Newer { version: 9, .. })));
    }

    proptest! {
        #[test]
        fn any_text_is_survived(text in ".*", more in ".*") {
            let _ = parse_message(&format!("{text}{{\"format\":\"slantlight-project\",{more}"));
            prop_assert!(parse_message(&text).is_err());
        }
    }
}
