//! The day sheet as marks for a browser: a section a day, on the screen, on paper and in a file of its own.
//!
//! Everything that somebody has typed is escaped. Slack bars are drawn, since backgrounds are not printed.

use super::super::cautions::DEFERS;
use super::file;
use crate::project::document::Project;
use crate::project::send::Candidate;
use crate::project::shoot::sheet::{BLANKS, Kind, Row, Sheet};
use crate::words;

/// How the file of its own looks: black on white, one page a day.
const STYLE: &str = "@page{margin:12mm}body{font:16px/1.35 system-ui,sans-serif;max-width:46rem;margin:auto;padding:1rem}\
h1,h2,h3,p,ul,dl,ol{margin:0 0 .5em;padding:0}ol,ul{list-style:none}dl{display:flex;gap:2em}dt{font-size:.8em}\
dd{margin:0;font-weight:700}.run li{display:grid;grid-template-columns:4em 1fr;border-top:1px solid;padding:.3em 0}\
.run button{all:unset;font-weight:700}.run p{grid-column:2;margin:0;font-size:.9em}svg{grid-column:2;width:100%;height:6px}\
rect{fill:none;stroke:currentColor;stroke-width:.4}rect+rect{fill:currentColor}.blank{border-bottom:1px solid;min-height:1.6em}\
.caution{border-left:4px solid;padding-left:.6em}h3{break-after:avoid}.production{font-weight:700}\
@media print{body{font-size:9.5pt;padding:0;max-width:none}.day-notes{columns:2}.day{break-after:page}.day:last-child{break-after:auto}}";

/// The whole plan as one file that needs nothing else.
pub fn page(project: &Project, sheets: &[Sheet]) -> Candidate {
    let title = escaped(&project.title);
    let days: String = sheets.iter().map(|sheet| section(sheet, None)).collect();
    let text = format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" \
         content=\"width=device-width,initial-scale=1\"><title>{title}</title><style>{STYLE}</style></head>\
         <body>{days}</body></html>"
    );
    file(project, " days.html", "text/html", text)
}

/// One day; with its place in the list there is a button that sends it.
pub fn section(sheet: &Sheet, sends: Option<usize>) -> String {
    let facts: String = sheet
        .facts
        .iter()
        .map(|(value, name)| format!("<div><dt>{name}</dt><dd>{value}</dd></div>"))
        .collect();
    let rows: String = sheet.rows.iter().map(row).collect();
    let places = sheet.places.iter().map(|place| {
        let notes = if place.notes.is_empty() { String::new() } else { format!(" · {}", place.notes) };
        format!(
            "<li><strong>{}</strong> {}{}</li>",
            escaped(&place.name),
            escaped(&place.coordinates),
            escaped(&notes)
        )
    });
    let names = sheet.places.iter().map(|place| escaped(&place.name)).collect::<Vec<_>>().join(", ");
    let send = sends.map_or_else(String::new, |day| {
        format!(
            "<button type=\"button\" class=\"button small off-paper\" data-day=\"{day}\" aria-label=\"Send {}\">Send</button>",
            sheet.heading
        )
    });
    let blanks = BLANKS.iter().map(|name| format!("<li class=\"blank\">{name}: </li>"));
    let around = [
        listed("If it clouds over: cover set", &sheet.cover, ""),
        listed("Sky", &sheet.sky, ""),
        format!("<h3>Places</h3><ul>{}</ul>", places.collect::<String>()),
        listed("Kit", &sheet.kit, ""),
        sheet.cost.map(|cost| format!("<p>Places cost {cost} this day.</p>")).unwrap_or_default(),
        sheet
            .next
            .as_ref()
            .map(|next| format!("<h3>Next day</h3><p>{}</p>", escaped(next)))
            .unwrap_or_default(),
        format!("<h3>To be filled in</h3><ul class=\"blanks\">{}</ul>", blanks.collect::<String>()),
    ];
    let parts = [
        format!("<p class=\"production\">{}</p>", escaped(&sheet.production)),
        format!(
            "<div class=\"day-head\"><h2>{}</h2>{send}</div><p class=\"soft\">{} · {names}</p>",
            sheet.heading, sheet.date
        ),
        format!("<dl class=\"facts\">{facts}</dl>"),
        listed("", &sheet.faults, "fault"),
        format!("<ol class=\"run\">{rows}</ol>"),
        cautions(&sheet.cautions),
        format!("<div class=\"day-notes\">{}</div>", around.concat()),
    ];
    format!("<section class=\"day\">{}</section>", parts.concat())
}

/// Set-ups that stand on no day, by id, name and reason; nothing where there are none.
pub fn unplaced(all: &[(String, String, String)]) -> String {
    if all.is_empty() {
        return String::new();
    }
    let line = |(id, title, why): &(String, String, String)| {
        let (id, title, why) = (escaped(id), escaped(title), escaped(&words::capital(why)));
        format!("<li><button type=\"button\" data-set-up=\"{id}\">{title}</button><p>{why}.</p></li>")
    };
    let lines: String = all.iter().map(line).collect();
    format!("<section class=\"unplaced\"><h2>On no day</h2><ol class=\"run\">{lines}</ol></section>")
}

fn row(row: &Row) -> String {
    let (title, sub) = (escaped(&row.title), escaped(&row.sub));
    let head = match &row.kind {
        Kind::SetUp(id) => {
            let pinned = if row.pinned { " <small>pinned</small>" } else { "" };
            format!("<button type=\"button\" data-set-up=\"{}\">{title}{pinned}</button>", escaped(id))
        }
        _ => format!("<strong class=\"soft\">{title}</strong>"),
    };
    let bar = row.bar.map(|percent| {
        format!(
            "<svg viewBox=\"0 0 100 2\" preserveAspectRatio=\"none\" role=\"img\" aria-label=\"takes {percent} % of its \
             light\"><rect width=\"100\" height=\"2\"/><rect width=\"{percent}\" height=\"2\"/></svg>"
        )
    });
    let faults = row.faults.iter().map(|fault| format!("<p class=\"fault\">{}</p>", escaped(fault)));
    let (bar, faults) = (bar.unwrap_or_default(), faults.collect::<String>());
    format!("<li><time>{}</time>{head}<p>{sub}</p>{faults}{bar}</li>", row.clock)
}

fn cautions(words: &[String]) -> String {
    if words.is_empty() {
        return String::new();
    }
    let lines: String = words
        .iter()
        .map(|line| format!("<p class=\"caution\" role=\"note\">{}</p>", escaped(line)))
        .collect();
    format!("{lines}<p class=\"soft\">{DEFERS}</p>")
}

/// A list under a title; nothing where there is nothing.
fn listed(title: &str, lines: &[String], class: &str) -> String {
    if lines.is_empty() {
        return String::new();
    }
    let head = if title.is_empty() { String::new() } else { format!("<h3>{title}</h3>") };
    let lines: String =
        lines.iter().map(|line| format!("<li class=\"{class}\">{}</li>", escaped(line))).collect();
    format!("{head}<ul>{lines}</ul>")
}

/// Text that cannot be taken for marks.
fn escaped(text: &str) -> String {
    let text = text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    text.replace('"', "&quot;").replace('\'', "&#39;")
}
