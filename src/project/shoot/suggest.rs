//! Dates worth choosing: each adds the light of as many set-ups as it can that no earlier one has.

use std::collections::BTreeSet;
use std::collections::HashMap;

use chrono::NaiveDate;

use super::problem::{Zones, lit};
use crate::plan::calendar;
use crate::project::document::Project;

/// How far ahead is looked when the project has no dates of its own: two months. Our own choice.
const AHEAD: u32 = 60;

/// Most dates that are suggested. Our own choice.
const MOST: usize = 5;

/// A few dates, in order: of the project's own, else of the weeks from `today` on.
pub fn suggested(project: &Project, zones: Zones<'_>, today: NaiveDate) -> Vec<NaiveDate> {
    let mut asked = project.clone();
    asked.shoot.days = candidates(project, today);
    let mut by_date: HashMap<NaiveDate, BTreeSet<String>> = HashMap::new();
    for one in lit(&asked, zones) {
        let Some(stage) = &one.stage else { continue };
        for span in one.open.iter().filter(|span| span.duration() >= stage.takes) {
            by_date.entry(stage.zone.date(span.start())).or_default().insert(one.set_up.clone());
        }
    }
    let (mut chosen, mut met) = (Vec::new(), BTreeSet::new());
    while chosen.len() < MOST {
        let gain = |date: &&NaiveDate| by_date[*date].difference(&met).count();
        let order = |date: &&NaiveDate| (gain(date), core::cmp::Reverse(**date));
        let Some(best) = by_date.keys().max_by_key(order).copied().filter(|date| gain(&date) > 0) else {
            break;
        };
        met.extend(by_date[&best].iter().cloned());
        chosen.push(best);
    }
    crate::order::by(&mut chosen, Ord::cmp);
    with_neighbours(chosen, &asked.shoot.days)
}

/// A day may not hold all that has light on it: each date gets the next one beside it, then the one after that, since dawn
/// does not follow dusk without a rest.
fn with_neighbours(mut chosen: Vec<NaiveDate>, among: &[NaiveDate]) -> Vec<NaiveDate> {
    let all = chosen.clone();
    for (date, by) in [1, 2].iter().flat_map(|by| all.iter().map(move |date| (*date, *by))) {
        let next = calendar::later(date, by);
        if chosen.len() < MOST && among.contains(&next) && !chosen.contains(&next) {
            chosen.push(next);
        }
    }
    crate::order::by(&mut chosen, Ord::cmp);
    chosen
}

fn candidates(project: &Project, today: NaiveDate) -> Vec<NaiveDate> {
    let own: Vec<NaiveDate> = project
        .dates
        .iter()
        .flat_map(|range| {
            let days = calendar::days_between(range.from, range.to).clamp(0, i64::from(AHEAD));
            (0..=days).map(|day| calendar::moved(range.from, day))
        })
        .collect();
    if own.is_empty() { (1..=AHEAD).map(|day| calendar::later(today, day)).collect() } else { own }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::place::zone::Zone;
    use crate::project::demo;
    use crate::units::Duration;

    #[test]
    fn the_demo_gets_a_few_dates_with_light() {
        let zones = |name: &str| Arc::new(Zone::fixed(name, Duration::ZERO));
        let mut project = demo::project();
        let dates = suggested(&project, &zones, "2027-03-01".parse().unwrap());
        assert!((1..=MOST).contains(&dates.len()), "{dates:?}");
        project.shoot.days = dates;
        assert!(lit(&project, &zones).iter().filter(|one| !one.open.is_empty()).count() >= 6);
    }
}
