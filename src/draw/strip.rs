//! The horizon strip: bearing across, height up, with skyline, the sun's path and its hours, the sky that
//! openings let onto the mark, and the sun now.
//!
//! It knows no sun: it takes directions that were sampled elsewhere. Between two points of the skyline the edge
//! is straight in bearing and height; two points of the same bearing make an upright edge.

use super::labels::Free;
use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Point};
use super::window::{Spot, Window};
use crate::units::{Bearing, Degrees, Height};
use crate::words;

/// The paper: as wide as a phone.
const PAPER: Point = Point::new(390.0, 228.0);

/// Radius of the sun's ring; the true disc would be a dot.
const SUN: f64 = 9.0;

/// The heights end here.
const SCALE: f64 = 29.0;

/// Room that each sample of the path keeps free of labels.
const PATH_ROOM: f64 = 3.0;

/// The compass stands on this line.
const COMPASS: f64 = PAPER.y - 7.0;

/// Where the sun is at a full hour.
#[derive(Clone, Debug, PartialEq)]
pub struct Hour {
    /// Where.
    pub spot: Spot,
    /// "17".
    pub text: String,
}

/// What the strip shows; all of it may be empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Strip {
    /// The sun's path, sampled every few minutes, in order.
    pub path: Vec<Spot>,
    /// The full hours on it.
    pub hours: Vec<Hour>,
    /// Upper edge of what blocks the sky, clockwise; empty for a flat horizon.
    pub skyline: Vec<Spot>,
    /// Corners of each opening as the mark sees it.
    pub openings: Vec<Vec<Spot>>,
    /// Outlines of the parts of the sky in which the wish is met.
    pub wish: Vec<Vec<Spot>>,
    /// Where the lens looks.
    pub lens: Option<Bearing>,
    /// Where the sun is.
    pub now: Option<Spot>,
}

impl Strip {
    /// Width of the paper.
    pub const WIDTH: f64 = PAPER.x;

    /// The part of the sky that is shown: openings, wish, lens and the sun now, or else the whole path.
    pub fn window(&self) -> Window {
        let parts = self.openings.iter().chain(&self.wish).flatten().copied();
        let lens = self.lens.map(|bearing| Spot::new(bearing, Height::default()));
        let chosen: Vec<Spot> = parts.chain(self.now).chain(lens).collect();
        let up = |spot: &Spot| spot.height >= Height::default();
        if self.openings.is_empty() && self.wish.is_empty() {
            Window::around(self.path.iter().copied().filter(up).chain(chosen), PAPER)
        } else {
            Window::around(chosen.into_iter(), PAPER)
        }
    }

    /// The drawing.
    pub fn draw(&self) -> Drawing {
        let window = self.window();
        let mut drawing = Drawing::sized(PAPER.x, PAPER.y);
        let mut sky = Path::new();
        sky.rectangle(Point::default(), PAPER);
        drawing.fill(Paint::Sky, sky);
        let openings = outlines(&window, &self.openings);
        drawing.fill(Paint::Opening, openings.clone());
        drawing.fill(Paint::Wish, outlines(&window, &self.wish));
        drawing.stroke(Paint::Dashed, 1.2, openings);
        drawing.fill(Paint::Skyline, self.skyline_path(&window));
        self.add_scale(&mut drawing, &window);
        self.add_path(&mut drawing, &window);
        add_compass(&mut drawing, &window);
        self.add_lens(&mut drawing, &window);
        self.add_sun(&mut drawing, &window);
        drawing.text = self.words(&window);
        drawing
    }

    /// The strip in words: "horizon from S to NW, sun 251° WSW, 13° high".
    fn words(&self, window: &Window) -> String {
        let edge = |x: f64| words::compass_point(window.at(Point::new(x, 0.0)).bearing);
        let horizon = format!("horizon from {} to {}", edge(0.0), edge(PAPER.x));
        self.now.map_or_else(
            || horizon.clone(),
            |sun| {
                let height = words::degrees(Degrees::from_degrees(sun.height.degrees()));
                format!("{horizon}, sun {}, {height} high", words::bearing(sun.bearing))
            },
        )
    }

    /// From the left edge of the turn before to the right edge of the turn after, then along the foot.
    fn skyline_path(&self, window: &Window) -> Path {
        let flat = [Spot::new(window.at(Point::new(PAPER.x / 2.0, 0.0)).bearing, Height::default())];
        let around = if self.skyline.is_empty() { &flat[..] } else { &self.skyline };
        let once = window.line(around);
        let turn = window.whole_turn();
        let mut edge: Vec<Point> = Vec::with_capacity(3 * once.len() + 2);
        for shift in [-turn, 0.0, turn] {
            edge.extend(once.iter().map(|point| Point::new(point.x + shift, point.y)));
        }
        let (first, last) = (edge[0], edge[edge.len() - 1]);
        edge.push(Point::new(last.x, PAPER.y));
        edge.push(Point::new(first.x, PAPER.y));
        let mut path = Path::new();
        path.polygon(&edge);
        path
    }

    /// Height of the skyline's edge on the paper, straight between its points.
    fn skyline_at(&self, window: &Window, bearing: Bearing) -> f64 {
        let down = |height: Height| window.place(Spot::new(bearing, height)).y;
        let next = self.skyline.iter().zip(self.skyline.iter().cycle().skip(1));
        let mut found = self.skyline.first().map_or(down(Height::default()), |spot| down(spot.height));
        for (one, two) in next {
            let width = one.bearing.turn_to(two.bearing).positive().degrees();
            let turn = one.bearing.turn_to(bearing).positive().degrees();
            if turn < width {
                found = down(one.height) + (down(two.height) - down(one.height)) * turn / width;
            }
        }
        found
    }

    /// Heights at the left edge, every 10° or more.
    fn add_scale(&self, drawing: &mut Drawing, window: &Window) {
        let step = if window.top().degrees() > 55.0 { 20 } else { 10 };
        let edge = window.at(Point::new(SCALE / 2.0, 0.0)).bearing;
        let foot = self.skyline_at(window, edge);
        let mut ticks = Path::new();
        for height in (step..90).step_by(step as usize) {
            let y = window.place(Spot::new(edge, Height::clamped(f64::from(height)))).y;
            if y < 10.0 {
                break;
            }
            let ink = if y > foot { Ink::OnDark } else { Ink::Plain };
            if y < foot {
                ticks.polyline(&[Point::new(SCALE, y), Point::new(SCALE + 8.0, y)]);
            }
            drawing.label(Point::new(SCALE - 2.0, y + 4.0), format!("{height}°"), Anchor::End, ink);
        }
        drawing.stroke(Paint::Line, 1.2, ticks);
    }

    fn add_path(&self, drawing: &mut Drawing, window: &Window) {
        let mut line = Path::new();
        let mut free = Free::on(PAPER);
        for piece in window.lines(&self.path) {
            line.polyline(&piece);
            piece.iter().for_each(|point| free.take(*point, PATH_ROOM, PATH_ROOM));
        }
        drawing.stroke(Paint::Line, 1.8, line);
        let mut ticks = Path::new();
        free.take(Point::new(22.0, PAPER.y / 2.0), 44.0, PAPER.y);
        free.take(Point::new(PAPER.x / 2.0, COMPASS - 4.0), PAPER.x, 12.0);
        if let Some(sun) = self.now {
            free.take(window.place(sun), 2.0 * SUN + 6.0, 2.0 * SUN + 6.0);
        }
        let on_paper = |hour: &&Hour| window.place(hour.spot).y < COMPASS - 16.0;
        for hour in self.hours.iter().filter(on_paper) {
            let at = window.place(hour.spot);
            ticks.polyline(&[Point::new(at.x, at.y - 5.5), Point::new(at.x, at.y + 5.5)]);
            if let Some(middle) = free.beside(at, &hour.text) {
                let under = middle.y > self.skyline_at(window, window.at(middle).bearing);
                let ink = if under { Ink::OnDark } else { Ink::Plain };
                drawing.label(Point::new(middle.x, middle.y + 4.0), &*hour.text, Anchor::Middle, ink);
            }
        }
        drawing.stroke(Paint::Line, 1.8, ticks);
    }

    /// A small hood below the horizon's foot where the lens looks.
    fn add_lens(&self, drawing: &mut Drawing, window: &Window) {
        let Some(bearing) = self.lens else { return };
        let x = window.place(Spot::new(bearing, Height::default())).x;
        let mut path = Path::new();
        path.polygon(&[Point::new(x - 5.0, 0.0), Point::new(x + 5.0, 0.0), Point::new(x, 8.0)]);
        drawing.fill(Paint::Solid, path);
    }

    fn add_sun(&self, drawing: &mut Drawing, window: &Window) {
        let Some(sun) = self.now else { return };
        let mut disc = Path::new();
        disc.ellipse(window.place(sun), SUN, SUN);
        drawing.fill(Paint::Lit, disc.clone()).stroke(Paint::Accent, 4.0, disc);
    }
}

fn outlines(window: &Window, shapes: &[Vec<Spot>]) -> Path {
    let mut path = Path::new();
    for shape in shapes {
        for piece in window.lines(shape) {
            path.polygon(&piece);
        }
    }
    path
}

/// The points of the compass along the foot, every 45°.
fn add_compass(drawing: &mut Drawing, window: &Window) {
    for eighth in 0..8 {
        let bearing = Bearing::from_degrees(f64::from(eighth) * 45.0);
        let x = window.place(Spot::new(bearing, Height::default())).x;
        if (8.0..=PAPER.x - 8.0).contains(&x) {
            drawing.label(Point::new(x, COMPASS), words::compass_point(bearing), Anchor::Middle, Ink::OnDark);
        }
    }
}

#[cfg(test)]
#[path = "strip_tests.rs"]
mod tests;
