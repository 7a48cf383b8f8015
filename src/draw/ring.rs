//! The wish ring: the subject in the middle, the camera below, and the arc where light may come from.
//!
//! Seen from above with the camera at the foot of the paper, so that camera right is right: 0° off the lens is
//! down, 90° right, 180° up. The edges of the arc are brackets to drag; with "either side" the mirror image has
//! brackets of its own that move the same edges.

use core::f64::consts::PI;

use super::arc::{Edge, mirrored_angle};
use super::ball::add_ball;
use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Hit, Point, Target};
use crate::light::class::class_seen_from_above;
use crate::light::relative::InLens;
use crate::maths;
use crate::plan::wish::Arc;
use crate::units::{Degrees, Vector};
use crate::words;

/// Side of the paper, the ring's centre, and its two radii: 206 of a phone 390 wide.
pub const SIDE: f64 = 230.0;
const CENTRE: Point = Point::new(115.0, 115.0);
const OUTER: f64 = 103.0;
const INNER: f64 = 78.0;

/// How far a bracket juts out of the band at both ends, and how long its feet are.
const JUT: f64 = 6.0;
const FOOT: f64 = 8.0;

/// Radius of the area of a bracket: a target of 44 px on a phone 390 wide.
const REACH: f64 = 22.0;

/// Half the height of the ball in the middle.
const BALL: f64 = 34.0;

/// The ring for an arc; `sun` is where the sun stands as the lens sees it, for the ball.
pub fn ring(arc: Arc, sun: Option<Vector<InLens>>) -> Drawing {
    let mut drawing = Drawing::sized(SIDE, SIDE);
    let band = |from: f64, to: f64| {
        let mut path = Path::new();
        add_band(&mut path, from, to);
        path
    };
    drawing.fill(Paint::Track, band(0.0, 360.0));
    let mut lit = Path::new();
    for (from, to) in lit_arcs(arc) {
        add_band(&mut lit, from, to);
    }
    drawing.fill(Paint::Lit, lit.clone()).stroke(Paint::Tick, 1.0, lit);
    drawing.stroke(Paint::Tick, 1.0, ticks());
    add_camera(&mut drawing);
    add_ball(&mut drawing, CENTRE, BALL, sun);
    add_words(&mut drawing);
    add_brackets(&mut drawing, arc);
    drawing.text = format!("light from {}", words_of(arc));
    drawing
}

/// Off the lens, at a point of the paper, in [0°, 360°).
///
/// ```
/// # use slantlight::draw::{ring::angle_at, Point};
/// assert_eq!(angle_at(Point::new(200.0, 115.0)).degrees(), 90.0);
/// ```
pub fn angle_at(point: Point) -> Degrees {
    Degrees::from_radians(maths::atan2(point.x - CENTRE.x, point.y - CENTRE.y)).positive()
}

/// "112°–165°, either side".
pub fn words_of(arc: Arc) -> String {
    if is_full(arc) {
        return "all round".to_owned();
    }
    let side = if arc.either_side { ", either side" } else { "" };
    format!("{}–{}{side}", words::degrees(arc.from), words::degrees(arc.to.positive()))
}

/// Name of the arc's middle in the trade's words: "¾ back".
pub fn class_of(arc: Arc) -> &'static str {
    let middle = (arc.from.degrees() + arc.to.degrees()) / 2.0;
    class_seen_from_above(Degrees::from_degrees(middle)).word()
}

fn is_full(arc: Arc) -> bool {
    arc.to.degrees() - arc.from.degrees() >= 360.0
}

/// A point of the ring.
fn at(off: f64, radius: f64) -> Point {
    let (sin, cos) = maths::sin_cos(Degrees::from_degrees(off).radians());
    Point::new(CENTRE.x + radius * sin, CENTRE.y + radius * cos)
}

/// The arc and its mirror image, each from one angle up to another.
fn lit_arcs(arc: Arc) -> Vec<(f64, f64)> {
    let (from, to) = (arc.from.degrees(), arc.to.degrees());
    let mut arcs = vec![(from, to)];
    if arc.either_side && !is_full(arc) && Degrees::from_degrees(from + to).positive().degrees() != 0.0 {
        arcs.push((-to, -from));
    }
    arcs
}

/// Part of the band between two angles.
fn add_band(path: &mut Path, from: f64, to: f64) {
    let place = |radius: f64| {
        // The unit circle of `turn` starts at x and runs to y: down to right.
        move |x: f64, y: f64| Point::new(CENTRE.x + radius * y, CENTRE.y + radius * x)
    };
    let (start, end) = (Degrees::from_degrees(from).radians(), Degrees::from_degrees(to).radians());
    path.move_to(at(from, OUTER)).turn(&place(OUTER), start, end);
    if to - from >= 360.0 {
        path.close().move_to(at(to, INNER));
    } else {
        path.line_to(at(to, INNER));
    }
    path.turn(&place(INNER), end, start).close();
}

/// Every 15° but at the camera.
fn ticks() -> Path {
    let mut path = Path::new();
    for step in 1..24 {
        let off = f64::from(step) * 15.0;
        path.move_to(at(off, INNER - 6.0)).line_to(at(off, INNER - 2.0));
    }
    path
}

/// Body and hood, the lens towards the subject.
fn add_camera(drawing: &mut Drawing) {
    let (x, top) = (CENTRE.x, CENTRE.y + INNER + 1.0);
    let mut path = Path::new();
    path.rectangle(Point::new(x - 7.5, top), Point::new(x + 7.5, top + 20.0));
    let hood = [(-7.5, -8.5), (7.5, -8.5), (3.5, 0.0), (-3.5, 0.0)];
    path.polygon(&hood.map(|(dx, dy)| Point::new(x + dx, top + dy)));
    drawing.fill(Paint::Solid, path);
}

fn add_words(drawing: &mut Drawing) {
    let places =
        [(180.0, "back"), (90.0, "side"), (270.0, "side"), (45.0, "¾"), (315.0, "¾"), (0.0, "front")];
    for (off, word) in places {
        let Point { x, y } = at(off, INNER - 22.0);
        // The base line is a third of the letters' height below their middle.
        drawing.label(Point::new(x, y + 4.0), word, Anchor::Middle, Ink::Plain);
    }
}

/// The brackets of the arc's edges and of their mirror images, and where to touch them.
fn add_brackets(drawing: &mut Drawing, arc: Arc) {
    let mut path = Path::new();
    for mirrored in [false, true] {
        if mirrored && lit_arcs(arc).len() < 2 {
            continue;
        }
        for edge in [Edge::From, Edge::To] {
            let off = mirrored_angle(edge.of(arc), mirrored).degrees();
            // The feet point into the arc.
            let inwards = if (edge == Edge::From) == mirrored { -1.0 } else { 1.0 };
            add_bracket(&mut path, off, inwards);
            drawing.hits.push(hit(edge, mirrored, off));
        }
    }
    drawing.stroke(Paint::Accent, 5.0, path);
}

fn add_bracket(path: &mut Path, off: f64, inwards: f64) {
    let foot = |radius: f64| at(off + inwards * FOOT / radius * 180.0 / PI, radius);
    path.move_to(foot(OUTER + JUT)).line_to(at(off, OUTER + JUT));
    path.line_to(at(off, INNER - JUT)).line_to(foot(INNER - JUT));
}

fn hit(edge: Edge, mirrored: bool, off: f64) -> Hit {
    let end = if edge == Edge::From { "from" } else { "to" };
    let image = if mirrored { ", other side" } else { "" };
    Hit {
        target: Target::ArcEdge { edge, mirrored },
        at: at(off, (INNER + OUTER) / 2.0),
        reach: REACH,
        name: format!("light {end}{image}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn arc(from: f64, to: f64, either_side: bool) -> Arc {
        Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side }
    }

    fn near(one: Point, two: Point) -> bool {
        one.distance(two) < 1e-9
    }

    #[test]
    fn the_camera_is_below_and_its_right_is_right() {
        assert!(near(at(0.0, 50.0), Point::new(115.0, 165.0)));
        assert!(near(at(90.0, 50.0), Point::new(165.0, 115.0)));
        assert!(near(at(180.0, 50.0), Point::new(115.0, 65.0)));
    }

    #[test]
    fn either_side_has_four_brackets_and_two_arcs() {
        let drawing = ring(arc(112.0, 165.0, true), None);
        assert_eq!(drawing.hits.len(), 4);
        let lit = drawing.layer(Paint::Lit).unwrap().path.text();
        assert_eq!(lit.matches('M').count(), 2);
        assert_eq!(drawing.text, "light from 112°–165°, either side");
        assert_eq!(class_of(arc(112.0, 165.0, true)), "¾ back");
        assert!(near(drawing.hits[0].at, at(112.0, 90.5)) && near(drawing.hits[2].at, at(-112.0, 90.5)));
    }

    #[test]
    fn an_arc_that_is_its_own_mirror_is_drawn_once() {
        let drawing = ring(arc(150.0, 210.0, true), None);
        assert_eq!(drawing.hits.len(), 2);
        assert_eq!(drawing.layer(Paint::Lit).unwrap().path.text().matches('M').count(), 1);
    }

    #[test]
    fn all_round_is_the_whole_band() {
        let drawing = ring(arc(0.0, 360.0, false), None);
        assert_eq!(
            drawing.layer(Paint::Lit).unwrap().path.text(),
            drawing.layer(Paint::Track).unwrap().path.text()
        );
        assert_eq!(drawing.text, "light from all round");
    }

    #[test]
    fn a_touch_takes_the_nearest_edge() {
        let drawing = ring(arc(100.0, 115.0, false), None);
        let touched = |off: f64| drawing.touched(at(off, 90.0));
        let edge = |edge| Some(Target::ArcEdge { edge, mirrored: false });
        assert_eq!(touched(106.0), edge(Edge::From));
        assert_eq!(touched(109.0), edge(Edge::To));
        assert_eq!(touched(0.0), None);
    }

    proptest! {
        #[test]
        fn angle_there_and_back(off in 0.0..359.9f64, radius in 5.0..140.0f64) {
            prop_assert!((angle_at(at(off, radius)).degrees() - off).abs() < 1e-6);
        }

        #[test]
        fn targets_are_large_enough_for_a_thumb(from in 0.0..360.0f64, width in 10.0..360.0f64) {
            for hit in ring(arc(from, from + width, true), None).hits {
                prop_assert!(2.0 * hit.reach >= 44.0);
            }
        }
    }
}
