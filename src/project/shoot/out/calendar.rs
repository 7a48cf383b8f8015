//! The plan as a calendar (RFC 5545): one event for each call, set-up, move, meal and wrap, all in UTC.
//!
//! A phone rings for an alarm in its calendar even when it is locked, which a page cannot do. Identifiers stay the same
//! from export to export, so that a calendar replaces what it has. No telephone numbers are written.

use super::file;
use crate::project::document::Project;
use crate::project::guard::{calendar_line, calendar_text};
use crate::project::send::Candidate;
use crate::project::shoot::sheet::{Kind, Row, Sheet};
use crate::units::Instant;

/// Minutes before call and before a set-up at which the calendar rings. Our own choice.
const RINGS: (u16, u16) = (60, 15);

/// The file; `made` is when.
pub fn calendar(project: &Project, sheets: &[Sheet], made: Instant) -> Candidate {
    file(project, ".ics", "text/calendar", text(project, sheets, made))
}

fn text(project: &Project, sheets: &[Sheet], made: Instant) -> String {
    let mut out = String::new();
    for words in
        ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Slantlight//Shoot days//EN", "CALSCALE:GREGORIAN"]
    {
        line(&mut out, words);
    }
    for (n, sheet) in sheets.iter().enumerate() {
        for (row, one) in sheet.rows.iter().enumerate() {
            event(&mut out, project, sheet, one, &uid(project, one, n, row), made);
        }
    }
    line(&mut out, "END:VCALENDAR");
    out
}

/// A set-up keeps its own identifier wherever it is moved.
fn uid(project: &Project, row: &Row, day: usize, place: usize) -> String {
    let own = match &row.kind {
        Kind::SetUp(id) => id.clone(),
        _ => format!("day{}-row{}", day + 1, place + 1),
    };
    let plain =
        |text: &str| text.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect::<String>();
    format!("{}.{}@slantlight", plain(&own), plain(&project.id))
}

fn event(out: &mut String, project: &Project, sheet: &Sheet, row: &Row, uid: &str, made: Instant) {
    line(out, "BEGIN:VEVENT");
    line(out, &format!("UID:{uid}"));
    line(out, &format!("DTSTAMP:{}", utc(made)));
    line(out, &format!("DTSTART:{}", utc(row.span.0)));
    if row.span.1 > row.span.0 {
        line(out, &format!("DTEND:{}", utc(row.span.1)));
    }
    line(out, &format!("SUMMARY:{}", calendar_text(&row.title)));
    line(
        out,
        &format!(
            "DESCRIPTION:{}",
            calendar_text(&format!("{}: {}\n{}", project.title, sheet.heading, row.sub))
        ),
    );
    let place = sheet.places.first().filter(|_| matches!(row.kind, Kind::Call));
    if let Some(place) = place {
        line(out, &format!("LOCATION:{}", calendar_text(&format!("{}, {}", place.name, place.coordinates))));
    }
    match row.kind {
        Kind::Call => alarm(out, RINGS.0, &row.title),
        Kind::SetUp(_) => alarm(out, RINGS.1, &row.title),
        Kind::Move | Kind::Meal | Kind::Wrap => {}
    }
    line(out, "END:VEVENT");
}

fn alarm(out: &mut String, minutes: u16, words: &str) {
    for words in [
        "BEGIN:VALARM".to_owned(),
        "ACTION:DISPLAY".to_owned(),
        format!("TRIGGER:-PT{minutes}M"),
        format!("DESCRIPTION:{}", calendar_text(words)),
        "END:VALARM".to_owned(),
    ] {
        line(out, &words);
    }
}

/// "20270311T173800Z", to the second.
fn utc(at: Instant) -> String {
    let whole = Instant::from_unix_millis(at.unix_millis().div_euclid(1000) * 1000);
    whole.to_string().replace(['-', ':'], "")
}

fn line(out: &mut String, words: &str) {
    out.push_str(&calendar_line(words));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_handbook_line_folds_and_unfolds() {
        // T-K4.
        let words = "DESCRIPTION:Sunset 19:19Z\\; golden window from 18:30Z\\, face the river\\nBring ND 0.9 \u{2013} 1.2";
        let mut folded = String::new();
        line(&mut folded, words);
        let (first, second) = folded.trim_end().split_once("\r\n").unwrap();
        assert_eq!((first.len(), second.starts_with(' ')), (75, true));
        assert!(first.ends_with("\\nBri"));
        assert_eq!(folded.replace("\r\n ", "").trim_end(), words);
    }

    #[test]
    fn instants_are_utc_to_the_second() {
        assert_eq!(utc(Instant::parse("2026-06-21T19:19:15.700Z").unwrap()), "20260621T191915Z");
    }
}
