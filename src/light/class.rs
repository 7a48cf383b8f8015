//! Direction classes: the trade's words for where the light comes from, as the lens sees it.
//!
//! *Off the lens* is the signed horizontal angle at the subject between "towards the camera" and "towards the
//! light": 0° front, 90° side, 180° back, **positive to camera right**. Handbook B1 counts the other way round
//! (its positive is camera left). Seen from above, camera right is anticlockwise from the direction to the camera.
//!
//! Patterns on a face (relative to the nose) are not here.

use crate::units::{Bearing, Degrees, Height};

/// Steps of 45° centred on the trade's names. Common practice, no source (handbook B2).
const THREE_QUARTER_FRONT_FROM: f64 = 22.5;
const SIDE_FROM: f64 = 67.5;
const THREE_QUARTER_BACK_FROM: f64 = 112.5;
const BACK_FROM: f64 = 157.5;

/// Light higher than this is top light, wherever it comes from. Common practice, no source (60° to 65°).
pub const TOP_ABOVE: Height = Height::clamped(60.0);

/// Light lower than this rakes. Common practice, no source.
pub const LOW_BELOW: Height = Height::clamped(10.0);

/// Nearer than this to the lens's own plane, light comes from neither side. Our own choice.
const MIDDLE_WITHIN: f64 = 5.0;

/// Where the light comes from, in the trade's words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Flat, frontal.
    Front,
    /// The classic key.
    ThreeQuarterFront,
    /// Split, cross, hatchet.
    Side,
    /// Kicker, edge.
    ThreeQuarterBack,
    /// Rim, against the light.
    Back,
    /// From above, whatever the bearing.
    Top,
}

impl Class {
    /// "¾ back".
    pub const fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::ThreeQuarterFront => "¾ front",
            Self::Side => "side",
            Self::ThreeQuarterBack => "¾ back",
            Self::Back => "back",
            Self::Top => "top",
        }
    }

    /// "three-quarter back", for a voice that cannot read "¾".
    pub const fn spoken(self) -> &'static str {
        match self {
            Self::ThreeQuarterFront => "three-quarter front",
            Self::ThreeQuarterBack => "three-quarter back",
            other => other.word(),
        }
    }
}

/// The side of the picture the light comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Camera left.
    Left,
    /// Camera right.
    Right,
    /// Along the lens, from the front or from behind.
    Middle,
}

impl Side {
    /// "left", "right"; nothing for the middle.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Middle => "",
        }
    }
}

/// How far off the lens a light stands, (−180°, 180°], positive to camera right.
///
/// Units: true bearings; `lens` is the way the lens looks. Source: handbook B1 with the design's sign, so that
/// the light's bearing is `lens + 180° − off`.
///
/// ```
/// # use slantlight::{light::class::off_lens, units::Bearing};
/// // The camera stands south of the subject and looks north; a sun in the west is on camera left.
/// let off = off_lens(Bearing::from_degrees(270.0), Bearing::from_degrees(0.0));
/// assert_eq!(off.degrees(), -90.0);
/// ```
pub fn off_lens(light: Bearing, lens: Bearing) -> Degrees {
    light.turn_to(lens.reversed())
}

/// The bearing of a light that stands `off` the lens.
pub fn light_bearing(off: Degrees, lens: Bearing) -> Bearing {
    lens.reversed().turned(Degrees::from_degrees(-off.degrees()))
}

/// The class of a light `off` the lens at a height.
pub fn class(off: Degrees, height: Height) -> Class {
    if height > TOP_ABOVE { Class::Top } else { class_seen_from_above(off) }
}

/// The class of a direction on the ground.
pub fn class_seen_from_above(off: Degrees) -> Class {
    match off.signed().abs().degrees() {
        a if a < THREE_QUARTER_FRONT_FROM => Class::Front,
        a if a < SIDE_FROM => Class::ThreeQuarterFront,
        a if a < THREE_QUARTER_BACK_FROM => Class::Side,
        a if a < BACK_FROM => Class::ThreeQuarterBack,
        _ => Class::Back,
    }
}

/// The side a light `off` the lens comes from.
pub fn side(off: Degrees) -> Side {
    let off = off.signed().degrees();
    match off {
        a if a.abs() < MIDDLE_WITHIN || a.abs() > 180.0 - MIDDLE_WITHIN => Side::Middle,
        a if a > 0.0 => Side::Right,
        _ => Side::Left,
    }
}

/// Whether light at this height rakes: long shadows, light under brims.
pub fn is_low(height: Height) -> bool {
    height < LOW_BELOW
}

/// "¾ back, right"; "top"; "front".
pub fn words(off: Degrees, height: Height) -> String {
    match (class(off, height), side(off)) {
        (Class::Top, _) => Class::Top.word().to_owned(),
        (class, Side::Middle) => class.word().to_owned(),
        (class, side) => format!("{}, {}", class.word(), side.word()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn off(light: f64, lens: f64) -> f64 {
        off_lens(Bearing::from_degrees(light), Bearing::from_degrees(lens)).degrees()
    }

    fn named(off: f64, height: f64) -> String {
        words(Degrees::from_degrees(off), Height::clamped(height))
    }

    #[test]
    fn off_the_lens_as_in_the_handbook() {
        // T-B1 and T-B2; the handbook's + is camera left.
        assert!((off(261.0, 20.0) + 61.0).abs() < 1e-9);
        assert!((off(254.21, 254.21).abs() - 180.0).abs() < 1e-9, "either sign is straight behind");
        // A lens to the south has west on its right.
        assert_eq!(off(270.0, 180.0), 90.0);
    }

    #[test]
    fn words_of_the_trade() {
        assert_eq!(named(135.0, 8.0), "¾ back, right");
        assert_eq!(named(-90.0, 30.0), "side, left");
        assert_eq!(named(-45.0, 30.0), "¾ front, left");
        assert_eq!(named(180.0, 12.0), "back");
        assert_eq!(named(170.0, 12.0), "back, right");
        assert_eq!(named(0.0, 12.0), "front");
        assert_eq!(named(77.0, 61.0), "top");
    }

    #[test]
    fn low_light_rakes() {
        assert!(is_low(Height::clamped(9.9)) && !is_low(Height::clamped(10.0)));
    }

    proptest! {
        #[test]
        fn bearing_there_and_back(off_lens_deg in -179.9..180.0f64, lens in 0.0..360.0f64) {
            let lens = Bearing::from_degrees(lens);
            let there = light_bearing(Degrees::from_degrees(off_lens_deg), lens);
            prop_assert!((off_lens(there, lens).degrees() - off_lens_deg).abs() < 1e-9);
        }

        #[test]
        fn left_mirrors_right(off in -180.0..180.0f64) {
            let (one, two) = (Degrees::from_degrees(off), Degrees::from_degrees(-off));
            prop_assert_eq!(class_seen_from_above(one), class_seen_from_above(two));
            prop_assert_eq!(side(one) == Side::Right, side(two) == Side::Left);
        }
    }
}
