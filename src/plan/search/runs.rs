//! Runs: slots of neighbouring days that are one and the same light, drifting a little from day to day.
//!
//! "4–21 Mar, about 17:40" says more than eighteen rows. A run breaks where the direction class, the side or the
//! openings change, where a day is missing, and where the clock is moved, since its hour would no longer be true.

use chrono::{NaiveDate, NaiveTime};

use super::slot::Slot;
use crate::plan::stage::Stage;
use crate::units::Duration;

/// Largest step of a slot's middle on the clock from one day to the next. The sun itself drifts by under
/// 4 minutes a day; edges that follow a skyline or a window move faster. Our own choice.
const SMOOTH: Duration = Duration::from_minutes(15);

/// Neighbouring days with the same light; never empty.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// One slot a day, in order.
    pub slots: Vec<Slot>,
    /// Place of the slot that holds longest; the earliest of equals.
    pub best: usize,
    /// The clock at the middle of the best slot.
    pub about: NaiveTime,
}

/// Ways to put runs in order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Order {
    /// The nearest first.
    #[default]
    Date,
    /// The longest hold of a run's best day first.
    Hold,
    /// The most slack on a run's shortest day first: any of its days will do.
    Slack,
}

impl Run {
    /// First and last date.
    pub fn dates(&self) -> (NaiveDate, NaiveDate) {
        let last = self.slots.len() - 1;
        (self.slots[0].date, self.slots[last].date)
    }

    /// The slot that holds longest.
    pub fn best(&self) -> &Slot {
        &self.slots[self.best]
    }

    /// Number of days.
    pub fn days(&self) -> usize {
        self.slots.len()
    }

    /// What is left on its shortest day beyond the time that the set-up takes.
    pub fn least_slack(&self, stage: &Stage) -> Duration {
        self.slots.iter().map(|slot| slot.slack(stage)).min().unwrap_or_default()
    }

    /// The run of `slots`.
    fn of(slots: Vec<Slot>, stage: &Stage) -> Self {
        let longest = |best: usize, n: usize| if slots[n].hold() > slots[best].hold() { n } else { best };
        let best = (0..slots.len()).fold(0, longest);
        let about = stage.zone.local(slots[best].span.middle()).time();
        Self { slots, best, about }
    }
}

/// Gathers slots (in order of time) into runs, in the order of their first day.
pub fn runs(stage: &Stage, slots: &[Slot]) -> Vec<Run> {
    let mut open: Vec<Vec<Slot>> = Vec::new();
    let mut closed: Vec<Vec<Slot>> = Vec::new();
    for slot in slots {
        let (over, still): (Vec<_>, Vec<_>) = open.into_iter().partition(|run| is_over(run, slot));
        closed.extend(over);
        open = still;
        match nearest(stage, &open, slot) {
            Some(n) => open[n].push(slot.clone()),
            None => open.push(vec![slot.clone()]),
        }
    }
    closed.extend(open);
    crate::order::by_key(&mut closed, |run| run[0].span.start());
    closed.into_iter().map(|slots| Run::of(slots, stage)).collect()
}

/// Puts runs in order; equals stay in the order of time.
pub fn sort(stage: &Stage, runs: &mut [Run], order: Order) {
    match order {
        Order::Date => crate::order::by_key(runs, |run| run.slots[0].span.start()),
        Order::Hold => crate::order::by_key(runs, |run| -run.best().hold()),
        Order::Slack => crate::order::by_key(runs, |run| -run.least_slack(stage)),
    }
}

/// On how many days the wish works.
pub fn days(slots: &[Slot]) -> usize {
    let mut dates: Vec<NaiveDate> = slots.iter().map(|slot| slot.date).collect();
    crate::order::by(&mut dates, NaiveDate::cmp);
    dates.dedup();
    dates.len()
}

/// Whether a run can take no slot as late as `slot` any more.
fn is_over(run: &[Slot], slot: &Slot) -> bool {
    run.last().and_then(|last| last.date.succ_opt()).is_none_or(|next| next < slot.date)
}

/// The run that `slot` carries on, if any.
fn nearest(stage: &Stage, open: &[Vec<Slot>], slot: &Slot) -> Option<usize> {
    let step = |run: &Vec<Slot>| run.last().and_then(|last| step(stage, last, slot));
    let steps = open.iter().enumerate().filter_map(|(n, run)| Some((step(run)?, n)));
    steps.min().map(|(_, n)| n)
}

/// How far the middle moves on the clock, if `slot` is the same light a day after `last`.
fn step(stage: &Stage, last: &Slot, slot: &Slot) -> Option<Duration> {
    let same = last.light.class == slot.light.class
        && last.light.side == slot.light.side
        && last.openings == slot.openings
        && stage.zone.offset_at(last.span.middle()) == stage.zone.offset_at(slot.span.middle());
    let moved = slot.span.middle() - last.span.middle() - Duration::DAY;
    let moved = moved.max(-moved);
    (same && last.date.succ_opt() == Some(slot.date) && moved <= SMOOTH).then_some(moved)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, on, wish};
    use crate::plan::search::slots;
    use crate::plan::wish::{DateRange, SunOnMark};
    use crate::sky::sun::Sun;

    fn year(stage: &Stage) -> Vec<Slot> {
        slots(&Sun::new(stage.site), stage, &[DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) }])
    }

    #[test]
    fn every_slot_is_in_one_run() {
        for stage in [loft(), field()] {
            let slots = year(&stage);
            let runs = runs(&stage, &slots);
            let mut gathered: Vec<Slot> = runs.iter().flat_map(|run| run.slots.clone()).collect();
            gathered.sort_by_key(|slot| slot.span.start());
            assert_eq!(gathered, slots);
            assert!(runs.len() * 3 < slots.len(), "{} runs of {} slots", runs.len(), slots.len());
        }
    }

    #[test]
    fn the_days_of_a_run_follow_each_other() {
        let stage = loft();
        for run in runs(&stage, &year(&stage)) {
            let (from, to) = run.dates();
            assert_eq!((to - from).num_days() as usize + 1, run.days());
            assert!(run.slots.iter().all(|slot| slot.hold() <= run.best().hold()));
            assert!(run.slots.iter().all(|slot| slot.light.class == run.best().light.class));
        }
    }

    #[test]
    fn morning_and_evening_are_two_runs() {
        let mut stage = field();
        stage.wish = wish((0.0, 360.0), (5.0, 15.0), SunOnMark::Any);
        let dates = [DateRange { from: on(2027, 2, 1), to: on(2027, 2, 5) }];
        let found = slots(&Sun::new(stage.site), &stage, &dates);
        let runs = runs(&stage, &found);
        assert_eq!(days(&found), 5);
        assert!(runs.iter().all(|run| (run.about < NaiveTime::from_hms_opt(12, 0, 0).unwrap())
            == (run.slots[0] == found[0])
            || run.days() < 5));
        assert!(runs.len() >= 2);
    }

    #[test]
    fn a_moved_clock_breaks_a_run() {
        let mut stage = field();
        stage.wish = wish((0.0, 360.0), (5.0, 15.0), SunOnMark::Any);
        let around = [DateRange { from: on(2027, 3, 24), to: on(2027, 4, 2) }];
        for run in runs(&stage, &slots(&Sun::new(stage.site), &stage, &around)) {
            assert!(run.dates().1 < on(2027, 3, 28) || run.dates().0 >= on(2027, 3, 28));
        }
    }

    #[test]
    fn orders() {
        let stage = loft();
        let mut all = runs(&stage, &year(&stage));
        sort(&stage, &mut all, Order::Hold);
        assert!(all.windows(2).all(|pair| pair[0].best().hold() >= pair[1].best().hold()));
        sort(&stage, &mut all, Order::Slack);
        assert!(all.windows(2).all(|pair| pair[0].least_slack(&stage) >= pair[1].least_slack(&stage)));
        sort(&stage, &mut all, Order::Date);
        assert!(all.windows(2).all(|pair| pair[0].dates().0 <= pair[1].dates().0));
    }
}
