//! What an opening lets onto a point, as convex parts of the sky.
//!
//! Light passes an opening if it passes the rectangle in the wall's inner face, a pane in its outer face, and
//! beneath the overhang. Each edge, seen from the point, is a plane through the point: a half-space with nothing
//! left over, so that the result is exact. In a room with an inward corner, only what no wall hides counts. Glass dims the
//! light; that is `light`'s. The horizon is not in it.

use super::cone::{Cone, HalfSpace};
use super::inside::Spot;
use super::mark::Mark;
use super::opening::Opening;
use super::pane::Rectangle;
use super::polygon::Few;
use super::room::Room;
use super::wall::Wall;
use crate::maths;
use crate::units::{Degrees, InRoom, Metres, Vector, World};

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
    let Some(spot) = Spot::new(room, point) else { return all };
    for_each_outline(&spot, opening, finest, |outline| {
        let unit = edges(outline.corners()).filter_map(|normal| normal.unit());
        let sides = unit.map(|normal| HalfSpace::beside(room.world_from_room(normal))).collect();
        all.push(Cone { sides });
    });
    all
}

/// Whether an opening lets light from `direction` onto a point, every bar counted.
pub fn lets_in(room: &Room, opening: &Opening, point: Vector<InRoom>, direction: Vector<World>) -> bool {
    cones(room, opening, point, Degrees::default()).iter().any(|cone| cone.contains(direction))
}

/// Calls `each` with the polygons of directions from a spot in which an opening shows the sky. All that bounds it from the
/// sides is a rectangle once it is seen in the wall's inner face, so that panes, reveal and slab need no more than the
/// smaller of two numbers.
pub(crate) fn for_each_outline(
    spot: &Spot<'_>,
    opening: &Opening,
    finest: Degrees,
    mut each: impl FnMut(&mut Few<InRoom>),
) {
    if opening.covered {
        return;
    }
    let Some(sight) = spot.room.face_of(opening).and_then(|wall| Sight::of(wall, spot.at)) else { return };
    let views = if opening.in_ceiling { spot.views() } else { None };
    let seen = if opening.in_ceiling { Some([-f64::INFINITY, f64::INFINITY]) } else { spot.stretch(opening) };
    let Some([from, to]) = seen else { return };
    let barred = opening.bars.map(|_| panes_to_tell(opening, &sight, finest));
    let whole = [opening.whole()];
    for pane in barred.as_deref().unwrap_or(&whole) {
        let Some(corners) = sight.through(opening, pane, [from, to]) else { continue };
        let mut outline = Few::new(corners);
        match &views {
            None => each(&mut outline),
            Some(views) => views.iter().for_each(|cuts| {
                let mut part = outline;
                cuts.iter().for_each(|inwards| part.cut(*inwards));
                if !part.is_nothing() {
                    each(&mut part);
                }
            }),
        }
    }
}

/// A face of the room as a point of the room sees it.
struct Sight {
    wall: Wall,
    /// From the point to the face's first corner.
    from: Vector<InRoom>,
    /// Distance of the face.
    away: f64,
    /// Foot of the point on the face, along and up.
    foot: [f64; 2],
}

impl Sight {
    /// None from outside.
    fn of(wall: Wall, point: Vector<InRoom>) -> Option<Self> {
        let from = wall.from - point;
        let away = wall.outward.dot(from);
        (away > 0.0).then(|| Self { foot: [-wall.along.dot(from), -wall.up.dot(from)], wall, from, away })
    }

    /// Where in the inner face something is seen that lies `behind` it; along is 0, up is 1.
    fn seen(&self, axis: usize, at: f64, behind: f64) -> f64 {
        self.foot[axis] + (at - self.foot[axis]) * (self.away / (self.away + behind))
    }

    /// What shows of a pane of an opening's outer face between its inner edges and beneath its slab, no farther along than
    /// from one place to another.
    fn through(
        &self,
        opening: &Opening,
        pane: &Rectangle,
        [from, to]: [f64; 2],
    ) -> Option<[Vector<InRoom>; 4]> {
        let (whole, reveal) = (opening.whole(), opening.reveal.metres());
        let outer = |axis: usize, at: Metres| self.seen(axis, at.metres(), reveal);
        let left = outer(0, pane.left).max(whole.left.metres()).max(from);
        let right = outer(0, pane.right).min(whole.right.metres()).min(to);
        let low = outer(1, pane.low).max(whole.low.metres());
        let high = outer(1, pane.high).min(whole.high.metres()).min(self.slab(opening));
        let at = |along: f64, up: f64| self.from + self.wall.along * along + self.wall.up * up;
        (left < right && low < high).then(|| [at(left, low), at(right, low), at(right, high), at(left, high)])
    }

    /// How far up one sees beneath an opening's slab; it hides nothing of what lies below a point above it.
    fn slab(&self, opening: &Opening) -> f64 {
        let Some(slab) = opening.overhang.filter(|_| !opening.in_ceiling) else { return f64::INFINITY };
        let edge = opening.whole().high.metres() + slab.above.metres();
        let behind = opening.reveal.metres() + slab.depth.metres();
        if edge > self.foot[1] { self.seen(1, edge, behind) } else { f64::INFINITY }
    }
}

/// Its panes, or the whole where the point is so far off that no bar looks as wide as `finest`.
fn panes_to_tell(opening: &Opening, sight: &Sight, finest: Degrees) -> Vec<Rectangle> {
    let whole = opening.whole();
    let Some(bars) = opening.bars else { return vec![whole] };
    let middle = |low: Metres, high: Metres| (low.metres() + high.metres()) / 2.0;
    let [along, up] = [middle(whole.left, whole.right), middle(whole.low, whole.high)];
    let out = sight.wall.outward * opening.reveal.metres();
    let away = (sight.from + sight.wall.along * along + sight.wall.up * up + out).norm();
    let looks = maths::atan2(bars.thickness.metres(), away);
    if looks < finest.radians() { vec![whole] } else { opening.pane_rectangles() }
}

/// Normals of the planes through the eye and each edge of a polygon, pointing to its inside; of any length.
fn edges(corners: &[Vector<InRoom>]) -> impl Iterator<Item = Vector<InRoom>> + '_ {
    let middle = corners.iter().fold(Vector::new(0.0, 0.0, 0.0), |sum, corner| sum + *corner);
    let next = corners.iter().cycle().skip(1);
    let normals = corners.iter().zip(next).map(|(corner, next)| corner.cross(*next));
    normals.map(move |normal| if normal.dot(middle) < 0.0 { -normal } else { normal })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::opening::Overhang;
    use crate::units::{Bearing, Height};
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
            let cones = cones(&room, &opening, point, Degrees::default());
            let sides = cones.iter().flat_map(|cone| &cone.sides);
            let nearest = sides.map(|side| side.normal.dot(sun).abs()).fold(1.0, f64::min);
            prop_assume!(nearest > 1e-9);
            let lit = cones.iter().any(|cone| cone.contains(sun));
            prop_assert_eq!(lit, passes(&opening, point, room.room_from_world(sun)));
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
