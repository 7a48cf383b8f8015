//! The plan as a message: plain lines for any chat.

use crate::project::document::Project;
use crate::project::shoot::sheet::Sheet;

/// All days, or none in a sentence.
pub fn message(project: &Project, sheets: &[Sheet]) -> String {
    let title = if project.title.is_empty() { "The plan" } else { &project.title };
    let days: Vec<String> = sheets.iter().map(day).collect();
    format!("{title}\n\n{}", days.join("\n\n"))
}

/// One day under the project's title.
pub fn of_day(project: &Project, sheet: &Sheet) -> String {
    message(project, core::slice::from_ref(sheet))
}

fn day(sheet: &Sheet) -> String {
    let facts =
        sheet.facts.iter().map(|(value, name)| format!("{name} {value}")).collect::<Vec<_>>().join(", ");
    let rows = sheet.rows.iter().map(|row| format!("{} {} ({})", row.clock, row.title, row.sub));
    let places = sheet.places.iter().map(|place| format!("{}: {}", place.name, place.coordinates));
    let cautions = sheet.cautions.iter().map(|words| format!("! {words}"));
    let lines = [format!("{}, {}", sheet.heading, sheet.date), facts].into_iter();
    lines.chain(rows).chain(places).chain(cautions).collect::<Vec<_>>().join("\n")
}
