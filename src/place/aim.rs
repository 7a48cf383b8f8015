//! Where a phone held in the hand points: the readings of the last moments, taken together.

use super::heading::{residual, together};
use super::opening::Corner;
use super::wall::COMPASS;
use crate::units::{Bearing, Degrees, Height};

/// A direction and how steadily it was held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// The mean direction.
    pub corner: Corner,
    /// Spread of the bearings (circular standard deviation).
    pub spread: Degrees,
    /// How exact the phone says its compass is, where it says so.
    pub stated: Option<Degrees>,
}

/// A hand or a field that makes readings spread wider than this is not taken in silence. Our own choice.
const SHAKY: f64 = 6.0;

/// A compass that calls itself less exact than this wants to be set right first. Our own choice.
const DOUBTFUL: f64 = 15.0;

impl Aim {
    /// Whether the compass should be set right, by a figure of eight, before it is believed.
    pub fn is_doubtful(&self) -> bool {
        self.spread.degrees() > SHAKY || self.stated.is_some_and(|stated| stated.degrees() > DOUBTFUL)
    }

    /// How far off the bearing may be: never better than compasses are, nor than this one says or holds still.
    pub fn good_to(&self) -> Degrees {
        let worst = [self.spread, self.stated.unwrap_or_default()].map(Degrees::degrees).into_iter();
        Degrees::from_degrees(worst.fold(COMPASS.degrees(), f64::max))
    }
}

/// The mean of readings; `None` without any, or when they point all round.
pub fn aim(readings: &[(Bearing, Height)]) -> Option<Aim> {
    let bearings: Vec<Bearing> = readings.iter().map(|(bearing, _)| *bearing).collect();
    let mean = together(&bearings)?;
    let heights: f64 = readings.iter().map(|(_, height)| height.degrees()).sum();
    let height = Height::clamped(heights / readings.len() as f64);
    Some(Aim { corner: Corner { bearing: mean.mean, height }, spread: mean.spread, stated: None })
}

/// What a shadow says of the compass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ShadowCheck {
    /// Turn every reading here clockwise by this.
    Turn(Degrees),
    /// The sun is too low, or not there: no shadow has an edge.
    NoShadow,
    /// The sun stands so high that a shadow is too short to be pointed along.
    TooHigh,
    /// The hand or the field is not steady.
    Shaky,
    /// So far off that the phone was not pointed along a shadow, or lies on steel.
    Absurd(Degrees),
}

/// Heights of a sun whose shadow can be pointed along: over 2° it has an edge, under 65° it is half as long as what
/// throws it. Our own choice.
const SHADOWS: (f64, f64) = (2.0, 65.0);

/// A compass that is further off is not off: something else is wrong. Our own choice.
const ABSURD: f64 = 60.0;

/// Checks a compass by a shadow: the phone lies level along it, its top away from the sun.
pub fn check_by_shadow(aim: &Aim, sun: (Bearing, Height)) -> ShadowCheck {
    let off = residual(aim.corner.bearing, sun.0);
    match sun.1.degrees() {
        height if height < SHADOWS.0 => ShadowCheck::NoShadow,
        height if height > SHADOWS.1 => ShadowCheck::TooHigh,
        _ if aim.spread.degrees() > SHAKY => ShadowCheck::Shaky,
        _ if off.abs().degrees() > ABSURD => ShadowCheck::Absurd(off),
        _ => ShadowCheck::Turn(off),
    }
}

/// Which way a wall faces outwards when a phone lies inside, its left long edge along the wall, and points to `along`.
pub fn wall_at_left(along: Bearing) -> Bearing {
    along.turned(Degrees::from_degrees(-90.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_wall_at_the_left_edge_faces_left() {
        // Pointing north inside, with the west wall at the left.
        assert_eq!(wall_at_left(Bearing::default()).degrees(), 270.0);
    }

    fn held(bearing: f64, spread: f64, stated: Option<f64>) -> Aim {
        let corner = Corner { bearing: Bearing::from_degrees(bearing), height: Height::clamped(0.0) };
        Aim { corner, spread: Degrees::from_degrees(spread), stated: stated.map(Degrees::from_degrees) }
    }

    #[test]
    fn a_shadow_sets_the_compass_right_where_there_is_one() {
        let sun = |bearing, height| (Bearing::from_degrees(bearing), Height::clamped(height));
        let check = |aim: Aim, sun| check_by_shadow(&aim, sun);
        // The sun in the south-west throws a shadow to 45°; the compass says 40°, so it reads 5° too little.
        assert_eq!(
            check(held(40.0, 1.0, None), sun(225.0, 20.0)),
            ShadowCheck::Turn(Degrees::from_degrees(5.0))
        );
        assert_eq!(
            check(held(358.0, 1.0, None), sun(175.0, 20.0)),
            ShadowCheck::Turn(Degrees::from_degrees(-3.0))
        );
        assert_eq!(check(held(40.0, 1.0, None), sun(225.0, 1.0)), ShadowCheck::NoShadow);
        assert_eq!(check(held(40.0, 1.0, None), sun(225.0, 80.0)), ShadowCheck::TooHigh);
        assert_eq!(check(held(40.0, 9.0, None), sun(225.0, 20.0)), ShadowCheck::Shaky);
        assert!(matches!(check(held(220.0, 1.0, None), sun(225.0, 20.0)), ShadowCheck::Absurd(_)));
    }

    #[test]
    fn a_bearing_is_no_better_than_its_compass() {
        assert_eq!(held(0.0, 1.0, None).good_to(), COMPASS);
        assert_eq!(held(0.0, 1.0, Some(12.0)).good_to().degrees(), 12.0);
        assert!(held(0.0, 1.0, Some(20.0)).is_doubtful() && held(0.0, 7.0, None).is_doubtful());
        assert!(!held(0.0, 1.0, Some(10.0)).is_doubtful());
    }

    #[test]
    fn a_shaking_hand_is_averaged() {
        let read = |bearing, height| (Bearing::from_degrees(bearing), Height::clamped(height));
        let held = aim(&[read(358.0, 10.0), read(2.0, 12.0)]).unwrap();
        assert!(held.corner.bearing.turn_to(Bearing::default()).degrees().abs() < 1e-9);
        assert!((held.corner.height.degrees() - 11.0).abs() < 1e-12);
        assert!((held.spread.degrees() - 2.0).abs() < 0.01);
        assert_eq!(aim(&[]), None);
    }
}
