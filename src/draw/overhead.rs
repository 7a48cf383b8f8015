//! A set-up from above, to scale, for the people who rig it: walls, openings and patches, the mark, the camera with
//! what it sees, and where the sun stands at the start, in the middle and at the end.
//!
//! Room axes lie square on the paper, in the open north is up. All that is drawn is at one scale, that of the bar.

mod of_set_up;

pub use of_set_up::{Style, of_set_up};

use super::paint::{Ink, Paint};
use super::path::Path;
use super::plan::{add_head, scale_bar};
use super::shape::{Anchor, Drawing, Point};
use crate::light::patch::{Surface, patches};
use crate::place::room::Room;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector, World};
use crate::words::{self, Units};

/// The paper, of the shape of A4.
const PAPER: Point = Point::new(420.0, 594.0);

/// Kept free above for the title, at the sides and below the drawing.
const HEAD: f64 = 60.0;
const SIDE: f64 = 40.0;

/// From one line of words to the next.
const LINE: f64 = 17.0;

/// Half of the narrowest bar that is seen, and as much at each side as half of a line of words beside a thing takes.
const SMALLEST: f64 = 5.0;
const WORDS: f64 = 90.0;

/// From the middle of the mark to the tip of the nose.
const NOSE: f64 = 16.0;

/// Tail and head of a sun's arrow, from the mark.
const ARROW: [f64; 2] = [92.0, 26.0];

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Overhead<'a> {
    /// The room; `None` in the open.
    pub room: Option<&'a Room>,
    /// The mark, in axes of the room, or east and north of the location.
    pub mark: [Metres; 2],
    /// What the mark is called.
    pub mark_name: &'a str,
    /// Where the subject's nose points.
    pub facing: Bearing,
    /// Where the camera looks.
    pub lens: Bearing,
    /// Camera to subject.
    pub distance: Metres,
    /// What the lens sees across.
    pub across: Degrees,
    /// The sun at the start, in the middle and at the end, and the time in words.
    pub suns: [(Vector<World>, String); 3],
    /// What is rigged about the mark.
    pub rigged: Vec<Rigged>,
    /// What the set-up is called.
    pub title: String,
    /// What else the crew must know, a line each.
    pub lines: Vec<String>,
    /// Units of the scale bar.
    pub units: Units,
}

/// What stands about the mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece {
    /// It shines: a disc.
    Lamp,
    /// It throws light back or takes it: a thick bar.
    Board,
    /// It lets light through: a dashed bar.
    Frame,
}

/// A lamp, a board, a frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Rigged {
    /// What it is.
    pub piece: Piece,
    /// How wide.
    pub width: Metres,
    /// From the mark to it.
    pub bearing: Bearing,
    /// How far.
    pub distance: Metres,
    /// "White board", then "1.6 m", or of a lamp "1.6 m 50 %, T2.8 alone, 3,200 K".
    pub words: [String; 2],
}

/// Where things lie on the paper.
struct Sheet<'a> {
    room: Option<&'a Room>,
    scale: f64,
    origin: Point,
}

impl Sheet<'_> {
    fn place(&self, point: Vector<InRoom>) -> Point {
        Point::new(self.origin.x + point.x * self.scale, self.origin.y - point.y * self.scale)
    }

    /// The way a level direction runs, in the axes of the paper, y up.
    fn way(&self, bearing: Bearing) -> Vector<InRoom> {
        let level = bearing.level();
        self.room.map_or(Vector::new(level.x, level.y, 0.0), |room| room.room_from_world(level))
    }

    /// A point so far from another on the paper, towards a bearing.
    fn toward(&self, from: Point, bearing: Bearing, far: f64) -> Point {
        let way = self.way(bearing);
        Point::new(from.x + way.x * far, from.y - way.y * far)
    }
}

impl Overhead<'_> {
    /// The drawing.
    pub fn drawing(&self) -> Drawing {
        let mut drawing = Drawing::sized(PAPER.x, PAPER.y);
        let sheet = self.sheet();
        self.add_room(&mut drawing, &sheet);
        self.add_camera(&mut drawing, &sheet);
        self.add_suns(&mut drawing, &sheet);
        self.add_rig(&mut drawing, &sheet);
        self.add_mark(&mut drawing, &sheet);
        self.add_words(&mut drawing, &sheet);
        drawing.text = [std::slice::from_ref(&self.title), &self.lines].concat().join(". ");
        drawing
    }

    /// The scale and place at which everything fits.
    fn sheet(&self) -> Sheet<'_> {
        let unit = Sheet { room: self.room, scale: 1.0, origin: Point::default() };
        let way = unit.way(self.lens) * self.distance.metres();
        let corners = self.room.iter().flat_map(|room| &room.floor).map(|[x, y]| flat([*x, *y]));
        // As far behind the subject as the camera is before it.
        let all: Vec<_> =
            corners.chain([flat(self.mark), flat(self.mark) - way, flat(self.mark) + way]).collect();
        let range = |read: fn(&Vector<InRoom>) -> f64| {
            all.iter().map(read).fold([f64::MAX, f64::MIN], |[low, high], at| [low.min(at), high.max(at)])
        };
        let (x, y) = (range(|point| point.x), range(|point| point.y));
        let foot = HEAD + LINE * self.lines.len() as f64;
        let scale = |paper: f64, [low, high]: [f64; 2]| paper / (high - low).max(1.0);
        let height = PAPER.y - HEAD - foot - 2.0 * SIDE;
        let scale = scale(PAPER.x - 2.0 * SIDE, x).min(scale(height, y));
        let middle = Point::new(PAPER.x / 2.0, HEAD + SIDE + height / 2.0);
        let origin =
            Point::new(middle.x - (x[0] + x[1]) / 2.0 * scale, middle.y + (y[0] + y[1]) / 2.0 * scale);
        Sheet { scale, origin, ..unit }
    }

    fn add_room(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        let Some(room) = self.room else { return };
        let mut floor = Path::new();
        floor.polygon(&room.floor.iter().map(|corner| sheet.place(flat(*corner))).collect::<Vec<_>>());
        drawing.fill(Paint::Floor, floor.clone());
        let mut lit = Path::new();
        let sun = room.room_from_world(self.suns[1].0);
        for patch in patches(room, sun) {
            if patch.surface == Surface::Floor {
                lit.polygon(&patch.outline.iter().map(|point| sheet.place(*point)).collect::<Vec<_>>());
            }
        }
        drawing.fill(Paint::Lit, lit).stroke(Paint::Line, 3.0, floor);
        let (mut openings, mut roof) = (Path::new(), Path::new());
        for opening in &room.openings {
            let Some(frame) = room.frame(opening) else { continue };
            if opening.in_ceiling {
                roof.polygon(&frame.inner.map(|corner| sheet.place(corner)));
                continue;
            }
            let thick = frame.wall.outward * (6.0 / sheet.scale);
            let (one, two) = (frame.inner[0], frame.inner[1]);
            openings.polygon(&[one, two, two + thick, one + thick].map(|corner| sheet.place(corner)));
        }
        drawing.fill(Paint::Opening, openings.clone()).stroke(Paint::Line, 1.2, openings);
        drawing.stroke(Paint::Dashed, 1.2, roof);
    }

    fn add_camera(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        let subject = sheet.place(flat(self.mark));
        let far = self.distance.metres() * sheet.scale;
        let camera = sheet.toward(subject, self.lens.reversed(), far);
        let edge = |by: f64| {
            let half = Degrees::from_degrees(by * self.across.degrees() / 2.0);
            sheet.toward(camera, self.lens.turned(half), 2.0 * far)
        };
        let mut seen = Path::new();
        seen.polyline(&[edge(-1.0), camera, edge(1.0)]);
        let mut body = Path::new();
        body.ellipse(camera, 5.0, 5.0);
        drawing.stroke(Paint::Dashed, 1.2, seen).fill(Paint::Solid, body);
        // On the side away from the subject.
        let (by, anchor) = if camera.x < subject.x { (-9.0, Anchor::End) } else { (9.0, Anchor::Start) };
        drawing.label(Point::new(camera.x + by, camera.y + 4.0), "camera", anchor, Ink::Plain);
    }

    fn add_suns(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        let subject = sheet.place(flat(self.mark));
        let mut arrows = Path::new();
        for (place, (sun, when)) in self.suns.iter().enumerate() {
            let [tail, head] = ARROW.map(|far| sheet.toward(subject, sun.bearing(), far));
            arrows.polyline(&[tail, head]);
            add_head(&mut arrows, tail, head);
            // The first time stands on the side the sun comes from, the last on the side it goes to.
            let beside = [-1.0, 0.0, 1.0][place.min(2)];
            let across = sheet.way(sun.bearing().turned(Degrees::from_degrees(90.0))) * beside;
            let foot = sheet.toward(subject, sun.bearing(), ARROW[0] + 14.0);
            let at = Point::new(foot.x + 10.0 * across.x, foot.y - 10.0 * across.y);
            let anchor = match across.x {
                x if x > 0.3 => Anchor::Start,
                x if x < -0.3 => Anchor::End,
                _ => Anchor::Middle,
            };
            if beside != 0.0 {
                let words =
                    format!("{when}, {}", words::degrees(Degrees::from_degrees(sun.height().degrees())));
                drawing.label(at, words, anchor, Ink::Plain);
            }
        }
        drawing.stroke(Paint::Accent, 2.0, arrows);
    }

    /// A bar as wide as the thing square to its light, a disc for a lamp, and a line to the mark.
    fn add_rig(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        let subject = sheet.place(flat(self.mark));
        let [mut boards, mut frames, mut lamps, mut ways] = core::array::from_fn(|_| Path::new());
        for one in &self.rigged {
            let at = sheet.toward(subject, one.bearing, one.distance.metres() * sheet.scale);
            let across = one.bearing.turned(Degrees::from_degrees(90.0));
            let half = (one.width.metres() * sheet.scale / 2.0).max(SMALLEST);
            let bar = [sheet.toward(at, across, -half), sheet.toward(at, across, half)];
            if one.piece == Piece::Lamp {
                lamps.ellipse(at, SMALLEST, SMALLEST);
            }
            if one.piece == Piece::Frame { &mut frames } else { &mut boards }.polyline(&bar);
            ways.polyline(&[at, subject]);
            self.add_rig_words(drawing, (subject, at), &one.words);
        }
        drawing.stroke(Paint::Tick, 1.0, ways).stroke(Paint::Line, 3.0, boards);
        drawing.stroke(Paint::Dashed, 3.0, frames).fill(Paint::Solid, lamps);
    }

    /// Two lines on the side away from the mark, on the paper.
    fn add_rig_words(&self, drawing: &mut Drawing, (subject, at): (Point, Point), words: &[String; 2]) {
        let [lower, upper] =
            if at.y < subject.y { [-8.0 - LINE, -8.0] } else { [8.0 + LINE * 0.7, 8.0 + LINE * 1.7] };
        let x = at.x.clamp(WORDS, PAPER.x - WORDS);
        for (line, by) in words.iter().zip([lower, upper]).filter(|(line, _)| !line.is_empty()) {
            drawing.label(Point::new(x, at.y + by), &**line, Anchor::Middle, Ink::Plain);
        }
    }

    fn add_mark(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        let at = sheet.place(flat(self.mark));
        let mut ring = Path::new();
        ring.ellipse(at, 8.0, 8.0);
        let mut nose = Path::new();
        let across = self.facing.turned(Degrees::from_degrees(90.0));
        let [left, right] =
            [-5.0, 5.0].map(|far| sheet.toward(sheet.toward(at, self.facing, 7.0), across, far));
        nose.polyline(&[left, sheet.toward(at, self.facing, NOSE), right]);
        drawing.stroke(Paint::Accent, 2.4, ring).stroke(Paint::Accent, 2.4, nose);
        drawing.label(Point::new(at.x + 12.0, at.y + 14.0), self.mark_name, Anchor::Start, Ink::Plain);
    }

    fn add_words(&self, drawing: &mut Drawing, sheet: &Sheet<'_>) {
        drawing.label(Point::new(SIDE / 2.0, 30.0), &*self.title, Anchor::Start, Ink::Plain);
        let middle = Point::new(PAPER.x - 28.0, 36.0);
        let [from, to] = [-14.0, 14.0].map(|far| sheet.toward(middle, Bearing::default(), far));
        let mut north = Path::new();
        north.polyline(&[from, to]);
        add_head(&mut north, from, to);
        drawing.stroke(Paint::Line, 1.6, north);
        let letter = sheet.toward(middle, Bearing::default(), 22.0);
        drawing.label(Point::new(letter.x, letter.y + 4.0), "N", Anchor::Middle, Ink::Plain);
        let below = PAPER.y - 14.0 - LINE * self.lines.len() as f64;
        scale_bar(drawing, sheet.scale, Point::new(SIDE / 2.0, below - 8.0), self.units);
        for (place, line) in self.lines.iter().enumerate() {
            let y = below + LINE * (place as f64 + 1.0);
            drawing.label(Point::new(SIDE / 2.0, y), &**line, Anchor::Start, Ink::Plain);
        }
    }
}

fn flat([x, y]: [Metres; 2]) -> Vector<InRoom> {
    Vector::new(x.metres(), y.metres(), 0.0)
}

#[cfg(test)]
#[path = "overhead_tests.rs"]
mod tests;
