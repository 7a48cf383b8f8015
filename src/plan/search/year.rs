//! The year sheet: date × local clock, when the sun is up and when the wish is met.
//!
//! Clock times are the place's own, so that the steps of summer time show. On a day of 25 hours an hour comes
//! twice and both are drawn on the same place; on one of 23 hours the missing hour stays empty.

use chrono::NaiveDate;

use super::reason::above_horizon;
use crate::place::cone::Cone;
use crate::place::zone::Zone;
use crate::plan::calendar::{self, ClockSpan};
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Duration, Span, Spans};

/// One day of the sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayRow {
    /// Local date.
    pub date: NaiveDate,
    /// When the sun's upper limb is above a level horizon; down is the rest.
    pub sun_up: Vec<ClockSpan>,
    /// When the wish is met, spans too short for the set-up left out.
    pub met: Vec<ClockSpan>,
}

/// A row for every local date of `dates`, in order, with the `light` that was found in them.
pub fn sheet(sun: &Sun, stage: &Stage, dates: DateRange, light: &Spans) -> Vec<DayRow> {
    rows(sun, &stage.zone, dates, |_| long_enough(stage, light))
}

/// The same, with what `met` finds in the whole of `dates` for a wish.
pub(super) fn rows(sun: &Sun, zone: &Zone, dates: DateRange, met: impl FnOnce(Span) -> Spans) -> Vec<DayRow> {
    let Some(within) = calendar::whole(zone, dates) else { return Vec::new() };
    let up = sun.spans(&Cone { sides: vec![above_horizon()] }, within);
    let mut rows: Vec<DayRow> = dates
        .from
        .iter_days()
        .take_while(|date| *date <= dates.to)
        .map(|date| DayRow { date, sun_up: Vec::new(), met: Vec::new() })
        .collect();
    for (date, span) in calendar::on_clock(zone, &up) {
        row(&mut rows, date, |row| row.sun_up.push(span));
    }
    for (date, span) in calendar::on_clock(zone, &met(within)) {
        row(&mut rows, date, |row| row.met.push(span));
    }
    rows
}

/// On how many dates of a sheet the wish is met.
pub fn days_met(rows: &[DayRow]) -> usize {
    rows.iter().filter(|row| !row.met.is_empty()).count()
}

impl DayRow {
    /// Whether the wish is met when the clock shows so much since midnight.
    pub fn is_met_at(&self, clock: Duration) -> bool {
        self.met.iter().any(|span| span.from <= clock && clock < span.to)
    }
}

/// On how many dates of the month of `date` the wish is met.
pub fn days_met_in_month(rows: &[DayRow], date: NaiveDate) -> usize {
    rows.iter().filter(|row| calendar::same_month(row.date, date) && !row.met.is_empty()).count()
}

/// In the month of `date`, the date on which the wish is met longest, and the first minute of the clock
/// at which it is.
pub fn best_of_month(rows: &[DayRow], date: NaiveDate) -> Option<(NaiveDate, Duration)> {
    let here = rows.iter().filter(|row| calendar::same_month(row.date, date));
    let spans = here.flat_map(|row| row.met.iter().map(|span| (row.date, *span)));
    let longest = spans.max_by_key(|(date, span)| (span.to - span.from, core::cmp::Reverse(*date)));
    longest.map(|(date, span)| (date, span.first_minute()))
}

/// Spans in which the set-up can be shot.
fn long_enough(stage: &Stage, met: &Spans) -> Spans {
    let long: Vec<Span> = met.iter().filter(|span| span.duration() >= stage.takes).collect();
    Spans::gather(long)
}

/// Changes the row of a date, if the sheet has it. Rows follow each other by a day.
fn row(rows: &mut [DayRow], date: NaiveDate, change: impl FnOnce(&mut DayRow)) {
    let place = rows.first().map_or(0, |first| (date - first.date).num_days());
    if let Some(row) = usize::try_from(place).ok().and_then(|place| rows.get_mut(place)) {
        change(row);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{clock, field, lisbon, loft, on, site, wish};
    use crate::plan::search::met::met;
    use crate::plan::search::slots;
    use crate::plan::wish::SunOnMark;
    use crate::units::Duration;

    fn year() -> DateRange {
        DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) }
    }

    fn minutes(span: &ClockSpan) -> (f64, f64) {
        (span.from.minutes(), span.to.minutes())
    }

    fn found(sun: &Sun, stage: &Stage, dates: DateRange) -> Vec<DayRow> {
        let light = calendar::whole(&stage.zone, dates).map(|within| met(sun, stage, within));
        sheet(sun, stage, dates, &light.unwrap_or_default())
    }

    #[test]
    fn the_loft_over_a_year() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let rows = found(&sun, &stage, year());
        assert_eq!(rows.len(), 365);
        for row in &rows {
            assert_eq!(row.sun_up.len(), 1, "{}", row.date);
            let (from, to) = minutes(&row.sun_up[0]);
            assert!((5.0 * 60.0..9.0 * 60.0).contains(&from) && (16.0 * 60.0..22.0 * 60.0).contains(&to));
            assert!(row.met.iter().all(|met| met.from >= row.sun_up[0].from && met.to <= row.sun_up[0].to));
        }
        let slots = slots(&sun, &stage, &[year()]);
        assert_eq!(days_met(&rows), crate::plan::search::runs::days(&slots));
    }

    #[test]
    fn summer_time_is_a_step() {
        let stage = field();
        let rows = found(&Sun::new(stage.site), &stage, year());
        let rise = |date| minutes(&rows.iter().find(|row| row.date == date).unwrap().sun_up[0]).0;
        assert!((rise(on(2027, 3, 28)) - rise(on(2027, 3, 27)) - 60.0).abs() < 3.0);
        assert!((rise(on(2027, 10, 31)) - rise(on(2027, 10, 30)) + 60.0).abs() < 3.0);
    }

    #[test]
    fn a_midnight_sun_fills_each_day() {
        let mut stage = field();
        stage.site = site(78.0, 15.0);
        stage.zone = clock(60, &[("2027-03-28T01:00:00Z", "2027-10-31T01:00:00Z")]);
        stage.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Any);
        let rows =
            found(&Sun::new(stage.site), &stage, DateRange { from: on(2027, 6, 20), to: on(2027, 6, 22) });
        for row in rows {
            let all_day = ClockSpan { from: Duration::ZERO, to: Duration::DAY };
            assert_eq!((row.sun_up, row.met), (vec![all_day], vec![all_day]));
        }
    }

    #[test]
    fn days_of_23_and_25_hours() {
        let whole = Span::new(
            crate::plan::fixture::at("2027-03-27T12:00:00Z"),
            crate::plan::fixture::at("2027-03-29T11:00:00Z"),
        );
        let clock = calendar::on_clock(&lisbon(), &Spans::from(whole.unwrap()));
        let on_day = |date| {
            clock.iter().filter(|(day, _)| *day == date).map(|(_, span)| minutes(span)).collect::<Vec<_>>()
        };
        assert_eq!(on_day(on(2027, 3, 28)), [(0.0, 60.0), (120.0, 1440.0)], "01:00 to 02:00 does not exist");
        let whole = Span::new(
            crate::plan::fixture::at("2027-10-30T23:00:00Z"),
            crate::plan::fixture::at("2027-11-01T00:00:00Z"),
        );
        let clock = calendar::on_clock(&lisbon(), &Spans::from(whole.unwrap()));
        assert_eq!(clock.len(), 1, "an hour that comes twice is drawn once");
        assert_eq!(minutes(&clock[0].1), (0.0, 1440.0));
    }

    #[test]
    fn a_sheet_of_nothing() {
        let none = DateRange { from: on(2027, 2, 2), to: on(2027, 2, 1) };
        assert_eq!(found(&Sun::new(field().site), &field(), none), []);
    }
}
