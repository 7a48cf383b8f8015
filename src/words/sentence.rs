//! Sentences.

/// With a capital at its beginning.
///
/// ```
/// assert_eq!(slantlight::words::capital("tomorrow 15:54"), "Tomorrow 15:54");
/// ```
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
