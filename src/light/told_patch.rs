//! A wall's bearing from the sun on the floor, as somebody in the room tells it on the phone or a picture shows it.
//!
//! They tell the time, and where the corner of a patch lies that one corner of the opening throws: how far from the
//! wall, and how far along it, to the right as one looks out. The two in any one measure (feet, floor boards, sheets of
//! paper) give the angle between wall and sun; the height of the opening's corner in that measure, where it is known,
//! tells whether the story can be true. The same holds for the shadow of an upright thing, its foot in place of the wall's.
//!
//! Source: handbook D1, `p = z cos γ / tan h`, `q = −z sin γ / tan h`, solved for γ. Level floor, sharp edges.

use crate::maths;
use crate::units::{Bearing, Degrees, Vector, World};

/// What was told, all in one measure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// From the wall to the patch's corner.
    pub depth: f64,
    /// From below the opening's corner along the wall to the patch's, to the right as one looks out.
    pub right: f64,
    /// Height of the opening's corner over the floor, if it is known.
    pub high: Option<f64>,
    /// How far each may be off.
    pub give: f64,
}

/// A wall's bearing, and how sure it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallFound {
    /// Its outward normal, true.
    pub bearing: Bearing,
    /// How far off that may be.
    pub give: Degrees,
    /// The sun's height by the told height and the told place, less its height by the time; `None` without a height.
    pub disagrees: Option<Degrees>,
}

/// Why no wall can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoWall {
    /// The sun was not up at that time.
    NoSun,
    /// The corner lies on the wall or outside of it.
    NotInside,
    /// What was told may be off as far as it is long.
    TooRough,
}

/// The wall's bearing by the suns at the earliest and the latest time that is meant (the same one twice for a time that
/// is exact).
///
/// # Errors
/// It cannot be told.
pub fn wall(told: Told, suns: [Vector<World>; 2]) -> Result<WallFound, NoWall> {
    if suns.iter().any(|sun| sun.z <= 0.0) {
        return Err(NoWall::NoSun);
    }
    let long = maths::hypot(told.depth, told.right);
    if told.depth <= 0.0 {
        return Err(NoWall::NotInside);
    }
    if told.give >= long {
        return Err(NoWall::TooRough);
    }
    // Light goes into the room and to the side away from the sun: to the right as one looks out when the sun stands left.
    let left_of_normal = Degrees::from_radians(maths::atan2(told.right, told.depth));
    let [first, last] = suns.map(|sun| sun.bearing().turned(left_of_normal));
    let between = first.turn_to(last);
    let by_measure = Degrees::from_radians(maths::asin(told.give / long)).degrees();
    let middle = (suns[0] + suns[1]).unit().unwrap_or(suns[0]);
    let disagrees = told.high.map(|high| {
        let by_story = Degrees::from_radians(maths::atan2(high, long)).degrees();
        Degrees::from_degrees(by_story - middle.height().degrees())
    });
    Ok(WallFound {
        bearing: first.turned(Degrees::from_degrees(between.degrees() / 2.0)),
        give: Degrees::from_degrees(by_measure + between.abs().degrees() / 2.0),
        disagrees,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::patch::patches;
    use crate::place::opening::Opening;
    use crate::place::room::Room;
    use crate::units::{Height, Metres};
    use proptest::prelude::*;

    fn sun(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn the_handbooks_head_tells_its_wall() {
        // T-D1: the head of a window at 240° lands at p 2.669, q −1.025 (q to bearing N + 90, the right as one looks out
        // is N + 90 too) with the sun at 261.01° and 40.02°.
        let told = Told { depth: 2.669, right: -1.025, high: Some(2.4), give: 0.02 };
        let found = wall(told, [sun(261.01, 40.02); 2]).unwrap();
        assert!(
            found.bearing.turn_to(Bearing::from_degrees(240.0)).abs().degrees() < 0.05,
            "{:?}",
            found.bearing
        );
        assert!((0.3..0.6).contains(&found.give.degrees()));
        assert!(found.disagrees.unwrap().abs().degrees() < 0.05);
        assert_eq!(wall(told, [sun(261.0, -1.0); 2]), Err(NoWall::NoSun));
        assert_eq!(wall(Told { depth: -0.1, ..told }, [sun(261.0, 40.0); 2]), Err(NoWall::NotInside));
        assert_eq!(wall(Told { give: 3.0, ..told }, [sun(261.0, 40.0); 2]), Err(NoWall::TooRough));
    }

    proptest! {
        #[test]
        fn a_drawn_patch_told_roughly_gives_the_wall_within_its_give(
            faces in 0.0..360.0f64, aside in -50.0..50.0f64, height in 20.0..60.0f64, unit in 0.1..3.0f64,
            off in (-1.0..1.0f64, -1.0..1.0f64), late in -0.5..0.5f64, give in 0.001..0.1f64,
        ) {
            let metres = Metres::from_metres;
            let mut room = Room::rectangle("r", "r", [40.0, 30.0, 3.0].map(metres), Bearing::from_degrees(faces));
            room.openings.push(Opening::rectangle("o", "o", 0, [20.0, 1.0, 1.0, 1.2].map(metres)));
            let light = sun(faces + aside, height);
            let patch = &patches(&room, room.room_from_world(light))[0];
            // The upper corner at x = 20: the farthest from the wall, and the nearer of those two to the first corner.
            let far = patch.outline.iter().map(|at| at.y).fold(0.0, f64::max);
            let corner = patch.outline.iter().filter(|at| at.y > far - 1e-9).map(|at| at.x).fold(f64::INFINITY, f64::min);
            // Wall 0 runs along x; as one looks out, x grows to the left.
            let (sin, cos) = maths::sin_cos(off.0 * core::f64::consts::PI);
            let told = Told {
                depth: (far + give * off.1 * sin) / unit,
                right: (20.0 - corner + give * off.1 * cos) / unit,
                high: Some(2.2 / unit),
                give: give / unit,
            };
            let suns = [-0.5, 0.5].map(|minutes| sun(faces + aside + minutes - late, height));
            let found = wall(told, suns).unwrap();
            let miss = found.bearing.turn_to(Bearing::from_degrees(faces)).abs().degrees();
            prop_assert!(miss <= found.give.degrees() + 1e-6, "{miss} against {}", found.give.degrees());
            // And the measure does not matter: only the proportions are told.
            let scaled = Told { depth: told.depth * 7.0, right: told.right * 7.0, high: told.high.map(|high| high * 7.0), give: told.give * 7.0 };
            let again = wall(scaled, suns).unwrap();
            prop_assert!(found.bearing.turn_to(again.bearing).abs().degrees() < 1e-9);
        }
    }
}
