//! Sentences, and what is counted in them.

/// With a capital at its beginning.
///
/// ```
/// assert_eq!(slantlight::words::capital("tomorrow 15:54"), "Tomorrow 15:54");
/// ```
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// So many of them; `what` takes an s where there are more.
///
/// ```
/// assert_eq!(slantlight::words::count(1, "set-up"), "1 set-up");
/// assert_eq!(slantlight::words::count(2, "set-up"), "2 set-ups");
/// ```
pub fn count(number: usize, what: &str) -> String {
    format!("{number} {what}{}", if number == 1 { "" } else { "s" })
}
