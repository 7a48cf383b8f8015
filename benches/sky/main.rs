//! How fast the sky is, beside the crate that carries the full method, in one process.
//!
//! Ours and theirs take turns; thread CPU time, median of 15 rounds. The year is 2026 at 48.21 N 16.37 E, 190 m.
//! `cargo bench --bench sky` prints times and ratios with the bars they must hold. For instruction counts,
//! `count vectors`, `count set-ups`, `count skyline` and `count nothing` do one thing once, to be run under callgrind.
#![allow(clippy::print_stdout, reason = "a bench talks")]
#![allow(clippy::unwrap_used, reason = "a bench may stop at the first surprise")]

mod clock;
mod scenes;
mod theirs;

use std::hint::black_box;

use clock::{Bar, Rounds};
use scenes::{SETUPS, Scene, cold, slots};
use slantlight::plan::search;
use slantlight::plan::search::met::met;
use slantlight::plan::search::weeks::Weeks;
use slantlight::plan::search::year;
use slantlight::plan::stage::Stage;
use slantlight::sky::events::RISE_AND_SET;
use slantlight::sky::search::Limb;
use slantlight::sky::sun::Sun;
use slantlight::units::{Vector, World};

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    match arguments.iter().position(|argument| argument == "count") {
        Some(at) => count(arguments.get(at + 1).map_or("nothing", String::as_str)),
        None => time(),
    }
}

fn vectors(scene: &Scene, sun: Sun) -> f64 {
    let sum =
        sun.minutes(scene.year).fold(Vector::<World>::new(0.0, 0.0, 0.0), |sum, direction| sum + direction);
    sum.norm()
}

fn bearings_and_heights(scene: &Scene, sun: Sun) -> f64 {
    sun.minutes(scene.year)
        .fold(0.0, |sum, direction| sum + direction.bearing().degrees() + direction.height().degrees())
}

fn rise_and_set(scene: &Scene, sun: Sun) -> usize {
    let passage = sun.passage(RISE_AND_SET, scene.year);
    passage.up().len() + passage.down().len()
}

/// Set-ups that a skyline cuts.
fn slots_with_skyline(scene: &Scene, sun: Sun) -> usize {
    let lit = |region| sun.spans_in(core::slice::from_ref(region), Limb::Centre, scene.year);
    let found = scene.setups.iter();
    found.map(|region| sun.above(&scene.skyline, Limb::Upper, &lit(region)).as_slice().len()).sum()
}

/// Slots of a set-up in the year, warm.
fn lens_slots(stage: &Stage) -> usize {
    search::slots(&Sun::new(stage.site), stage, &[scenes::dates()]).len()
}

/// Rows of the year's sheet, warm, looked through week by week as a page does.
fn sheet(stage: &Stage) -> usize {
    let (sun, mut weeks) = (Sun::new(stage.site), Weeks::new(&stage.zone, scenes::dates()));
    while !weeks.step(|week| met(&sun, stage, week)) {}
    year::sheet(&sun, stage, scenes::dates(), &weeks.light()).len()
}

fn above(scene: &Scene, sun: Sun) -> usize {
    (0..SETUPS).map(|_| sun.spans_above(&scene.skyline, Limb::Upper, scene.year).as_slice().len()).sum()
}

fn time() {
    let scene = Scene::new();
    let warm = Sun::new(scene.site);
    black_box(vectors(&scene, warm));
    let [fixed, free, in_picture] = scenes::lenses();
    let mut rounds = Rounds::default();
    for _ in 0..15 {
        rounds.time("SPA, one direction", theirs::PART, || theirs::spa_year(&scene));
        rounds.time("Grena3, one direction", theirs::PART, || theirs::grena_year(&scene));
        rounds.time("year of vectors, cold", 1.0, || vectors(&scene, Sun::with(cold(), scene.site)));
        rounds.time("year of vectors, warm", 1.0, || vectors(&scene, warm));
        rounds.time("year of bearings and heights, cold", 1.0, || {
            bearings_and_heights(&scene, Sun::with(cold(), scene.site))
        });
        rounds.time("any instant, 525,600 times", 1.0, || {
            Sun::minute_marks(scene.year).fold(Vector::UP, |sum, at| sum + warm.direction(at))
        });
        rounds.time("SPA, rise and set of a year", theirs::DAYS_PART, || theirs::rise_and_set(&scene));
        rounds.time("rise and set of a year, warm", 1.0, || rise_and_set(&scene, warm));
        rounds.time("rise and set of a year, cold", 1.0, || {
            rise_and_set(&scene, Sun::with(cold(), scene.site))
        });
        rounds.time("1 set-up × year, warm", 1.0, || slots(&scene, warm, 1));
        rounds.time("10 set-ups × year, warm", 1.0, || slots(&scene, warm, SETUPS));
        rounds.time("10 set-ups × year, cold", 1.0, || slots(&scene, Sun::with(cold(), scene.site), SETUPS));
        rounds.time("10 set-ups with a skyline × year, warm", 1.0, || slots_with_skyline(&scene, warm));
        rounds.time("10 skylines of 360 points × year, warm", 1.0, || above(&scene, warm));
        rounds.time("a set-up of the demo × year, fixed lens", 1.0, || lens_slots(&fixed));
        rounds.time("the same, lens free to any bearing", 1.0, || lens_slots(&free));
        rounds.time("the same, sun in the picture", 1.0, || lens_slots(&in_picture));
        rounds.time("the same, the sheet of the year", 1.0, || sheet(&in_picture));
        rounds.time("SPA, 10 set-ups × year, scan", theirs::DAYS_PART, || theirs::scan(&scene));
    }
    rounds.print();
    bars(&rounds);
    println!(
        "largest angle to SPA over the year: {:.7}° (hold 0.00002°)",
        theirs::largest_error(&scene, warm)
    );
}

fn bars(rounds: &Rounds) {
    let year = 525_600.0;
    let spa = rounds.median("SPA, one direction") / year;
    let per = |name| rounds.median(name);
    println!("\n{:58} {:>10} {:>10}", "bar", "measured", "hold");
    for (name, theirs, ours, hold) in [
        ("year of vectors with nodes, against SPA", spa * year, per("year of vectors, cold"), 800.0),
        ("  against Grena3", per("Grena3, one direction"), per("year of vectors, cold"), 30.0),
        (
            "bearing and height with nodes, against SPA",
            spa * year,
            per("year of bearings and heights, cold"),
            100.0,
        ),
        ("  against Grena3", per("Grena3, one direction"), per("year of bearings and heights, cold"), 4.0),
        (
            "rise and set of a year, warm, against SPA",
            per("SPA, rise and set of a year"),
            per("rise and set of a year, warm"),
            600.0,
        ),
        ("  cold", per("SPA, rise and set of a year"), per("rise and set of a year, cold"), 50.0),
        (
            "10 set-ups × year, cold, against a scan with SPA",
            per("SPA, 10 set-ups × year, scan"),
            per("10 set-ups × year, cold"),
            300.0,
        ),
    ] {
        Bar::at_least(name, theirs / ours, hold).print();
    }
    let fixed = per("a set-up of the demo × year, fixed lens");
    Bar::at_most(
        "a free lens, in searches of a fixed one",
        per("the same, lens free to any bearing") / fixed,
        8.0,
    )
    .print();
    Bar::at_most("10 set-ups × year, cold, in SPA calls", per("10 set-ups × year, cold") / spa, 1500.0)
        .print();
}

fn count(what: &str) {
    let scene = Scene::new();
    let sun = Sun::new(scene.site);
    // Fills the store, so that the second time counts the steps alone.
    black_box(rise_and_set(&scene, sun));
    black_box(vectors(&scene, sun));
    black_box(slots(&scene, sun, 1));
    match what {
        "vectors" => {
            println!("{} minutes, {}", sun.minutes(scene.year).len(), black_box(vectors(&scene, sun)))
        }
        "set-ups" => println!("{} set-up-days, {}", SETUPS * 365, black_box(slots(&scene, sun, SETUPS))),
        "skyline" => println!("{} set-up-days, {}", SETUPS * 365, black_box(slots_with_skyline(&scene, sun))),
        "nothing" => println!("nothing"),
        other => println!("'{other}' cannot be counted: vectors, set-ups, skyline, nothing"),
    }
}
