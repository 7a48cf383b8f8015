//! Sunlight patches: where the sun through an opening falls on floor, walls and ceiling.
//!
//! A patch is what lies in a [`Beam`] of a surface that faces the sun. An opening may make several patches on one surface: one
//! for each pane, and in a room with an inward corner one for each piece that its walls leave. In room axes, metres, exact.
//! Source: handbook D1, D2 (textbook solar geometry).

pub use super::beam::{Beam, beams};
use crate::place::polygon::area;
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{InRoom, Metres, Vector};

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
    /// The beam it is the end of, by its place in the list of beams.
    pub beam: usize,
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

/// All patches of a room. `sun` points to the sun, in room axes ([`Room::room_from_world`]).
pub fn patches(room: &Room, sun: Vector<InRoom>) -> Vec<Patch> {
    of_beams(room, &beams(room, sun), sun)
}

/// All patches of beams that are known already.
pub fn of_beams(room: &Room, beams: &[Beam], sun: Vector<InRoom>) -> Vec<Patch> {
    if beams.is_empty() {
        return Vec::new();
    }
    let facing: Vec<Plane> =
        surfaces(room).into_iter().filter(|plane| plane.inwards.dot(sun) > 1e-9).collect();
    let mut found = Vec::new();
    for (index, beam) in beams.iter().enumerate() {
        for Plane { surface, outline, .. } in &facing {
            let on_lane = beam.lane().filter(|_| matches!(surface, Surface::Floor | Surface::Ceiling));
            let lies = match (beam.lane(), surface) {
                (Some(lane), Surface::Wall(n)) => lane.ends == *n,
                _ => true,
            };
            if !lies {
                continue;
            }
            let outline = match on_lane {
                Some(lane) => beam.cut(&lifted(&lane.floor, outline[0].z)),
                None => beam.cut(outline),
            };
            // A sliver under a square millimetre is rounding.
            if area(&outline) > 1e-6 {
                found.push(Patch { opening: beam.opening, beam: index, surface: *surface, outline });
            }
        }
    }
    found
}

/// Farthest that the floor's patches reach into the room, square from the wall of their opening; not asked of a roof light.
pub fn reach(room: &Room, patches: &[Patch]) -> Option<Metres> {
    let on_floor = patches.iter().filter(|patch| patch.surface == Surface::Floor);
    let depths = on_floor.filter_map(|patch| {
        let opening = room.openings.get(patch.opening).filter(|opening| !opening.in_ceiling)?;
        let wall = room.wall(opening.wall)?;
        let depth = |point: &Vector<InRoom>| -wall.outward.dot(*point - wall.from);
        patch.outline.iter().map(depth).reduce(f64::max)
    });
    depths.reduce(f64::max).map(Metres::from_metres)
}

/// Area of all patches on one kind of surface, square metres.
pub fn area_on(patches: &[Patch], is_asked: impl Fn(Surface) -> bool) -> f64 {
    patches.iter().filter(|patch| is_asked(patch.surface)).map(Patch::area).sum()
}

/// A surface of the room: its outline and the way into the room.
struct Plane {
    surface: Surface,
    outline: Vec<Vector<InRoom>>,
    inwards: Vector<InRoom>,
}

fn surfaces(room: &Room) -> Vec<Plane> {
    let top = room.ceiling.metres();
    let level = |height: f64| -> Vec<Vector<InRoom>> {
        room.floor.iter().map(|[x, y]| Vector::new(x.metres(), y.metres(), height)).collect()
    };
    let mut all = Vec::with_capacity(room.floor.len() + 2);
    all.push(Plane { surface: Surface::Floor, outline: level(0.0), inwards: Vector::UP });
    all.push(Plane { surface: Surface::Ceiling, outline: level(top), inwards: -Vector::UP });
    all.extend(room.walls().map(|(n, wall)| {
        let end = wall.length.metres();
        let outline =
            vec![at(&wall, 0.0, 0.0), at(&wall, end, 0.0), at(&wall, end, top), at(&wall, 0.0, top)];
        Plane { surface: Surface::Wall(n), outline, inwards: -wall.outward }
    }));
    all
}

fn lifted(floor: &[Vector<InRoom>], height: f64) -> Vec<Vector<InRoom>> {
    floor.iter().map(|corner| Vector::new(corner.x, corner.y, height)).collect()
}

/// A point of a wall's inner face, metres along and up.
fn at(wall: &Wall, along: f64, up: f64) -> Vector<InRoom> {
    wall.point(Metres::from_metres(along), Metres::from_metres(up))
}

#[cfg(test)]
#[path = "patch_tests.rs"]
mod tests;
