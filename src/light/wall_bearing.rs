//! Which way a wall faces, from the sun itself: no compass, no iron to be afraid of.
//!
//! Three ways, each from one moment: when the sun began or ceased to graze the wall; where the corner of a window's patch
//! lies; how the shadow of an upright lies. Every one ends in the angle between the sun's bearing and the wall's, and how
//! far it may be off: the sun's width, the watch and the tape. Distances are "along", from the wall's first corner, and
//! "in", from its inner face into the room.
//! Source: handbook D1 (textbook solar geometry).

use crate::maths;
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::units::{Bearing, Degrees, Duration, Metres, Vector, World};

/// Radius of the sun's disc, degrees: what is seen of a graze or an edge is this uncertain (fact: 959.63″).
const RADIUS: f64 = 959.63 / 3600.0;

/// A quarter turn.
const QUARTER: Degrees = Degrees::from_degrees(90.0);

/// A wall's bearing from the sun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FromSun {
    /// Outward normal of the wall, true.
    pub bearing: Bearing,
    /// How far off it may be.
    pub good_to: Degrees,
    /// How far the light should lie from what casts it, over the floor, and how far it was measured, where both are known:
    /// if they differ by much, another corner was measured, or the floor slopes.
    pub lengths: Option<[Metres; 2]>,
}

/// What was seen of a graze.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Graze {
    /// The sun came round onto the outer face; inside, its first ray came in.
    Began,
    /// It left the face.
    Ceased,
}

/// From the moment of a graze, good to `watch` either way; `sun` is where it stood, `later` where it stands a minute after.
pub fn from_graze(graze: Graze, [sun, later]: [Vector<World>; 2], watch: Duration) -> FromSun {
    let pace = sun.bearing().turn_to(later.bearing()).degrees();
    // Clockwise, the sun comes from the left of the way the wall faces.
    let clockwise = (pace >= 0.0) == (graze == Graze::Began);
    let turn = if clockwise { QUARTER } else { Degrees::from_degrees(-QUARTER.degrees()) };
    let disc = RADIUS / maths::cos(sun.height().radians()).max(1e-3);
    let good_to = maths::hypot(pace * watch.minutes(), disc);
    FromSun { bearing: sun.bearing().turned(turn), good_to: Degrees::from_degrees(good_to), lengths: None }
}

/// A corner of an opening, as one stands in the room and looks out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Corner {
    /// At its left edge, else at its right.
    pub left: bool,
    /// At its head, else at its sill.
    pub head: bool,
}

/// A place on the floor, by two tape measures good to `tape`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taped {
    /// Along the wall from its first corner.
    pub along: Metres,
    /// From its inner face into the room.
    pub into: Metres,
    /// How far each may be off.
    pub tape: Metres,
}

/// From where the corner of an opening's patch lies on the floor under the sun; `None` where it lies behind the wall, and for
/// roof lights.
pub fn from_patch(opening: &Opening, corner: Corner, at: Taped, sun: Vector<World>) -> Option<FromSun> {
    if opening.in_ceiling {
        return None;
    }
    let whole = opening.whole();
    // Seen from inside, the far end of the wall is at the left.
    let edge = if corner.left { whole.right } else { whole.left };
    let aside = at.along.metres() - edge.metres();
    // The outer edge casts the shadow on the side that the light comes from.
    let outer = (aside < 0.0) == corner.left && aside != 0.0;
    let depth = at.into.metres() + if outer { opening.reveal.metres() } else { 0.0 };
    let rise = if corner.head { whole.high } else { whole.low };
    // A head's shadow is cast by its outer edge, and so from farther off.
    let to_head = if corner.head { at.into.metres() + opening.reveal.metres() } else { at.into.metres() };
    let found = seen(aside, depth, at.tape, sun)?;
    let slope = maths::tan(sun.height().radians());
    let measured = to_head * maths::hypot(aside, depth) / depth;
    let lengths = (slope > 1e-3).then(|| [rise.metres() / slope, measured].map(Metres::from_metres));
    Some(FromSun { lengths, ..found })
}

/// From the shadow of something upright: its tip lies so far along the wall and so far into the room from its foot (both
/// signed). The height of it, where known, checks the length.
pub fn from_upright(tip: Taped, height: Option<Metres>, sun: Vector<World>) -> Option<FromSun> {
    let (aside, into) = (tip.along.metres(), tip.into.metres());
    let found = seen(aside, into, tip.tape, sun)?;
    let slope = maths::tan(sun.height().radians());
    let height = height.filter(|_| slope > 1e-3);
    let lengths =
        height.map(|height| [height.metres() / slope, maths::hypot(aside, into)].map(Metres::from_metres));
    Some(FromSun { lengths, ..found })
}

/// From the way of the light over the floor: so far along, so far in.
fn seen(aside: f64, into: f64, tape: Metres, sun: Vector<World>) -> Option<FromSun> {
    let length = maths::hypot(aside, into);
    if !(length > 0.0 && length.is_finite()) || sun.z <= 0.0 {
        return None;
    }
    // "Along" points a quarter turn left of the way the wall faces, and the light goes against the sun.
    let off = Degrees::from_radians(maths::atan2(aside, into));
    let tape = Degrees::from_radians(maths::atan2(tape.metres() * core::f64::consts::SQRT_2, length));
    let good_to = maths::hypot(tape.degrees(), RADIUS);
    let bearing = sun.bearing().turned(Degrees::from_degrees(-off.degrees()));
    Some(FromSun { bearing, good_to: Degrees::from_degrees(good_to), lengths: None })
}

/// The room turned so that one of its walls faces a bearing, good to an angle; `None` if there is no such wall.
pub fn turned_to(room: &Room, wall: usize, found: FromSun) -> Option<Room> {
    let turn = room.bearing_of(wall)?.turn_to(found.bearing);
    let wall_bearing = room.wall_bearing.turned(turn);
    Some(Room { wall_bearing, bearing_uncertainty: found.good_to, ..room.clone() })
}

#[cfg(test)]
#[path = "wall_bearing_tests.rs"]
mod tests;
