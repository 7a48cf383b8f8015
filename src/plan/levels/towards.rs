//! What a wet floor and haze do towards the lens.
//!
//! Water mirrors what stands as far behind it as the lens stands before it; how much is Fresnel's. Haze scatters on ahead, so a
//! shaft is brightest against the light. Both are worth a class, not a number of candelas.

use super::subject::Subject;
use crate::light::aim::mirrored_far;
use crate::light::fresnel::{RefractiveIndex, reflectance};
use crate::light::haze::{Asymmetry, gain_over_side};
use crate::light::phase::{off_axis, phase};
use crate::light::relative::LensFrame;
use crate::units::{Degrees, Metres, Share, Stops, Vector, World};

/// A mirror image on a wet floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wet {
    /// From the lens' foot to the spot.
    pub distance: Metres,
    /// Whether the spot is in the picture.
    pub in_frame: bool,
    /// What the water throws back.
    pub back: Share,
    /// How much more that is than looking straight down.
    pub gain: Stops,
}

/// Where level water mirrors something far away at `direction`; `None` if that is not above the horizon.
pub fn wet(subject: &Subject, direction: Vector<World>) -> Option<Wet> {
    let spot = mirrored_far(direction, subject.lens_height)?;
    let sees = LensFrame::new(subject.lens, subject.tilt).sees(spot.towards);
    let half = |size: Degrees| crate::maths::tan(size.radians() / 2.0);
    let (across, up) = subject.frame;
    let in_frame = sees.y > 0.0 && sees.x.abs() <= half(across) * sees.y && sees.z.abs() <= half(up) * sees.y;
    let back = reflectance(RefractiveIndex::WATER, spot.incidence);
    let down = reflectance(RefractiveIndex::WATER, Degrees::default());
    let gain = Stops::from_factor(back.fraction() / down.fraction());
    Some(Wet { distance: spot.distance, in_frame, back, gain })
}

/// How a shaft looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shaft {
    /// Weaker than from the side.
    Less,
    /// As from the side.
    Side,
    /// Stronger.
    More,
    /// Much stronger.
    MuchMore,
}

/// Bounds of the classes: what haze's own error of 1½ stops lets be told apart (our choice).
const SHAFT: [f64; 3] = [-0.75, 0.75, 2.5];

/// What stage haze makes of light from `direction`, by the angle to the lens.
pub fn shaft(subject: &Subject, direction: Vector<World>) -> (Shaft, Degrees) {
    let ahead = LensFrame::new(subject.lens, subject.tilt).ahead();
    let gain = gain_over_side(Asymmetry::HAZE, phase(direction, ahead)).stops();
    let class = match SHAFT.iter().filter(|bound| gain > **bound).count() {
        0 => Shaft::Less,
        1 => Shaft::Side,
        2 => Shaft::More,
        _ => Shaft::MuchMore,
    };
    (class, off_axis(direction, ahead))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::levels::fixture;
    use crate::units::{Bearing, Height};

    fn sun(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn a_low_sun_ahead_is_mirrored_before_the_lens() {
        let mut subject = fixture::open(250.0);
        subject.frame = (Degrees::from_degrees(53.0), Degrees::from_degrees(41.0));
        let spot = wet(&subject, sun(250.0, 10.0)).unwrap();
        // Lens at 1.5 m: 1.5 cot 10° = 8.51 m, 10° under a level axis.
        assert!((spot.distance.metres() - 8.51).abs() < 0.005 && spot.in_frame);
        // Water at 80° of incidence throws back 0.3475 (textbook, n = 1.333): 4.1 stops over 2 % straight down.
        assert!((spot.gain.stops() - 4.09).abs() < 0.05, "{spot:?}");
        assert!(
            !wet(&subject, sun(250.0, 40.0)).unwrap().in_frame
                && !wet(&subject, sun(70.0, 10.0)).unwrap().in_frame
        );
        assert_eq!(wet(&subject, sun(250.0, -1.0)), None);
    }

    #[test]
    fn a_shaft_is_brightest_against_the_light() {
        // T-E1, g 0.8: 30° off the axis 4.0 stops over the side; from behind the lens 1.5 under it.
        let subject = fixture::open(250.0);
        assert_eq!(shaft(&subject, sun(250.0, 30.0)).0, Shaft::MuchMore);
        assert_eq!(shaft(&subject, sun(305.0, 0.0)).0, Shaft::More);
        assert_eq!(shaft(&subject, sun(340.0, 0.0)).0, Shaft::Side);
        assert_eq!(shaft(&subject, sun(70.0, 0.0)).0, Shaft::Less);
    }
}
