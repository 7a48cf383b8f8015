//! Days of any year, as people say when a tree has leaves: "15 Apr–1 Nov".

use chrono::NaiveDate;

use super::date;
use crate::place::blocker::{DayOfYear, Leaves};

/// A leap year, in which every day of any year exists.
const LEAP: i32 = 2028;

/// "15 Apr–1 Nov": in leaf from the first day, bare from the second.
pub fn leaves(leaves: Leaves) -> String {
    let day = |day: DayOfYear| day.in_year(LEAP).map(date::date_short).unwrap_or_default();
    format!("{}–{}", day(leaves.on), day(leaves.off))
}

/// Reads two days, each with its month as a word: "15 Apr–1 Nov", "April 15 to November 1". `None` if they are not.
pub fn read_leaves(text: &str) -> Option<Leaves> {
    let words: Vec<&str> = tokens(text);
    let [a, b, c, d] = words.as_slice() else { return None };
    Some(Leaves { on: day(a, b)?, off: day(c, d)? })
}

/// Numbers and names; what stands between, and "from" and "to", is left out.
fn tokens(text: &str) -> Vec<&str> {
    let is_digit = |c: char| c.is_ascii_digit();
    text.split(|c: char| !c.is_alphanumeric())
        .flat_map(|word| {
            let split = word.find(|c: char| is_digit(c) != word.starts_with(is_digit)).unwrap_or(word.len());
            let (one, other) = word.split_at(split);
            [one, other]
        })
        .filter(|word| !["", "from", "to", "until", "till"].contains(&word.to_lowercase().as_str()))
        .collect()
}

/// A day and its month, in either order.
fn day(one: &str, other: &str) -> Option<DayOfYear> {
    let (number, name) =
        if one.starts_with(|c: char| c.is_ascii_digit()) { (one, other) } else { (other, one) };
    let (month, day) = (date::read_month(name)?, number.parse().ok()?);
    NaiveDate::from_ymd_opt(LEAP, month, day).map(DayOfYear::of)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn days_are_read_in_the_ways_people_write_them() {
        let day = |month, day| DayOfYear { month, day };
        let spring = Leaves { on: day(4, 15), off: day(11, 1) };
        for text in ["15 Apr–1 Nov", "from April 15 to November 1", "15apr - 1nov", "15. April bis 1. Nov."]
        {
            let read = read_leaves(text);
            assert_eq!(read, (!text.contains("bis")).then_some(spring), "{text}");
        }
        assert_eq!(read_leaves("29 Feb to 31 Dec").map(leaves).as_deref(), Some("29 Feb–31 Dec"));
        for text in
            ["", "15 Apr", "31 Apr to 1 Nov", "15.4.–1.11.", "15 Ma to 1 Nov", "1 2 3 4", "Apr Apr Apr Apr"]
        {
            assert_eq!(read_leaves(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back(on in 0i64..366, off in 0i64..366) {
            let day = |n| DayOfYear::of(NaiveDate::from_ymd_opt(LEAP, 1, 1).unwrap() + chrono::TimeDelta::days(n));
            let some = Leaves { on: day(on), off: day(off) };
            prop_assert_eq!(read_leaves(&leaves(some)), Some(some));
        }

        #[test]
        fn no_text_stops_it(text in any::<String>()) {
            let _ = read_leaves(&text);
        }
    }
}
