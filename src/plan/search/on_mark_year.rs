//! Sun on a mark over a year, opening by opening: a row for each day, and in words for two days of each month.

use chrono::{Datelike, NaiveDate};

use super::met;
use super::on_mark::OnMark;
use super::year::{self, DayRow};
use crate::plan::calendar;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::words::{self, Clock};

/// Days of a month that are told in words: its first, and its middle (our choice: between them the sun's height changes
/// by less than 7°).
const TOLD: [u32; 2] = [1, 15];

/// A year from a date on: when the sun is on the mark by one of its openings, or by any.
pub fn rows(sun: &Sun, stage: &Stage, opening: Option<usize>, from: NaiveDate) -> Vec<DayRow> {
    let one = |at| stage.openings.iter().flatten().skip(at).take(1).cloned().collect();
    let openings = opening.map_or_else(|| stage.openings.clone(), |at| Some(one(at)));
    let stage = Stage { openings, ..stage.clone() };
    let on_mark = |within| met::sun_on_mark(sun, &stage, within);
    year::rows(sun, &stage.zone, year_from(from), on_mark)
}

/// "15 Mar: 15:54–18:14: by Loft window, left from 15:54, by both from 17:12", a line for each day that is told.
pub fn told(sun: &Sun, stage: &Stage, from: NaiveDate, style: Clock) -> Vec<String> {
    let year = year_from(from);
    let days = from.iter_days().take_while(|date| *date <= year.to);
    let told = days.filter(|date| TOLD.contains(&date.day())).map(|date| {
        let found = OnMark::on(sun, stage, date);
        let says = found.in_short(stage, style);
        let says = if says.is_empty() { "no sun on the mark".to_owned() } else { says };
        format!("{}: {says}", words::date_short(date))
    });
    told.collect()
}

/// "sun on the mark on 182 of 365 days".
pub fn summary(rows: &[DayRow]) -> String {
    format!("sun on the mark on {} of {} days", year::days_met(rows), rows.len())
}

fn year_from(from: NaiveDate) -> DateRange {
    DateRange { from, to: calendar::later(from, 364) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{loft, on, window};
    use crate::units::Duration;

    /// Every third day of the year and every four minutes of it, the sun's direction is put into the openings' cones.
    #[test]
    fn each_opening_has_its_sun_all_through_the_year() {
        let stage = Stage {
            openings: Some(vec![
                window("left", 248.0, (-0.5, 0.1), (0.1, 0.9)),
                window("right", 248.0, (-0.1, 0.5), (0.1, 0.9)),
            ]),
            ..loft()
        };
        let sun = Sun::new(stage.site);
        let from = on(2027, 1, 1);
        let openings = stage.openings.clone().unwrap();
        let (mut near_an_edge, mut lit) = (0, 0);
        for which in [None, Some(0), Some(1)] {
            let rows = rows(&sun, &stage, which, from);
            assert_eq!(rows.len(), 365);
            for row in rows.iter().step_by(3) {
                for minute in (0..1440).step_by(4) {
                    let clock = Duration::from_minutes(minute);
                    let light = sun.apparent(stage.zone.at_clock(row.date, clock));
                    let by = |at: usize| openings[at].cones.iter().any(|cone| cone.contains(light));
                    let expected = light.z > 0.0 && which.map_or(by(0) || by(1), by);
                    lit += i32::from(expected);
                    // The hours that a change of the clock leaves out or has twice are not asked.
                    let changes = [(3, 28), (10, 31)].contains(&(row.date.month(), row.date.day()));
                    near_an_edge += i32::from(row.is_met_at(clock) != expected && !changes);
                }
            }
        }
        assert!(lit > 5_000 && near_an_edge == 0, "{near_an_edge} of {lit}");
    }

    #[test]
    fn two_days_of_each_month_are_told_as_the_day_itself_is() {
        // So high over the mark that the sun of December passes below.
        let window = |name, sides| window(name, 248.0, sides, (0.3, 0.9));
        let openings = vec![window("left window", (-0.5, 0.1)), window("right window", (-0.1, 0.5))];
        let stage = Stage { openings: Some(openings), ..loft() };
        let sun = Sun::new(stage.site);
        let lines = told(&sun, &stage, on(2027, 3, 11), Clock::TwentyFour);
        assert_eq!(lines.len(), 24);
        assert!(lines[0].starts_with("15 Mar: ") && lines[23].starts_with("1 Mar: "), "{lines:?}");
        let day = OnMark::on(&sun, &stage, on(2027, 3, 15));
        let sentence = day.sentence(&sun, &stage, on(2027, 3, 15), Clock::TwentyFour);
        let all = sentence.strip_prefix("Sun on the mark ").unwrap().split(',').next().unwrap();
        assert!(lines[0].contains(all), "{} in {sentence}", lines[0]);
        let by = sentence.split_once(": ").unwrap().1.trim_end_matches('.');
        assert!(lines[0].ends_with(by), "{} as {sentence}", lines[0]);
        assert!(lines.iter().any(|line| line.ends_with(": no sun on the mark")), "{lines:?}");
    }

    #[test]
    fn the_days_are_counted() {
        let rows = rows(&Sun::new(loft().site), &loft(), None, on(2027, 3, 11));
        let days = rows.iter().filter(|row| !row.met.is_empty()).count();
        assert_eq!(summary(&rows), format!("sun on the mark on {days} of 365 days"));
    }
}
