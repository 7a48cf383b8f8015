//! Openings sighted from a mark: corners seen in directions become the sky that the opening lets in.
//!
//! Two opposite corners do not fix a window: its upright edges are vertical planes, but its top and bottom are
//! level lines on a wall, and a level line seen aslant is a great circle. The wall's bearing fixes them, and so does
//! a third corner. Without either, the box of bearings and heights stands in, with the margin it may be wrong by.

use core::fmt;

use super::cone::{Cone, HalfSpace};
use super::opening::{Corner, Sighting};
use crate::maths;
use crate::units::{Bearing, Degrees, Height, Vector, World};

/// Corners nearer to each other than this are one corner sighted twice. Our own choice.
const APART: f64 = 1.0;

/// Walls seen more aslant than this are not reckoned with when nothing is known of the wall. Our own choice.
const ASLANT: f64 = 60.0;

/// Cosine of the steepest slant at which a wall still shows its opening (87°). Our own choice.
const EDGE_ON: f64 = 0.052;

/// The sky that a sighted opening lets in.
#[derive(Clone, Debug, PartialEq)]
pub struct Sighted {
    /// The sky.
    pub cone: Cone,
    /// Outward normal of the wall; `None` if nothing tells.
    pub wall: Option<Bearing>,
    /// How far the opening's edges may be off, beyond the bearing's own uncertainty: 0 if the wall is known.
    pub margin: Degrees,
}

/// Why corners do not make an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SightingError {
    /// Two corners are needed.
    TooFew,
    /// The two are one and the same, beside each other or above each other.
    TooClose,
    /// Seen from the mark the wall with this bearing shows its edge or its back.
    EdgeOn(Bearing),
    /// The third corner does not tell which way the wall faces, as all corners are level with the eye.
    Undecided,
}

impl fmt::Display for SightingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooFew => f.write_str("two opposite corners are needed"),
            Self::TooClose => f.write_str("the corners are too close: sight two opposite corners"),
            Self::EdgeOn(wall) => {
                write!(f, "a wall that faces {:.0}° cannot be seen from inside there", wall.degrees())
            }
            Self::Undecided => f.write_str("the third corner does not tell which way the wall faces"),
        }
    }
}

impl core::error::Error for SightingError {}

/// The sky that a sighted opening lets onto the spot it was sighted from.
///
/// # Errors
/// Too few corners, corners that coincide, or a wall that cannot be seen so.
pub fn sighted(sighting: &Sighting) -> Result<Sighted, SightingError> {
    let [a, b, third @ ..] = sighting.corners.as_slice() else { return Err(SightingError::TooFew) };
    if a.bearing.turn_to(b.bearing).abs().degrees() < APART
        || (a.height.degrees() - b.height.degrees()).abs() < APART
    {
        return Err(SightingError::TooClose);
    }
    let known = match (sighting.wall_bearing, third.first()) {
        (Some(wall), _) => Some(wall),
        (None, Some(third)) => Some(wall_from(*a, *b, *third)?),
        (None, None) => None,
    };
    match known {
        Some(wall) => Ok(Sighted { cone: on_wall(*a, *b, wall)?, wall: known, margin: Degrees::default() }),
        None => Ok(Sighted { cone: boxed(*a, *b), wall: None, margin: margin(*a, *b) }),
    }
}

/// The rectangle on a known wall, at any distance: planes through its four edges.
fn on_wall(a: Corner, b: Corner, wall: Bearing) -> Result<Cone, SightingError> {
    let (outward, along) = (wall.level(), wall.turned(Degrees::from_degrees(90.0)).level());
    let on_plane = |corner: Corner| {
        let to = direction(corner);
        let distance = to.dot(outward);
        let seen = distance > EDGE_ON * maths::hypot(to.x, to.y);
        seen.then(|| (to.dot(along) / distance, to.z / distance)).ok_or(SightingError::EdgeOn(wall))
    };
    let ((u1, v1), (u2, v2)) = (on_plane(a)?, on_plane(b)?);
    let (left, right, low, high) = (u1.min(u2), u1.max(u2), v1.min(v2), v1.max(v2));
    // At distance 1 a point is outward + u·along + v·up: `u ≥ left` is (along − left·outward)·s ≥ 0, and so on.
    let normals = [
        along - outward * left,
        outward * right - along,
        Vector::UP - outward * low,
        outward * high - Vector::UP,
    ];
    let mut sides: Vec<HalfSpace> =
        normals.into_iter().filter_map(Vector::unit).map(HalfSpace::beside).collect();
    // The planes alone would let in the sky behind one's back too.
    sides.push(HalfSpace::beside(outward));
    Ok(Cone { sides })
}

/// Which way a wall faces, from two opposite corners and a third: the third lies level with one of them on the wall,
/// so that tan(height)/cos(bearing − wall) is the same for both.
fn wall_from(a: Corner, b: Corner, third: Corner) -> Result<Bearing, SightingError> {
    let off = |corner: Corner| corner.bearing.turn_to(third.bearing).abs();
    // It stands above or below the corner whose bearing it shares, and level with the other.
    let level = if off(a) < off(b) { b } else { a };
    let (tan_level, tan_third) = (maths::tan(level.height.radians()), maths::tan(third.height.radians()));
    let normal = third.bearing.level() * tan_level - level.bearing.level() * tan_third;
    // cos(bearing − wall) is level·wall, so the wall is at right angles to this difference.
    let across = Vector::<World>::new(normal.y, -normal.x, 0.0).unit().ok_or(SightingError::Undecided)?;
    if normal.norm() < 1e-3 {
        return Err(SightingError::Undecided);
    }
    let middle = a.bearing.level() + b.bearing.level();
    Ok(if across.dot(middle) < 0.0 { (-across).bearing() } else { across.bearing() })
}

/// All directions between two bearings and two heights.
fn boxed(a: Corner, b: Corner) -> Cone {
    let (low, high) =
        (a.height.degrees().min(b.height.degrees()), a.height.degrees().max(b.height.degrees()));
    let clockwise = a.bearing.turn_to(b.bearing).degrees() > 0.0;
    let (from, to) = if clockwise { (a.bearing, b.bearing) } else { (b.bearing, a.bearing) };
    Cone {
        sides: vec![
            HalfSpace::beside(from.turned(Degrees::from_degrees(90.0)).level()),
            HalfSpace::beside(to.turned(Degrees::from_degrees(-90.0)).level()),
            HalfSpace { normal: Vector::UP, least: Height::clamped(low).sin() },
            HalfSpace { normal: -Vector::UP, least: -Height::clamped(high).sin() },
        ],
    }
}

/// How far the top or bottom edge may run from the level of its sighted corner, over all walls seen less than
/// [`ASLANT`] from square on.
fn margin(a: Corner, b: Corner) -> Degrees {
    let width = a.bearing.turn_to(b.bearing).abs().degrees();
    let furthest = |corner: Corner| {
        let tan = maths::tan(corner.height.radians());
        let cos = |slant: f64| maths::cos(Degrees::from_degrees(slant).radians());
        // The near jamb is seen at `near` from square on, the far one beyond it, up to the steepest slant.
        let near = (ASLANT - width).max(-width / 2.0);
        let ratio = cos(near + width) / cos(near);
        let moved = [ratio, 1.0 / ratio].map(|by| Degrees::from_radians(maths::atan(tan * by)).degrees());
        moved.into_iter().map(|height| (height - corner.height.degrees()).abs()).fold(0.0, f64::max)
    };
    Degrees::from_degrees(furthest(a).max(furthest(b)))
}

fn direction(corner: Corner) -> Vector<World> {
    Vector::towards(corner.bearing, corner.height)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::aperture::cones;
    use crate::place::opening::Opening;
    use crate::place::room::Room;
    use crate::units::{InRoom, Metres};
    use proptest::prelude::*;

    fn metres(m: f64) -> Metres {
        Metres::from_metres(m)
    }

    /// A room, the directions of its window's four corners from a point, and the window's true cone.
    fn window(turn: f64, size: [f64; 4], point: [f64; 3]) -> (Room, [Corner; 4], Cone) {
        let mut room = Room::rectangle("r", "r", [6.0, 5.0, 3.0].map(metres), Bearing::from_degrees(turn));
        room.openings.push(Opening::rectangle("o", "o", 0, size.map(metres)));
        let eye: Vector<InRoom> = Vector::new(point[0], point[1], point[2]);
        let frame = room.frame(&room.openings[0]).unwrap();
        let corners = frame.inner.map(|corner| {
            let to = room.world_from_room(corner - eye);
            Corner { bearing: to.bearing(), height: to.height() }
        });
        let cone = cones(&room, &room.openings[0], eye, Degrees::default()).remove(0);
        (room, corners, cone)
    }

    fn sighting(corners: Vec<Corner>, wall_bearing: Option<Bearing>) -> Sighting {
        Sighting {
            id: "s".to_owned(),
            name: "s".to_owned(),
            corners,
            wall_bearing,
            bearing_uncertainty: Degrees::from_degrees(5.0),
        }
    }

    fn some_window() -> impl Strategy<Value = (f64, [f64; 4], [f64; 3])> {
        (
            0.0..360.0f64,
            (0.5..3.0f64, 0.2..1.0f64, 0.8..2.5f64, 0.9..1.8f64).prop_map(|(a, b, c, d)| [a, b, c, d]),
            (0.5..5.5f64, 0.8..4.5f64, 0.8..1.8f64).prop_map(|(a, b, c)| [a, b, c]),
        )
    }

    proptest! {
        #[test]
        fn corners_and_wall_give_the_measured_cone(
            (turn, size, point) in some_window(), bearing in -85.0..85.0f64, up in -20.0..60.0f64,
        ) {
            let (room, corners, truth) = window(turn, size, point);
            let seen = [corners[0], corners[2]];
            prop_assume!(seen[0].bearing.turn_to(seen[1].bearing).abs().degrees() > 2.0);
            prop_assume!((seen[0].height.degrees() - seen[1].height.degrees()).abs() > 2.0);
            let got = match sighted(&sighting(seen.to_vec(), Some(room.wall_bearing))) {
                Err(SightingError::EdgeOn(_)) => return Ok(()),
                got => got.unwrap(),
            };
            let sun = Vector::towards(Bearing::from_degrees(turn + bearing), Height::clamped(up));
            let nearest = truth.sides.iter().map(|side| side.normal.dot(sun).abs()).fold(1.0, f64::min);
            prop_assume!(nearest > 1e-6);
            prop_assert_eq!(got.cone.contains(sun), truth.contains(sun));
        }

        #[test]
        fn a_third_corner_tells_the_wall((turn, size, point) in some_window(), which in 0usize..2) {
            let (room, corners, _) = window(turn, size, point);
            let third = corners[[1, 3][which]];
            let all = vec![corners[0], corners[2], third];
            prop_assume!(corners[0].bearing.turn_to(corners[2].bearing).abs().degrees() > 4.0);
            prop_assume!((corners[0].height.degrees() - corners[2].height.degrees()).abs() > 4.0);
            prop_assume!(third.height.degrees().abs() > 4.0);
            match sighted(&sighting(all, None)) {
                Ok(got) => prop_assert!(got.wall.unwrap().turn_to(room.wall_bearing).abs().degrees() < 1e-6),
                Err(error) => prop_assert!(matches!(error, SightingError::EdgeOn(_)), "{error}"),
            }
        }

        #[test]
        fn without_the_wall_no_edge_is_further_off_than_said((turn, size, point) in some_window()) {
            let (room, corners, _) = window(turn, size, point);
            prop_assume!(corners[0].bearing.turn_to(corners[2].bearing).abs().degrees() > 2.0);
            prop_assume!((corners[0].height.degrees() - corners[2].height.degrees()).abs() > 2.0);
            let slant = |corner: Corner| room.wall_bearing.turn_to(corner.bearing).abs().degrees();
            prop_assume!(slant(corners[0]).max(slant(corners[2])) <= ASLANT);
            let got = sighted(&sighting(vec![corners[0], corners[2]], None)).unwrap();
            // The other two corners are level with those sighted on the wall, not in the eye.
            for (other, sighted) in [(corners[1], corners[0]), (corners[3], corners[2])] {
                let off = (other.height.degrees() - sighted.height.degrees()).abs();
                prop_assert!(off <= got.margin.degrees() + 1e-9, "{off} of {}", got.margin.degrees());
            }
        }
    }

    #[test]
    fn faults_are_named() {
        let corner = |bearing, height| Corner {
            bearing: Bearing::from_degrees(bearing),
            height: Height::clamped(height),
        };
        let of = |corners: Vec<Corner>, wall: Option<f64>| {
            sighted(&sighting(corners, wall.map(Bearing::from_degrees))).unwrap_err()
        };
        assert_eq!(of(vec![corner(200.0, 10.0)], None), SightingError::TooFew);
        assert_eq!(of(vec![corner(200.0, 10.0), corner(200.2, 30.0)], None), SightingError::TooClose);
        let edge_on = of(vec![corner(200.0, 5.0), corner(220.0, 30.0)], Some(300.0));
        assert!(matches!(edge_on, SightingError::EdgeOn(_)));
    }
}
