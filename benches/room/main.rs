//! How fast a room is: a frame while something is dragged, and the sky through an opening beside a plain quadrature.
//!
//! Ours and the quadrature take turns; thread CPU time, median of 15 rounds. `cargo bench --bench room` prints times and
//! ratios with the bars they must hold. The frame rate in a browser is `tests/journeys/frames.mjs`.
#![allow(clippy::print_stdout, reason = "a bench talks")]
#![allow(clippy::unwrap_used, reason = "a bench may stop at the first surprise")]

#[path = "../sky/clock.rs"]
mod clock;

use std::hint::black_box;

use clock::{Bar, Rounds};
use slantlight::light::in_room::InRoom;
use slantlight::light::patch::{beams, of_beams};
use slantlight::light::sky_model::SkyModel;
use slantlight::light::skylight::{Facing, Inside};
use slantlight::place::aperture::face;
use slantlight::place::mark::Mark;
use slantlight::place::opening::Opening;
use slantlight::place::room::Room;
use slantlight::place::skyline::Skyline;
use slantlight::units::{Bearing, Duration, Height, Metres, Vector, World};

/// Times each thing is done in a round.
const TIMES: usize = 2000;

/// Samples of the quadrature along each side.
const GRID: usize = 32;

/// A loft with three openings, two of them in the sun, and two marks.
fn loft() -> Room {
    let m = Metres::from_metres;
    let mut room = Room::rectangle("r", "loft", [8.0, 6.0, 3.4].map(m), Bearing::from_degrees(248.0));
    let window = |wall: usize, offset: f64| Opening {
        reveal: m(0.35),
        ..Opening::rectangle("o", "window", wall, [offset, 0.9, 1.2, 1.7].map(m))
    };
    room.openings = vec![window(0, 4.6), window(0, 1.8), window(1, 2.0)];
    room.marks = vec![Mark::new("a", "a", [3.6, 2.6].map(m)), Mark::new("b", "b", [1.1, 1.6].map(m))];
    room
}

fn sun(number: usize) -> Vector<World> {
    let along = number as f64 / TIMES as f64;
    Vector::towards(Bearing::from_degrees(215.0 + 50.0 * along), Height::clamped(30.0 - 20.0 * along))
}

/// All that a frame needs of the light: beams, patches, marks, reach and drift.
fn frame(room: &Room, number: usize) -> f64 {
    let (now, then) = (sun(number), sun(number + 1));
    let to_sun = room.room_from_world(now);
    let beams = beams(room, to_sun);
    let patches = of_beams(room, &beams, to_sun);
    let lit = room.marks.iter().filter(|mark| beams.iter().any(|beam| beam.reaches(face(mark)))).count();
    let numbers = InRoom::of(room, [now, then], Duration::from_minutes(1));
    patches.len() as f64 + lit as f64 + numbers.floor_m2
}

fn table(number: usize) -> Facing {
    let along = number as f64 / TIMES as f64;
    Facing { at: Vector::new(1.0 + 6.0 * along, 1.0 + 4.0 * along, 0.85), normal: Vector::UP }
}

fn closed_form(room: &Room, number: usize) -> f64 {
    Inside { room, line: &Skyline::default() }.sky_bare(table(number), &SkyModel::OVERCAST).ratio()
}

/// The same by samples over the outer rectangle: those that the inner one lets through.
fn quadrature(room: &Room, number: usize) -> f64 {
    let Facing { at, .. } = table(number);
    let each = room.openings.iter().map(|opening| {
        let frame = room.frame(opening).unwrap();
        let (along, up) = (frame.outer[1] - frame.outer[0], frame.outer[3] - frame.outer[0]);
        let depth = frame.wall.outward.dot(frame.inner[0] - at);
        let piece = along.norm() * up.norm() / (GRID * GRID) as f64;
        let (whole, mut sum) = (opening.whole(), 0.0);
        for column in 0..GRID {
            for row in 0..GRID {
                let share = |number: usize| (number as f64 + 0.5) / GRID as f64;
                let way = frame.outer[0] + along * share(column) + up * share(row) - at;
                let far = frame.wall.outward.dot(way);
                let inner = at + way * (depth / far) - frame.wall.from;
                let (x, z) = (frame.wall.along.dot(inner), inner.z);
                let passes = x >= whole.left.metres()
                    && x <= whole.right.metres()
                    && z >= whole.low.metres()
                    && z <= whole.high.metres();
                if passes && way.z > 0.0 {
                    let square = way.dot(way);
                    let rise = way.z / square.sqrt();
                    sum += (1.0 + 2.0 * rise) / 3.0 * rise * far / (square * square.sqrt());
                }
            }
        }
        sum * piece
    });
    each.sum::<f64>() / (7.0 * core::f64::consts::PI / 9.0)
}

fn main() {
    let room = loft();
    let mut rounds = Rounds::default();
    let every = |work: &dyn Fn(&Room, usize) -> f64| {
        (0..TIMES).map(|number| work(&room, black_box(number))).sum::<f64>()
    };
    for _ in 0..15 {
        rounds.time("frames", 1.0, || every(&frame));
        rounds.time("sky through three openings, closed form", 1.0, || every(&closed_form));
        rounds.time("the same, 32 × 32 samples an opening", 1.0, || every(&quadrature));
    }
    rounds.print();
    let per = |name| rounds.median(name) / TIMES as f64;
    let (ours, theirs) =
        (per("sky through three openings, closed form"), per("the same, 32 × 32 samples an opening"));
    println!("\nan opening and point: closed form {:.0} ns, samples {:.0} ns", ours / 3.0, theirs / 3.0);
    println!("\n{:58} {:>10} {:>10}", "bar", "measured", "hold");
    Bar::at_most("a frame, µs", per("frames") / 1000.0, 10.0).print();
    Bar::at_least("sky component against 32 × 32 samples", theirs / ours, 40.0).print();
    let worst = (0..TIMES)
        .map(|number| (closed_form(&room, number) - quadrature(&room, number)).abs())
        .fold(0.0, f64::max);
    println!("largest difference of the two: {worst:.6} of the light outdoors (the samples' error)");
}
