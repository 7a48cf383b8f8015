//! What was told of the rest of a day: shown until the sun is back, kept when the page is closed, sent as a short text.
//!
//! It belongs to one project and one date. What was sent must not change under people's hands, so words are kept, not the
//! question: one line for the head, one for each row, parted by tabs.

use chrono::NaiveDate;

use super::replan::{Ask, Rest};
use super::rest_words::{Row, head, rows};
use crate::place::zone::Zone;
use crate::words::{self, Clock};

/// The rest of a day, as it was told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    project: String,
    date: String,
    /// "since 16:05".
    pub since: String,
    head: String,
    /// What becomes of each set-up.
    pub rows: Vec<Row>,
}

impl Told {
    /// The answer to `ask` about the project with this id.
    pub fn of(project: &str, (ask, rest): (&Ask, &Rest), zone: &Zone, clock: Clock) -> Self {
        let local = zone.local(ask.now);
        Self {
            project: project.to_owned(),
            date: local.date().to_string(),
            since: format!("since {}", words::clock(local.time(), clock)),
            head: head(ask, zone, clock),
            rows: rows(rest, zone, clock),
        }
    }

    /// Whether it is about this project and date.
    pub fn is_about(&self, project: &str, date: NaiveDate) -> bool {
        self.project == project && self.date == date.to_string()
    }

    /// The text that goes out.
    pub fn text(&self) -> String {
        let nothing = self.rows.is_empty().then(|| "Nothing is left that this light allows.".to_owned());
        let lines = self.rows.iter().map(Row::line).chain(nothing);
        core::iter::once(self.head.clone()).chain(lines).collect::<Vec<_>>().join("\n")
    }

    /// As it is kept.
    pub fn kept(&self) -> String {
        let first = line(&[&self.project, &self.date, &self.since, &self.head]);
        let rows = self.rows.iter().map(|row| line(&[&row.time, &row.what, &row.fate]));
        core::iter::once(first).chain(rows).collect::<Vec<_>>().join("\n")
    }

    /// What was kept; `None` for anything else.
    pub fn read(kept: &str) -> Option<Self> {
        let mut lines = kept.split('\n');
        let [project, date, since, head] = parts(lines.next()?)?;
        let row = |line| parts(line).map(|[time, what, fate]| Row { time, what, fate });
        Some(Self { project, date, since, head, rows: lines.map(row).collect::<Option<_>>()? })
    }
}

/// Parts of a line; names are people's own text, and may hold what parts or ends one.
fn line(parts: &[&str]) -> String {
    let clean = |part: &&str| part.replace(char::is_control, " ");
    parts.iter().map(clean).collect::<Vec<_>>().join("\t")
}

fn parts<const N: usize>(line: &str) -> Option<[String; N]> {
    line.split('\t').map(str::to_owned).collect::<Vec<_>>().try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::super::replan::{Fate, One};
    use super::*;
    use crate::plan::wish::Sky;
    use crate::units::{Duration, Instant, Span};

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    fn told(name: &str) -> Told {
        let span = |from: &str, to: &str| Span::new(at(from), at(to)).unwrap();
        let one =
            |name: &str, fate| One { id: name.into(), name: name.into(), place: "Sail loft".into(), fate };
        let dates = vec![
            span("2027-03-19T17:40:00Z", "2027-03-19T18:10:00Z"),
            span("2027-03-20T17:40:00Z", "2027-03-20T18:10:00Z"),
        ];
        let rest = Rest {
            ones: vec![
                one(name, Fate::Moved(span("2027-03-18T16:10:00Z", "2027-03-18T16:50:00Z"))),
                one("4 A", Fate::Dropped("needs the sun", dates)),
            ],
            meal: Some(span("2027-03-18T17:00:00Z", "2027-03-18T17:30:00Z")),
        };
        let ask = Ask {
            now: at("2027-03-18T16:05:00Z"),
            wrap: at("2027-03-18T19:30:00Z"),
            sky: Sky::Overcast,
            meal_had: false,
            at: None,
        };
        Told::of("salt", (&ask, &rest), &Zone::fixed("UTC", Duration::ZERO), Clock::TwentyFour)
    }

    #[test]
    fn the_text_says_what_is_when_and_what_is_dropped() {
        assert_eq!(
            told("3 A").text(),
            "Thu 18 Mar 2027, 16:05: no sun. New plan until 19:30:\n\
             16:10–16:50 3 A, Sail loft (moved)\n\
             17:00–17:30 meal\n\
             4 A, Sail loft (dropped: needs the sun. Next: 19 Mar, 20 Mar)"
        );
    }

    #[test]
    fn what_is_kept_comes_back_whatever_people_call_things() {
        assert_eq!(Told::read(&told("3 A").kept()), Some(told("3 A")));
        let odd = Told::read(&told("3\tA\nor so").kept()).unwrap();
        assert_eq!((odd.rows.len(), odd.rows[0].what.as_str()), (3, "3 A or so, Sail loft"));
        for broken in ["", "salt", "a\tb\tc\td\te", "a\tb\tc\td\nrow"] {
            assert_eq!(Told::read(broken), None, "{broken}");
        }
    }

    #[test]
    fn it_is_about_one_project_and_one_date() {
        let date = |text: &str| text.parse().unwrap();
        assert!(told("3 A").is_about("salt", date("2027-03-18")));
        assert!(!told("3 A").is_about("salt", date("2027-03-19")));
        assert!(!told("3 A").is_about("thread", date("2027-03-18")));
    }
}
