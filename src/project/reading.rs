//! From bytes to a JSON tree: how large, how deep, which letters. What the tree says is not judged here.

use serde_json::Value;

use super::restore::RestoreError;

/// Largest file that is read. A project without pictures is far below a megabyte, and with as many as one may hold below
/// this. Our own choice.
pub const MOST_BYTES: usize = 24 << 20;

/// Deepest nesting that is read; a project needs 8, foreign members may bring some more. Our own choice.
pub const DEEPEST: usize = 64;

/// The tree in `bytes`, and its text.
pub(super) fn tree(bytes: &[u8]) -> Result<(Value, String), RestoreError> {
    if bytes.len() > MOST_BYTES {
        return Err(RestoreError::TooLarge { bytes: bytes.len(), most: MOST_BYTES });
    }
    let text = text(bytes)?;
    if text.trim().is_empty() {
        return Err(RestoreError::Empty);
    }
    let depth = depth(&text);
    if depth > DEEPEST {
        return Err(RestoreError::TooDeep { depth, most: DEEPEST });
    }
    match serde_json::from_str(&text) {
        Ok(tree) => Ok((tree, text)),
        Err(error) => Err(not_json(&text, &error)),
    }
}

/// The text of `bytes`: UTF-8 with or without its mark, or UTF-16 with its mark, as some editors save.
fn text(bytes: &[u8]) -> Result<String, RestoreError> {
    match bytes {
        [0xEF, 0xBB, 0xBF, rest @ ..] => utf_8(rest, 3),
        [0xFF, 0xFE, rest @ ..] => utf_16(rest, u16::from_le_bytes),
        [0xFE, 0xFF, rest @ ..] => utf_16(rest, u16::from_be_bytes),
        _ => utf_8(bytes, 0),
    }
}

fn utf_8(bytes: &[u8], skipped: usize) -> Result<String, RestoreError> {
    let text = core::str::from_utf8(bytes);
    text.map(str::to_owned).map_err(|error| RestoreError::NotText { byte: skipped + error.valid_up_to() })
}

fn utf_16(bytes: &[u8], number: fn([u8; 2]) -> u16) -> Result<String, RestoreError> {
    let (pairs, rest) = bytes.as_chunks::<2>();
    let letters: Vec<u16> = pairs.iter().map(|pair| number(*pair)).collect();
    match String::from_utf16(&letters) {
        Ok(text) if rest.is_empty() => Ok(text),
        _ => Err(RestoreError::NotText { byte: 2 }),
    }
}

/// How deep brackets are nested, those inside strings left out.
fn depth(text: &str) -> usize {
    let (mut deepest, mut depth, mut in_string, mut escaped) = (0usize, 0usize, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = in_string,
            b'"' => in_string = !in_string,
            b'{' | b'[' if !in_string => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            b'}' | b']' if !in_string => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

/// What is wrong where the JSON ends to be JSON. NaN and infinities are told apart: other programs write them.
fn not_json(text: &str, error: &serde_json::Error) -> RestoreError {
    let (line, column) = (error.line(), error.column());
    if error.is_eof() {
        return RestoreError::CutOff { line, column };
    }
    let from = text.lines().nth(line.saturating_sub(1)).unwrap_or("").as_bytes();
    let near = &from[column.saturating_sub(3).min(from.len())..];
    let begins = |word: &[u8]| near.windows(word.len()).take(3).any(|part| part == word);
    let too_large = error.to_string().starts_with("number out of range");
    if too_large || [&b"NaN"[..], b"Infinity", b"nan", b"inf"].iter().any(|word| begins(word)) {
        return RestoreError::NotANumber { line, column };
    }
    RestoreError::NotJson { line, column }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fault(bytes: &[u8]) -> RestoreError {
        tree(bytes).unwrap_err()
    }

    #[test]
    fn marks_at_the_front_are_understood() {
        let utf_16 = |order: fn(u16) -> [u8; 2]| "\u{feff}[\"é\"]".encode_utf16().flat_map(order).collect();
        let texts: [Vec<u8>; 4] =
            ["[\"é\"]".into(), "\u{feff}[\"é\"]".into(), utf_16(u16::to_le_bytes), utf_16(u16::to_be_bytes)];
        for text in texts {
            assert_eq!(tree(&text).unwrap().0, serde_json::json!(["é"]));
        }
        assert_eq!(fault(b"[\"\xff\"]"), RestoreError::NotText { byte: 2 });
        assert_eq!(fault(b"\xef\xbb\xbf[\xff"), RestoreError::NotText { byte: 4 });
    }

    #[test]
    fn what_is_not_a_number_is_named() {
        for text in ["[NaN]", "[Infinity]", "[-Infinity]", "[1e999]", "{\"a\":\n NaN}"] {
            assert!(matches!(fault(text.as_bytes()), RestoreError::NotANumber { .. }), "{text}");
        }
        assert_eq!(fault(b"[1,\n oops]"), RestoreError::NotJson { line: 2, column: 2 });
        assert_eq!(fault(b"[1,\n"), RestoreError::CutOff { line: 2, column: 0 });
        assert_eq!(fault(b" \n"), RestoreError::Empty);
    }

    #[test]
    fn depth_and_size_have_limits() {
        let deep = |depth: usize| ["[".repeat(depth), "]".repeat(depth)].concat().into_bytes();
        assert!(tree(&deep(DEEPEST)).is_ok());
        assert!(matches!(fault(&deep(DEEPEST + 1)), RestoreError::TooDeep { .. }));
        assert!(matches!(fault(&deep(1_000_000)), RestoreError::TooDeep { .. }));
        assert!(tree(br#"["[[[[\"[[[["]"#).is_ok(), "brackets in text do not count");
        assert!(matches!(fault(&vec![b' '; MOST_BYTES + 1]), RestoreError::TooLarge { .. }));
    }
}
