//! Where a phone held in the hand points: the readings of the last moments, taken together.

use super::heading::together;
use super::opening::Corner;
use crate::units::{Bearing, Degrees, Height};

/// A direction and how steadily it was held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// The mean direction.
    pub corner: Corner,
    /// Spread of the bearings (circular standard deviation).
    pub spread: Degrees,
}

/// The mean of readings; `None` without any, or when they point all round.
pub fn aim(readings: &[(Bearing, Height)]) -> Option<Aim> {
    let bearings: Vec<Bearing> = readings.iter().map(|(bearing, _)| *bearing).collect();
    let mean = together(&bearings)?;
    let heights: f64 = readings.iter().map(|(_, height)| height.degrees()).sum();
    let height = Height::clamped(heights / readings.len() as f64);
    Some(Aim { corner: Corner { bearing: mean.mean, height }, spread: mean.spread })
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
