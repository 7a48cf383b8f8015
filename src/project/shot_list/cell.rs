//! What one cell says: minutes, inside or outside, the hour of the day.

/// Inside or outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// INT.
    Inside,
    /// EXT.
    Outside,
    /// INT/EXT: both.
    Both,
}

impl Side {
    /// Reads INT, EXT, I/E and their like (common practice, no source).
    pub fn read(text: &str) -> Option<Self> {
        let letters: String =
            text.chars().filter(|letter| letter.is_alphabetic() || *letter == '/').collect();
        match letters.to_lowercase().as_str() {
            "int" | "interior" | "inside" | "i" => Some(Self::Inside),
            "ext" | "exterior" | "outside" | "e" => Some(Self::Outside),
            "int/ext" | "ext/int" | "i/e" | "e/i" => Some(Self::Both),
            _ => None,
        }
    }

    /// As scripts write it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Inside => "INT",
            Self::Outside => "EXT",
            Self::Both => "INT/EXT",
        }
    }
}

/// The hour of the day that a script asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HourWord {
    /// Any time with the sun up.
    Day,
    /// Sun low or just gone.
    Twilight,
    /// Dark.
    Night,
}

/// Reads DAY, DUSK, NIGHT and their like (common practice, no source).
pub fn hour(text: &str) -> Option<HourWord> {
    match text.trim_end_matches('.').to_lowercase().as_str() {
        "day" | "d" | "morning" | "afternoon" | "noon" | "midday" => Some(HourWord::Day),
        "dawn" | "dusk" | "evening" | "sunrise" | "sunset" | "twilight" => Some(HourWord::Twilight),
        "night" | "n" => Some(HourWord::Night),
        _ => None,
    }
}

/// The most minutes one set-up may be given in a list. Our own choice.
pub const MOST_MINUTES: u32 = 720;

/// Minutes as they were written, and what had to be done to them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Minutes {
    /// Whole minutes.
    pub whole: u32,
    /// Whether a part of a minute was rounded up.
    pub rounded: bool,
}

/// Reads "25", "25 min", "2,5", "1.5 h".
///
/// # Errors
/// It is not a number of minutes from 1 to [`MOST_MINUTES`], or could be read in two ways ("1:30").
pub fn minutes(text: &str) -> Result<Minutes, ()> {
    let text = text.trim().to_lowercase();
    let (number, per_unit) = unit(&text);
    let number = number.trim().replace(',', ".");
    let is_plain = number.chars().all(|letter| letter.is_ascii_digit() || letter == '.');
    let value: f64 = number.parse().map_err(|_| ())?;
    let minutes = value * per_unit;
    if !is_plain || !(0.0..=f64::from(MOST_MINUTES)).contains(&minutes) || minutes == 0.0 {
        return Err(());
    }
    let whole = minutes.ceil();
    Ok(Minutes { whole: whole as u32, rounded: whole != minutes })
}

/// The number before a unit, and how many minutes that unit has.
fn unit(text: &str) -> (&str, f64) {
    let minutes = ["minutes", "minute", "mins", "min", "m", "'", "′"];
    let hours = ["hours", "hour", "hrs", "hr", "h"];
    let end = |units: &[&str]| units.iter().find_map(|unit| text.strip_suffix(unit));
    match (end(&minutes), end(&hours)) {
        (Some(number), _) => (number.trim_end_matches('.'), 1.0),
        (None, Some(number)) => (number.trim_end_matches('.'), 60.0),
        (None, None) => (text, 1.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_are_read_as_people_write_them() {
        let exact = |whole| Ok(Minutes { whole, rounded: false });
        for (text, read) in
            [("25", 25), ("25 min", 25), ("25min.", 0), ("1,5 h", 90), ("1.5h", 90), ("40'", 40)]
        {
            assert_eq!(minutes(text), if read == 0 { Err(()) } else { exact(read) }, "{text}");
        }
        assert_eq!(minutes("12,5"), Ok(Minutes { whole: 13, rounded: true }));
    }

    #[test]
    fn what_is_no_number_of_minutes_is_not_guessed() {
        for odd in ["", "1:30", "-5", "0", "20-25", "nan", "inf", "1e2", "721", "a while", "1.000,5"] {
            assert_eq!(minutes(odd), Err(()), "{odd}");
        }
    }

    #[test]
    fn sides_and_hours_are_the_words_of_scripts() {
        assert_eq!(Side::read("INT."), Some(Side::Inside));
        assert_eq!(Side::read("Int./Ext."), Some(Side::Both));
        assert_eq!(Side::read("intro"), None);
        assert_eq!(hour("Dusk"), Some(HourWord::Twilight));
        assert_eq!(hour("later"), None);
    }
}
