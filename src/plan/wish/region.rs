//! The part of the sky that a wish asks for.
//!
//! An arc off the lens becomes arcs of bearings, those become vertical planes through the subject, and heights
//! become limits on the up part of the *apparent* direction (the one that casts the light). The result is a
//! union of convex cones, so that searching it needs no trigonometry. What the place lets through is not here.

use super::{Arc, Heights};
use crate::place::cone::{Cone, HalfSpace};
use crate::units::{Bearing, Degrees, Vector};

/// Widest arc that two vertical planes bound as a convex cone.
const HALF: f64 = 180.0;

/// Arcs wider than this are covered by three half-spaces instead of two, so that neighbours always overlap
/// and no seam is left between spans that were found one by one. Our own choice.
const THREE_PIECES: f64 = 270.0;

/// An arc of bearings, clockwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BearingArc {
    /// Where it begins.
    pub from: Bearing,
    /// How far it runs clockwise, 0° to 360°.
    pub width: Degrees,
}

impl BearingArc {
    /// Whether `bearing` lies in it, both ends included.
    pub fn contains(&self, bearing: Bearing) -> bool {
        self.is_full() || self.from.turn_to(bearing).positive() <= self.width
    }

    /// Whether it goes all the way round.
    pub fn is_full(&self) -> bool {
        self.width.degrees() >= 360.0
    }

    /// Where it ends.
    pub fn to(&self) -> Bearing {
        self.from.turned(self.width)
    }

    /// Convex cones between vertical planes whose union it is.
    pub fn cones(&self) -> Vec<Cone> {
        let width = self.width.degrees();
        let starts: &[f64] = match width {
            w if w >= 360.0 => return vec![Cone::default()],
            w if w <= HALF => return vec![between(self.from, self.to())],
            w if w <= THREE_PIECES => &[0.0, w - HALF],
            w => &[0.0, (w - HALF) / 2.0, w - HALF],
        };
        starts.iter().map(|start| half(self.from.turned(Degrees::from_degrees(*start)))).collect()
    }
}

/// Where the light may come from, seen from above: the arc of a wish, for a lens that looks to `lens`.
///
/// Off the lens counts to camera right, which is anticlockwise seen from above (handbook B1 with the sign of
/// the design): the light's bearing is `lens + 180° − off`. Arcs that meet are one; nothing overlaps.
pub fn bearings(arc: Arc, lens: Bearing) -> Vec<BearingArc> {
    let (from, width) = (arc.from.degrees(), (arc.to.degrees() - arc.from.degrees()).clamp(0.0, 360.0));
    // Measured clockwise from the direction towards the camera.
    let mut arcs = vec![(Degrees::from_degrees(-from - width).positive().degrees(), width)];
    if arc.either_side {
        arcs.push((Degrees::from_degrees(from).positive().degrees(), width));
    }
    merged(arcs)
        .into_iter()
        .map(|(start, width)| BearingArc {
            from: lens.reversed().turned(Degrees::from_degrees(start)),
            width: Degrees::from_degrees(width),
        })
        .collect()
}

/// Where the light may come from for a lens that may look to any of `lenses`.
pub fn bearings_of_any(arc: Arc, lenses: &[Bearing]) -> Vec<BearingArc> {
    let all = lenses.iter().flat_map(|lens| bearings(arc, *lens));
    let all = merged(all.map(|arc| (arc.from.degrees(), arc.width.degrees())).collect());
    all.into_iter()
        .map(|(start, width)| BearingArc {
            from: Bearing::from_degrees(start),
            width: Degrees::from_degrees(width),
        })
        .collect()
}

/// Arcs of bearings and heights as a union of convex cones.
pub fn cones(arcs: &[BearingArc], heights: Heights) -> Vec<Cone> {
    let mut cones: Vec<Cone> = arcs.iter().flat_map(BearingArc::cones).collect();
    for cone in &mut cones {
        cone.sides.extend(height_limits(heights));
    }
    cones
}

/// Lowest and highest height as half-spaces.
pub fn height_limits(heights: Heights) -> [HalfSpace; 2] {
    [
        HalfSpace { normal: Vector::UP, least: heights.from.sin() },
        HalfSpace { normal: -Vector::UP, least: -heights.to.sin() },
    ]
}

/// From one vertical plane clockwise to another at most half a turn on.
fn between(from: Bearing, to: Bearing) -> Cone {
    let right = Degrees::from_degrees(90.0);
    let left = Degrees::from_degrees(-90.0);
    Cone {
        sides: vec![
            HalfSpace::beside(from.turned(right).level()),
            HalfSpace::beside(to.turned(left).level()),
        ],
    }
}

/// The half turn clockwise from a vertical plane.
fn half(from: Bearing) -> Cone {
    Cone { sides: vec![HalfSpace::beside(from.turned(Degrees::from_degrees(90.0)).level())] }
}

/// Arcs `(start, width)` on a circle, overlapping and touching ones made one.
fn merged(mut arcs: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    crate::order::by(&mut arcs, |a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<(f64, f64)> = Vec::with_capacity(arcs.len());
    for (start, width) in arcs {
        match joined.last_mut() {
            Some(last) if start <= last.0 + last.1 => last.1 = last.1.max(start + width - last.0),
            _ => joined.push((start, width)),
        }
    }
    close_the_circle(&mut joined);
    joined
}

/// Lets the last arc swallow the first ones if it runs over the start of the circle.
fn close_the_circle(arcs: &mut Vec<(f64, f64)>) {
    while arcs.len() > 1 {
        let (first, last) = (arcs[0], arcs[arcs.len() - 1]);
        let over = last.0 + last.1 - 360.0;
        if over < first.0 {
            break;
        }
        let end = arcs.len() - 1;
        arcs[end].1 = last.1.max(first.0 + first.1 + 360.0 - last.0);
        arcs.remove(0);
    }
    for arc in arcs.iter_mut() {
        arc.1 = arc.1.min(360.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Height, World};
    use proptest::prelude::*;

    fn arc(from: f64, to: f64, either_side: bool) -> Arc {
        Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side }
    }

    fn heights(from: f64, to: f64) -> Heights {
        Heights { from: Height::clamped(from), to: Height::clamped(to) }
    }

    fn degrees(arcs: &[BearingArc]) -> Vec<(f64, f64)> {
        arcs.iter().map(|arc| (arc.from.degrees(), arc.width.degrees())).collect()
    }

    fn sun(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn camera_right_is_west_of_a_lens_that_looks_south() {
        // The camera stands north of the subject and looks south: its right hand points west.
        let right = bearings(arc(80.0, 100.0, false), Bearing::from_degrees(180.0));
        assert_eq!(degrees(&right), [(260.0, 20.0)]);
    }

    #[test]
    fn an_arc_through_the_back_is_its_own_mirror() {
        let back = bearings(arc(150.0, 210.0, true), Bearing::from_degrees(215.0));
        assert_eq!(degrees(&back), [(185.0, 60.0)]);
    }

    #[test]
    fn overlapping_halves_become_one() {
        let north = Bearing::from_degrees(0.0);
        assert_eq!(degrees(&bearings(arc(100.0, 190.0, true), north)), [(280.0, 160.0)]);
        assert_eq!(degrees(&bearings(arc(112.0, 165.0, true), north)), [(292.0, 53.0), (15.0, 53.0)]);
        // Two halves of the circle close it, at the front too.
        assert_eq!(bearings(arc(0.0, 180.0, true), north).len(), 1);
        assert!(bearings(arc(0.0, 180.0, true), north)[0].is_full());
        assert!(bearings(arc(-20.0, 200.0, true), north)[0].is_full());
        assert_eq!(degrees(&bearings(arc(350.0, 370.0, true), north)), [(170.0, 20.0)]);
    }

    #[test]
    fn a_full_circle_has_no_planes() {
        let whole = cones(&bearings(arc(0.0, 360.0, false), Bearing::from_degrees(77.0)), heights(4.0, 16.0));
        assert_eq!(whole.len(), 1);
        assert_eq!(whole[0].sides.len(), 2, "heights alone");
    }

    /// The plain meaning of a wish, without planes.
    fn wished(arc: Arc, lens: f64, limits: (f64, f64), (bearing, height): (f64, f64)) -> bool {
        let off = (lens + 180.0 - bearing).rem_euclid(360.0);
        let within =
            |off: f64| (off - arc.from.degrees()).rem_euclid(360.0) <= arc.to.degrees() - arc.from.degrees();
        (within(off) || arc.either_side && within(-off)) && (limits.0..=limits.1).contains(&height)
    }

    fn some_arc() -> impl Strategy<Value = Arc> {
        (0.0..360.0f64, 0.0..=360.0f64, any::<bool>())
            .prop_map(|(from, width, both)| arc(from, from + width, both))
    }

    /// Whether `angle` is so near to an edge of the arc (or its mirror) that rounding decides.
    fn at_an_edge(arc: Arc, off: f64) -> bool {
        [arc.from, arc.to].iter().any(|edge| {
            [off, -off]
                .iter()
                .any(|off| Degrees::from_degrees(edge.degrees() - off).signed().abs().degrees() < 1e-6)
        })
    }

    proptest! {
        #[test]
        fn cones_say_what_the_wish_says(
            arc in some_arc(), lens in 0.0..360.0f64, low in -10.0..60.0f64, more in 0.0..40.0f64,
            bearing in 0.0..360.0f64, height in -15.0..89.0f64,
        ) {
            let limits = (low, low + more);
            prop_assume!(!at_an_edge(arc, lens + 180.0 - bearing));
            prop_assume!((height - limits.0).abs() > 1e-6 && (height - limits.1).abs() > 1e-6);
            let cones = cones(&bearings(arc, Bearing::from_degrees(lens)), heights(limits.0, limits.1));
            let inside = cones.iter().any(|cone| cone.contains(sun(bearing, height)));
            prop_assert_eq!(inside, wished(arc, lens, limits, (bearing, height)));
            let arcs = bearings(arc, Bearing::from_degrees(lens));
            let level = arcs.iter().any(|arc| arc.contains(Bearing::from_degrees(bearing)));
            prop_assert_eq!(level && (limits.0..=limits.1).contains(&height), inside);
        }

        #[test]
        fn arcs_of_bearings_stay_apart(arc in some_arc(), lens in 0.0..360.0f64) {
            let arcs = bearings(arc, Bearing::from_degrees(lens));
            let total: f64 = arcs.iter().map(|arc| arc.width.degrees()).sum();
            prop_assert!(total <= 360.0 + 1e-9);
            if let [a, b] = arcs[..] {
                prop_assert!(!a.contains(b.from) && !b.contains(a.from));
            }
        }

        #[test]
        fn either_side_is_symmetric_about_the_lens(
            arc in some_arc(), lens in 0.0..360.0f64, turn in 0.0..180.0f64, height in -5.0..60.0f64,
        ) {
            let arc = Arc { either_side: true, ..arc };
            prop_assume!(!at_an_edge(arc, turn));
            let cones = cones(&bearings(arc, Bearing::from_degrees(lens)), heights(-10.0, 70.0));
            let lit = |off: f64| cones.iter().any(|cone| cone.contains(sun(lens + 180.0 - off, height)));
            prop_assert_eq!(lit(turn), lit(-turn));
        }

        #[test]
        fn turning_lens_and_sun_together_changes_nothing(
            arc in some_arc(), lens in 0.0..360.0f64, bearing in 0.0..360.0f64, turn in 0.0..360.0f64,
        ) {
            prop_assume!(!at_an_edge(arc, lens + 180.0 - bearing));
            let lit = |by: f64| {
                cones(&bearings(arc, Bearing::from_degrees(lens + by)), heights(0.0, 50.0))
                    .iter()
                    .any(|cone| cone.contains(sun(bearing + by, 20.0)))
            };
            prop_assert_eq!(lit(0.0), lit(turn));
        }
    }
}
