//! The cutting room of the demo, against the levels of each of its set-ups taken two by two.

use super::*;
use crate::plan::kit::{Placed, Side};
use crate::plan::levels::Levels;
use crate::project::demo;
use crate::units::{Duration, Instant, Metres, Spans};

const SETTINGS: (Clock, Units) = (Clock::TwentyFour, Units::Metric);

fn utc() -> Zone {
    let parse = |text: &str| Instant::parse(text).unwrap();
    let years = Span::new(parse("2026-01-01T00:00:00Z"), parse("2029-01-01T00:00:00Z")).unwrap();
    Zone::by_asking("UTC", years, |_| Some(Duration::ZERO)).unwrap()
}

fn march() -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 3, 11).unwrap()
}

/// The demo, with a white board close to the shadow side of the second set-up of scene 4.
fn bounced(distance: Option<f64>) -> Project {
    let mut project = demo::project();
    let scene = std::sync::Arc::make_mut(&mut project.scenes[3]);
    scene.set_ups[1].rig.placed = distance.map_or_else(Vec::new, |distance| {
        let distance = Metres::from_metres(distance);
        vec![Placed { distance, side: Side::Left, ..Placed::usual("gear-3") }]
    });
    project
}

fn told(project: &Project, set_up: &str) -> Vec<String> {
    lines(project, set_up, (&utc(), march()), SETTINGS).unwrap()
}

/// Minutes of a line's "for 1 h 12 min".
fn minutes(line: &str) -> f64 {
    let words = line.split(" for ").nth(1).and_then(|rest| rest.split(':').next()).unwrap_or("0");
    let mut numbers = words.split(' ').filter_map(|word| word.parse::<f64>().ok());
    let (first, second) = (numbers.next().unwrap_or(0.0), numbers.next());
    if words.contains(" h") { first * 60.0 + second.unwrap_or(0.0) } else { first }
}

/// The longest time in which takes cut together, each set-up with its own lens and kit: from the levels of every minute
/// of the light that all of them have, and the handbook's four sentences for every pair.
fn by_pairs(project: &Project) -> f64 {
    let scene = &project.scenes[3];
    let all = lit(project, &scene.set_ups[0].id, &utc());
    let sun = Sun::new(all[0].stage.site);
    let day = calendar::whole(&utc(), DateRange { from: march(), to: march() }).unwrap();
    let light: Spans = all.iter().map(|one| met(&sun, &one.stage, day)).reduce(|a, b| a.and(&b)).unwrap();
    let mut best = 0;
    for span in light.iter() {
        let count = span.duration().minutes() as i64;
        let takes: Vec<Vec<[f64; 4]>> = (0..=count)
            .map(|n| {
                let at = span.start() + Duration::from_minutes(n);
                let direction = sun.apparent(at);
                let of = |one: &Lit<'_>| {
                    let sky = sky_of(one.set_up.wish.sky);
                    let levels = Levels::of(&one.subject, &one.subject.hour(&sun, at, sky));
                    let (bright, shadow) = (levels.bright().total().lux(), levels.shadow().total().lux());
                    let kelvin =
                        crate::light::colour::correlated::correlated(levels.bright().colour().unwrap());
                    [
                        direction.bearing().degrees(),
                        maths::tan(direction.height().radians()),
                        maths::log2(bright / shadow),
                        1e6 / kelvin.unwrap().temperature.kelvin(),
                    ]
                };
                all.iter().map(of).collect()
            })
            .collect();
        let limit = scene.match_limit;
        let cut = |a: &[f64; 4], b: &[f64; 4]| {
            (a[0] - b[0]).abs() <= limit.class_angle.degrees()
                && (a[1] / b[1]).max(b[1] / a[1]) <= 1.0 + limit.shadow.fraction()
                && (a[2] - b[2]).abs() <= limit.ratio.stops()
                && (a[3] - b[3]).abs() <= limit.colour.mired()
        };
        for start in 0..takes.len() {
            let go = |end: &usize| {
                let before = takes[start..=*end].iter().flatten();
                before.clone().all(|one| takes[*end].iter().all(|other| cut(one, other)))
            };
            best = best.max((start..takes.len()).take_while(go).last().map_or(0, |end| end - start));
        }
    }
    best as f64
}

#[test]
fn each_set_up_is_held_by_its_own_lens_and_kit() {
    let mut found = Vec::new();
    for distance in [None, Some(1.6), Some(0.6)] {
        let project = bounced(distance);
        let line = told(&project, "set-up-4a").remove(1);
        assert!(
            line.starts_with("Takes of all 2 set-ups of this scene, each by its own lens and lamps,"),
            "{line}"
        );
        // Levels change once a minute there, and not where this light begins.
        assert!((minutes(&line) - by_pairs(&project)).abs() <= 2.0, "{line} against {}", by_pairs(&project));
        found.push(minutes(&line));
    }
    // What stands at the other set-up alone changes what the scene holds, and not what the one shown does.
    assert!(found.iter().any(|one| *one != found[0]), "{found:?}");
    assert_eq!(told(&bounced(None), "set-up-4a")[0], told(&bounced(Some(0.6)), "set-up-4a")[0]);
}

#[test]
fn a_set_up_alone_holds_for_itself() {
    let project = demo::project();
    let lines = told(&project, "set-up-8a");
    assert!(lines[0].starts_with("Light as wished ") || lines[0].starts_with("No light"), "{lines:?}");
    assert!(!lines[1].contains("set-ups of this scene"), "{lines:?}");
    assert!(lit(&project, "set-up-4a", &utc()).len() == 2 && lit(&project, "none", &utc()).is_empty());
    assert_eq!(super::lines(&project, "none", (&utc(), march()), SETTINGS), None);
}

#[test]
fn the_other_marks_come_by_distance() {
    let project = demo::project();
    for (_, set_up) in project.set_ups() {
        let marks = other_marks(&project, &set_up.id, &utc());
        let at = set_up.at.as_ref().unwrap();
        let standing = project.standing(at).unwrap();
        let all = standing.room.map_or(&standing.location.marks, |room| &room.marks);
        assert_eq!(marks.len(), all.len() - 1);
        assert!(marks.iter().all(|(name, _)| *name != standing.mark.unwrap().name));
    }
}
