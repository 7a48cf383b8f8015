//! What of an opening is seen from a spot when walls of the same room stand between, as in an L.
//!
//! Walls are upright and reach from floor to ceiling, so all happens in the plan. The part of an opening in a wall that is
//! seen is in one piece: two sight lines and the wall between their ends enclose no other wall, because walls hang together.
//! A roof light may be seen in several: one for each triangle of free view.

use super::opening::Opening;
use super::room::Room;
use super::wall::Wall;
use crate::maths;
use crate::units::{InRoom, Metres, Vector};

/// Pieces narrower than this are nothing, metres. Our choice: far below any tape.
const NOTHING: f64 = 1e-9;

/// A stretch along the opening's wall, metres from the wall's first corner.
type Stretch = (f64, f64);

/// A spot of a room.
pub(crate) struct Spot<'a> {
    /// The room.
    pub(crate) room: &'a Room,
    /// Where in it.
    pub(crate) at: Vector<InRoom>,
    /// Whether no wall hides anything.
    sees_all: bool,
}

impl<'a> Spot<'a> {
    /// None outside of the room.
    pub(crate) fn new(room: &'a Room, at: Vector<InRoom>) -> Option<Self> {
        let inside = room.holds(Metres::from_metres(at.x), Metres::from_metres(at.y));
        inside.then(|| Self { room, at, sees_all: room.is_convex() })
    }

    /// From where to where along its wall an opening is seen; `None` if it is not.
    pub(super) fn stretch(&self, opening: &Opening) -> Option<[f64; 2]> {
        let whole = (opening.offset.metres(), opening.offset.metres() + opening.width.metres());
        if self.sees_all { Some([whole.0, whole.1]) } else { seen(self.room, opening, whole, self.at) }
    }

    /// What is seen of the ceiling, as cuts through the spot: two sight lines and the upper edge of the wall between them;
    /// `None` for all of it.
    pub(super) fn views(&self) -> Option<Vec<[Vector<InRoom>; 3]>> {
        (!self.sees_all).then(|| views(self.room, self.at))
    }
}

/// The free view from `spot`, as triangles in the plan between the directions of neighbouring corners.
fn views(room: &Room, spot: Vector<InRoom>) -> Vec<[Vector<InRoom>; 3]> {
    let flat = Vector::new(spot.x, spot.y, 0.0);
    let mut ways: Vec<Vector<InRoom>> =
        room.walls().filter_map(|(_, wall)| (wall.from - flat).unit()).collect();
    ways.sort_by(|a, b| maths::atan2(a.y, a.x).total_cmp(&maths::atan2(b.y, b.x)));
    let next = ways.iter().cycle().skip(1);
    let pairs = ways.iter().copied().zip(next.copied());
    let lift = Vector::UP * room.ceiling.metres() - spot;
    let left_of = |way: Vector<InRoom>| Vector::new(-way.y, way.x, 0.0);
    pairs
        .filter_map(|(right, left)| {
            let between = (right + left).unit().filter(|_| right.cross(left).z > NOTHING)?;
            let wall = nearest(room, flat, between)?;
            let edge = (wall.from + lift).cross(wall.along);
            let inwards = if edge.dot(-wall.outward) < 0.0 { -edge } else { edge };
            Some([left_of(right), -left_of(left), inwards])
        })
        .collect()
}

/// The wall that one sees from `spot` in a level direction; `None` where one looks out of the room.
fn nearest(room: &Room, spot: Vector<InRoom>, way: Vector<InRoom>) -> Option<Wall> {
    let hits = room.walls().filter_map(|(_, wall)| {
        let facing = wall.outward.dot(way);
        let reach = wall.outward.dot(wall.from - spot) / facing;
        let along = wall.along.dot(spot + way * reach - wall.from);
        let hit = facing.abs() > NOTHING && reach > NOTHING && (0.0..=wall.length.metres()).contains(&along);
        hit.then_some((reach, wall))
    });
    let (_, wall) = hits.min_by(|a, b| a.0.total_cmp(&b.0))?;
    (wall.outward.dot(way) > 0.0).then_some(wall)
}

/// From where to where along its wall what is `whole` of an opening is seen from `spot`; `None` if it is not.
fn seen(room: &Room, opening: &Opening, whole: Stretch, spot: Vector<InRoom>) -> Option<[f64; 2]> {
    let wall = room.wall(opening.wall)?;
    let others = room.walls().filter(|(number, _)| *number != opening.wall);
    let mut hidden: Vec<Stretch> = others.filter_map(|(_, other)| shadow(&wall, &other, spot)).collect();
    crate::order::by(&mut hidden, |a, b| a.0.total_cmp(&b.0));
    let (from, to) = free(whole, &hidden)?;
    Some([from, to])
}

/// The stretch of `wall` that `other` hides from `spot`.
fn shadow(wall: &Wall, other: &Wall, spot: Vector<InRoom>) -> Option<Stretch> {
    let away = |point: Vector<InRoom>| wall.outward.dot(point - spot);
    let distance = away(wall.from);
    // Only what stands between the spot and the wall casts a shadow on it.
    let (near, far) = (distance * 1e-9, distance);
    let (from, to) = (away(other.from), away(other.to));
    if from.max(to) <= near || from.min(to) >= far {
        return None;
    }
    let clipped = |end: f64| {
        let share = if from == to { 0.0 } else { (end.clamp(near, far) - from) / (to - from) };
        other.from + (other.to - other.from) * share
    };
    let on_wall = |point: Vector<InRoom>| {
        let seen = spot + (point - spot) * (distance / away(point).max(near));
        wall.along.dot(seen - wall.from)
    };
    let ends = if from == to { (other.from, other.to) } else { (clipped(from), clipped(to)) };
    let (a, b) = (on_wall(ends.0), on_wall(ends.1));
    Some((a.min(b), a.max(b)))
}

/// The widest piece of `whole` that none of the stretches (in order) hides.
fn free(whole: Stretch, hidden: &[Stretch]) -> Option<Stretch> {
    let mut widest = (0.0, NOTHING);
    let mut from = whole.0;
    for stretch in hidden.iter().chain([&(whole.1, whole.1)]) {
        let to = stretch.0.min(whole.1);
        if to - from > widest.1 - widest.0 {
            widest = (from, to);
        }
        from = from.max(stretch.1);
    }
    (widest.1 > NOTHING).then_some(widest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::aperture::lets_in;
    use crate::units::{Bearing, Height};
    use proptest::prelude::*;

    fn metres(m: f64) -> Metres {
        Metres::from_metres(m)
    }

    /// A U with its notch in the far wall, and a window in wall 0 or at the end of an arm.
    const U: [[f64; 2]; 8] =
        [[0.0, 0.0], [9.0, 0.0], [9.0, 6.0], [6.0, 6.0], [6.0, 2.0], [3.0, 2.0], [3.0, 6.0], [0.0, 6.0]];

    fn room(wall: usize, offset: f64, width: f64) -> Room {
        let mut room = Room::rectangle("r", "r", [9.0, 6.0, 3.0].map(metres), Bearing::from_degrees(200.0));
        room.floor = U.map(|corner| corner.map(metres)).to_vec();
        room.openings.push(Opening::rectangle("o", "o", wall, [offset, 0.8, width, 1.5].map(metres)));
        room
    }

    /// Asks every wall in turn whether it crosses the way from `spot` to `end`; shares nothing with the shadows.
    fn is_free(spot: [f64; 2], end: [f64; 2], but: usize) -> bool {
        let side = |a: [f64; 2], b: [f64; 2], c: [f64; 2]| {
            (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0.0
        };
        (0..8).filter(|wall| *wall != but).all(|wall| {
            let (a, b) = (U[wall], U[(wall + 1) % 8]);
            side(a, b, spot) == side(a, b, end) || side(spot, end, a) == side(spot, end, b)
        })
    }

    proptest! {
        #[test]
        fn what_is_seen_is_what_a_ray_reaches(
            wall in 0usize..8, offset in 0.05..1.0f64, width in 0.3..0.9f64,
            x in 0.05..8.95f64, y in 0.05..5.95f64, turn in -85.0..85.0f64, up in 0.0..40.0f64,
        ) {
            let room = room(wall, offset, width);
            prop_assume!(room.holds(metres(x), metres(y)));
            let (spot, frame) = (Vector::new(x, y, 1.2), room.frame(&room.openings[0]).unwrap());
            let sun = Vector::towards(room.bearing_of(wall).unwrap(), Height::clamped(up));
            let sun = sun.turned(crate::units::Degrees::from_degrees(turn));
            let lit = lets_in(&room, &room.openings[0], spot, sun);
            let to = room.room_from_world(sun);
            let distance = frame.wall.outward.dot(frame.wall.from - spot);
            prop_assume!(distance.abs() > 0.01);
            let reach = distance / frame.wall.outward.dot(to);
            let hit = spot + to * reach;
            let along = frame.wall.along.dot(hit - frame.wall.from);
            let edges = [(along - offset), (along - offset - width), (hit.z - 0.8), (hit.z - 2.3)];
            prop_assume!(edges.iter().all(|edge| edge.abs() > 1e-6));
            let through = reach > 0.0 && edges[0] > 0.0 && edges[1] < 0.0 && edges[2] > 0.0 && edges[3] < 0.0;
            // Just short of the wall, so that its neighbours at a corner do not count.
            let end = spot + to * (reach * (1.0 - 1e-9));
            prop_assert_eq!(lit, through && is_free([x, y], [end.x, end.y], wall));
        }
    }

    #[test]
    fn one_arm_does_not_see_the_window_of_the_other() {
        let room = room(2, 1.0, 1.0);
        let seen_from = |x, y| Spot::new(&room, Vector::new(x, y, 1.2))?.stretch(&room.openings[0]);
        assert!(seen_from(7.5, 3.0).is_some());
        assert_eq!(seen_from(1.5, 3.0), None);
        assert_eq!(seen_from(4.5, 4.0), None, "in the notch, outside of the room");
        let part = seen_from(5.7, 1.0).unwrap();
        // The sight line past the corner at (6, 2) meets the wall at x = 7.2, 1.8 m from its first corner.
        assert!((part[0] - 1.0).abs() < 1e-9 && (part[1] - 1.8).abs() < 1e-9, "{part:?}");
    }
}
