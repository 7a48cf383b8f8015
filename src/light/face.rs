//! How the light falls on a face: patterns and cheeks, counted from the nose, not from the lens.
//!
//! *Off the nose* is the signed horizontal angle from where the nose points to the light, clockwise seen from above;
//! *over the nose* is the light's height less the nose's pitch. Source: handbook B4; its bounds are common practice
//! without a source, and faces vary: what is said here is a hint. How bright each cheek is stands in [`super::ratio`].

use serde::{Deserialize, Serialize};

use crate::maths;
use crate::units::{Bearing, Degrees, Height, Metres, Vector, World};

/// Where a subject's nose points.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Facing {
    /// Bearing of the nose, true.
    #[serde(rename = "bearing_deg")]
    pub bearing: Bearing,
    /// How far the nose points up; down is negative.
    #[serde(rename = "pitch_deg", default)]
    pub pitch: Height,
}

/// What the nose's shadow and the lit cheek make of a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pattern {
    /// The shadow lies straight under the nose.
    Butterfly,
    /// A small shadow of the nose that does not reach the shadow cheek.
    Loop,
    /// The nose's shadow joins the cheek's and leaves a triangle of light under the far eye.
    Triangle,
    /// Half of the face is lit.
    Split,
    /// Only the far rim is lit.
    Edge,
}

/// Bounds of a pattern, degrees: how far off the nose to either side, and how far over it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Off the nose, least and most.
    pub off: (Degrees, Degrees),
    /// Over the nose, least and most; `None` for no bound.
    pub over: (Option<Degrees>, Option<Degrees>),
}

/// Which cheek the light is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cheek {
    /// The one turned away from the lens.
    Short,
    /// The one turned to the lens.
    Broad,
}

/// Nearer than this to the lens, neither cheek is turned to it. Our own choice.
pub const FACES_LENS: Degrees = Degrees::from_degrees(5.0);

/// Sun nearer than this to where the nose points is in the eyes. Our own choice: what brow and lids do not keep off.
pub const IN_THE_EYES: Degrees = Degrees::from_degrees(30.0);

/// How far a nose stands out of a face (handbook B4, from memory).
pub const NOSE: Metres = Metres::from_metres(0.020);

impl Pattern {
    /// In the order of the handbook.
    pub const ALL: [Self; 5] = [Self::Butterfly, Self::Loop, Self::Triangle, Self::Split, Self::Edge];

    /// "triangle on the shadow cheek".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Butterfly => "shadow under the nose",
            Self::Loop => "loop beside the nose",
            Self::Triangle => "triangle on the shadow cheek",
            Self::Split => "split, half the face",
            Self::Edge => "edge of the face",
        }
    }

    /// From where to where it is called so. Source: handbook B4, default bins, common practice.
    pub const fn bounds(self) -> Bounds {
        const fn degrees(degrees: f64) -> Degrees {
            Degrees::from_degrees(degrees)
        }
        const fn bounds(off: (f64, f64), over: (Option<Degrees>, Option<Degrees>)) -> Bounds {
            Bounds { off: (degrees(off.0), degrees(off.1)), over }
        }
        match self {
            Self::Butterfly => bounds((0.0, 15.0), (Some(degrees(25.0)), Some(degrees(65.0)))),
            Self::Loop => bounds((15.0, 40.0), (Some(degrees(20.0)), Some(degrees(60.0)))),
            Self::Triangle => bounds((40.0, 65.0), (Some(degrees(30.0)), Some(degrees(60.0)))),
            Self::Split => bounds((75.0, 105.0), (None, Some(degrees(45.0)))),
            Self::Edge => bounds((105.0, 160.0), (None, None)),
        }
    }
}

impl Bounds {
    /// Whether a light off and over the nose is within them.
    pub fn hold(&self, off: Degrees, over: Degrees) -> bool {
        let off = off.signed().abs();
        self.off.0 <= off
            && off <= self.off.1
            && self.over.0.is_none_or(|least| least <= over)
            && self.over.1.is_none_or(|most| over <= most)
    }
}

impl Facing {
    /// A nose that points at the lens.
    pub fn to_lens(lens: Bearing) -> Self {
        Self { bearing: lens.reversed(), pitch: Height::default() }
    }

    /// How far a light stands off the nose, clockwise positive, and over it.
    pub fn angles_to(self, light: Vector<World>) -> (Degrees, Degrees) {
        let over = Degrees::from_degrees(light.height().degrees() - self.pitch.degrees());
        (self.bearing.turn_to(light.bearing()), over)
    }

    /// Unit vector along the nose.
    pub fn nose(self) -> Vector<World> {
        Vector::towards(self.bearing, self.pitch)
    }

    /// How far the nose is turned from the lens, (−180°, 180°], positive to camera left (handbook B4).
    pub fn yaw(self, lens: Bearing) -> Degrees {
        lens.reversed().turn_to(self.bearing)
    }
}

/// The pattern that a light makes; `None` between the bins.
///
/// ```
/// # use slantlight::{light::face::{Facing, Pattern, pattern}, units::{Bearing, Height, Vector}};
/// let facing = Facing { bearing: Bearing::from_degrees(180.0), pitch: Height::clamped(0.0) };
/// let light = Vector::towards(Bearing::from_degrees(230.0), Height::clamped(45.0));
/// assert_eq!(pattern(light, facing), Some(Pattern::Triangle));
/// ```
pub fn pattern(light: Vector<World>, facing: Facing) -> Option<Pattern> {
    let (off, over) = facing.angles_to(light);
    Pattern::ALL.into_iter().find(|pattern| pattern.bounds().hold(off, over))
}

/// The cheek that a light is on: short if nose and light are turned to the same side of the lens (handbook B4).
/// `None` for a nose to the lens, or away from it, where neither cheek is nearer.
pub fn cheek(light: Vector<World>, facing: Facing, lens: Bearing) -> Option<Cheek> {
    let yaw = facing.yaw(lens);
    let (off, _) = facing.angles_to(light);
    has_cheeks(facing, lens).then_some({
        if (off.degrees() >= 0.0) == (yaw.degrees() > 0.0) { Cheek::Short } else { Cheek::Broad }
    })
}

/// Whether one cheek is nearer to the lens than the other.
pub fn has_cheeks(facing: Facing, lens: Bearing) -> bool {
    let yaw = facing.yaw(lens).abs().degrees();
    yaw > FACES_LENS.degrees() && yaw < 180.0 - FACES_LENS.degrees()
}

/// Whether the sun shines into the eyes.
pub fn in_the_eyes(light: Vector<World>, facing: Facing) -> bool {
    light.z > 0.0 && light.angle_to(facing.nose()) <= IN_THE_EYES
}

/// Where the tip of the nose casts its shadow on a flat face: to the side that is clockwise of the nose seen from
/// above, and up, metres. `None` for light from behind the face.
///
/// Source: handbook B4, `dx = −p tan α`, `dy = −p tan ε / cos α` with p = [`NOSE`].
///
/// ```
/// # use slantlight::{light::face::nose_shadow, units::Degrees};
/// let (aside, up) = nose_shadow(Degrees::from_degrees(45.0), Degrees::from_degrees(45.0)).unwrap();
/// assert!((aside.metres() + 0.020).abs() < 1e-4 && (up.metres() + 0.028).abs() < 5e-4);
/// ```
pub fn nose_shadow(off: Degrees, over: Degrees) -> Option<(Metres, Metres)> {
    let (sin, cos) = maths::sin_cos(off.radians());
    (cos > 1e-9).then(|| {
        let out = NOSE.metres();
        (Metres::from_metres(-out * sin / cos), Metres::from_metres(-out * maths::tan(over.radians()) / cos))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn facing(bearing: f64, pitch: f64) -> Facing {
        Facing { bearing: Bearing::from_degrees(bearing), pitch: Height::clamped(pitch) }
    }

    fn light(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    /// The pattern of a light off and over a nose that points to 200° and 10° down.
    fn named(off: f64, over: f64) -> Option<Pattern> {
        pattern(light(200.0 + off, over - 10.0), facing(200.0, -10.0))
    }

    #[test]
    fn every_row_of_the_handbook() {
        // B4: inside each bin, to either side, and just beyond each of its bounds.
        let rows = [
            (Pattern::Butterfly, (0.0, 14.9), (25.1, 64.9)),
            (Pattern::Loop, (15.1, 39.9), (20.1, 59.9)),
            (Pattern::Triangle, (40.1, 64.9), (30.1, 59.9)),
            (Pattern::Split, (75.1, 104.9), (-5.0, 44.9)),
            (Pattern::Edge, (105.1, 159.9), (-5.0, 80.0)),
        ];
        for (expected, (least, most), (low, high)) in rows {
            for off in [least, most, -least, -most] {
                for over in [low, high] {
                    assert_eq!(named(off, over), Some(expected), "{off} {over}");
                }
            }
        }
        for (off, over) in [(0.0, 24.9), (0.0, 65.1), (30.0, 60.1), (50.0, 29.9), (90.0, 45.1), (161.0, 20.0)]
        {
            assert_eq!(named(off, over), None, "{off} {over}");
        }
        assert_eq!(named(70.0, 40.0), None, "between triangle and split");
    }

    #[test]
    fn broad_is_the_cheek_to_the_lens() {
        // The camera stands south and looks north; the nose points south-east, to camera right. The cheek turned to
        // the lens is the subject's right, lit from the south-west.
        let (nose, lens) = (facing(135.0, 0.0), Bearing::from_degrees(0.0));
        assert!((nose.yaw(lens).degrees() + 45.0).abs() < 1e-9);
        assert_eq!(cheek(light(180.0, 30.0), nose, lens), Some(Cheek::Broad));
        assert_eq!(cheek(light(90.0, 30.0), nose, lens), Some(Cheek::Short));
        assert_eq!(cheek(light(90.0, 30.0), facing(182.0, 0.0), lens), None);
    }

    #[test]
    fn eyes_are_where_the_nose_is() {
        assert!(in_the_eyes(light(180.0, 20.0), facing(200.0, 10.0)));
        assert!(!in_the_eyes(light(180.0, 50.0), facing(180.0, 0.0)), "under the brow");
        assert!(!in_the_eyes(light(180.0, -2.0), facing(180.0, 0.0)), "no sun");
    }

    proptest! {
        #[test]
        fn turning_head_lens_and_sun_together_changes_nothing(
            nose in 0.0..360.0f64, pitch in -40.0..40.0f64, lens in 0.0..360.0f64,
            sun in 0.0..360.0f64, height in 0.0..80.0f64, by in 0.0..360.0f64,
        ) {
            let all = |by: f64| {
                let (head, lens, sun) = (facing(nose + by, pitch), Bearing::from_degrees(lens + by), light(sun + by, height));
                (head.angles_to(sun), pattern(sun, head), cheek(sun, head, lens), in_the_eyes(sun, head))
            };
            let ((off, over), ..) = all(0.0);
            let near = |bound: f64| (off.abs().degrees() - bound).abs() < 1e-6;
            prop_assume!(![0.0, 15.0, 40.0, 65.0, 75.0, 105.0, 160.0, 180.0].into_iter().any(near));
            let ((turned, still), ..) = all(by);
            prop_assert!((turned.degrees() - off.degrees()).abs() < 1e-9 && (still.degrees() - over.degrees()).abs() < 1e-9);
            prop_assert_eq!(all(0.0).1, all(by).1);
            prop_assert_eq!(all(0.0).2, all(by).2);
            prop_assert_eq!(all(0.0).3, all(by).3);
        }

        #[test]
        fn a_mirrored_face_is_lit_alike(
            nose in -170.0..170.0f64, pitch in -40.0..40.0f64, sun in -170.0..170.0f64, height in 0.0..80.0f64,
        ) {
            // Mirrored left to right about a lens that looks north.
            let all = |side: f64| {
                let (head, sun) = (facing(180.0 + side * nose, pitch), light(180.0 + side * sun, height));
                let (off, over) = head.angles_to(sun);
                (pattern(sun, head), cheek(sun, head, Bearing::default()), nose_shadow(off, over))
            };
            prop_assume!((sun - nose).abs() > 1e-6 && ((sun - nose).abs() - 180.0).abs() > 1e-6);
            let ((one, cheek, shadow), (mirrored, other, shadow_too)) = (all(1.0), all(-1.0));
            prop_assert_eq!(one, mirrored);
            prop_assert_eq!(cheek, other);
            if let (Some((x, y)), Some((a, b))) = (shadow, shadow_too) {
                let size = 1.0 + x.metres().abs() + y.metres().abs();
                prop_assert!((x.metres() + a.metres()).abs() < 1e-6 * size * size);
                prop_assert!((y.metres() - b.metres()).abs() < 1e-6 * size * size);
            }
        }
    }
}
