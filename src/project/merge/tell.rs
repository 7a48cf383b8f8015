//! Differences in words: which entity, which of its members, what each side says.

use serde_json::{Map, Value};

use super::parts::{Part, Parts, ROOT};

/// Members shown of one entity; the rest are counted. Our own choice.
const MOST_LINES: usize = 6;

/// Letters shown of a text. Our own choice.
const LONGEST_TEXT: usize = 80;

/// What each side says about one member.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// "wish, heights, from".
    pub what: String,
    /// "10°"; "nothing" where it is not said.
    pub here: String,
    /// The same for the project that came.
    pub there: String,
}

/// "Set-up A, in 4 Mending the sail".
pub(super) fn title(key: &str, side: &Parts) -> String {
    let Some(part) = side.get(key) else { return String::new() };
    if key == ROOT {
        return "The project itself".to_owned();
    }
    let own = format!("{} {}", kind(&part.list), name(part));
    match side.get(&part.parent) {
        Some(parent) if part.parent != ROOT => format!("{}, in {}", own.trim_end(), name(parent)),
        _ => own.trim_end().to_owned(),
    }
}

/// The list's name as the kind of one entry: "set_ups" is "Set-up".
fn kind(list: &str) -> String {
    let one = match list {
        "set_ups" => "set-up",
        "saved" => "saved slot",
        "sighted" => "sighted window",
        _ => list.strip_suffix('s').unwrap_or(list),
    };
    let mut letters = one.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).map(|letter| if letter == '_' { ' ' } else { letter }).collect()
}

/// "4 Mending the sail": number and title, or the name; the begin of a slot.
fn name(part: &Part) -> String {
    let texts = ["number", "name", "title", "start"].iter().filter_map(|name| part.body.get(*name)?.as_str());
    cut(&texts.collect::<Vec<_>>().join(" "))
}

/// The members that are not the same.
pub(super) fn lines(here: &Part, there: &Part) -> Vec<Line> {
    let mut lines = Vec::new();
    members(&here.body, &there.body, "", &mut lines);
    if here.parent != there.parent || (lines.is_empty() && here.children != there.children) {
        let said = |part: &Part| format!("{} entries", part.children.len());
        lines.push(Line { what: "order or place".to_owned(), here: said(here), there: said(there) });
    }
    let more = lines.len().saturating_sub(MOST_LINES);
    lines.truncate(MOST_LINES);
    if more > 0 {
        let rest = format!("{more} more");
        lines.push(Line { what: "and".to_owned(), here: rest.clone(), there: rest });
    }
    lines
}

fn members(here: &Map<String, Value>, there: &Map<String, Value>, path: &str, lines: &mut Vec<Line>) {
    let only_there = there.iter().filter(|(name, _)| !here.contains_key(*name));
    for (name, _) in here.iter().chain(only_there) {
        let path = if path.is_empty() { name.clone() } else { format!("{path}, {name}") };
        let (here, there) = (here.get(name), there.get(name));
        match (here, there) {
            _ if here == there => {}
            (Some(Value::Object(here)), Some(Value::Object(there))) => members(here, there, &path, lines),
            _ => lines.push(line(&path, here, there)),
        }
    }
}

fn line(path: &str, here: Option<&Value>, there: Option<&Value>) -> Line {
    let units = [("_deg", "°"), ("_mm", " mm"), ("_m", " m")];
    let unit = units.into_iter().find(|(ending, _)| path.ends_with(ending));
    let (what, unit) = unit.map_or((path, ""), |(ending, unit)| (path.trim_end_matches(ending), unit));
    let mut said = [here, there].map(|value| words(value, unit));
    if said[0] == said[1] {
        said[1].push_str(", but others");
    }
    let [here, there] = said;
    Line { what: what.replace('_', " "), here, there }
}

/// A value in few words.
fn words(value: Option<&Value>, unit: &str) -> String {
    match value {
        None | Some(Value::Null) => "nothing".to_owned(),
        Some(Value::Bool(yes)) => if *yes { "yes" } else { "no" }.to_owned(),
        Some(Value::Number(number)) => match number.as_f64() {
            // 35 mm, not 35.0 mm.
            Some(number) => cut(&format!("{number}{unit}")),
            None => format!("{number}{unit}"),
        },
        Some(Value::String(text)) => cut(text),
        Some(Value::Array(entries)) => format!("{} entries", entries.len()),
        Some(Value::Object(inner)) => {
            cut(&inner.values().map(|value| words(Some(value), "")).collect::<Vec<_>>().join(", "))
        }
    }
}

/// A text that fits its line.
fn cut(text: &str) -> String {
    match text.char_indices().nth(LONGEST_TEXT) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}
