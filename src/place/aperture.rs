//! What an opening lets onto a mark, as a convex part of the sky.
//!
//! Light passes an opening if it passes the rectangle in the wall's inner face, the one in its outer face, and
//! beneath the overhang. Each edge, seen from the face, is a plane through the face: a half-space with nothing
//! left over, so that the result is exact. In a room with an inward corner, only what no wall hides counts. Bars and
//! glass dim the light; they are `light`'s. The horizon is not in it.

use super::cone::{Cone, HalfSpace};
use super::frame::Frame;
use super::inside;
use super::mark::Mark;
use super::opening::{Opening, Overhang};
use super::room::Room;
use crate::units::{InRoom, Metres, Vector};

/// An opening and the sky it lets onto a mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Aperture {
    /// The opening's id.
    pub id: String,
    /// The opening's name.
    pub name: String,
    /// The sky it lets in.
    pub cone: Cone,
}

/// Every uncovered opening of a room that lets some sky onto a mark's face.
pub fn apertures(room: &Room, mark: &Mark) -> Vec<Aperture> {
    let face = face(mark);
    room.openings
        .iter()
        .filter_map(|opening| {
            let cone = cone(room, opening, face)?;
            Some(Aperture { id: opening.id.clone(), name: opening.name.clone(), cone })
        })
        .collect()
}

/// Where the face of a mark is, in room axes.
pub fn face(mark: &Mark) -> Vector<InRoom> {
    Vector::new(mark.x.metres(), mark.y.metres(), mark.face_height.metres())
}

/// The sky that an opening lets onto a point; `None` if it is covered or the point does not stand inside of it.
pub fn cone(room: &Room, opening: &Opening, point: Vector<InRoom>) -> Option<Cone> {
    let frame = room.frame(opening).filter(|_| !opening.covered)?;
    let outward = frame.wall.outward;
    if outward.dot(frame.inner[0] - point) <= 0.0 {
        return None;
    }
    let seen = inside::seen(room, opening, point)?;
    let mut normals = edges(narrowed(&frame, seen), point);
    if opening.reveal.metres() > 0.0 {
        normals.extend(edges(frame.outer, point));
    }
    if let Some(overhang) = opening.overhang {
        normals.extend(beneath(overhang, frame.outer[2], (frame.wall.along, outward), point));
    }
    let sides = normals.into_iter().map(|normal| HalfSpace::beside(room.world_from_room(normal))).collect();
    Some(Cone { sides })
}

/// The inner rectangle, no wider than what is seen of it.
fn narrowed(frame: &Frame, [from, to]: [Metres; 2]) -> [Vector<InRoom>; 4] {
    let at = |corner: Vector<InRoom>, along: Metres| frame.wall.point(along, Metres::from_metres(corner.z));
    let [first_low, second_low, second_high, first_high] = frame.inner;
    [at(first_low, from), at(second_low, to), at(second_high, to), at(first_high, from)]
}

/// Unit normals of the planes through `point` and each edge of a rectangle, pointing to its inside.
fn edges(corners: [Vector<InRoom>; 4], point: Vector<InRoom>) -> Vec<Vector<InRoom>> {
    let middle = (corners[0] + corners[2]) * 0.5 - point;
    (0..4)
        .filter_map(|at| {
            let normal = (corners[at] - point).cross(corners[(at + 1) % 4] - point).unit()?;
            Some(if normal.dot(middle) < 0.0 { -normal } else { normal })
        })
        .collect()
}

/// Unit normal of the plane through `point` and the far edge of a slab, pointing below it; none for a point above.
fn beneath(
    overhang: Overhang,
    head: Vector<InRoom>,
    (along, outward): (Vector<InRoom>, Vector<InRoom>),
    point: Vector<InRoom>,
) -> Option<Vector<InRoom>> {
    let edge = head + outward * overhang.depth.metres() + Vector::UP * overhang.above.metres() - point;
    let normal = along.cross(edge).unit().filter(|_| edge.z > 0.0)?;
    Some(if normal.z > 0.0 { -normal } else { normal })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height, World};
    use proptest::prelude::*;

    fn metres(m: f64) -> Metres {
        Metres::from_metres(m)
    }

    fn room(bearing: f64, opening: Opening) -> Room {
        let mut room = Room::rectangle("r", "r", [6.0, 5.0, 3.0].map(metres), Bearing::from_degrees(bearing));
        room.openings.push(opening);
        room
    }

    /// Walks along a ray and asks each of the three gates in turn; shares nothing with the planes above.
    fn passes(opening: &Opening, point: Vector<InRoom>, to: Vector<InRoom>) -> bool {
        if to.y >= 0.0 {
            return false;
        }
        let at_depth = |depth: f64| point + to * ((depth + point.y) / -to.y);
        let in_frame = |p: Vector<InRoom>| {
            let (first, low) = (opening.offset.metres(), opening.sill.metres());
            (first..=first + opening.width.metres()).contains(&p.x)
                && (low..=low + opening.height.metres()).contains(&p.z)
        };
        let slab = opening.overhang.is_none_or(|o| {
            let edge = at_depth(opening.reveal.metres() + o.depth.metres());
            edge.z <= opening.sill.metres() + opening.height.metres() + o.above.metres()
        });
        in_frame(at_depth(0.0)) && in_frame(at_depth(opening.reveal.metres())) && slab
    }

    proptest! {
        #[test]
        fn the_planes_say_what_the_ray_says(
            turn in 0.0..360.0f64, reveal in 0.0..0.6f64, slab in proptest::option::of((0.1..1.5f64, 0.0..0.5f64)),
            offset in 0.5..3.0f64, sill in 0.2..1.2f64, width in 0.6..2.5f64, height in 0.8..1.8f64,
            x in 0.2..5.8f64, y in 0.3..4.8f64, z in 0.2..2.0f64, bearing in -80.0..80.0f64, up in -5.0..75.0f64,
        ) {
            let opening = Opening {
                reveal: metres(reveal),
                overhang: slab.map(|(depth, above)| Overhang { depth: metres(depth), above: metres(above) }),
                ..Opening::rectangle("o", "o", 0, [offset, sill, width, height].map(metres))
            };
            let (room, point) = (room(turn, opening.clone()), Vector::new(x, y, z));
            let sun: Vector<World> = Vector::towards(Bearing::from_degrees(turn + bearing), Height::clamped(up));
            let cone = cone(&room, &opening, point).unwrap();
            let nearest = cone.sides.iter().map(|side| side.normal.dot(sun).abs()).fold(1.0, f64::min);
            prop_assume!(nearest > 1e-9);
            prop_assert_eq!(cone.contains(sun), passes(&opening, point, room.room_from_world(sun)));
        }

        #[test]
        fn turning_room_and_sun_together_changes_nothing(by in 0.0..360.0f64, bearing in -80.0..80.0f64, up in 0.0..60.0f64) {
            let opening = Opening::rectangle("o", "o", 0, [2.0, 0.9, 1.6, 1.4].map(metres));
            let lit = |turn: f64| {
                let sun = Vector::towards(Bearing::from_degrees(turn + bearing), Height::clamped(up));
                cone(&room(turn, opening.clone()), &opening, Vector::new(2.9, 1.5, 1.2)).unwrap().contains(sun)
            };
            prop_assert_eq!(lit(0.0), lit(by));
        }
    }

    #[test]
    fn a_covered_window_and_a_mark_outside_get_nothing() {
        let open = Opening::rectangle("o", "o", 0, [2.0, 0.9, 1.6, 1.4].map(metres));
        let covered = Opening { covered: true, ..open.clone() };
        let inside = Vector::new(2.9, 1.5, 1.2);
        assert!(cone(&room(0.0, open.clone()), &open, inside).is_some());
        assert!(cone(&room(0.0, covered.clone()), &covered, inside).is_none());
        assert!(cone(&room(0.0, open.clone()), &open, Vector::new(2.9, -0.5, 1.2)).is_none());
    }
}
