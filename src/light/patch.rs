//! Sunlight patches: where the sun through an opening falls on floor, walls and ceiling.
//!
//! The sunlight that comes through an opening is a beam with four sides, each through an edge of the clear
//! rectangle and along the sun. A patch is what lies in the beam of a surface that faces the sun. The clear
//! rectangle is where the inner and the outer edge of the opening, seen from the sun, overlap (the wall's
//! thickness cuts it), less what an overhang shades. All in room axes, metres.
//!
//! Exact for convex rooms. In a room with an inner corner the floor's patch is cut by the floor's outline, but
//! that one wall hides another is not seen. Not here: glazing bars, the sun's width (edges are sharp),
//! and whether the sun is up or clears the skyline: the caller asks only while it does.
//! Source: handbook D1, D2 (textbook solar geometry).

use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{Duration, InRoom, Metres, Vector};

/// What a patch lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// The floor.
    Floor,
    /// Wall `n`.
    Wall(usize),
    /// The ceiling, by a sun below the level of the opening.
    Ceiling,
}

/// Sunlight on one surface through one opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// The opening, by its place in the room's list.
    pub opening: usize,
    /// What it lies on.
    pub surface: Surface,
    /// Its corners in order.
    pub outline: Vec<Vector<InRoom>>,
}

impl Patch {
    /// Its area, square metres.
    pub fn area(&self) -> f64 {
        area(&self.outline)
    }
}

/// The beam of sunlight through an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Clear rectangle in the inner face: seen from outside, lower left, lower right, upper right, upper left.
    pub clear: [Vector<InRoom>; 4],
    /// Towards the sun.
    sun: Vector<InRoom>,
    wall: Wall,
}

impl Beam {
    /// The beam through an opening; `None` where no sun comes through.
    pub fn through(opening: &Opening, wall: &Wall, sun: Vector<InRoom>) -> Option<Self> {
        let facing = sun.dot(wall.outward);
        if opening.covered || facing <= 1e-9 {
            return None;
        }
        // Metres that the light moves along the wall, and down, per metre of depth.
        let (aside, down) = (-sun.dot(wall.along) / facing, sun.z / facing);
        let reveal = opening.reveal.metres();
        let (left, low) = (opening.offset.metres(), opening.sill.metres());
        let (right, high) = (left + opening.width.metres(), low + opening.height.metres());
        let lit_head = opening
            .overhang
            .map_or(high, |slab| high.min(high + slab.above.metres() - slab.depth.metres() * down));
        // Outer edges, moved to the inner face along the light.
        let (moved, sunk) = (aside * reveal, down * reveal);
        let (left, right) = (left.max(left + moved), right.min(right + moved));
        let (low, high) = (low.max(low - sunk), high.min(lit_head - sunk));
        let clear = [at(wall, left, low), at(wall, right, low), at(wall, right, high), at(wall, left, high)];
        (left < right && low < high).then_some(Self { clear, sun, wall: *wall })
    }

    /// Whether a point of the room is in it.
    pub fn reaches(&self, point: Vector<InRoom>) -> bool {
        let inside = self.wall.outward.dot(point - self.wall.from) < 0.0;
        inside && self.sides().iter().all(|(through, inwards)| inwards.dot(point - *through) >= 0.0)
    }

    /// The part of a plane polygon that lies in it.
    pub fn cut(&self, polygon: &[Vector<InRoom>]) -> Vec<Vector<InRoom>> {
        let sides = self.sides();
        sides.iter().fold(polygon.to_vec(), |left, (through, inwards)| clip(&left, *through, *inwards))
    }

    /// Each side: a point of it, and the way into the beam.
    fn sides(&self) -> [(Vector<InRoom>, Vector<InRoom>); 4] {
        core::array::from_fn(|n| {
            let (corner, next) = (self.clear[n], self.clear[(n + 1) % 4]);
            (corner, self.sun.cross(next - corner))
        })
    }

    /// Where the middles of its lower and upper edge meet the floor's level; `None` for a level or rising beam.
    fn edges_on_floor(&self) -> Option<[Vector<InRoom>; 2]> {
        let [lower_left, lower_right, upper_right, upper_left] = self.clear;
        let land = |one: Vector<InRoom>, two: Vector<InRoom>| {
            let middle = (one + two) * 0.5;
            middle - self.sun * (middle.z / self.sun.z)
        };
        (self.sun.z > 1e-9).then(|| [land(lower_left, lower_right), land(upper_left, upper_right)])
    }
}

/// All patches of a room. `sun` points to the sun, in room axes ([`Room::room_from_world`]).
pub fn patches(room: &Room, sun: Vector<InRoom>) -> Vec<Patch> {
    let mut found = Vec::new();
    for (opening, beam) in beams(room, sun) {
        for (surface, polygon, inwards) in surfaces(room) {
            if inwards.dot(sun) > 1e-9 {
                let outline = beam.cut(&polygon);
                // A sliver under a square millimetre is rounding.
                if area(&outline) > 1e-6 {
                    found.push(Patch { opening, surface, outline });
                }
            }
        }
    }
    found
}

/// The beams of all openings that the sun comes through.
pub fn beams(room: &Room, sun: Vector<InRoom>) -> Vec<(usize, Beam)> {
    let through = |(index, opening): (usize, &Opening)| {
        Some((index, Beam::through(opening, &room.wall(opening.wall)?, sun)?))
    };
    room.openings.iter().enumerate().filter_map(through).collect()
}

/// Farthest that the floor's patches reach into the room, square from the wall of their opening.
pub fn reach(room: &Room, patches: &[Patch]) -> Option<Metres> {
    let on_floor = patches.iter().filter(|patch| patch.surface == Surface::Floor);
    let depths = on_floor.filter_map(|patch| {
        let wall = room.wall(room.openings.get(patch.opening)?.wall)?;
        let depth = |point: &Vector<InRoom>| -wall.outward.dot(*point - wall.from);
        patch.outline.iter().map(depth).reduce(f64::max)
    });
    depths.reduce(f64::max).map(Metres::from_metres)
}

/// How far the edges of a patch move on the floor in a minute.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift {
    /// The edge below the sill.
    pub near: Metres,
    /// The edge below the head.
    pub far: Metres,
}

/// The drift of an opening's patch between two directions of the sun, some time apart; as if the floor had no end.
pub fn drift(room: &Room, opening: usize, suns: [Vector<InRoom>; 2], apart: Duration) -> Option<Drift> {
    let opening = room.openings.get(opening)?;
    let wall = room.wall(opening.wall)?;
    let edges = |sun| Beam::through(opening, &wall, sun)?.edges_on_floor();
    let ([near, far], [near_then, far_then]) = (edges(suns[0])?, edges(suns[1])?);
    let minutes = apart.minutes().abs();
    let speed = |from: Vector<InRoom>, to: Vector<InRoom>| Metres::from_metres((to - from).norm() / minutes);
    (minutes > 0.0).then(|| Drift { near: speed(near, near_then), far: speed(far, far_then) })
}

/// Every surface with its outline and the way into the room.
fn surfaces(room: &Room) -> Vec<(Surface, Vec<Vector<InRoom>>, Vector<InRoom>)> {
    let top = room.ceiling.metres();
    let level = |height: f64| -> Vec<Vector<InRoom>> {
        room.floor.iter().map(|[x, y]| Vector::new(x.metres(), y.metres(), height)).collect()
    };
    let mut all = vec![(Surface::Floor, level(0.0), Vector::UP), (Surface::Ceiling, level(top), -Vector::UP)];
    all.extend(room.walls().map(|(n, wall)| {
        let end = wall.length.metres();
        let outline =
            vec![at(&wall, 0.0, 0.0), at(&wall, end, 0.0), at(&wall, end, top), at(&wall, 0.0, top)];
        (Surface::Wall(n), outline, -wall.outward)
    }));
    all
}

/// A point of a wall's inner face, metres along and up.
fn at(wall: &Wall, along: f64, up: f64) -> Vector<InRoom> {
    wall.point(Metres::from_metres(along), Metres::from_metres(up))
}

/// The part of a polygon on the inner side of a plane. Source: Sutherland and Hodgman (1974).
fn clip(polygon: &[Vector<InRoom>], through: Vector<InRoom>, inwards: Vector<InRoom>) -> Vec<Vector<InRoom>> {
    let mut kept = Vec::with_capacity(polygon.len() + 1);
    let side = |point: Vector<InRoom>| inwards.dot(point - through);
    for (index, point) in polygon.iter().copied().enumerate() {
        let before = polygon[(index + polygon.len() - 1) % polygon.len()];
        let (was, is) = (side(before), side(point));
        if (was < 0.0) != (is < 0.0) {
            kept.push(before + (point - before) * (was / (was - is)));
        }
        if is >= 0.0 {
            kept.push(point);
        }
    }
    kept
}

/// Area of a plane polygon.
fn area(polygon: &[Vector<InRoom>]) -> f64 {
    let Some(first) = polygon.first().copied() else { return 0.0 };
    let pairs = polygon.windows(2).map(|pair| (pair[0] - first).cross(pair[1] - first));
    pairs.fold(Vector::new(0.0, 0.0, 0.0), |sum, each| sum + each).norm() / 2.0
}

#[cfg(test)]
#[path = "patch_tests.rs"]
mod tests;
