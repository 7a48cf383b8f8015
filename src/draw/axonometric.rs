//! The room seen from a raised corner: parallel projection, near walls cut away.
//!
//! The viewer stands so that the wall the sun comes through is a far one, at the left. Parallel lines stay
//! parallel, so that the paper can be read back: a point of the paper is one point of the floor, and one of a wall.
//! What lies on a wall that is cut away is not drawn.

use super::ball::add_ball;
use super::paint::{Ink, Paint};
use super::path::Path;
use super::shape::{Anchor, Drawing, Hit, Point, Target};
use crate::light::patch::{Beam, Patch, Surface, beams, of_beams};
use crate::light::relative::InLens;
use crate::maths;
use crate::place::aperture::face;
use crate::place::frame::Frame;
use crate::place::opening::Opening;
use crate::place::pane::Rectangle;
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{Degrees, InRoom, Metres, Vector};
use crate::words;

/// The paper: 358 of a phone 390 wide.
const PAPER: Point = Point::new(358.0, 311.0);

/// Kept free at each edge of the paper.
const EDGE: f64 = 22.0;

/// How far the view is turned from square to the sunny wall, and how far down it looks. Our own choice.
const TURN: Degrees = Degrees::from_degrees(54.0);
const DOWN: Degrees = Degrees::from_degrees(35.0);

/// Half the height of a mark's ball, and the half axes of its ring on the floor.
const BALL: f64 = 15.0;
const RING: (f64, f64) = (9.0, 4.0);

/// Radius of an area to touch: 44 px on a phone 390 wide.
const REACH: f64 = 22.0;

/// A view of a room: projection and scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    right: Vector<InRoom>,
    away: Vector<InRoom>,
    up: Vector<InRoom>,
    scale: f64,
    origin: Point,
}

impl View {
    /// The view of a room that puts one of its walls to the far left.
    pub fn of(room: &Room, wall: &Wall) -> Self {
        let ((sin, cos), (down, level)) = (maths::sin_cos(TURN.radians()), maths::sin_cos(DOWN.radians()));
        // The way the viewer looks, level: out of the wall, turned clockwise seen from above.
        let out = wall.outward;
        let ahead = Vector::new(out.x * cos + out.y * sin, out.y * cos - out.x * sin, 0.0);
        let right = Vector::new(ahead.y, -ahead.x, 0.0);
        let away = ahead * level - Vector::UP * down;
        let mut view = Self { right, away, up: right.cross(away), scale: 1.0, origin: Point::default() };
        view.fit(room);
        view
    }

    /// Where a point of the room is on the paper.
    pub fn place(&self, point: Vector<InRoom>) -> Point {
        let (x, y) = (point.dot(self.right), -point.dot(self.up));
        Point::new(self.origin.x + x * self.scale, self.origin.y + y * self.scale)
    }

    /// The point of the floor, x and y in room axes, that is drawn at a point of the paper.
    pub fn floor_at(&self, point: Point) -> [Metres; 2] {
        let x = Vector::new(1.0, 0.0, 0.0);
        let y = Vector::new(0.0, 1.0, 0.0);
        self.read(point, Vector::new(0.0, 0.0, 0.0), [x, y])
    }

    /// The point of a wall, along and up, that is drawn at a point of the paper.
    pub fn wall_at(&self, point: Point, wall: &Wall) -> [Metres; 2] {
        self.read(point, wall.from, [wall.along, Vector::UP])
    }

    /// The spot of the floor below a point of the ceiling that is drawn at a point of the paper.
    pub fn roof_at(&self, point: Point, ceiling: Metres) -> [Metres; 2] {
        let lift = Vector::UP * ceiling.metres();
        self.read(point, lift, [Vector::new(1.0, 0.0, 0.0), Vector::new(0.0, 1.0, 0.0)])
    }

    /// Whether a wall is a far one, and so is drawn.
    pub fn shows(&self, wall: &Wall) -> bool {
        wall.outward.dot(self.away) > 0.0
    }

    /// A direction as the viewer sees it.
    fn sees(&self, direction: Vector<InRoom>) -> Vector<InLens> {
        Vector::new(direction.dot(self.right), direction.dot(self.away), direction.dot(self.up))
    }

    /// How far along two directions of a plane a point of the paper lies.
    fn read(&self, point: Point, from: Vector<InRoom>, plane: [Vector<InRoom>; 2]) -> [Metres; 2] {
        let start = self.place(from);
        let (x, y) = ((point.x - start.x) / self.scale, (start.y - point.y) / self.scale);
        let [a, b] = plane.map(|along| (along.dot(self.right), along.dot(self.up)));
        let spread = a.0 * b.1 - a.1 * b.0;
        [(x * b.1 - y * b.0) / spread, (a.0 * y - a.1 * x) / spread].map(Metres::from_metres)
    }

    /// Scales and moves the room into the middle of the paper.
    fn fit(&mut self, room: &Room) {
        let top = room.ceiling.metres();
        let corners = room
            .floor
            .iter()
            .flat_map(|[x, y]| [0.0, top].map(|z| Vector::<InRoom>::new(x.metres(), y.metres(), z)));
        let (mut low, mut high) = (Point::new(f64::MAX, f64::MAX), Point::new(f64::MIN, f64::MIN));
        for at in corners.map(|corner| self.place(corner)) {
            (low.x, low.y) = (low.x.min(at.x), low.y.min(at.y));
            (high.x, high.y) = (high.x.max(at.x), high.y.max(at.y));
        }
        let room_for = |paper: f64, size: f64| (paper - 2.0 * EDGE) / size.max(1e-6);
        self.scale = room_for(PAPER.x, high.x - low.x).min(room_for(PAPER.y, high.y - low.y));
        self.origin.x = PAPER.x / 2.0 - (low.x + high.x) / 2.0 * self.scale;
        self.origin.y = PAPER.y / 2.0 - (low.y + high.y) / 2.0 * self.scale;
    }
}

/// The wall to be seen: the one most openings with sun are in, else most openings, else the first.
pub fn wall_to_see(room: &Room, sun: Option<Vector<InRoom>>) -> Option<Wall> {
    let with_sun = sun.map(|sun| beams(room, sun)).unwrap_or_default();
    let is_in = |opening: &Opening, n: usize| !opening.in_ceiling && opening.wall == n;
    let lit = |n: usize| with_sun.iter().filter(|beam| is_in(&room.openings[beam.opening], n)).count();
    let any = |n: usize| room.openings.iter().filter(|opening| is_in(opening, n)).count();
    let walls = room.walls().collect::<Vec<_>>().into_iter().rev();
    walls.max_by_key(|(n, _)| (lit(*n), any(*n))).map(|(_, wall)| wall)
}

/// The room with the sun in it; `None` for no sun, and an empty sheet for a room without walls.
pub fn axonometric(room: &Room, sun: Option<Vector<InRoom>>) -> Drawing {
    let mut drawing = Drawing::sized(PAPER.x, PAPER.y);
    let Some(wall) = wall_to_see(room, sun) else { return drawing };
    let view = View::of(room, &wall);
    let beams = sun.map(|sun| beams(room, sun)).unwrap_or_default();
    let patches = sun.map(|sun| of_beams(room, &beams, sun)).unwrap_or_default();
    add_surfaces(&mut drawing, room, &view, &wall);
    add_openings(&mut drawing, room, &view);
    let shown = |patch: &&Patch| match patch.surface {
        Surface::Floor => true,
        Surface::Wall(n) => room.wall(n).is_some_and(|wall| view.shows(&wall)),
        Surface::Ceiling => false,
    };
    let shown: Vec<&Patch> = patches.iter().filter(shown).collect();
    let mut lit = Path::new();
    shown.iter().for_each(|patch| outline(&mut lit, &view, &patch.outline));
    drawing.fill_always(Paint::Lit, lit);
    let mut shafts = Path::new();
    shown.iter().for_each(|patch| add_shaft(&mut shafts, &view, &beams, patch));
    drawing.fill_always(Paint::Shaft, shafts);
    add_marks(&mut drawing, room, &view, sun.map(|sun| (sun, beams.as_slice())));
    add_bearing(&mut drawing, room, &view, &wall);
    drawing.text = words_of(room, &patches);
    drawing
}

/// "sail loft: sun through 2 openings, on the floor".
fn words_of(room: &Room, patches: &[Patch]) -> String {
    let mut through: Vec<usize> = patches.iter().map(|patch| patch.opening).collect();
    through.dedup();
    let on_floor = patches.iter().any(|patch| patch.surface == Surface::Floor);
    let place = if on_floor { "on the floor" } else { "on the walls" };
    match through.len() {
        0 => format!("{}: no sun in the room", room.name),
        1 => format!("{}: sun through 1 opening, {place}", room.name),
        openings => format!("{}: sun through {openings} openings, {place}", room.name),
    }
}

fn outline(path: &mut Path, view: &View, points: &[Vector<InRoom>]) {
    path.polygon(&points.iter().map(|point| view.place(*point)).collect::<Vec<_>>());
}

fn add_surfaces(drawing: &mut Drawing, room: &Room, view: &View, seen: &Wall) {
    let floor: Vec<_> = room.floor.iter().map(|[x, y]| Vector::new(x.metres(), y.metres(), 0.0)).collect();
    let (mut ground, mut near, mut far) = (Path::new(), Path::new(), Path::new());
    outline(&mut ground, view, &floor);
    for (_, wall) in room.walls().filter(|(_, wall)| view.shows(wall)) {
        let zero = Metres::default();
        let corners = [(zero, zero), (wall.length, zero), (wall.length, room.ceiling), (zero, room.ceiling)];
        let path = if wall == *seen { &mut near } else { &mut far };
        outline(path, view, &corners.map(|(along, up)| wall.point(along, up)));
    }
    for (paint, path) in [(Paint::Floor, ground), (Paint::WallFar, far), (Paint::Wall, near)] {
        drawing.fill(paint, path.clone()).stroke(Paint::Line, 1.0, path);
    }
}

fn add_openings(drawing: &mut Drawing, room: &Room, view: &View) {
    let (mut panes, mut roof) = (Path::new(), Path::new());
    for (index, opening) in room.openings.iter().enumerate() {
        let shown = |frame: &Frame| opening.in_ceiling || view.shows(&frame.wall);
        let Some(frame) = room.frame(opening).filter(shown) else { continue };
        let path = if opening.in_ceiling { &mut roof } else { &mut panes };
        for pane in opening.pane_rectangles() {
            let Rectangle { left, right, low, high } = pane;
            let corners = [(left, low), (right, low), (right, high), (left, high)];
            outline(path, view, &corners.map(|(along, up)| frame.wall.point(along, up)));
        }
        let at = view.place((frame.inner[0] + frame.inner[2]) * 0.5);
        drawing.hits.push(Hit {
            target: Target::Opening(index),
            at,
            reach: REACH,
            name: opening.name.clone(),
        });
    }
    // The ceiling is cut away: a roof light hangs in the air as a frame.
    drawing.fill(Paint::Opening, panes.clone()).stroke(Paint::Line, 1.0, panes).stroke(
        Paint::Dashed,
        1.2,
        roof,
    );
}

/// The lit air between an opening and a patch: each side of the beam, seen from where the viewer stands.
fn add_shaft(path: &mut Path, view: &View, beams: &[Beam], patch: &Patch) {
    let Some(beam) = beams.get(patch.beam) else { return };
    let corners = beam.clear.iter().chain(&patch.outline).map(|point| view.place(*point)).collect();
    path.polygon(&hull(corners));
}

/// The smallest convex polygon around points. Source: Andrew (1979), monotone chain.
fn hull(mut points: Vec<Point>) -> Vec<Point> {
    crate::order::by(&mut points, |a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let turn = |a: Point, b: Point, c: Point| (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    let chain = |points: &mut dyn Iterator<Item = Point>| {
        let mut kept: Vec<Point> = Vec::new();
        for point in points {
            while kept.len() > 1 && turn(kept[kept.len() - 2], kept[kept.len() - 1], point) <= 0.0 {
                kept.pop();
            }
            kept.push(point);
        }
        kept.pop();
        kept
    };
    let mut around = chain(&mut points.iter().copied());
    around.extend(chain(&mut points.iter().rev().copied()));
    around
}

/// The sun's direction, and its beams with the openings they come through.
type Light<'a> = (Vector<InRoom>, &'a [Beam]);

fn add_marks(drawing: &mut Drawing, room: &Room, view: &View, sun: Option<Light<'_>>) {
    for (index, mark) in room.marks.iter().enumerate() {
        let head = face(mark);
        let (foot, at) = (view.place(Vector::new(head.x, head.y, 0.0)), view.place(head));
        let (mut ring, mut post) = (Path::new(), Path::new());
        ring.ellipse(foot, RING.0, RING.1);
        post.polyline(&[foot, at]);
        drawing.stroke(Paint::Accent, 2.4, ring).stroke(Paint::Line, 1.6, post);
        let lit = sun.filter(|(_, beams)| beams.iter().any(|beam| beam.reaches(head)));
        add_ball(drawing, at, BALL, lit.map(|(sun, _)| view.sees(sun)));
        let beside = Point::new(foot.x + RING.0 + 5.0, foot.y + 4.0);
        drawing.label(beside, &*mark.name, Anchor::Start, Ink::Plain);
        drawing.hits.push(Hit {
            target: Target::Mark(index),
            at: foot,
            reach: REACH,
            name: mark.name.clone(),
        });
    }
}

/// "wall faces 248°", along the upper edge of the wall.
fn add_bearing(drawing: &mut Drawing, room: &Room, view: &View, wall: &Wall) {
    let middle = Metres::from_metres(wall.length.metres() / 2.0);
    let (one, two) = (view.place(wall.from), view.place(wall.to));
    let (left, right) = if one.x <= two.x { (one, two) } else { (two, one) };
    let at = view.place(wall.point(middle, room.ceiling));
    let bearing = room.world_from_room(wall.outward).bearing();
    let text = format!("wall faces {}", words::degrees(Degrees::from_degrees(bearing.degrees())));
    drawing.label(Point::new(at.x, at.y - 6.0), text, Anchor::Middle, Ink::Plain);
    if let Some(label) = drawing.labels.last_mut() {
        label.turned = Degrees::from_radians(maths::atan2(right.y - left.y, right.x - left.x)).degrees();
    }
}

#[cfg(test)]
#[path = "axonometric_tests.rs"]
mod tests;
