//! What goes out of the demo's plan, and what cannot get out: marks and formulas.

use std::sync::Arc;

use super::{calendar, csv, geojson, message, page};
use crate::place::zone::Zone;
use crate::plan::schedule::solver::Solver;
use crate::project::demo;
use crate::project::document::Project;
use crate::project::shoot::problem::brief;
use crate::project::shoot::sheet::{Kind, Sheet, sheets};
use crate::units::{Duration, Instant};
use crate::words::Clock;

fn utc(name: &str) -> Arc<Zone> {
    Arc::new(Zone::fixed(name, Duration::ZERO))
}

/// The demo, planned on three days of March.
fn planned() -> (Project, Vec<Sheet>) {
    let mut project = demo::project();
    project.shoot.days = ["2027-03-10", "2027-03-11", "2027-03-12"].map(|day| day.parse().unwrap()).to_vec();
    let brief = brief(&project, &utc);
    let mut solver = Solver::new(brief.problem.clone());
    while !solver.step(100_000) {}
    project.shoot.plan = brief.plan(&project.shoot, &solver.solution());
    let sheets = sheets(&project, &utc, Clock::TwentyFour);
    (project, sheets)
}

#[test]
fn the_demo_is_planned_without_a_conflict() {
    let (project, sheets) = planned();
    assert!(project.shoot.plan.len() >= 5 && !sheets.is_empty(), "{} set-ups", project.shoot.plan.len());
    let faults: Vec<&String> =
        sheets.iter().flat_map(|s| s.faults.iter().chain(s.rows.iter().flat_map(|r| &r.faults))).collect();
    assert!(faults.is_empty(), "{faults:?}");
    for sheet in &sheets {
        assert!(sheet.rows.windows(2).all(|pair| pair[0].span.1 <= pair[1].span.0), "{:?}", sheet.rows);
        assert!(
            sheet.rows.iter().all(|row| !matches!(row.kind, Kind::SetUp(_)) || row.sub.contains("ready by"))
        );
    }
}

#[test]
fn pinned_set_ups_stay_when_the_rest_is_solved_anew() {
    let (mut project, _) = planned();
    let first = project.shoot.plan[0].clone();
    project.shoot = project.shoot.pinned(&first.set_up, true);
    let brief = brief(&project, &utc);
    let mut solver = Solver::new(brief.problem.clone());
    while !solver.step(100_000) {}
    let again = brief.plan(&project.shoot, &solver.solution());
    let kept = again.iter().find(|placed| placed.set_up == first.set_up).unwrap();
    assert_eq!((kept.start, kept.pinned), (first.start, true));
}

#[test]
fn what_is_pinned_stays_where_nothing_fits() {
    let (mut project, _) = planned();
    let first = project.shoot.plan[0].clone();
    let night = first.start - Duration::from_minutes(14 * 60);
    project.shoot = project.shoot.moved(&first.set_up, night).pinned(&first.set_up, true);
    let brief = brief(&project, &utc);
    let mut solver = Solver::new(brief.problem.clone());
    while !solver.step(100_000) {}
    let again = brief.plan(&project.shoot, &solver.solution());
    assert_eq!(again.iter().find(|placed| placed.set_up == first.set_up).unwrap().start, night);
}

#[test]
fn moving_by_hand_shows_the_conflict_at_once() {
    let (mut project, _) = planned();
    let second = project.shoot.plan[1].clone();
    project.shoot = project.shoot.moved(&second.set_up, second.start + Duration::from_minutes(11 * 60));
    let faults: usize = sheets(&project, &utc, Clock::TwentyFour)
        .iter()
        .map(|sheet| sheet.faults.len() + sheet.rows.iter().map(|row| row.faults.len()).sum::<usize>())
        .sum();
    assert!(faults > 0);
}

#[test]
fn the_table_and_the_calendar_have_a_row_for_each() {
    let (project, sheets) = planned();
    let rows: usize = sheets.iter().map(|sheet| sheet.rows.len()).sum();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    assert_eq!(text(csv::csv(&project, &sheets).bytes).lines().count(), rows + 1);
    let made = Instant::parse("2027-01-01T00:00:00Z").unwrap();
    let ics = text(calendar::calendar(&project, &sheets, made).bytes);
    assert_eq!(ics.matches("BEGIN:VEVENT").count(), rows);
    assert!(ics.contains("BEGIN:VALARM") && ics.ends_with("END:VCALENDAR\r\n"));
    assert!(message::message(&project, &sheets).contains("Day 1 of"));
}

#[test]
fn a_title_cannot_carry_marks_into_the_page() {
    let (mut project, mut sheets) = planned();
    project.title = "<script>alert(1)</script>".to_owned();
    sheets[0].rows[1].title = "\"><img src=x>".to_owned();
    let html = String::from_utf8(page::page(&project, &sheets).bytes).unwrap();
    assert!(!html.contains("<script") && !html.contains("<img"));
    assert_eq!(html.matches("<section").count(), sheets.len());
}

#[test]
fn the_map_has_longitude_first() {
    let (project, _) = planned();
    let tree: serde_json::Value = serde_json::from_slice(&geojson::geojson(&project).bytes).unwrap();
    let first = &tree["features"][0]["geometry"]["coordinates"];
    assert!(first[0].as_f64().unwrap() < 0.0 && first[1].as_f64().unwrap() > 40.0);
}
