//! The room from above: openings, marks, patches, the lens, the sun and north.
//!
//! Room axes lie square on the paper, x right and y up, so that a drag along a wall is a drag along the paper;
//! north is an arrow.

use super::axonometric::wall_to_see;
use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Hit, Point, Target};
use crate::light::patch::{Surface, patches};
use crate::maths;
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector, World};
use crate::words::{self, Units};

/// The paper: 358 of a phone 390 wide.
const PAPER: Point = Point::new(358.0, 311.0);

/// Kept free at each edge: room for the sun's arrow and the scale.
const EDGE: f64 = 48.0;

/// Radius of a mark, and of an area to touch: 44 px on a phone 390 wide.
const MARK: f64 = 7.0;
const REACH: f64 = 22.0;

/// Lens and sun, and how lengths are printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scene {
    /// Towards the sun; `None` while it is not up.
    pub sun: Option<Vector<World>>,
    /// A mark by its place in the list, the way the lens looks at it, and how wide.
    pub lens: Option<(usize, Bearing, Degrees)>,
    /// Units of the scale bar.
    pub units: Units,
}

/// A plan: where the room lies on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    scale: f64,
    origin: Point,
}

impl Plan {
    /// The plan that fits a room onto the paper.
    pub fn of(room: &Room) -> Self {
        let (mut low, mut high) = (Point::new(f64::MAX, f64::MAX), Point::new(f64::MIN, f64::MIN));
        for [x, y] in &room.floor {
            (low.x, low.y) = (low.x.min(x.metres()), low.y.min(y.metres()));
            (high.x, high.y) = (high.x.max(x.metres()), high.y.max(y.metres()));
        }
        let room_for = |paper: f64, size: f64| (paper - 2.0 * EDGE) / size.max(1e-6);
        let scale = room_for(PAPER.x, high.x - low.x).min(room_for(PAPER.y, high.y - low.y));
        let origin = Point::new(
            PAPER.x / 2.0 - (low.x + high.x) / 2.0 * scale,
            PAPER.y / 2.0 + (low.y + high.y) / 2.0 * scale,
        );
        Self { scale, origin }
    }

    /// Where a point of the room is on the paper.
    pub fn place(&self, point: Vector<InRoom>) -> Point {
        Point::new(self.origin.x + point.x * self.scale, self.origin.y - point.y * self.scale)
    }

    /// The point of the floor, x and y in room axes, at a point of the paper.
    pub fn floor_at(&self, point: Point) -> [Metres; 2] {
        let floor = self.read(point);
        [floor.x, floor.y].map(Metres::from_metres)
    }

    /// How far along a wall the nearest point of it lies, from its first corner.
    pub fn along_at(&self, point: Point, wall: &Wall) -> Metres {
        let along = (self.read(point) - wall.from).dot(wall.along);
        Metres::from_metres(along.clamp(0.0, wall.length.metres()))
    }

    fn read(&self, point: Point) -> Vector<InRoom> {
        Vector::new((point.x - self.origin.x) / self.scale, (self.origin.y - point.y) / self.scale, 0.0)
    }
}

/// The drawing; an empty sheet for a room without walls.
pub fn plan(room: &Room, scene: Scene) -> Drawing {
    let mut drawing = Drawing::sized(PAPER.x, PAPER.y);
    if wall_to_see(room, None).is_none() {
        return drawing;
    }
    let plan = Plan::of(room);
    let mut floor = Path::new();
    let corners = room.floor.iter().map(|[x, y]| plan.place(Vector::new(x.metres(), y.metres(), 0.0)));
    floor.polygon(&corners.collect::<Vec<_>>());
    drawing.fill(Paint::Floor, floor.clone());
    add_patches(&mut drawing, room, &plan, scene.sun);
    add_lens(&mut drawing, room, &plan, scene.lens);
    drawing.stroke(Paint::Line, 3.0, floor);
    add_openings(&mut drawing, room, &plan);
    add_marks(&mut drawing, room, &plan);
    add_sun(&mut drawing, room, scene.sun);
    add_north(&mut drawing, room);
    add_scale(&mut drawing, &plan, scene.units);
    drawing.text = words_of(room, scene.sun);
    drawing
}

/// "sail loft from above, wall 1 faces 248° WSW, sun from 262° W".
fn words_of(room: &Room, sun: Option<Vector<World>>) -> String {
    let walls = format!("{} from above, wall 1 faces {}", room.name, words::bearing(room.wall_bearing));
    sun.map_or_else(|| walls.clone(), |sun| format!("{walls}, sun from {}", words::bearing(sun.bearing())))
}

fn add_patches(drawing: &mut Drawing, room: &Room, plan: &Plan, sun: Option<Vector<World>>) {
    let mut path = Path::new();
    let found = sun.map(|sun| patches(room, room.room_from_world(sun))).unwrap_or_default();
    for patch in found.iter().filter(|patch| patch.surface == Surface::Floor) {
        path.polygon(&patch.outline.iter().map(|point| plan.place(*point)).collect::<Vec<_>>());
    }
    drawing.fill(Paint::Lit, path);
}

fn add_openings(drawing: &mut Drawing, room: &Room, plan: &Plan) {
    // Above the plane that is looked at from above: dashed, as on any architect's plan.
    let (mut path, mut above) = (Path::new(), Path::new());
    for (index, opening) in room.openings.iter().enumerate() {
        let Some(frame) = room.frame(opening) else { continue };
        let name = opening.name.clone();
        let at = if opening.in_ceiling {
            above.polygon(&frame.inner.map(|corner| plan.place(corner)));
            plan.place((frame.inner[0] + frame.inner[2]) * 0.5)
        } else {
            let thick = frame.wall.outward * (opening.reveal.metres() + 3.0 / plan.scale);
            let (one, two) = (frame.inner[0], frame.inner[1]);
            path.polygon(&[one, two, two + thick, one + thick].map(|corner| plan.place(corner)));
            if let Some(slab) = opening.overhang {
                let (near, far) =
                    (frame.wall.outward * opening.reveal.metres(), frame.wall.outward * slab.depth.metres());
                let edge = [one + near, one + near + far, two + near + far, two + near];
                above.polyline(&edge.map(|corner| plan.place(corner)));
            }
            plan.place((one + two) * 0.5)
        };
        drawing.hits.push(Hit { target: Target::Opening(index), at, reach: REACH, name });
    }
    drawing.fill(Paint::Opening, path.clone()).stroke(Paint::Line, 1.2, path).stroke(
        Paint::Dashed,
        1.2,
        above,
    );
}

fn add_marks(drawing: &mut Drawing, room: &Room, plan: &Plan) {
    let mut rings = Path::new();
    for (index, mark) in room.marks.iter().enumerate() {
        let at = plan.place(Vector::new(mark.x.metres(), mark.y.metres(), 0.0));
        rings.ellipse(at, MARK, MARK);
        let beside = Point::new(at.x + MARK + 5.0, at.y + 4.0);
        drawing.label(beside, &*mark.name, Anchor::Start, Ink::Plain);
        drawing.hits.push(Hit { target: Target::Mark(index), at, reach: REACH, name: mark.name.clone() });
    }
    drawing.stroke(Paint::Accent, 2.4, rings);
}

/// What the lens sees, from a camera as far off as the room is drawn to a quarter, through the mark and on.
fn add_lens(drawing: &mut Drawing, room: &Room, plan: &Plan, lens: Option<(usize, Bearing, Degrees)>) {
    let Some((mark, bearing, wide)) = lens else { return };
    let Some(mark) = room.marks.get(mark) else { return };
    let subject = plan.place(Vector::new(mark.x.metres(), mark.y.metres(), 0.0));
    let back = PAPER.y / 4.0;
    let camera = toward(subject, room, bearing.reversed(), back);
    let half = wide.degrees() / 2.0;
    let edge = |by: f64| toward(camera, room, bearing.turned(Degrees::from_degrees(by)), 2.0 * back);
    let mut cone = Path::new();
    cone.polyline(&[edge(-half), camera, edge(half)]);
    drawing.stroke(Paint::Dashed, 1.2, cone);
    let mut body = Path::new();
    body.ellipse(camera, 4.5, 4.5);
    drawing.fill(Paint::Solid, body);
}

/// A point so far from another, towards a bearing.
fn toward(from: Point, room: &Room, bearing: Bearing, far: f64) -> Point {
    let way = room.room_from_world(bearing.level());
    Point::new(from.x + way.x * far, from.y - way.y * far)
}

/// An arrow at the rim of the paper, from the sun to the room.
fn add_sun(drawing: &mut Drawing, room: &Room, sun: Option<Vector<World>>) {
    let Some(sun) = sun else { return };
    let middle = Point::new(PAPER.x / 2.0, PAPER.y / 2.0);
    // As far out as the paper's half height leaves room for.
    let (tail, head) = (PAPER.y / 2.0 - 6.0, PAPER.y / 2.0 - 38.0);
    let [from, to] = [tail, head].map(|far| toward(middle, room, sun.bearing(), far));
    let mut arrow = Path::new();
    arrow.polyline(&[from, to]);
    add_head(&mut arrow, from, to);
    drawing.stroke(Paint::Accent, 2.4, arrow);
}

/// The two barbs of an arrow.
pub(super) fn add_head(path: &mut Path, from: Point, to: Point) {
    let length = from.distance(to).max(1e-9);
    let (x, y) = ((to.x - from.x) / length, (to.y - from.y) / length);
    let barb = |side: f64| Point::new(to.x - 8.0 * x - side * 5.0 * y, to.y - 8.0 * y + side * 5.0 * x);
    path.polyline(&[barb(1.0), to, barb(-1.0)]);
}

fn add_north(drawing: &mut Drawing, room: &Room) {
    let middle = Point::new(PAPER.x - 26.0, 30.0);
    let north = Bearing::default();
    let (from, to) = (toward(middle, room, north, -14.0), toward(middle, room, north, 14.0));
    let mut arrow = Path::new();
    arrow.polyline(&[from, to]);
    add_head(&mut arrow, from, to);
    drawing.stroke(Paint::Line, 1.6, arrow);
    let letter = toward(middle, room, north, 22.0);
    drawing.label(Point::new(letter.x, letter.y + 4.0), "N", Anchor::Middle, Ink::Plain);
}

fn add_scale(drawing: &mut Drawing, plan: &Plan, units: Units) {
    scale_bar(drawing, plan.scale, Point::new(12.0, PAPER.y - 12.0), units);
}

/// A bar of the longest of 1, 2, 5, 10 … metres or feet that is at most a quarter of the paper, from `at` on.
/// `scale` is paper units a metre.
pub(super) fn scale_bar(drawing: &mut Drawing, scale: f64, at: Point, units: Units) {
    let unit = if units == Units::Metric { Metres::from_metres(1.0) } else { Metres::from_feet(1.0) };
    let most = drawing.view.width / 4.0 / (unit.metres() * scale);
    let power = maths::pow(10.0, maths::log10(most).floor());
    let count =
        [5.0, 2.0, 1.0].into_iter().map(|step| step * power).find(|step| *step <= most).unwrap_or(power);
    let length = Metres::from_metres(count * unit.metres());
    let end = at.x + length.metres() * scale;
    let mut bar = Path::new();
    bar.polyline(&[Point::new(at.x, at.y - 4.0), at, Point::new(end, at.y), Point::new(end, at.y - 4.0)]);
    drawing.stroke(Paint::Line, 1.6, bar);
    drawing.label(Point::new(end + 6.0, at.y + 2.0), words::length(length, units), Anchor::Start, Ink::Plain);
}

#[cfg(test)]
#[path = "plan_tests.rs"]
mod tests;
