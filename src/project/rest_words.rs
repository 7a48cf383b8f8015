//! The rest of a day in words: rows for the screen, and the short text that goes out to the crew.

use super::replan::{Ask, Fate, One, Rest};
use crate::place::zone::Zone;
use crate::plan::wish::Sky;
use crate::units::{Instant, Span};
use crate::words::{self, Clock};

/// A row: time or "dropped", the set-up and its place, what becomes of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// "16:10–16:50", or empty.
    pub time: String,
    /// "3 A, Sail loft".
    pub what: String,
    /// "moved", "dropped: needs the sun. Next: 19, 20 and 21 Mar".
    pub fate: String,
}

/// The rows, in order of time; what is dropped comes last.
pub fn rows(rest: &Rest, zone: &Zone, clock: Clock) -> Vec<Row> {
    let mut rows: Vec<(Option<Instant>, Row)> = rest.ones.iter().map(|one| row(one, zone, clock)).collect();
    rows.extend(rest.meal.map(|meal| {
        let time = span_words(meal, zone, clock);
        (Some(meal.start()), Row { time, what: "meal".to_owned(), fate: String::new() })
    }));
    crate::order::by_key(&mut rows, |(at, _)| (at.is_none(), *at));
    rows.into_iter().map(|(_, row)| row).collect()
}

/// The first line of the text that goes out.
pub(super) fn head(ask: &Ask, zone: &Zone, clock: Clock) -> String {
    let now = zone.local(ask.now);
    let wrap = words::clock(words::to_the_minute(zone.local(ask.wrap)).time(), clock);
    let sky = match ask.sky {
        Sky::Overcast => "no sun",
        Sky::Hazy => "thin cloud",
        _ => "running late",
    };
    let time = words::clock(words::to_the_minute(now).time(), clock);
    format!("{}, {time}: {sky}. New plan until {wrap}:", words::date(now.date()))
}

impl Row {
    /// The row in the text that goes out.
    pub(super) fn line(&self) -> String {
        let fate = if self.fate.is_empty() { String::new() } else { format!(" ({})", self.fate) };
        format!("{} {}{fate}", self.time, self.what).trim().to_owned()
    }
}

fn row(one: &One, zone: &Zone, clock: Clock) -> (Option<Instant>, Row) {
    let what = format!("{}, {}", one.name, one.place);
    let timed = |span: Span, fate: &str| {
        (
            Some(span.start()),
            Row { time: span_words(span, zone, clock), what: what.clone(), fate: fate.to_owned() },
        )
    };
    match &one.fate {
        Fate::Kept(span) => timed(*span, "as planned"),
        Fate::Moved(span) => timed(*span, "moved"),
        Fate::Added(span) => timed(*span, "brought in"),
        Fate::Dropped(why, dates) => {
            let fate = format!("dropped: {why}.{}", next(dates, zone));
            (None, Row { time: String::new(), what, fate })
        }
    }
}

/// " Next: 19 Mar, 20 Mar, 21 Mar".
fn next(dates: &[Span], zone: &Zone) -> String {
    let days: Vec<String> = dates.iter().map(|span| words::date_short(zone.date(span.start()))).collect();
    if days.is_empty() {
        " No other date within a year".to_owned()
    } else {
        format!(" Next: {}", days.join(", "))
    }
}

fn span_words(span: Span, zone: &Zone, clock: Clock) -> String {
    let time = |at| words::to_the_minute(zone.local(at)).time();
    words::clock_from_to(time(span.start()), time(span.end()), clock)
}
