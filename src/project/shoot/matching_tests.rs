//! The limits of the shot, kept by the plan: beside the minutes that the light itself says.

use std::sync::Arc;

use super::conflicts::Reading;
use super::day::runs;
use super::matching::Bound;
use super::problem::brief;
use super::typing::{Field, typed};
use crate::place::zone::Zone;
use crate::plan::schedule::solver::Solver;
use crate::project::demo;
use crate::project::document::Project;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Instant, Mired, Share, Span, Stops};
use crate::words::Clock;

fn utc(name: &str) -> Arc<Zone> {
    Arc::new(Zone::fixed(name, Duration::ZERO))
}

/// The demo's fourth scene alone on two days, held to a turn of the light of so many degrees and nothing else.
fn demo(turn: f64) -> Project {
    let mut project = demo::project();
    project.shoot.days = ["2027-03-23", "2027-03-24"].map(|day| day.parse().unwrap()).to_vec();
    project.scenes.retain(|scene| scene.number == "4");
    let limit = &mut Arc::make_mut(&mut project.scenes[0]).match_limit;
    limit.class_angle = Degrees::from_degrees(turn);
    limit.shadow = Share::clamped(1.0);
    limit.ratio = Stops::from_stops(20.0);
    limit.colour = Mired::from_mired(500.0);
    project
}

fn planned(mut project: Project) -> Project {
    let brief = brief(&project, &utc);
    let mut solver = Solver::new(brief.problem.clone());
    while !solver.step(100_000) {}
    project.shoot.plan = brief.plan(&project.shoot, &solver.solution());
    project
}

/// When the set-ups of the fourth scene are shot.
fn spans(project: &Project) -> Vec<Span> {
    let scene = &project.scenes[0];
    let of = |set_up: &crate::project::document::SetUp| {
        let start = project.shoot.placed(&set_up.id)?.start;
        Span::new(start, start + Duration::from_minutes(i64::from(set_up.minutes)))
    };
    scene.set_ups.iter().filter_map(of).collect()
}

fn conflicts(project: &Project) -> usize {
    let (lit, zone) = (super::problem::lit(project, &utc), utc("UTC"));
    let all = runs(project, &lit, &zone);
    let read = Reading { zone, style: Clock::TwentyFour };
    super::conflicts::conflicts(project, &lit, &all, &read).iter().map(Vec::len).sum()
}

/// How far the sun's bearing goes over all of the spans, asked of the sun alone.
fn turned(project: &Project, spans: &[Span]) -> f64 {
    let sun = Sun::new(project.locations[0].site);
    let ends = spans.iter().flat_map(|span| [span.start(), span.end()]);
    let bearings: Vec<f64> = ends.map(|at: Instant| sun.apparent(at).bearing().degrees()).collect();
    bearings.iter().copied().fold(f64::MIN, f64::max) - bearings.iter().copied().fold(f64::MAX, f64::min)
}

#[test]
fn the_plan_keeps_to_the_limits_of_the_shot() {
    for turn in [8.0, 10.0, 12.0, 20.0] {
        let project = planned(demo(turn));
        let found = spans(&project);
        assert_eq!(found.len(), 2, "{turn}°");
        assert!(turned(&project, &found) <= turn + 0.02, "{turn}°: {}", turned(&project, &found));
        assert_eq!(conflicts(&project), 0);
    }
}

#[test]
fn the_demo_keeps_to_its_own_limits() {
    let mut project = demo(15.0);
    project.scenes = demo::project().scenes.into_iter().filter(|scene| scene.number == "4").collect();
    let project = planned(project);
    assert_eq!(
        (project.shoot.bound(&project.scenes[0]), spans(&project).len(), conflicts(&project)),
        (Bound::AsShot, 2, 0)
    );
}

#[test]
fn what_cannot_match_is_left_over_and_by_hand_it_is_a_conflict() {
    // Twenty-five minutes turn the light further than that.
    let mut project = planned(demo(2.0));
    assert_eq!(spans(&project).len(), 1);
    let scene = project.scenes[0].clone();
    let missing = scene.set_ups.iter().find(|one| project.shoot.placed(&one.id).is_none()).unwrap();
    let other = spans(&project)[0];
    project.shoot = project.shoot.moved(&missing.id, other.end());
    assert!(conflicts(&project) > 0);
}

#[test]
fn a_scene_is_bound_by_a_word_or_by_a_limit_that_was_set() {
    let mut project = demo(10.0);
    let scene = project.scenes[0].clone();
    let bound = |project: &Project| project.shoot.bound(&scene);
    assert_eq!(bound(&project), Bound::AsShot);
    let field = Field::Match(scene.id.clone());
    for (text, is) in
        [("no", Bound::Free), ("45", Bound::Clock(45)), ("yes", Bound::AsShot), ("", Bound::AsShot)]
    {
        project.shoot = typed(&project, &field, text).unwrap();
        assert_eq!(bound(&project), is, "{text}");
    }
    assert!(project.shoot.matches.is_empty());
    assert!(typed(&project, &field, "perhaps").is_err());
}
