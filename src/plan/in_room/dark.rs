//! Between which dates the sun never reaches a mark.

use chrono::NaiveDate;

use crate::plan::calendar;
use crate::plan::search::met;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Span, Spans};
use crate::words;

/// Shorter stretches are not worth a sentence. Our own choice.
const SHORTEST: i64 = 3;

/// Days looked at from the date on, and before it where a dark stretch has begun already.
const YEAR: i64 = 366;

/// A year of a mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Dark {
    /// The sun reaches it on every day, or nearly.
    Never,
    /// The sun reaches it on no day of the year.
    Always,
    /// First and last date of each dark stretch, in order.
    Between(Vec<DateRange>),
}

/// The dark stretches of the year from `date` on; one that has begun already is told from its first day.
pub fn dark(sun: &Sun, stage: &Stage, date: NaiveDate) -> Dark {
    let lit = |from: NaiveDate, to: NaiveDate| {
        let whole = calendar::whole(&stage.zone, DateRange { from, to });
        whole.map_or_else(Spans::none, |within| met::sun_on_mark(sun, stage, within))
    };
    let end = calendar::moved(date, YEAR);
    let ahead = lit_dates(&lit(date, end), stage);
    let Some((first, last)) = ahead.first().zip(ahead.last()) else { return Dark::Always };
    let mut all = ahead.clone();
    if calendar::days_between(date, *first) > 0 {
        let before = lit_dates(&lit(calendar::moved(date, -YEAR), calendar::moved(date, -1)), stage);
        all.splice(0..0, before.last().copied());
    }
    // The stretch that the year's end cuts goes on until the light is back.
    if calendar::days_between(*last, end) > 0 {
        let after = lit_dates(&lit(calendar::moved(end, 1), calendar::moved(end, YEAR)), stage);
        all.extend(after.first());
    }
    let gaps = all
        .windows(2)
        .map(|pair| DateRange { from: calendar::moved(pair[0], 1), to: calendar::moved(pair[1], -1) });
    let gaps: Vec<DateRange> =
        gaps.filter(|gap| calendar::days_between(gap.from, gap.to) + 1 >= SHORTEST).collect();
    if gaps.is_empty() { Dark::Never } else { Dark::Between(once_a_year(gaps)) }
}

/// The local dates that have any light.
fn lit_dates(light: &Spans, stage: &Stage) -> Vec<NaiveDate> {
    let dates = |span: Span| {
        let (from, to) = (stage.zone.date(span.start()), stage.zone.date(span.end()));
        from.iter_days().take_while(move |date| *date <= to)
    };
    let mut all: Vec<NaiveDate> = light.iter().flat_map(dates).collect();
    all.dedup();
    all
}

/// A stretch at both ends of the year is one stretch, told once.
fn once_a_year(mut gaps: Vec<DateRange>) -> Vec<DateRange> {
    if let [first, .., last] = gaps[..]
        && calendar::days_between(first.from, last.from) > 300
    {
        gaps.pop();
    }
    gaps
}

/// "Between 2 Nov and 8 Feb the sun never reaches the mark “by the bench”."; `None` where there is nothing to warn of.
pub fn words(dark: &Dark, mark: &str) -> Option<String> {
    match dark {
        Dark::Never => None,
        Dark::Always => Some(format!("The sun reaches the mark “{mark}” on no day of the year.")),
        Dark::Between(gaps) => {
            let gap = |gap: &DateRange| {
                format!("between {} and {}", words::date_short(gap.from), words::date_short(gap.to))
            };
            let all: Vec<String> = gaps.iter().map(gap).collect();
            Some(words::capital(&format!("{} the sun never reaches the mark “{mark}”.", all.join(", and "))))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{loft, on, window};

    /// Open above 30° to the south only.
    fn south() -> Stage {
        Stage { openings: Some(vec![window("south", 180.0, (-0.3, 0.3), (0.577, 5.0))]), ..loft() }
    }

    #[test]
    fn a_low_winter_sun_stays_below_the_sill() {
        let stage = south();
        let sun = Sun::new(stage.site);
        let Dark::Between(gaps) = dark(&sun, &stage, on(2027, 3, 11)) else { panic!("it is dark in winter") };
        // At 40.64° the noon sun is under 30° from declination −19.4° down: 20 Nov to 22 Jan or so.
        assert_eq!(gaps.len(), 1);
        assert!(gaps[0].from >= on(2027, 11, 15) && gaps[0].from <= on(2027, 11, 25), "{gaps:?}");
        assert!(gaps[0].to >= on(2028, 1, 17) && gaps[0].to <= on(2028, 1, 27), "{gaps:?}");
        // Told the same from within it, a year earlier.
        let Dark::Between(within) = dark(&sun, &stage, on(2027, 1, 5)) else {
            panic!("it is dark in winter")
        };
        assert_eq!(within.len(), 1);
        assert!(within[0].from < on(2027, 1, 1) && within[0].to < on(2027, 2, 1), "{within:?}");
        let said = words(&Dark::Between(gaps), "mark 1").unwrap();
        assert!(
            said.starts_with("Between ") && said.ends_with(" the sun never reaches the mark “mark 1”."),
            "{said}"
        );
        let dates = lit_dates(
            &met::sun_on_mark(
                &sun,
                &stage,
                calendar::whole(&stage.zone, DateRange { from: on(2027, 11, 1), to: on(2027, 11, 30) })
                    .unwrap(),
            ),
            &stage,
        );
        let Dark::Between(gaps) = dark(&sun, &stage, on(2027, 3, 11)) else { panic!("it is dark in winter") };
        assert_eq!(calendar::moved(*dates.last().unwrap(), 1), gaps[0].from);
    }

    #[test]
    fn a_north_window_is_always_dark_in_lisbon_and_an_open_field_never() {
        let north = Stage { openings: Some(vec![window("north", 0.0, (-0.1, 0.1), (0.5, 3.0))]), ..loft() };
        let sun = Sun::new(north.site);
        assert_eq!(dark(&sun, &north, on(2027, 3, 11)), Dark::Always);
        let open = Stage { openings: None, ..loft() };
        assert_eq!(dark(&sun, &open, on(2027, 3, 11)), Dark::Never);
        assert_eq!(words(&Dark::Never, "mark 1"), None);
        assert!(words(&Dark::Always, "mark 1").unwrap().contains("no day"));
    }
}
