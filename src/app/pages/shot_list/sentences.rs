//! What the shot list page says.

use slantlight::project::shot_list::{Doubt, Entry, LONGEST, MOST_ROWS, Taken, Unread};
use slantlight::project::start::MINUTES;
use slantlight::words;

/// Why nothing was read, and what to do.
pub(super) fn unread(why: Unread) -> String {
    match why {
        Unread::Empty => {
            "There is nothing to read yet. Copy the rows in the spreadsheet and paste them here.".to_owned()
        }
        Unread::TooLong => format!("This is longer than {} kB. Paste it in parts.", LONGEST / 1000),
        Unread::TooMany => format!("These are more than {MOST_ROWS} rows. Paste them in parts."),
    }
}

/// How much would be added, and how many rows to look at.
pub(super) fn summary(plan: &Taken, doubtful: usize) -> String {
    let added =
        format!("{} in {}", words::count(plan.set_ups, "set-up"), words::count(plan.scenes, "new scene"));
    match doubtful {
        0 => format!("{added}. Every row was read without a question."),
        1 => format!("{added}. One row has a question, marked below."),
        many => format!("{added}. {many} rows have a question, marked below."),
    }
}

/// What was done, for the note with undo.
pub(super) fn taken_in(set_ups: usize) -> String {
    format!("{} taken in", words::count(set_ups, "set-up"))
}

/// A name that was not free.
pub(super) fn renamed([scene, wanted, name]: &[String; 3]) -> String {
    format!("Scene {scene} has a set-up {wanted} already: this one becomes {name}.")
}

/// "4A · Mending the sail".
pub(super) fn title(entry: &Entry) -> String {
    let scene = if entry.scene.is_empty() { "no number" } else { &entry.scene };
    [scene, &entry.set_up, &entry.title]
        .iter()
        .filter(|part| !part.is_empty())
        .copied()
        .collect::<Vec<_>>()
        .join(" · ")
}

/// "line 7 · 25 min · INT, DAY, low sun".
pub(super) fn details(entry: &Entry) -> String {
    let minutes = entry.minutes.map(|minutes| format!("{minutes} min"));
    let notes = (!entry.notes.is_empty()).then(|| entry.notes.replace('\n', ", "));
    let place = if entry.at.is_some() { None } else { Some("no place yet".to_owned()) };
    let parts = [Some(format!("line {}", entry.line)), minutes, place, notes];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// What had to be decided, and what to do if that is wrong.
pub(super) fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::NoScene => "No scene number: it goes to the scene of the row above.".to_owned(),
        Doubt::UnknownPlace(name) => {
            format!(
                "No place of this project is called “{name}”. The name is kept in the notes; choose the place later."
            )
        }
        Doubt::NotMinutes(text) => {
            format!("“{text}” is no number of minutes. It is kept in the notes; {MINUTES} min are set.")
        }
        Doubt::Rounded { written, whole } => format!("“{written}” becomes {whole} min."),
        Doubt::OddWord(text) => {
            format!("“{text}” is not INT, EXT, DAY, DUSK or NIGHT. It is kept in the notes.")
        }
        Doubt::ManyLines(lines) => format!("One cell holds {lines} lines. Is a closing quote missing?"),
        Doubt::DarkHour => "Its wish starts with the blue hour. Change it on the set-up.".to_owned(),
    }
}

/// The beginning of a sample.
pub(super) fn shortened(text: &str) -> String {
    let one_line = text.replace('\n', " ");
    if one_line.chars().count() <= 32 { one_line } else { one_line.chars().take(31).chain(['…']).collect() }
}
