//! Where a board or mirror must face, and where water throws the light: geometry of reflection.
//!
//! No amounts of light here; those are in [`super::board`] and [`super::fresnel`].

use crate::maths;
use crate::units::{Degrees, Metres, Vector, World};

/// The way a mirror must face to throw light from `source` on towards `subject`, both unit vectors from the board:
/// half-way between them. `None` if they are opposite.
///
/// A mirror's beam turns twice as fast as the sun; a matt board needs no such care.
pub fn facing(source: Vector<World>, subject: Vector<World>) -> Option<Vector<World>> {
    (source + subject).unit()
}

/// Side of the patch that a plane mirror of side `mirror` throws by the sun at a distance: the sun's own width is added
/// (0.0093 of the way, the sun's mean diameter in radians).
pub fn patch_side(mirror: Metres, distance: Metres) -> Metres {
    Metres::from_metres(mirror.metres() + SUN_DIAMETER * distance.metres())
}

/// Mean diameter of the sun, radians (fact).
const SUN_DIAMETER: f64 = 0.0093;

/// Where level water or a wet floor mirrors something, as a lens over it sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mirrored {
    /// From the lens to the bright spot on the floor, a unit vector.
    pub towards: Vector<World>,
    /// From the lens' foot to the spot, along the floor.
    pub distance: Metres,
    /// Angle of the light to the upright.
    pub incidence: Degrees,
}

/// Mirror of something far away: the sun, the moon, the sky at `direction`. `None` if that is not above the horizon.
///
/// ```
/// # use slantlight::{light::aim::mirrored_far, units::{Bearing, Height, Metres, Vector}};
/// let sun = Vector::towards(Bearing::from_degrees(250.0), Height::clamped(10.0));
/// let spot = mirrored_far(sun, Metres::from_metres(1.5)).unwrap();
/// assert!((spot.distance.metres() - 8.51).abs() < 0.005);
/// ```
pub fn mirrored_far(direction: Vector<World>, lens_height: Metres) -> Option<Mirrored> {
    if direction.z <= 0.0 {
        return None;
    }
    let flat = maths::hypot(direction.x, direction.y);
    Some(Mirrored {
        towards: Vector::new(direction.x, direction.y, -direction.z),
        distance: Metres::from_metres(lens_height.metres() * flat / direction.z),
        incidence: Degrees::from_radians(maths::atan2(flat, direction.z)),
    })
}

/// Mirror of something near: a lamp, a window. `to` leads from the lens to it, metres; both stand above the floor. The
/// spot divides the way along the floor as the heights do. `None` if lens or lamp is not above the floor.
pub fn mirrored_near(to: Vector<World>, lens_height: Metres) -> Option<Mirrored> {
    let (lens, lamp) = (lens_height.metres(), lens_height.metres() + to.z);
    if lens <= 0.0 || lamp <= 0.0 {
        return None;
    }
    let part = lens / (lens + lamp);
    let spot = Vector::new(to.x * part, to.y * part, -lens);
    let flat = maths::hypot(spot.x, spot.y);
    Some(Mirrored {
        towards: spot.unit()?,
        distance: Metres::from_metres(flat),
        incidence: Degrees::from_radians(maths::atan2(flat, lens)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height};
    use proptest::prelude::*;

    #[test]
    fn lens_and_lamp_of_one_height_meet_half_way() {
        let spot = mirrored_near(Vector::new(0.0, 6.0, 0.0), Metres::from_metres(1.5)).unwrap();
        assert!((spot.distance.metres() - 3.0).abs() < 1e-12);
        let higher = mirrored_near(Vector::new(0.0, 6.0, 3.0), Metres::from_metres(1.5)).unwrap();
        // Heights 1.5 and 4.5 m: a quarter of the way.
        assert!((higher.distance.metres() - 1.5).abs() < 1e-12);
        assert_eq!(mirrored_near(Vector::new(0.0, 6.0, -2.0), Metres::from_metres(1.5)), None);
    }

    #[test]
    fn a_mirror_of_a_metre_throws_a_little_more() {
        assert!(
            (patch_side(Metres::from_metres(1.0), Metres::from_metres(10.0)).metres() - 1.093).abs() < 1e-12
        );
    }

    proptest! {
        #[test]
        fn angles_of_incidence_and_reflection_are_equal(
            sun in 1.0..89.0f64, to in 0.0..360.0f64, height in -60.0..60.0f64,
        ) {
            let light = Vector::towards(Bearing::from_degrees(0.0), Height::clamped(sun));
            let subject = Vector::towards(Bearing::from_degrees(to), Height::clamped(height));
            if let Some(normal) = facing(light, subject) {
                prop_assert!((normal.angle_to(light).degrees() - normal.angle_to(subject).degrees()).abs() < 1e-6);
            }
        }

        #[test]
        fn a_far_lamp_is_like_the_sun(height in 2.0..80.0f64, bearing in 0.0..360.0f64) {
            let direction = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let lens = Metres::from_metres(1.5);
            let far = mirrored_far(direction, lens).unwrap();
            let near = mirrored_near(direction * 1e7, lens).unwrap();
            prop_assert!((far.distance.metres() / near.distance.metres() - 1.0).abs() < 1e-4);
            prop_assert!(far.towards.angle_to(near.towards).degrees() < 1e-3);
        }
    }
}
