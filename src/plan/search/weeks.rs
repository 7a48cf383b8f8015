//! Time that is looked through week by week, for a page that must not wait for a year: a wish on levels asks thousands of
//! instants.

use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::wish::DateRange;
use crate::units::{Span, Spans};

/// Days of one look (our choice: a wish on levels in a room takes some milliseconds for them).
pub(super) const WEEK: u32 = 7;

/// Dates that are looked through, and the light found so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Weeks {
    /// What is still to be looked through, the last first.
    rest: Vec<Span>,
    all: usize,
    light: Vec<Span>,
}

impl Weeks {
    /// Local dates of a place, nothing of them looked through yet.
    pub fn new(zone: &Zone, dates: DateRange) -> Self {
        let mut rest = Vec::new();
        let mut from = dates.from;
        while from <= dates.to {
            let next = calendar::later(from, WEEK);
            let to = calendar::later(from, WEEK - 1).min(dates.to);
            rest.extend(calendar::whole(zone, DateRange { from, to }));
            if next <= from {
                break;
            }
            from = next;
        }
        rest.reverse();
        Self { all: rest.len(), rest, light: Vec::new() }
    }

    /// Looks through another week with `look`, which finds the light within a span. Whether all is looked through.
    pub fn step(&mut self, look: impl FnOnce(Span) -> Spans) -> bool {
        if let Some(week) = self.rest.pop() {
            self.light.extend(look(week).iter());
        }
        self.is_looked_through()
    }

    /// Whether all is looked through.
    pub fn is_looked_through(&self) -> bool {
        self.rest.is_empty()
    }

    /// Looks through another week and gives the light that is over by its end; `None` when all is looked through.
    pub fn next(&mut self, look: impl FnOnce(Span) -> Spans) -> Option<Spans> {
        let week = *self.rest.last()?;
        let is_last = self.step(look);
        let over = |span: &Span| is_last || span.end() < week.end();
        let (over, rest) = self.light().iter().partition(over);
        self.light = rest;
        Some(Spans::gather(over))
    }

    /// How many weeks have been looked through.
    pub fn looked(&self) -> u32 {
        (self.all - self.rest.len()) as u32
    }

    /// Share of the weeks that has been looked through.
    pub fn share(&self) -> f64 {
        if self.all == 0 { 1.0 } else { 1.0 - self.rest.len() as f64 / self.all as f64 }
    }

    /// The light found so far and not given yet; what goes on over the end of a week is one.
    pub fn light(&self) -> Spans {
        Spans::gather(self.light.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, on, site, wish};
    use crate::plan::search::met::met;
    use crate::plan::wish::SunOnMark;
    use crate::sky::sun::Sun;
    use crate::units::Duration;

    #[test]
    fn weeks_make_the_year() {
        let mut midnight_sun = field();
        midnight_sun.site = site(78.0, 15.0);
        midnight_sun.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Yes);
        let dates = DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) };
        for stage in [loft(), midnight_sun] {
            let sun = Sun::new(stage.site);
            let mut weeks = Weeks::new(&stage.zone, dates);
            let mut steps = 1;
            while !weeks.step(|week| met(&sun, &stage, week)) {
                steps += 1;
                assert!(weeks.share() < 1.0);
            }
            assert_eq!((steps, weeks.share()), (53, 1.0));
            let year = met(&sun, &stage, calendar::whole(&stage.zone, dates).unwrap());
            assert_eq!(weeks.light().as_slice().len(), year.as_slice().len());
            let apart = weeks.light().without(&year).total() + year.without(&weeks.light()).total();
            assert!(apart.millis() < 10, "{} ms", apart.millis());
        }
    }

    #[test]
    fn light_comes_when_it_is_over() {
        let mut midnight_sun = field();
        midnight_sun.site = site(78.0, 15.0);
        midnight_sun.wish = wish((0.0, 360.0), (0.0, 90.0), SunOnMark::Yes);
        let dates = DateRange { from: on(2027, 4, 1), to: on(2027, 9, 30) };
        let sun = Sun::new(midnight_sun.site);
        let look = |week| met(&sun, &midnight_sun, week);
        let mut weeks = Weeks::new(&midnight_sun.zone, dates);
        let parts: Vec<Spans> = core::iter::from_fn(|| weeks.next(look)).collect();
        let whole = met(&sun, &midnight_sun, calendar::whole(&midnight_sun.zone, dates).unwrap());
        assert_eq!(parts.iter().map(|part| part.iter().len()).sum::<usize>(), whole.iter().len());
        // The months without a night are one span, said once.
        let longest = parts.iter().flat_map(Spans::iter).map(|span| span.duration()).max().unwrap();
        assert!(longest > Duration::from_minutes(90 * 1440), "{}", longest.minutes());
    }

    #[test]
    fn no_dates_are_looked_through_at_once() {
        let dates = DateRange { from: on(2027, 1, 2), to: on(2027, 1, 1) };
        let mut weeks = Weeks::new(&field().zone, dates);
        assert!(weeks.step(|_| unreachable!("there is no week")));
        assert_eq!((weeks.share(), weeks.light()), (1.0, Spans::default()));
    }
}
