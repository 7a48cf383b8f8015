//! Cuts a text into numbers, unit marks, letters of the compass, and what stands between them.

/// A piece of text and where it begins, characters from the start.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) what: What,
    pub(super) at: usize,
    pub(super) text: String,
}

/// What a piece of text is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum What {
    /// Digits, perhaps with a point and a sign before them.
    Number(Number),
    /// A mark that makes the number before it degrees, minutes or seconds.
    Unit(Unit),
    /// Which way from the equator or from Greenwich.
    Way(Way),
    /// "lat", "lon".
    Axis(Axis),
    /// A comma; tight when digits touch it on both sides.
    Comma { tight: bool },
    /// Anything else that parts two angles.
    Break,
    /// Something that belongs to no position.
    Foreign,
}

/// Digits as they stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number {
    /// Without its sign.
    pub(super) size: f64,
    /// Digits after the point.
    pub(super) decimals: usize,
    /// Minus (true) or plus (false), if there is a sign.
    pub(super) minus: Option<bool>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Unit {
    Degrees,
    Minutes,
    Seconds,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    North,
    South,
    East,
    West,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Axis {
    Latitude,
    Longitude,
}

impl Token {
    pub(super) fn is_foreign(&self) -> bool {
        self.what == What::Foreign
    }

    pub(super) const fn number(&self) -> Option<Number> {
        match self.what {
            What::Number(number) => Some(number),
            _ => None,
        }
    }
}

/// All pieces in order; spaces, brackets and colons leave none.
pub(super) fn tokens(text: &str) -> Vec<Token> {
    let letters: Vec<char> = text.chars().collect();
    let mut tokens: Vec<Token> = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        let rest = &letters[at..];
        let before = at.checked_sub(1).map(|before| letters[before]);
        let (length, what) = piece(rest, before, &tokens);
        if let Some(what) = what {
            let text = rest[..length].iter().collect();
            tokens.push(Token { what, at, text });
        }
        at += length;
    }
    tokens
}

/// Length of the first piece, at least one, and what it is; `None` for what leaves no token.
fn piece(rest: &[char], before: Option<char>, tokens: &[Token]) -> (usize, Option<What>) {
    let first = rest[0];
    if let Some((length, number)) = number(rest) {
        return (length, Some(What::Number(number)));
    }
    if first.is_alphabetic() && !is_degree_mark(first) {
        return word(rest, tokens);
    }
    if is_minute_mark(first) && before.is_some_and(char::is_alphabetic) {
        // "it's" is a word, not minutes.
        return (1 + count(&rest[1..], |letter| letter.is_alphabetic()), Some(What::Foreign));
    }
    let digit = |letter: Option<&char>| letter.is_some_and(char::is_ascii_digit);
    let what = match first {
        ',' => Some(What::Comma { tight: digit(before.as_ref()) && digit(rest.get(1)) }),
        ';' | '/' | '|' | '\n' | '.' => Some(What::Break),
        '(' | ')' | '[' | ']' | ':' => None,
        letter if letter.is_whitespace() => None,
        letter => return mark(letter, rest),
    };
    (1, what)
}

/// A mark of degrees, minutes or seconds, or something foreign.
fn mark(first: char, rest: &[char]) -> (usize, Option<What>) {
    let doubled = is_minute_mark(first) && rest.get(1).copied().is_some_and(is_minute_mark);
    let unit = match first {
        letter if is_degree_mark(letter) => Unit::Degrees,
        _ if doubled => Unit::Seconds,
        letter if is_minute_mark(letter) => Unit::Minutes,
        '"' | '″' | '”' | '“' | '„' | '‟' | 'ʺ' | '〃' | '＂' | '¨' => Unit::Seconds,
        _ => return (1, Some(What::Foreign)),
    };
    (if doubled { 2 } else { 1 }, Some(What::Unit(unit)))
}

const fn is_degree_mark(letter: char) -> bool {
    matches!(letter, '°' | 'º' | '˚' | '∘' | 'ᵒ')
}

const fn is_minute_mark(letter: char) -> bool {
    matches!(letter, '\'' | '′' | '’' | '‘' | '‛' | 'ʹ' | '´' | '`' | '＇' | 'ʼ')
}

/// A sign, if any, and digits with at most one point.
fn number(rest: &[char]) -> Option<(usize, Number)> {
    let minus = match rest[0] {
        '-' | '−' | '–' | '﹣' | '－' => Some(true),
        '+' => Some(false),
        _ => None,
    };
    let sign = usize::from(minus.is_some());
    let is_digit = |letter: &char| letter.is_ascii_digit();
    let whole = count(&rest[sign..], is_digit);
    let after = sign + whole;
    let decimals = match rest.get(after) {
        Some('.') => count(&rest[after + 1..], is_digit),
        _ => 0,
    };
    let length = if decimals > 0 { after + 1 + decimals } else { after };
    let digits: String = rest[sign..length].iter().collect();
    let size = digits.parse().ok().filter(|_| whole + decimals > 0)?;
    Some((length, Number { size, decimals, minus }))
}

/// A run of letters.
fn word(rest: &[char], tokens: &[Token]) -> (usize, Option<What>) {
    let length = count(rest, |letter| letter.is_alphabetic() && !is_degree_mark(*letter));
    let word: String = rest[..length].iter().collect::<String>().to_lowercase();
    if let Some(what) = known(&word, tokens) {
        return (length, Some(what));
    }
    // "26sN": a unit and a way in one breath.
    let after_number = tokens.last().is_some_and(|token| token.number().is_some());
    let (one, two) =
        (rest[0].to_lowercase().to_string(), rest.get(1).map(|two| two.to_lowercase().to_string()));
    match (known(&one, tokens), two.and_then(|two| known(&two, &[]))) {
        (Some(What::Unit(unit)), Some(What::Way(_))) if after_number && length == 2 => {
            (1, Some(What::Unit(unit)))
        }
        (Some(What::Unit(_)), None) if after_number && length == 1 => (1, known(&one, tokens)),
        _ => (length, Some(What::Foreign)),
    }
}

/// What a word of a position means. "o" is east in some languages and west in others, so it is not known.
fn known(word: &str, tokens: &[Token]) -> Option<What> {
    Some(match word {
        "s" if follows_minutes(tokens) => What::Unit(Unit::Seconds),
        "n" | "north" | "nord" | "norte" => What::Way(Way::North),
        "s" | "south" | "süd" | "sud" | "sul" | "sur" => What::Way(Way::South),
        "e" | "east" | "ost" | "est" | "este" => What::Way(Way::East),
        "w" | "west" | "ouest" | "oeste" => What::Way(Way::West),
        "d" | "deg" | "degree" | "degrees" => What::Unit(Unit::Degrees),
        "m" | "min" | "minute" | "minutes" => What::Unit(Unit::Minutes),
        "sec" | "second" | "seconds" => What::Unit(Unit::Seconds),
        "lat" | "latitude" => What::Axis(Axis::Latitude),
        "lon" | "lng" | "long" | "longitude" => What::Axis(Axis::Longitude),
        _ => return None,
    })
}

/// Whether the last token is a number right after minutes, so that an s means seconds.
fn follows_minutes(tokens: &[Token]) -> bool {
    matches!(tokens, [.., minutes, number]
        if minutes.what == What::Unit(Unit::Minutes) && number.number().is_some())
}

fn count(letters: &[char], holds: impl Fn(&char) -> bool) -> usize {
    letters.iter().take_while(|letter| holds(letter)).count()
}
