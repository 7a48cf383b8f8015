//! The rest of a day: what a cloud and a late hour do to the demo's March day.

use super::*;
use crate::plan::today::backwards::SHORTEST_MOVE;
use crate::project::demo;
use crate::project::document::SavedSlot;
use crate::project::edit::{Edit, apply};
use crate::project::shoot::{Drive, Placed, Shoot};
use crate::project::taken::Taken;

const DATE: &str = "2027-03-18";

fn utc(name: &str) -> Zone {
    Zone::fixed(name, Duration::ZERO)
}

fn clock(time: &str) -> Instant {
    Instant::parse(&format!("{DATE}T{time}:00Z")).unwrap()
}

/// The demo with the first slot of that day saved for these set-ups.
fn planned(ids: &[&str]) -> Project {
    ids.iter().fold(demo::project(), |project, id| {
        let stage = crate::project::stage::of_set_up(&project, id, utc("UTC")).unwrap();
        let date = DATE.parse().unwrap();
        let slots = search::slots(&Sun::new(stage.site), &stage, &[DateRange { from: date, to: date }]);
        let span = slots[0].span;
        let slot = SavedSlot { id: format!("kept-{id}"), start: span.start(), end: span.end(), lens: None };
        apply(&project, Edit::SaveSlot { set_up: (*id).to_owned(), slot }).unwrap()
    })
}

fn ask(now: &str, sky: Sky) -> Ask {
    let at = Some("sail-loft".to_owned());
    Ask { now: clock(now), wrap: clock("19:30"), sky, meal_had: true, at }
}

fn fate(rest: &Rest, id: &str) -> Option<Fate> {
    rest.ones.iter().find(|one| one.id == id).map(|one| one.fate.clone())
}

#[test]
fn a_cloud_drops_what_needs_the_sun_and_names_three_dates() {
    let rest = planned(&["set-up-4a", "set-up-3a"]).rest_of_day(&ask("13:00", Sky::Overcast), &utc);
    let Some(Fate::Dropped(why, dates)) = fate(&rest, "set-up-4a") else { panic!("{rest:?}") };
    assert_eq!((why, dates.len()), ("needs the sun", 3));
    let days: Vec<_> = dates.iter().map(|span| utc("UTC").date(span.start()).to_string()).collect();
    assert!(days.windows(2).all(|pair| pair[0] < pair[1]) && days[0].as_str() > DATE, "{days:?}");
    // Its slot was in the morning; under a cloud all of the day does.
    assert!(matches!(fate(&rest, "set-up-3a"), Some(Fate::Added(_))), "{rest:?}");
}

#[test]
fn with_the_sun_back_the_plan_stands_again() {
    let rest = planned(&["set-up-4a", "set-up-3a"]).rest_of_day(&ask("13:00", Sky::Any), &utc);
    assert!(matches!(fate(&rest, "set-up-4a"), Some(Fate::Kept(_))), "{rest:?}");
}

#[test]
fn too_late_is_too_late() {
    let project = planned(&["set-up-4a"]);
    let end = project.set_up("set-up-4a").unwrap().1.saved[0].end;
    let late = Ask { now: end - Duration::from_minutes(20), ..ask("13:00", Sky::Any) };
    let rest = project.rest_of_day(&late, &utc);
    assert!(
        matches!(fate(&rest, "set-up-4a"), Some(Fate::Dropped("its light is over for today", _))),
        "{rest:?}"
    );
}

#[test]
fn what_is_shot_is_not_asked_for_again() {
    let shot = Taken { id: "s".to_owned(), at: clock("12:00"), note: String::new(), illuminance: None };
    let edit = Edit::PutShot { set_up: "set-up-4a".to_owned(), shot };
    let project = apply(&planned(&["set-up-4a"]), edit).unwrap();
    assert_eq!(fate(&project.rest_of_day(&ask("13:00", Sky::Any), &utc), "set-up-4a"), None);
}

#[test]
fn set_ups_never_overlap_and_leave_room_for_the_moves() {
    for (now, sky, meal_had) in
        [("08:00", Sky::Any, false), ("13:00", Sky::Overcast, false), ("15:00", Sky::Any, true)]
    {
        let project = planned(&["set-up-4a"]);
        let asked = Ask { meal_had, ..ask(now, sky) };
        let rest = project.rest_of_day(&asked, &utc);
        let mut done: Vec<(Span, &One)> = rest
            .ones
            .iter()
            .filter_map(|one| match one.fate {
                Fate::Kept(span) | Fate::Moved(span) | Fate::Added(span) => Some((span, one)),
                Fate::Dropped(..) => None,
            })
            .collect();
        done.sort_by_key(|(span, _)| span.start());
        assert!(!done.is_empty(), "{rest:?}");
        for pair in done.windows(2) {
            let gap = pair[1].0.start() - pair[0].0.end();
            let least = if pair[0].1.place == pair[1].1.place { 0.0 } else { f64::from(SHORTEST_MOVE) };
            assert!(gap.minutes() >= least, "{rest:?}");
        }
        for (span, one) in &done {
            let set_up = project.set_up(&one.id).unwrap().1;
            assert!(span.start() >= asked.now && span.end() <= asked.wrap);
            assert_eq!(span.duration().minutes(), f64::from(set_up.minutes));
        }
        let long = done.last().unwrap().0.end() - done[0].0.start();
        assert!(meal_had || rest.meal.is_some() || long.minutes() <= f64::from(UNTIL_MEAL), "{rest:?}");
    }
}

/// The longest gap between two places in the rest of the demo's day, from the loft on, when its drives take so long.
fn first_away(minutes: u16) -> Duration {
    let drive = |to: &str| Drive { from: "sail-loft".to_owned(), to: to.to_owned(), minutes };
    let shoot = Shoot { drives: ["salt-pans", "ferry-slip"].map(drive).into(), ..Shoot::default() };
    let edit = Edit::SetShoot { label: "drives", shoot: Box::new(shoot) };
    let rest = apply(&demo::project(), edit).unwrap().rest_of_day(&ask("08:00", Sky::Any), &utc);
    let away = rest.ones.iter().filter(|one| one.place != "Sail loft").filter_map(|one| match one.fate {
        Fate::Kept(span) | Fate::Moved(span) | Fate::Added(span) => Some(span.start() - clock("08:00")),
        Fate::Dropped(..) => None,
    });
    away.min().unwrap_or(Duration::DAY)
}

#[test]
fn moves_take_the_minutes_that_were_typed() {
    assert!(first_away(5) >= Duration::from_minutes(i64::from(SHORTEST_MOVE)));
    assert!(first_away(150) >= Duration::from_minutes(200), "50 min beside the drive");
}

#[test]
fn what_stands_in_the_plan_of_the_day_is_planned() {
    let placed = Placed { set_up: "set-up-4a".to_owned(), start: clock("18:00"), pinned: false };
    let shoot = Shoot { plan: vec![placed], ..Shoot::default() };
    let project = apply(&demo::project(), Edit::SetShoot { label: "plan", shoot: Box::new(shoot) }).unwrap();
    let fates = |sky| fate(&project.rest_of_day(&ask("13:00", sky), &utc), "set-up-4a");
    assert!(matches!(fates(Sky::Overcast), Some(Fate::Dropped("needs the sun", _))));
    assert!(matches!(fates(Sky::Any), Some(Fate::Kept(_) | Fate::Moved(_))));
}
