//! Dates: "Thu 11 Mar 2027", "11 Mar", "4–21 Mar", "22 Sep–6 Oct".

use chrono::{Datelike, NaiveDate};

/// Days of the week from Monday.
const WEEKDAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/// Months from January.
const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// "Thu".
pub fn weekday(date: NaiveDate) -> &'static str {
    WEEKDAYS[date.weekday().num_days_from_monday() as usize]
}

/// "Mar".
pub fn month(date: NaiveDate) -> &'static str {
    MONTHS[date.month0() as usize]
}

/// The number of a month by its name, in full or by three letters and more; 1 for January.
pub fn read_month(name: &str) -> Option<u32> {
    const WHOLE: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let name = name.to_lowercase();
    let found = WHOLE.iter().position(|month| name.len() >= 3 && month.starts_with(&name))?;
    u32::try_from(found + 1).ok()
}

/// "Thu 11 Mar 2027".
pub fn date(date: NaiveDate) -> String {
    format!("{} {} {}", weekday(date), date_short(date), date.year())
}

/// "Thu 11", where the month stands beside it.
pub fn day_of_week(date: NaiveDate) -> String {
    format!("{} {}", weekday(date), date.day())
}

/// "11 Mar".
pub fn date_short(date: NaiveDate) -> String {
    format!("{} {}", date.day(), month(date))
}

/// "11 Mar", "4–21 Mar", "22 Sep–6 Oct", "28 Dec 2026–3 Jan 2027".
pub fn dates_from_to(from: NaiveDate, to: NaiveDate) -> String {
    if from == to {
        date_short(from)
    } else if from.year() != to.year() {
        format!("{} {}–{} {}", date_short(from), from.year(), date_short(to), to.year())
    } else if from.month() == to.month() {
        format!("{}–{}", from.day(), date_short(to))
    } else {
        format!("{}–{}", date_short(from), date_short(to))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(year: i32, month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(year, month, day).unwrap()
    }

    #[test]
    fn one_date() {
        assert_eq!(date(on(2027, 3, 11)), "Thu 11 Mar 2027");
        assert_eq!(date(on(2028, 2, 29)), "Tue 29 Feb 2028");
        assert_eq!(date_short(on(2027, 12, 1)), "1 Dec");
    }

    #[test]
    fn ranges_say_what_differs() {
        assert_eq!(dates_from_to(on(2027, 3, 11), on(2027, 3, 11)), "11 Mar");
        assert_eq!(dates_from_to(on(2027, 3, 4), on(2027, 3, 21)), "4–21 Mar");
        assert_eq!(dates_from_to(on(2027, 9, 22), on(2027, 10, 6)), "22 Sep–6 Oct");
        assert_eq!(dates_from_to(on(2026, 12, 28), on(2027, 1, 3)), "28 Dec 2026–3 Jan 2027");
    }
}
