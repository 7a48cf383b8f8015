//! What a lens takes in, as a part of the sky: whether the sun is in the picture, just out of it, or on the glass.
//!
//! The picture is a pyramid of four planes through the lens. The sun's disc counts as in it while any of it is within.
//! Source: handbook F6, exact by planes instead of its relative bearing, which is off for a tilted lens. Distortion
//! and the roll of a camera are not here.

use super::relative::LensFrame;
use crate::maths;
use crate::place::cone::{Cone, HalfSpace};
use crate::sky::search::SUN_RADIUS;
use crate::units::{Bearing, Degrees, Vector, World};

/// Sun this near to the picture's edge is just out of it: our own choice, from the caution of handbook J.
pub const JUST_OUT: Degrees = Degrees::from_degrees(5.0);

/// Sun further off the lens axis than this does little on the front glass. Our own choice.
pub const FLARES_WITHIN: Degrees = Degrees::from_degrees(60.0);

/// The picture that a lens takes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Picture {
    /// Angle across.
    pub across: Degrees,
    /// Angle from bottom to top.
    pub up: Degrees,
    /// How far the lens is tilted up.
    pub tilt: Degrees,
}

/// Where the sun stands for a lens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SunSeen {
    /// Some of the disc is in the picture.
    In,
    /// Beside the picture, within [`JUST_OUT`].
    JustOut,
    /// Out of the picture, and on the front glass.
    Flaring,
    /// So far aside, or behind, that it does nothing to the lens.
    Clear,
}

impl SunSeen {
    /// "sun in the picture".
    pub const fn words(self) -> &'static str {
        match self {
            Self::In => "sun in the picture",
            Self::JustOut => "sun just out of the picture",
            Self::Flaring => "sun on the front glass: flag it",
            Self::Clear => "sun clear of the lens",
        }
    }
}

impl Picture {
    /// The four sides, each moved outwards by `margin`, for a lens that looks to `lens`: left, right, lower, upper.
    pub fn sides(&self, lens: Bearing, margin: Degrees) -> [HalfSpace; 4] {
        let frame = LensFrame::new(lens, self.tilt);
        let (right, up, ahead) = (frame.right(), frame.up(), frame.ahead());
        let (across_sin, across_cos) = maths::sin_cos(self.across.radians() / 2.0);
        let (up_sin, up_cos) = maths::sin_cos(self.up.radians() / 2.0);
        let least = -maths::sin(margin.radians());
        let side = |normal: Vector<World>| HalfSpace { normal, least };
        [
            side(right * across_cos + ahead * across_sin),
            side(-right * across_cos + ahead * across_sin),
            side(up * up_cos + ahead * up_sin),
            side(-up * up_cos + ahead * up_sin),
        ]
    }

    /// All directions from which some of the sun's disc is in the picture.
    pub fn holds_sun(&self, lens: Bearing) -> Cone {
        Cone { sides: self.sides(lens, SUN_RADIUS).to_vec() }
    }

    /// All directions from which the sun is in the picture or just out of it.
    pub fn nears_sun(&self, lens: Bearing) -> Cone {
        Cone { sides: self.sides(lens, JUST_OUT).to_vec() }
    }

    /// Where a sun stands for a lens that looks to `lens`, nothing being in between.
    pub fn sun(&self, lens: Bearing, light: Vector<World>) -> SunSeen {
        let ahead = LensFrame::new(lens, self.tilt).ahead();
        if self.holds_sun(lens).contains(light) {
            SunSeen::In
        } else if self.nears_sun(lens).contains(light) {
            SunSeen::JustOut
        } else if light.angle_to(ahead) < FLARES_WITHIN {
            SunSeen::Flaring
        } else {
            SunSeen::Clear
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Height;
    use proptest::prelude::*;

    /// 50 mm on Super 35, level.
    fn picture(tilt: f64) -> Picture {
        let degrees = Degrees::from_degrees;
        Picture { across: degrees(28.0), up: degrees(21.1), tilt: degrees(tilt) }
    }

    fn sun(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    fn seen(bearing: f64, height: f64) -> SunSeen {
        picture(0.0).sun(Bearing::from_degrees(220.0), sun(bearing, height))
    }

    #[test]
    fn a_level_lens_as_in_the_handbook() {
        // F6: |relative bearing| < half the angle + 0.27°, at the horizon.
        assert_eq!(seen(220.0 + 14.26, 0.0), SunSeen::In);
        assert_eq!(seen(220.0 + 14.28, 0.0), SunSeen::JustOut);
        assert_eq!(seen(220.0, 10.81), SunSeen::In);
        assert_eq!(seen(220.0, 10.83), SunSeen::JustOut);
        assert_eq!(seen(220.0, 15.6), SunSeen::Flaring);
        assert_eq!(seen(220.0 + 61.0, 0.0), SunSeen::Clear);
        assert_eq!(seen(40.0, 10.0), SunSeen::Clear);
    }

    #[test]
    fn a_tilted_lens_is_wider_in_bearing_higher_up() {
        // At a height of 40° the same angle across covers more bearings, which the handbook's rule leaves out.
        let up = picture(40.0);
        let lens = Bearing::from_degrees(100.0);
        assert_eq!(up.sun(lens, sun(100.0 + 17.0, 40.0)), SunSeen::In);
        assert_eq!(up.sun(lens, sun(100.0 + 17.0, 32.0)), SunSeen::JustOut);
    }

    proptest! {
        #[test]
        fn the_planes_agree_with_the_projection(
            tilt in -60.0..60.0f64, lens in 0.0..360.0f64, bearing in 0.0..360.0f64, height in -80.0..80.0f64,
        ) {
            // The sun's centre projected on the sensor, as a lens without distortion does it.
            let (picture, lens) = (picture(tilt), Bearing::from_degrees(lens));
            let at = LensFrame::new(lens, picture.tilt).sees(sun(bearing, height));
            let edge = |angle: Degrees| maths::tan(angle.radians() / 2.0);
            let on_sensor = at.y > 0.0
                && (at.x / at.y).abs() <= edge(picture.across)
                && (at.z / at.y).abs() <= edge(picture.up);
            let cone = Cone { sides: picture.sides(lens, Degrees::default()).to_vec() };
            let nearest = cone.sides.iter().map(|side| side.normal.dot(sun(bearing, height)).abs()).fold(1.0, f64::min);
            prop_assume!(nearest > 1e-9);
            prop_assert_eq!(cone.contains(sun(bearing, height)), on_sensor);
        }

        #[test]
        fn mirrored_and_turned_scenes_agree(
            tilt in -40.0..40.0f64, lens in 0.0..360.0f64, off in -180.0..180.0f64, height in -10.0..80.0f64, by in 0.0..360.0f64,
        ) {
            let seen = |lens: f64, off: f64| {
                picture(tilt).sun(Bearing::from_degrees(lens), sun(lens + off, height))
            };
            let sides = picture(tilt).sides(Bearing::from_degrees(lens), Degrees::default());
            let light = sun(lens + off, height);
            let near = |edge: f64| sides.iter().any(|side| (side.normal.dot(light) - edge).abs() < 1e-9);
            prop_assume!(!near(-maths::sin(SUN_RADIUS.radians())) && !near(-maths::sin(JUST_OUT.radians())));
            let from_axis = light.angle_to(LensFrame::new(Bearing::from_degrees(lens), Degrees::from_degrees(tilt)).ahead());
            prop_assume!((from_axis.degrees() - FLARES_WITHIN.degrees()).abs() > 1e-9);
            prop_assert_eq!(seen(lens, off), seen(lens, -off));
            prop_assert_eq!(seen(lens, off), seen(lens + by, off));
        }
    }
}
