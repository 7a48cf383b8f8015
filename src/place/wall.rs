//! Walls of a room, its ceiling as one more face, and the turn from room to world.
//!
//! A wall runs from its first corner to its second with the room at its left, so outwards is to its right. The ceiling
//! is a face whose "along" is the room's x and whose "up" is the room's y, so that a roof light is an opening like any other.

use super::opening::Opening;
use super::room::{REFLECTANCE, Room};
use super::skyline::Skyline;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector, World};

/// An upright wall, or the ceiling seen as a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// First corner, on the floor.
    pub from: Vector<InRoom>,
    /// Second corner, on the floor.
    pub to: Vector<InRoom>,
    /// Level unit vector from the first corner to the second.
    pub along: Vector<InRoom>,
    /// Unit vector up the face: straight up, for the ceiling the room's y.
    pub up: Vector<InRoom>,
    /// Unit vector out of the room: level, for the ceiling straight up.
    pub outward: Vector<InRoom>,
    /// Length of the wall.
    pub length: Metres,
}

impl Wall {
    /// Point of the inner face, so far along and so far up it.
    pub fn point(&self, along: Metres, up: Metres) -> Vector<InRoom> {
        self.from + self.along * along.metres() + self.up * up.metres()
    }
}

impl Room {
    /// A rectangular room: `width` along wall 0, `depth` away from it.
    pub fn rectangle(
        id: &str,
        name: &str,
        [width, depth, ceiling]: [Metres; 3],
        wall_bearing: Bearing,
    ) -> Self {
        let zero = Metres::from_metres(0.0);
        Self {
            id: id.to_owned(),
            name: name.to_owned(),
            wall_bearing,
            bearing_uncertainty: COMPASS,
            floor: vec![[zero, zero], [width, zero], [width, depth], [zero, depth]],
            ceiling,
            reflectance: REFLECTANCE,
            openings: Vec::new(),
            marks: Vec::new(),
            skyline: Skyline::default(),
            screens: Vec::new(),
        }
    }

    /// Wall `number`, from corner `number` to the next; `None` if there is none or it has no length.
    pub fn wall(&self, number: usize) -> Option<Wall> {
        let corner = |[x, y]: [Metres; 2]| Vector::new(x.metres(), y.metres(), 0.0);
        let from = corner(*self.floor.get(number)?);
        let to = corner(self.floor[(number + 1) % self.floor.len()]);
        let along = (to - from).unit()?;
        let outward = Vector::new(along.y, -along.x, 0.0);
        let length = Metres::from_metres((to - from).norm());
        Some(Wall { from, to, along, up: Vector::UP, outward, length })
    }

    /// The ceiling as a face, from over corner 0; as long as wall 0.
    pub fn roof(&self) -> Option<Wall> {
        let wall = self.wall(0)?;
        let lift = Vector::UP * self.ceiling.metres();
        let (from, to) = (wall.from + lift, wall.to + lift);
        Some(Wall { from, to, up: -wall.outward, outward: Vector::UP, ..wall })
    }

    /// The face that an opening is in: its wall, or the ceiling; `None` if there is no such wall.
    pub fn face_of(&self, opening: &Opening) -> Option<Wall> {
        if opening.in_ceiling { self.roof() } else { self.wall(opening.wall) }
    }

    /// All walls that have a length, with their numbers.
    pub fn walls(&self) -> impl Iterator<Item = (usize, Wall)> + '_ {
        (0..self.floor.len()).filter_map(|number| Some((number, self.wall(number)?)))
    }

    /// Outward normal of a wall, true; `None` if there is no such wall.
    pub fn bearing_of(&self, number: usize) -> Option<Bearing> {
        Some(self.world_from_room(self.wall(number)?.outward).bearing())
    }

    /// Turns a direction of the room into one of the world.
    pub fn world_from_room(&self, v: Vector<InRoom>) -> Vector<World> {
        let [x, y] = self.axes();
        x * v.x + y * v.y + Vector::UP * v.z
    }

    /// Turns a direction of the world into one of the room.
    pub fn room_from_world(&self, v: Vector<World>) -> Vector<InRoom> {
        let [x, y] = self.axes();
        Vector::new(x.dot(v), y.dot(v), v.z)
    }

    /// The room's x and y in the world: y points opposite to wall 0's normal, x a quarter turn clockwise of it.
    fn axes(&self) -> [Vector<World>; 2] {
        let y = -self.wall_bearing.level();
        [Vector::new(y.y, -y.x, 0.0), y]
    }
}

/// What a hand-held compass is off by unless the user says better. Common practice, no source.
pub const COMPASS: Degrees = Degrees::from_degrees(5.0);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn loft(bearing: f64) -> Room {
        Room::rectangle("r", "r", [8.0, 6.0, 3.4].map(Metres::from_metres), Bearing::from_degrees(bearing))
    }

    #[test]
    fn walls_of_a_rectangle_face_the_four_winds() {
        let room = loft(248.0);
        let bearings: Vec<_> = (0..4).map(|n| room.bearing_of(n).unwrap().degrees().round()).collect();
        assert_eq!(bearings, [248.0, 158.0, 68.0, 338.0]);
        assert_eq!(room.wall(1).unwrap().length, Metres::from_metres(6.0));
        assert_eq!(room.wall(4), None);
    }

    proptest! {
        #[test]
        fn room_and_world_there_and_back(bearing in 0.0..360.0f64, x in -3.0..3.0f64, y in -3.0..3.0f64, z in -3.0..3.0f64) {
            let (room, v) = (loft(bearing), Vector::new(x, y, z));
            let back = room.room_from_world(room.world_from_room(v));
            prop_assert!((back - v).norm() < 1e-12);
        }
    }
}
