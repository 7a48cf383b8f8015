//! Beams: the sunlight that comes through an opening, as straight prisms of light.
//!
//! A beam has a convex clear part of the opening's inner face for its mouth, and sides along the sun. One opening makes
//! several beams where bars part it, where the edge of a screen outside lies across it, and where walls of a room with
//! an inward corner send its light to different places. The mouth is where the inner edge of the opening and its panes in the
//! outer face, seen from the sun, overlap (the wall's thickness cuts it), less what an overhang and screens shade. All in
//! room axes, metres, and exact.
//!
//! Not here: the sun's width (edges are sharp; [`super::penumbra`] says how soft they are), and whether the sun is up
//! or clears the skyline: the caller asks only while it does.
//! Source: handbook D1, D2 (textbook solar geometry).

use crate::place::lane::{Lane, lanes};
use crate::place::opening::Opening;
use crate::place::polygon::{area, clip, without};
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{InRoom, Metres, Vector};

/// A sun lower than this over a face (the sine of the angle) does not come through it.
const GRAZING: f64 = 1e-9;

/// Mouths smaller than a square millimetre are rounding.
const SLIVER: f64 = 1e-6;

type Point = Vector<InRoom>;

/// A prism of sunlight.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// The opening, by its place in the room's list.
    pub opening: usize,
    /// Its mouth in the inner face, corners in order.
    pub clear: Vec<Point>,
    /// Towards the sun.
    sun: Point,
    face: Wall,
    /// In a room with an inward corner, the part of the floor below it and the wall it ends at.
    lane: Option<Lane>,
}

/// The beams of all openings that the sun comes through. `sun` points to it, in room axes ([`Room::room_from_world`]).
pub fn beams(room: &Room, sun: Vector<InRoom>) -> Vec<Beam> {
    let lanes = if room.is_convex() { Vec::new() } else { lanes(room, level_way(sun)) };
    let mut found = Vec::new();
    for (index, opening) in room.openings.iter().enumerate() {
        let Some(face) = room.face_of(opening) else { continue };
        for mouth in mouths(room, opening, &face, sun) {
            let beam = Beam { opening: index, clear: mouth, sun, face, lane: None };
            if lanes.is_empty() {
                found.push(beam);
            } else {
                found.extend(lanes.iter().filter_map(|lane| beam.within(lane, room.openings[index].wall)));
            }
        }
    }
    found
}

impl Beam {
    /// Whether a point of the room is in it.
    pub fn reaches(&self, point: Vector<InRoom>) -> bool {
        let inside = self.face.outward.dot(point - self.face.from) < 0.0;
        inside
            && self.sides().all(|(through, inwards)| inwards.dot(point - through) >= 0.0)
            && self.is_over(point)
    }

    /// The part of a plane polygon that lies in it.
    pub fn cut(&self, polygon: &[Vector<InRoom>]) -> Vec<Vector<InRoom>> {
        let mut sides = self.sides();
        let Some((through, inwards)) = sides.next() else { return Vec::new() };
        let first = clip(polygon, through, inwards);
        sides.fold(
            first,
            |left, (through, inwards)| if left.is_empty() { left } else { clip(&left, through, inwards) },
        )
    }

    /// The floor it can reach, if not all of it, and the one wall it ends at.
    pub(super) fn lane(&self) -> Option<&Lane> {
        self.lane.as_ref()
    }

    /// Each side: a point of it, and the way into the beam.
    fn sides(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let count = self.clear.len();
        (0..count).map(move |n| {
            let (corner, next) = (self.clear[n], self.clear[(n + 1) % count]);
            (corner, self.sun.cross(next - corner))
        })
    }

    /// Whether a point stands over its part of the floor.
    fn is_over(&self, point: Point) -> bool {
        let Some(lane) = &self.lane else { return true };
        (0..lane.floor.len()).all(|n| {
            let (corner, next) = (lane.floor[n], lane.floor[(n + 1) % lane.floor.len()]);
            let along = next - corner;
            Vector::new(-along.y, along.x, 0.0).dot(point - corner) >= 0.0
        })
    }

    /// The part of it that goes along a lane; for an opening in a wall, only lanes that begin at its wall.
    fn within(&self, lane: &Lane, wall: usize) -> Option<Self> {
        let from_above = self.face.outward.z > 0.5;
        if !from_above && lane.enters != wall {
            return None;
        }
        let mut clear = self.clear.clone();
        for (through, inwards) in lane.sides {
            clear = clip(&clear, through, inwards);
        }
        if from_above {
            // Between the walls at both ends of the lane.
            for (from, to) in [(lane.floor[3], lane.floor[0]), (lane.floor[1], lane.floor[2])] {
                let along = to - from;
                clear = clip(&clear, from, Vector::new(-along.y, along.x, 0.0));
            }
        }
        (area(&clear) > SLIVER).then(|| Self { clear, lane: Some(lane.clone()), ..self.clone() })
    }
}

/// The level way that sunlight goes; any way for a sun straight above.
fn level_way(sun: Point) -> Point {
    Vector::new(-sun.x, -sun.y, 0.0).unit().unwrap_or(Vector::new(1.0, 0.0, 0.0))
}

/// The lit parts of an opening's inner face.
fn mouths(room: &Room, opening: &Opening, face: &Wall, sun: Point) -> Vec<Vec<Point>> {
    let facing = sun.dot(face.outward);
    if opening.covered || facing <= GRAZING {
        return Vec::new();
    }
    // Metres that the light moves along the face, and down it, per metre of depth.
    let (aside, down) = (-sun.dot(face.along) / facing, sun.dot(face.up) / facing);
    let reveal = opening.reveal.metres();
    let whole = opening.whole();
    let slab = opening.overhang.filter(|_| !opening.in_ceiling);
    let lit_head = slab
        .map_or(f64::INFINITY, |slab| whole.high.metres() + slab.above.metres() - slab.depth.metres() * down);
    // Outer edges, moved to the inner face along the light.
    let (moved, sunk) = (aside * reveal, down * reveal);
    let mouth = |pane: crate::place::pane::Rectangle| {
        let left = whole.left.metres().max(pane.left.metres() + moved);
        let right = whole.right.metres().min(pane.right.metres() + moved);
        let low = whole.low.metres().max(pane.low.metres() - sunk);
        let high = whole.high.metres().min(pane.high.metres().min(lit_head) - sunk);
        let at = |along: f64, up: f64| face.point(Metres::from_metres(along), Metres::from_metres(up));
        (left < right && low < high)
            .then(|| vec![at(left, low), at(right, low), at(right, high), at(left, high)])
    };
    let panes = opening.pane_rectangles().into_iter().filter_map(mouth).collect();
    room.screens.iter().fold(panes, |lit, screen| past(&lit, screen.corners(room), sun))
}

/// What a screen leaves of lit parts: its shadow has a left and a right side along the sun, and a top.
fn past(lit: &[Vec<Point>], ([left, right], away): ([Point; 2], Point), sun: Point) -> Vec<Vec<Point>> {
    if sun.dot(away) <= 0.0 {
        return lit.to_vec();
    }
    let along = right - left;
    let upright = Vector::new(sun.y, -sun.x, 0.0);
    let inwards = |plane: Point, towards: Point| if plane.dot(towards) < 0.0 { -plane } else { plane };
    let shadow = [
        (left, inwards(upright, along)),
        (right, inwards(upright, -along)),
        (left, inwards(sun.cross(along), -Vector::UP)),
    ];
    let pieces = lit.iter().flat_map(|piece| without(piece, &shadow));
    pieces.filter(|piece| area(piece) > SLIVER).collect()
}
