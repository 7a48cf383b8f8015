//! The plan as a table (RFC 4180) that spreadsheets read. No cell can be taken for a formula.

use super::file;
use crate::project::document::Project;
use crate::project::guard::csv_cell;
use crate::project::send::Candidate;
use crate::project::shoot::sheet::{Kind, Row, Sheet};

/// The file.
pub fn csv(project: &Project, sheets: &[Sheet]) -> Candidate {
    file(project, " days.csv", "text/csv", text(sheets))
}

fn text(sheets: &[Sheet]) -> String {
    let head = ["day", "date", "clock", "starts_utc", "ends_utc", "what", "title", "notes", "conflicts"];
    let rows = sheets.iter().flat_map(|sheet| sheet.rows.iter().map(move |row| cells(sheet, row)));
    let lines = core::iter::once(head.map(str::to_owned)).chain(rows);
    lines.map(|cells| cells.map(|cell| csv_cell(&cell)).join(",") + "\r\n").collect()
}

fn cells(sheet: &Sheet, row: &Row) -> [String; 9] {
    let what = match row.kind {
        Kind::Call => "call",
        Kind::SetUp(_) => "set-up",
        Kind::Move => "move",
        Kind::Meal => "meal",
        Kind::Wrap => "wrap",
    };
    let utc = [row.span.0, row.span.1].map(|at| at.to_string());
    let [starts, ends] = utc;
    let (title, sub) = (row.title.clone(), row.sub.clone());
    let faults = row.faults.join(" ");
    [
        sheet.heading.clone(),
        sheet.date.clone(),
        row.clock.clone(),
        starts,
        ends,
        what.to_owned(),
        title,
        sub,
        faults,
    ]
}
