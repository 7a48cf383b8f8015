//! What an opening lets onto a point, as convex parts of the sky.
//!
//! Light passes an opening if it passes the rectangle in the wall's inner face, a pane in its outer face, and
//! beneath the overhang. Each edge, seen from the point, is a plane through the point: a half-space with nothing
//! left over, so that the result is exact. In a room with an inward corner, only what no wall hides counts. Glass dims the
//! light; that is `light`'s. The horizon is not in it.

use super::cone::{Cone, HalfSpace};
use super::frame::Frame;
use super::inside;
use super::mark::Mark;
use super::opening::{Opening, Overhang};
use super::pane::Rectangle;
use super::polygon::Few;
use super::room::Room;
use crate::maths;
use crate::units::{Degrees, InRoom, Vector, World};

/// An opening and the sky it lets onto a mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Aperture {
    /// The opening's id.
    pub id: String,
    /// The opening's name.
    pub name: String,
    /// The sky it lets in: one part, or one for each pane and each gap between inner walls.
    pub cones: Vec<Cone>,
}

/// Every uncovered opening of a room that lets some sky onto a mark's face. Bars that look narrower than `finest` do
/// not part it: the disc of a sun that wide is never hidden by them.
pub fn apertures(room: &Room, mark: &Mark, finest: Degrees) -> Vec<Aperture> {
    apertures_at(room, face(mark), finest)
}

/// The same for any point of the room.
pub fn apertures_at(room: &Room, face: Vector<InRoom>, finest: Degrees) -> Vec<Aperture> {
    room.openings
        .iter()
        .filter_map(|opening| {
            let cones = cones(room, opening, face, finest);
            let (id, name) = (opening.id.clone(), opening.name.clone());
            (!cones.is_empty()).then_some(Aperture { id, name, cones })
        })
        .collect()
}

/// Where the face of a mark is, in room axes.
pub fn face(mark: &Mark) -> Vector<InRoom> {
    Vector::new(mark.x.metres(), mark.y.metres(), mark.face_height.metres())
}

/// The sky that an opening lets onto a point; none if it is covered or the point does not stand inside of it.
pub fn cones(room: &Room, opening: &Opening, point: Vector<InRoom>, finest: Degrees) -> Vec<Cone> {
    let mut all = Vec::new();
    for_each_piece(room, opening, point, finest, |part, cuts| {
        let normals = edges(part.corners()).chain(cuts.iter().copied());
        let unit = normals.filter_map(|normal| normal.unit());
        let sides = unit.map(|normal| HalfSpace::beside(room.world_from_room(normal))).collect();
        all.push(Cone { sides });
    });
    all
}

/// Whether an opening lets light from `direction` onto a point, every bar counted.
pub fn lets_in(room: &Room, opening: &Opening, point: Vector<InRoom>, direction: Vector<World>) -> bool {
    cones(room, opening, point, Degrees::default()).iter().any(|cone| cone.contains(direction))
}

/// The same sky as polygons of directions from the point, every bar counted.
pub(crate) fn outlines(room: &Room, opening: &Opening, point: Vector<InRoom>) -> Vec<Few<InRoom>> {
    let mut all = Vec::new();
    for_each_piece(room, opening, point, Degrees::default(), |part, cuts| {
        let mut outline = *part;
        cuts.iter().for_each(|inwards| outline.cut(*inwards));
        if !outline.is_nothing() {
            all.push(outline);
        }
    });
    all
}

/// Calls `each` with every part of the inner rectangle that is seen, and for every pane the normals of the planes that cut
/// it further.
fn for_each_piece(
    room: &Room,
    opening: &Opening,
    point: Vector<InRoom>,
    finest: Degrees,
    mut each: impl FnMut(&Few<InRoom>, &[Vector<InRoom>]),
) {
    let Some(frame) = room.frame(opening).filter(|_| !opening.covered) else { return };
    let parts = inside::seen_parts(room, opening, &frame, point);
    if parts.is_empty() {
        return;
    }
    let slab = opening.overhang.filter(|_| !opening.in_ceiling);
    let slab = slab.and_then(|slab| beneath(slab, &frame, point));
    let barred = opening.bars.map(|_| panes_to_tell(opening, &frame, point, finest));
    let whole = [opening.whole()];
    let panes = barred.as_deref().unwrap_or(&whole);
    let is_plain = panes == whole && opening.reveal.metres() <= 0.0;
    for part in &parts {
        for pane in panes {
            // Four edges of the pane and the slab.
            let mut cuts = [Vector::new(0.0, 0.0, 0.0); 5];
            let mut count = 0;
            let edges = outer(opening, &frame, *pane, point);
            for cut in edges.into_iter().filter(|_| !is_plain).chain(slab) {
                cuts[count] = cut;
                count += 1;
            }
            each(part, &cuts[..count]);
        }
    }
}

/// Its panes, or the whole where the point is so far off that no bar looks as wide as `finest`.
fn panes_to_tell(opening: &Opening, frame: &Frame, point: Vector<InRoom>, finest: Degrees) -> Vec<Rectangle> {
    let Some(bars) = opening.bars else { return vec![opening.whole()] };
    let away = ((frame.outer[0] + frame.outer[2]) * 0.5 - point).norm();
    let looks = maths::atan2(bars.thickness.metres(), away);
    if looks < finest.radians() { vec![opening.whole()] } else { opening.pane_rectangles() }
}

/// Normals of the planes through the point and the edges of a pane in the outer face, pointing to its inside.
fn outer(opening: &Opening, frame: &Frame, pane: Rectangle, point: Vector<InRoom>) -> [Vector<InRoom>; 4] {
    let out = frame.wall.outward * opening.reveal.metres() - point;
    let Rectangle { left, right, low, high } = pane;
    let corners = [(left, low), (right, low), (right, high), (left, high)]
        .map(|(along, up)| frame.wall.point(along, up) + out);
    let mut normals = edges(&corners);
    core::array::from_fn(|_| normals.next().unwrap_or(Vector::new(0.0, 0.0, 0.0)))
}

/// Normals of the planes through the eye and each edge of a polygon, pointing to its inside; of any length.
fn edges(corners: &[Vector<InRoom>]) -> impl Iterator<Item = Vector<InRoom>> + '_ {
    let middle = corners.iter().fold(Vector::new(0.0, 0.0, 0.0), |sum, corner| sum + *corner);
    let next = corners.iter().cycle().skip(1);
    let normals = corners.iter().zip(next).map(|(corner, next)| corner.cross(*next));
    normals.map(move |normal| if normal.dot(middle) < 0.0 { -normal } else { normal })
}

/// Unit normal of the plane through `point` and the far edge of a slab, pointing below it; none for a point above.
fn beneath(overhang: Overhang, frame: &Frame, point: Vector<InRoom>) -> Option<Vector<InRoom>> {
    let out = frame.wall.outward * overhang.depth.metres();
    let edge = frame.outer[2] + out + Vector::UP * overhang.above.metres() - point;
    let normal = frame.wall.along.cross(edge).unit().filter(|_| edge.z > 0.0)?;
    Some(if normal.z > 0.0 { -normal } else { normal })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height, Metres};
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
            let cone = &cones(&room, &opening, point, Degrees::default())[0];
            let nearest = cone.sides.iter().map(|side| side.normal.dot(sun).abs()).fold(1.0, f64::min);
            prop_assume!(nearest > 1e-9);
            prop_assert_eq!(cone.contains(sun), passes(&opening, point, room.room_from_world(sun)));
        }

        #[test]
        fn turning_room_and_sun_together_changes_nothing(by in 0.0..360.0f64, bearing in -80.0..80.0f64, up in 0.0..60.0f64) {
            let opening = Opening::rectangle("o", "o", 0, [2.0, 0.9, 1.6, 1.4].map(metres));
            let lit = |turn: f64| {
                let sun = Vector::towards(Bearing::from_degrees(turn + bearing), Height::clamped(up));
                lets_in(&room(turn, opening.clone()), &opening, Vector::new(2.9, 1.5, 1.2), sun)
            };
            prop_assert_eq!(lit(0.0), lit(by));
        }
    }

    #[test]
    fn a_covered_window_and_a_mark_outside_get_nothing() {
        let open = Opening::rectangle("o", "o", 0, [2.0, 0.9, 1.6, 1.4].map(metres));
        let covered = Opening { covered: true, ..open.clone() };
        let inside = Vector::new(2.9, 1.5, 1.2);
        let count = |opening: &Opening, point| {
            cones(&room(0.0, opening.clone()), opening, point, Degrees::default()).len()
        };
        assert_eq!(count(&open, inside), 1);
        assert_eq!((count(&covered, inside), count(&open, Vector::new(2.9, -0.5, 1.2))), (0, 0));
    }

    #[test]
    fn bars_part_the_sky_of_a_near_face_and_not_of_a_far_one() {
        let mut barred = Opening::rectangle("o", "o", 0, [2.0, 0.9, 1.6, 1.4].map(metres));
        barred.set_panes(2, 2);
        let count = |y| {
            let sun = Degrees::from_degrees(0.53);
            cones(&room(0.0, barred.clone()), &barred, Vector::new(2.8, y, 1.6), sun).len()
        };
        // 3 cm look as wide as the sun from 3.2 m.
        assert_eq!((count(3.0), count(3.5)), (4, 1));
        // Straight towards the middle one sees the cross.
        let north = Vector::towards(Bearing::default(), Height::default());
        let seen = |x, z| lets_in(&room(0.0, barred.clone()), &barred, Vector::new(x, 4.0, z), north);
        assert!(!seen(2.8, 1.6) && seen(2.82, 1.62) && !seen(2.82, 1.6));
    }

    #[test]
    fn a_roof_light_lets_the_zenith_onto_what_stands_below_it() {
        let mut light = Opening::rectangle("o", "o", 0, [2.0, 1.0, 1.5, 0.8].map(metres));
        light.in_ceiling = true;
        let room = room(77.0, light.clone());
        let below = |x, y| lets_in(&room, &light, Vector::new(x, y, 1.5), Vector::UP);
        assert!(
            below(2.1, 1.1) && below(3.4, 1.7) && !below(1.9, 1.1) && !below(2.1, 1.9) && !below(2.1, 0.9)
        );
    }
}
