//! Set-ups and marks of the demo project, made ready to be searched.

use super::*;
use crate::place::blocker::{DayOfYear, Leaves};
use crate::place::opening::{Corner, Sighting};
use crate::place::skyline::Skyline;
use crate::plan::search::runs::days;
use crate::plan::search::slots;
use crate::plan::search::through_window::{Through, through};
use crate::plan::wish::DateRange;
use crate::project::{demo, start};
use crate::sky::sun::Sun;
use crate::units::Metres;
use chrono::NaiveDate;

fn utc() -> Zone {
    Zone::fixed("UTC", Duration::ZERO)
}

fn on(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

#[test]
fn every_set_up_of_the_demo_works_on_some_days() {
    let project = demo::project();
    let year = [DateRange { from: on(2027, 1, 1), to: on(2027, 12, 31) }];
    for (scene, set_up) in project.set_ups() {
        let stage = of_set_up(&project, &set_up.id, utc()).unwrap();
        let found = days(&slots(&Sun::new(stage.site), &stage, &year));
        println!("scene {} {}: {found} days", scene.number, set_up.name);
        assert!(found > 0, "scene {} {}", scene.number, set_up.name);
    }
}

#[test]
fn the_loft_has_openings_and_the_pans_have_none() {
    let project = demo::project();
    let stage = of_set_up(&project, "set-up-4a", utc()).unwrap();
    let openings = stage.openings.unwrap();
    assert!(openings.len() >= 2 && openings.iter().all(|opening| opening.uncertainty.degrees() > 0.0));
    assert_eq!(of_set_up(&project, "set-up-1a", utc()).unwrap().openings, None);
}

#[test]
fn a_house_hides_more_from_the_mark_that_is_nearer() {
    let mut location = demo::project().locations[1].as_ref().clone();
    let metres = Metres::from_metres;
    let mut house = start::blocker("house", &[], start::BLOCKER_SIZES[0]);
    (house.bearing, house.distance, house.height) =
        (Bearing::from_degrees(180.0), metres(20.0), metres(11.6));
    location.blockers = vec![house];
    let south = |y: f64| {
        let mark = Mark { face_height: metres(1.6), ..Mark::new("m", "m", [metres(0.0), metres(y)]) };
        let standing = Standing { location: &location, room: None, mark: Some(&mark) };
        around(&standing).in_leaf.height_at(Bearing::from_degrees(180.0)).degrees()
    };
    // 10 m above the eye: 45° from 10 m, 26.565° from 20 m.
    assert!((south(-10.0) - 45.0).abs() < 1e-6 && (south(0.0) - 26.565).abs() < 1e-3);
}

#[test]
fn what_is_missing_is_named() {
    let mut project = demo::project();
    assert_eq!(of_set_up(&project, "none", utc()).unwrap_err(), NotReady::NoSetUp("none".into()));
    let scene = std::sync::Arc::make_mut(&mut project.scenes[0]);
    let at = scene.set_ups[0].at.take();
    let id = scene.set_ups[0].id.clone();
    assert_eq!(of_set_up(&project, &id, utc()).unwrap_err(), NotReady::Nowhere);
    let gone = At { location: "gone".into(), ..at.unwrap() };
    std::sync::Arc::make_mut(&mut project.scenes[0]).set_ups[0].at = Some(gone.clone());
    assert_eq!(of_set_up(&project, &id, utc()).unwrap_err(), NotReady::Lost(gone));
}

#[test]
fn a_sighting_needs_no_room() {
    let project = demo::project();
    let location = &project.locations[1];
    let corner =
        |bearing, height| Corner { bearing: Bearing::from_degrees(bearing), height: Height::clamped(height) };
    let mut mark = location.marks[0].clone();
    mark.sighted = vec![Sighting {
        id: "west".into(),
        name: "the west window".into(),
        corners: vec![corner(235.0, 8.0), corner(262.0, 35.0)],
        wall_bearing: Some(Bearing::from_degrees(248.0)),
        bearing_uncertainty: Degrees::from_degrees(5.0),
    }];
    let standing = Standing { location, room: None, mark: Some(&mark) };
    let stage = at_mark(&standing, utc()).unwrap();
    let answer = through(&Sun::new(stage.site), &stage, on(2027, 3, 11));
    let Through::ThatDay(day) = answer else { panic!("{answer:?}") };
    assert_eq!(day.spans.len(), 1);
    mark.sighted[0].corners.truncate(1);
    let standing = Standing { location, room: None, mark: Some(&mark) };
    let error = at_mark(&standing, utc()).unwrap_err();
    assert_eq!(error.to_string(), "the sighting of 'the west window': two opposite corners are needed");
}

#[test]
fn a_bare_tree_hides_nothing_in_the_search_the_room_and_the_levels() {
    let mut project = demo::project();
    let day = |month, day| DayOfYear { month, day };
    let location = std::sync::Arc::make_mut(&mut project.locations[0]);
    let mut tree = start::blocker("tree", &[], start::BLOCKER_SIZES[3]);
    tree.bearing = Bearing::from_degrees(248.0);
    tree.leaves = Some(Leaves { on: day(4, 15), off: day(11, 1) });
    location.blockers = vec![tree];
    // Something stands around the room itself, too.
    let mut screen = start::screen("house", &location.rooms[0]);
    (screen.from, screen.to) = (Bearing::from_degrees(100.0), Bearing::from_degrees(120.0));
    location.rooms[0].screens.push(screen);
    let stage = of_set_up(&project, "set-up-4a", utc()).unwrap();
    let (_, set_up) = project.set_up("set-up-4a").unwrap();
    let standing = standing_of(&project, set_up).unwrap();
    let place = in_room(&standing, stage.clone()).unwrap();
    let face = face(standing.mark.unwrap());
    let subject = levels::of_set_up(&project, "set-up-4a", utc()).unwrap();
    let west = |line: &Skyline| line.height_at(Bearing::from_degrees(248.0)).degrees();
    for (date, leafy) in [(on(2027, 3, 11), false), (on(2027, 7, 11), true), (on(2027, 12, 1), false)] {
        let noon = utc().day(date).unwrap().middle();
        let today = place.on(date);
        let lines = [
            stage.skyline_at(noon),
            place.at(face).skyline_at(noon),
            &today.stage.skyline,
            &today.far.in_leaf,
            &today.at(face).skyline,
            &subject.sees_at(noon).skyline,
        ]
        .map(|line| west(line) > 20.0);
        assert_eq!(lines, [leafy; 6], "{date}");
        // The tree takes light from the bench: 12 m high, 15 m off, straight before the windows.
        let seen = &subject.sees_at(noon).view;
        assert_eq!(seen != &subject.sees.view, !leafy, "{date}");
    }
}
