//! Where the camera may stand around the subject, seen from above with north up.
//!
//! The band is where the camera stands: paper-white where the wish holds long enough, hatched where it would look at a
//! background that must not be seen. The camera is drawn at the place that holds longest.

use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Point};
use crate::maths;
use crate::place::background::Background;
use crate::plan::search::only_here::LensArc;
use crate::units::{Bearing, Degrees};
use crate::words;

/// Side of the paper, its middle, and the two radii of the band: 230 of a phone 390 wide.
const SIDE: f64 = 230.0;
const CENTRE: Point = Point::new(115.0, 115.0);
const OUTER: f64 = 92.0;
const INNER: f64 = 66.0;

/// From one stroke of the hatching to the next, degrees.
const HATCH: f64 = 4.0;

/// Each whole degree that was tried stands for half a degree on both sides.
const HALF: f64 = 0.5;

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Around<'a> {
    /// Bearings of the lens that do, the one that holds longest first.
    pub arcs: &'a [LensArc],
    /// What stands behind the subject.
    pub backgrounds: &'a [Background],
}

impl Around<'_> {
    /// The drawing.
    pub fn draw(&self) -> Drawing {
        let mut drawing = Drawing::sized(SIDE, SIDE);
        let mut track = Path::new();
        add_band(&mut track, 0.0, 360.0);
        drawing.fill(Paint::Track, track);
        let mut lit = Path::new();
        for arc in self.arcs {
            let (from, width) = camera(arc.from, arc.to);
            add_band(&mut lit, from - HALF, (width + 2.0 * HALF).min(360.0));
        }
        drawing.fill(Paint::Lit, lit.clone()).stroke(Paint::Tick, 1.0, lit);
        drawing.stroke(Paint::Line, 1.2, self.hatching());
        self.add_camera(&mut drawing);
        add_compass(&mut drawing);
        drawing.text = self.words();
        drawing
    }

    /// "camera to 10°–48° of the subject, best 35° NE".
    fn words(&self) -> String {
        let Some(best) = self.arcs.first() else { return "the camera may stand nowhere".to_owned() };
        let stands = |arc: &LensArc| words::bearings_from_to(arc.from.reversed(), arc.to.reversed());
        let all: Vec<_> = self.arcs.iter().map(stands).collect();
        format!(
            "camera to {} of the subject, best {}",
            all.join(", "),
            words::bearing(best.best.lens.reversed())
        )
    }

    /// Slanting strokes across the band where the background is bad.
    fn hatching(&self) -> Path {
        let mut path = Path::new();
        for bad in self.backgrounds.iter().filter(|one| !one.good) {
            let (from, width) = camera(bad.from, bad.to);
            let width = if width == 0.0 { 360.0 } else { width };
            for stroke in 0..=(width / HATCH) as u32 {
                let bearing = from + f64::from(stroke) * HATCH;
                path.move_to(at(bearing, INNER)).line_to(at((bearing + HATCH).min(from + width), OUTER));
            }
        }
        path
    }

    /// The subject, and the camera at the best place with its line of sight.
    fn add_camera(&self, drawing: &mut Drawing) {
        let mut subject = Path::new();
        subject.ellipse(CENTRE, 6.0, 6.0);
        if let Some(best) = self.arcs.first() {
            let bearing = best.best.lens.reversed().degrees();
            let mut sight = Path::new();
            sight.move_to(at(bearing, (INNER + OUTER) / 2.0)).line_to(at(bearing, 12.0));
            drawing.stroke(Paint::Accent, 2.0, sight);
            subject.ellipse(at(bearing, (INNER + OUTER) / 2.0), 9.0, 9.0);
        }
        drawing.fill(Paint::Solid, subject);
    }
}

/// Where the camera stands, seen from the subject, when the lens looks from one bearing clockwise to another: begin
/// and width, degrees.
fn camera(from: Bearing, to: Bearing) -> (f64, f64) {
    (from.reversed().degrees(), from.turn_to(to).positive().degrees())
}

fn at(bearing: f64, radius: f64) -> Point {
    let (sin, cos) = maths::sin_cos(Degrees::from_degrees(bearing).radians());
    Point::new(CENTRE.x + radius * sin, CENTRE.y - radius * cos)
}

/// Part of the band, clockwise.
fn add_band(path: &mut Path, from: f64, width: f64) {
    // The unit circle of `turn` starts at x and runs to y: up to right.
    let place = |radius: f64| move |x: f64, y: f64| Point::new(CENTRE.x + radius * y, CENTRE.y - radius * x);
    let (start, end) = (Degrees::from_degrees(from).radians(), Degrees::from_degrees(from + width).radians());
    path.move_to(at(from, OUTER)).turn(&place(OUTER), start, end);
    if width >= 360.0 {
        path.close().move_to(at(from + width, INNER));
    } else {
        path.line_to(at(from + width, INNER));
    }
    path.turn(&place(INNER), end, start).close();
}

fn add_compass(drawing: &mut Drawing) {
    for (bearing, word) in [(0.0, "N"), (90.0, "E"), (180.0, "S"), (270.0, "W")] {
        let Point { x, y } = at(bearing, OUTER + 12.0);
        // The base line is a third of the letters' height below their middle.
        drawing.label(Point::new(x, y + 4.0), word, Anchor::Middle, Ink::Plain);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::class::{Class, Side};
    use crate::plan::search::only_here::LensHold;
    use crate::plan::search::slot::Light;
    use crate::plan::wish::lens::Behind;
    use crate::units::{Height, Spans, Vector};

    fn bearing(degrees: f64) -> Bearing {
        Bearing::from_degrees(degrees)
    }

    fn arc(from: f64, best: f64, to: f64) -> LensArc {
        let light = Light {
            class: Class::Back,
            side: Side::Right,
            off_lens: Degrees::default(),
            direction: Vector::towards(bearing(200.0), Height::clamped(10.0)),
        };
        LensArc {
            from: bearing(from),
            to: bearing(to),
            best: LensHold { lens: bearing(best), met: Spans::none(), behind: Behind::Unmarked },
            light,
            heights: (Height::clamped(12.0), Height::clamped(8.0)),
        }
    }

    #[test]
    fn the_camera_stands_across_from_where_it_looks() {
        let arcs = [arc(190.0, 215.0, 228.0)];
        let drawing = Around { arcs: &arcs, backgrounds: &[] }.draw();
        assert_eq!(drawing.text, "camera to 10°–48° of the subject, best 35° NE");
        // North-east is up and right.
        let place = at(35.0, 79.0);
        assert!(place.x > CENTRE.x && place.y < CENTRE.y);
        assert_eq!(drawing.layer(Paint::Lit).unwrap().path.text().matches('M').count(), 1);
        assert!(drawing.layer(Paint::Line).is_none());
    }

    #[test]
    fn bad_backgrounds_are_hatched_and_good_ones_are_not() {
        let background = |from: f64, to: f64, good| Background {
            from: bearing(from),
            to: bearing(to),
            good,
            why: String::new(),
        };
        let all = [background(350.0, 10.0, false), background(90.0, 120.0, true)];
        let drawing = Around { arcs: &[], backgrounds: &all }.draw();
        assert_eq!(drawing.text, "the camera may stand nowhere");
        // 20° in steps of 4°, both ends.
        assert_eq!(drawing.layer(Paint::Line).unwrap().path.text().matches('M').count(), 6);
        let round = [background(40.0, 40.0, false)];
        let drawing = Around { arcs: &[], backgrounds: &round }.draw();
        assert_eq!(drawing.layer(Paint::Line).unwrap().path.text().matches('M').count(), 91);
    }
}
