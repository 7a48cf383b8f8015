//! What blocks the sky through the year: trees that lose their leaves open it on one day and close it on another.
//!
//! Every year is alike. It begins anew on each day on which some tree gains or loses its leaves; where none does, there are
//! no seasons. Days are those of the place's calendar, from midnight to midnight.

use chrono::{Datelike, NaiveDate};

use super::blocker::{Blocker, DayOfYear, Eye};
use super::skyline::Skyline;

/// What blocks the sky from a mark, by the date; or anything else that follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Seasons<T = Skyline> {
    /// First days of the year's parts, in order, each with what blocks the sky from then on; never empty.
    parts: Vec<(DayOfYear, T)>,
}

/// What blocks the sky from a point, on any date.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Around {
    /// With all trees in leaf.
    pub in_leaf: Skyline,
    /// By the date; `None` for the same all year.
    pub seasons: Option<Seasons>,
}

impl Around {
    /// What an eye sees of a far skyline and of things near by.
    pub fn of(own: &Skyline, blockers: &[Blocker], eye: Eye) -> Self {
        let seen = blockers.iter().filter_map(|one| one.seen_from(eye));
        let in_leaf = seen.fold(own.clone(), |all, one| all.or(&one));
        Self { in_leaf, seasons: Seasons::around(own, blockers, eye) }
    }

    /// On a date.
    pub fn on(&self, date: NaiveDate) -> &Skyline {
        self.seasons.as_ref().map_or(&self.in_leaf, |seasons| seasons.on(date))
    }

    /// With every skyline of the year changed.
    pub fn map(&self, change: impl Fn(&Skyline) -> Skyline) -> Self {
        let seasons = self.seasons.as_ref().map(|seasons| seasons.map(&change));
        Self { in_leaf: change(&self.in_leaf), seasons }
    }
}

impl Seasons {
    /// What an eye sees of a far skyline and of things near by; `None` where nothing changes with the date.
    pub fn around(own: &Skyline, blockers: &[Blocker], eye: Eye) -> Option<Self> {
        let mut days: Vec<DayOfYear> =
            blockers.iter().filter_map(|one| one.leaves).flat_map(|leaves| [leaves.on, leaves.off]).collect();
        crate::order::by(&mut days, Ord::cmp);
        days.dedup();
        if days.is_empty() {
            return None;
        }
        let seen: Vec<_> = blockers.iter().map(|one| (one.leaves, one.seen_from(eye))).collect();
        let on = |day: DayOfYear| {
            let dense = seen.iter().filter(|(leaves, _)| leaves.is_none_or(|leaves| leaves.are_on(day)));
            dense.filter_map(|(_, line)| line.as_ref()).fold(own.clone(), |all, one| all.or(one))
        };
        Some(Self { parts: days.into_iter().map(|day| (day, on(day))).collect() })
    }
}

impl<T> Seasons<T> {
    /// What holds on a date. Before the year's first change the last one of the year before holds.
    pub fn on(&self, date: NaiveDate) -> &T {
        let today = DayOfYear::of(date);
        let begun = self.parts.partition_point(|(from, _)| *from <= today);
        &self.parts[begun.checked_sub(1).unwrap_or(self.parts.len() - 1)].1
    }

    /// What follows from each of them.
    pub fn map<U>(&self, change: impl Fn(&T) -> U) -> Seasons<U> {
        Seasons { parts: self.parts.iter().map(|(day, held)| (*day, change(held))).collect() }
    }

    /// Dates after `from`, up to `to`, on which another skyline begins to hold.
    pub fn changes(&self, from: NaiveDate, to: NaiveDate) -> Vec<NaiveDate> {
        let years = from.year()..=to.year();
        let in_year = |year: i32| self.parts.iter().filter_map(move |(day, _)| day.in_year(year));
        years.flat_map(in_year).filter(|date| from < *date && *date <= to).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::blocker::{Kind, Leaves};
    use super::*;
    use crate::units::{Bearing, Degrees, Metres};

    fn tree(bearing: f64, leaves: Option<((u8, u8), (u8, u8))>) -> Blocker {
        let day = |(month, day)| DayOfYear { month, day };
        Blocker {
            id: "t".to_owned(),
            name: "plane tree".to_owned(),
            kind: Kind::Tree,
            bearing: Bearing::from_degrees(bearing),
            distance: Metres::from_metres(10.0),
            width: Metres::from_metres(6.0),
            depth: Metres::from_metres(0.0),
            height: Metres::from_metres(9.0),
            turned: Degrees::default(),
            leaves: leaves.map(|(on, off)| Leaves { on: day(on), off: day(off) }),
        }
    }

    fn on(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn agrees_with_every_date_of_its_own() {
        // Two trees of the north, one of the south, an evergreen, and one that waits for a leap day.
        let trees = [
            tree(90.0, Some(((4, 15), (11, 1)))),
            tree(180.0, Some(((5, 1), (10, 20)))),
            tree(240.0, Some(((10, 1), (4, 20)))),
            tree(270.0, None),
            tree(300.0, Some(((2, 29), (12, 31)))),
        ];
        let (own, eye) = (Skyline::default(), Eye::default());
        let seasons = Seasons::around(&own, &trees, eye).unwrap();
        let days = on("2027-01-01").iter_days().take(731);
        for date in days {
            let dense =
                trees.iter().filter(|one| one.leaves.is_none_or(|all| all.are_on(DayOfYear::of(date))));
            let seen = dense.filter_map(|one| one.seen_from(eye)).fold(own.clone(), |all, one| all.or(&one));
            assert_eq!(*seasons.on(date), seen, "{date}");
        }
        let changes = seasons.changes(on("2027-04-15"), on("2028-04-15"));
        assert_eq!(changes[0], on("2027-04-20"));
        assert!(changes.contains(&on("2028-02-29")) && changes.ends_with(&[on("2028-04-15")]));
        for date in changes {
            assert_ne!(seasons.on(date), seasons.on(date.pred_opt().unwrap()), "{date}");
        }
    }

    #[test]
    fn evergreens_never_change() {
        assert_eq!(Seasons::around(&Skyline::default(), &[tree(90.0, None)], Eye::default()), None);
    }

    #[test]
    fn the_leap_day_is_the_first_of_march_in_other_years() {
        let seasons =
            Seasons::around(&Skyline::default(), &[tree(90.0, Some(((2, 29), (11, 1))))], Eye::default())
                .unwrap();
        let spring = |year: i32| {
            let from = NaiveDate::from_ymd_opt(year, 1, 2).unwrap();
            seasons.changes(from, NaiveDate::from_ymd_opt(year, 6, 1).unwrap())
        };
        assert_eq!((spring(2027), spring(2028)), (vec![on("2027-03-01")], vec![on("2028-02-29")]));
    }
}
