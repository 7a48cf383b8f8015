//! Daylight on a plane of any tilt, in its three parts: sun, sky, ground.
//!
//! The sky's light is spread over the sky as the standard sky of its kind is, scaled to the level light of the model;
//! the ground is even and matt. Nothing stands in the way: walls and openings are other rooms' work.

use super::cie_sky::CieSky;
use super::{Daylight, Sky, hemisphere};
use crate::units::{Lux, Share, Vector, World};

/// What arrives on a plane.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OnPlane {
    /// From the sun's disc.
    pub sun: Lux,
    /// From the sky.
    pub sky: Lux,
    /// From the ground.
    pub ground: Lux,
}

impl OnPlane {
    /// All of it.
    pub fn total(self) -> Lux {
        self.sun + self.sky + self.ground
    }
}

/// What is around: the light, and what the ground gives back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outdoors {
    /// Kind of sky.
    pub sky: Sky,
    /// Amounts of light.
    pub light: Daylight,
    /// Apparent direction of the sun, a unit vector.
    pub sun: Vector<World>,
    /// Reflectance of the ground.
    pub ground: Share,
}

/// Daylight on a plane that faces `normal`, a unit vector.
///
/// # Source
/// Sun: Lambert's cosine. Sky: the CIE general sky ([`super::cie_sky`]) summed over the half-sphere. Ground:
/// `ρ E (1 − n·up)/2`, the part of the half-sphere in front of the plane that an endless level ground fills.
pub fn on_plane(outdoors: &Outdoors, normal: Vector<World>) -> OnPlane {
    let Outdoors { sky, light, sun, ground } = *outdoors;
    let level = light.beam * sun.z.max(0.0) + light.sky;
    OnPlane {
        sun: if sun.z > 0.0 { light.beam * sun.dot(normal).max(0.0) } else { Lux::default() },
        sky: light.sky * sky_share(CieSky::of(sky), sun, normal),
        ground: level.share(ground) * (0.5 * (1.0 - normal.z).max(0.0)),
    }
}

/// Light of the sky on a plane relative to that on level ground.
fn sky_share(sky: CieSky, sun: Vector<World>, normal: Vector<World>) -> f64 {
    let under = sky.under(sun);
    let plane = hemisphere::sum(|point| {
        let facing = point.dot(normal);
        if facing > 0.0 { under.relative(point) * facing } else { 0.0 }
    });
    plane / sky.on_level_ground(sun)
}

#[cfg(test)]
mod tests {
    use super::super::ies;
    use super::*;
    use crate::light::daylight::daylight;
    use crate::units::{Bearing, Height};
    use proptest::prelude::*;

    fn outdoors(sky: Sky, height: f64) -> Outdoors {
        let up = Height::clamped(height);
        let sun = Vector::towards(Bearing::from_degrees(200.0), up);
        Outdoors { sky, light: daylight(sky, up, ies::SOLAR_CONSTANT), sun, ground: Share::clamped(0.2) }
    }

    #[test]
    fn level_ground_gets_the_level_light() {
        let outdoors = outdoors(Sky::Clear, 40.0);
        let level = on_plane(&outdoors, Vector::UP);
        assert!((level.sky.lux() / outdoors.light.sky.lux() - 1.0).abs() < 1e-12);
        assert_eq!(level.ground, Lux::default());
        let ceiling = on_plane(&outdoors, -Vector::UP);
        assert_eq!((ceiling.sun, ceiling.sky), (Lux::default(), Lux::default()));
        let expected = outdoors.light.level(Height::clamped(40.0)).lux() * 0.2;
        assert!((ceiling.ground.lux() / expected - 1.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn turning_sun_and_plane_together_changes_little(
            turn in 0.0..360.0f64, tilt in -90.0..90.0f64, height in 1.0..80.0f64,
        ) {
            // The grid of the sky has corners; a turn moves light across them.
            let mut one = outdoors(Sky::Hazy, height);
            let from = on_plane(&one, Vector::towards(Bearing::from_degrees(0.0), Height::clamped(tilt)));
            one.sun = Vector::towards(Bearing::from_degrees(200.0 + turn), Height::clamped(height));
            let to = on_plane(&one, Vector::towards(Bearing::from_degrees(turn), Height::clamped(tilt)));
            prop_assert!((from.total().lux() / to.total().lux() - 1.0).abs() < 0.05);
        }

        #[test]
        fn no_plane_gets_less_than_nothing(bearing in 0.0..360.0f64, tilt in -90.0..90.0f64, height in -18.0..90.0f64) {
            let normal = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(tilt));
            for sky in Sky::ALL {
                let got = on_plane(&outdoors(sky, height), normal);
                prop_assert!(got.sun.lux() >= 0.0 && got.sky.lux() >= 0.0 && got.ground.lux() >= 0.0);
            }
        }
    }
}
