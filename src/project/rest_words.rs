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

/// The text that goes out.
pub fn text(rest: &Rest, ask: &Ask, zone: &Zone, clock: Clock) -> String {
    let now = zone.local(ask.now);
    let wrap = words::clock(words::to_the_minute(zone.local(ask.wrap)).time(), clock);
    let sky = match ask.sky {
        Sky::Overcast => "no sun",
        Sky::Hazy => "thin cloud",
        _ => "running late",
    };
    let time = words::clock(words::to_the_minute(now).time(), clock);
    let mut lines = vec![format!("{}, {time}: {sky}. New plan until {wrap}:", words::date(now.date()))];
    lines.extend(rows(rest, zone, clock).into_iter().map(|row| {
        let fate = if row.fate.is_empty() { String::new() } else { format!(" ({})", row.fate) };
        format!("{} {}{fate}", row.time, row.what).trim().to_owned()
    }));
    if rest.ones.is_empty() {
        lines.push("Nothing is left that this light allows.".to_owned());
    }
    lines.join("\n")
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Duration;

    fn at(text: &str) -> Instant {
        Instant::parse(text).unwrap()
    }

    #[test]
    fn the_text_says_what_is_when_and_what_is_dropped() {
        let span = |from: &str, to: &str| Span::new(at(from), at(to)).unwrap();
        let one =
            |name: &str, fate| One { id: name.into(), name: name.into(), place: "Sail loft".into(), fate };
        let dates = vec![
            span("2027-03-19T17:40:00Z", "2027-03-19T18:10:00Z"),
            span("2027-03-20T17:40:00Z", "2027-03-20T18:10:00Z"),
        ];
        let rest = Rest {
            ones: vec![
                one("3 A", Fate::Moved(span("2027-03-18T16:10:00Z", "2027-03-18T16:50:00Z"))),
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
        let zone = Zone::fixed("UTC", Duration::ZERO);
        assert_eq!(
            text(&rest, &ask, &zone, Clock::TwentyFour),
            "Thu 18 Mar 2027, 16:05: no sun. New plan until 19:30:\n\
             16:10–16:50 3 A, Sail loft (moved)\n\
             17:00–17:30 meal\n\
             4 A, Sail loft (dropped: needs the sun. Next: 19 Mar, 20 Mar)"
        );
    }
}
