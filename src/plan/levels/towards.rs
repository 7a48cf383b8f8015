//! What a wet floor and haze do towards the lens.
//!
//! Water mirrors what stands as far behind it as the lens stands before it; how much is Fresnel's. Haze scatters on ahead, so a
//! shaft is brightest against the light. Both are worth a class, not a number of candelas.

use super::subject::Subject;
use crate::light::aim::{Mirrored, mirrored_far, mirrored_near};
use crate::light::fresnel::{RefractiveIndex, reflectance};
use crate::light::haze::{Asymmetry, gain_over_side};
use crate::light::phase::phase;
use crate::light::relative::LensFrame;
use crate::place::opening::Opening;
use crate::plan::kit::{Placed, Side};
use crate::units::{Degrees, Metres, Share, Stops, Vector, World};

/// A mirror image on a wet floor.
#[derive(Clone, Debug, PartialEq)]
pub struct Wet {
    /// What is mirrored: "the sun", a window, a lamp.
    pub of: String,
    /// From the lens' foot to the spot.
    pub distance: Metres,
    /// Whether the spot is in the picture.
    pub in_frame: bool,
    /// What the water throws back.
    pub back: Share,
    /// How much more that is than looking straight down.
    pub gain: Stops,
}

/// Where a level wet floor mirrors the sun, if that shines there, the windows of the room and the lamps that stand at the
/// set-up. Lamps are taken as high as the face (our choice: nobody says how high they stand).
pub fn wet(subject: &Subject, sun: Option<Vector<World>>) -> Vec<Wet> {
    let mut all = Vec::new();
    let sun = sun.and_then(|sun| mirrored_far(sun, subject.lens_height));
    all.extend(sun.map(|spot| mirrored(subject, "the sun", spot)));
    // From the lens to the face, and from there to what is mirrored.
    let rise = subject.face_height.metres() - subject.lens_height.metres();
    let face = subject.lens.level() * subject.lens_distance.metres() + Vector::UP * rise;
    let near = |(name, to): (&str, Vector<World>)| {
        Some(mirrored(subject, name, mirrored_near(face + to, subject.lens_height)?))
    };
    all.extend(windows(subject).into_iter().filter_map(near));
    all.extend(lamps(subject).into_iter().filter_map(near));
    all
}

/// Windows by name, and where their middles are from the face.
fn windows(subject: &Subject) -> Vec<(&str, Vector<World>)> {
    let Some((room, face)) = subject.inside.as_ref().and_then(|inside| inside.room.as_ref()) else {
        return Vec::new();
    };
    let open = room.openings.iter().filter(|opening| !opening.covered);
    let middle = |opening: &'_ Opening| {
        let frame = room.frame(opening)?;
        Some(room.world_from_room((frame.inner[0] + frame.inner[2]) * 0.5 - *face))
    };
    open.filter_map(|opening| Some((opening.name.as_str(), middle(opening)?))).collect()
}

/// Lamps that shine on the subject, and where they are from its face.
fn lamps(subject: &Subject) -> Vec<(&str, Vector<World>)> {
    let on_it = subject.rig.placed.iter().filter(|placed| placed.side != Side::Background);
    let lamp = |placed: &Placed| {
        let gear = subject.gear(placed).filter(|gear| gear.lamp().is_some())?;
        Some((gear.name.as_str(), subject.normal(placed.side) * placed.distance.metres()))
    };
    on_it.filter_map(lamp).collect()
}

fn mirrored(subject: &Subject, of: &str, spot: Mirrored) -> Wet {
    let sees = LensFrame::new(subject.lens, subject.tilt).sees(spot.towards);
    let half = |size: Degrees| crate::maths::tan(size.radians() / 2.0);
    let (across, up) = subject.frame;
    let in_frame = sees.y > 0.0 && sees.x.abs() <= half(across) * sees.y && sees.z.abs() <= half(up) * sees.y;
    let back = reflectance(RefractiveIndex::WATER, spot.incidence);
    let down = reflectance(RefractiveIndex::WATER, Degrees::default());
    let gain = Stops::from_factor(back.fraction() / down.fraction());
    Wet { of: of.to_owned(), distance: spot.distance, in_frame, back, gain }
}

/// How a shaft looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
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
const LOOKS: [f64; 3] = [-0.75, 0.75, 2.5];

/// A shaft in stage haze.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shaft {
    /// Its class.
    pub look: Look,
    /// How much brighter it is towards the lens than from the side.
    pub over_side: Stops,
}

impl Shaft {
    /// Of light from `direction`, by its angle to the lens.
    pub fn of(lens: LensFrame, direction: Vector<World>) -> Self {
        let over_side = gain_over_side(Asymmetry::HAZE, phase(direction, lens.ahead()));
        let look = match LOOKS.iter().filter(|bound| over_side.stops() > **bound).count() {
            0 => Look::Less,
            1 => Look::Side,
            2 => Look::More,
            _ => Look::MuchMore,
        };
        Self { look, over_side }
    }
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
        let of_sun = |subject: &_, to| wet(subject, Some(to)).remove(0);
        let spot = of_sun(&subject, sun(250.0, 10.0));
        // Lens at 1.5 m: 1.5 cot 10° = 8.51 m, 10° under a level axis.
        assert!((spot.distance.metres() - 8.51).abs() < 0.005 && spot.in_frame);
        // Water at 80° of incidence throws back 0.3475 (textbook, n = 1.333): 4.1 stops over 2 % straight down.
        assert!((spot.gain.stops() - 4.09).abs() < 0.05, "{spot:?}");
        assert!(!of_sun(&subject, sun(250.0, 40.0)).in_frame && !of_sun(&subject, sun(70.0, 10.0)).in_frame);
        assert_eq!(wet(&subject, Some(sun(250.0, -1.0))), []);
    }

    #[test]
    fn a_lamp_is_mirrored_where_the_heights_divide_the_way() {
        let mut subject = fixture::open(250.0);
        let lamp =
            Placed { side: Side::Back, distance: Metres::from_metres(3.5), ..Placed::usual("Tube, 1.2 m") };
        subject.rig.placed = vec![lamp, Placed::usual("White board, 1.2 × 1.2 m")];
        (subject.lens_height, subject.face_height) = (Metres::from_metres(1.0), Metres::from_metres(2.0));
        // Lens at 1 m, lamp at 2 m and 2.5 + 3.5 m away: a third of the way (handbook I8). A board is not mirrored here.
        let found = wet(&subject, None);
        assert_eq!((found.len(), found[0].of.as_str()), (1, "Tube, 1.2 m"));
        assert!((found[0].distance.metres() - 2.0).abs() < 1e-9, "{found:?}");
    }

    #[test]
    fn a_shaft_is_brightest_against_the_light() {
        // T-E1, g 0.8: 30° off the axis 4.0 stops over the side, 60° 1.4; from behind the lens 1.5 under it.
        let lens = LensFrame::new(Bearing::from_degrees(250.0), Degrees::default());
        let shafts =
            [(250.0, 30.0), (310.0, 0.0), (340.0, 0.0), (70.0, 0.0)].map(|(b, h)| Shaft::of(lens, sun(b, h)));
        assert_eq!(shafts.map(|shaft| shaft.look), [Look::MuchMore, Look::More, Look::Side, Look::Less]);
        for (shaft, stops) in shafts.iter().zip([4.0, 1.4, 0.0, -1.5]) {
            assert!((shaft.over_side.stops() - stops).abs() < 0.0501, "{shaft:?}");
        }
    }
}
