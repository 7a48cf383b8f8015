//! A face in the open: its bright side and its shadow side, as two walls towards and away from the sun.
//!
//! Half skies of the American practice and the ground, nothing else: bright clouds, house fronts and the crew can
//! double the shadow side of a real place.

use super::ies::{self, Cover};
use super::{AirMass, half_sky};
use crate::maths;
use crate::units::{Degrees, Height, Lux, Share};

/// Light on the two sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sides {
    /// Towards the sun.
    pub bright: Lux,
    /// Away from it.
    pub shadow: Lux,
}

impl Sides {
    /// Bright side to shadow side, as n : 1.
    pub fn ratio(self) -> f64 {
        self.bright.lux() / self.shadow.lux()
    }
}

/// The two sides under the practice's skies, by apparent height of the sun; `ground` is the ground's reflectance.
///
/// # Source
/// IES recommended practice (1984), see [`super::ies`] and [`super::half_sky`]; ground: `ρ/2` of its level light.
pub fn sides(cover: Cover, sun: Height, outside: Lux, ground: Share) -> Sides {
    let beam = ies::beam(cover, outside, AirMass::kasten_young(sun));
    let level = beam * sun.sin().max(0.0) + ies::sky(cover, sun);
    let bounce = level.share(ground) * 0.5;
    let half = |apart| half_sky::vertical(cover, sun, Degrees::from_degrees(apart));
    Sides { bright: beam * maths::cos(sun.radians()) + half(0.0) + bounce, shadow: half(180.0) + bounce }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_of_the_handbook() {
        // T-C13: height, bright and shadow side over a ground of 0.2 (kilolux), ratios over 0.1, 0.2, 0.4, 0.8; 2 %
        // and half the last digit.
        let table = [
            (5.0, 24.1, 2.14, [13.0, 11.0, 8.8, 6.3]),
            (10.0, 51.3, 3.25, [20.0, 16.0, 11.0, 7.4]),
            (20.0, 82.0, 5.62, [20.0, 15.0, 9.5, 5.9]),
            (40.0, 92.6, 9.72, [15.0, 9.5, 5.9, 3.6]),
            (60.0, 73.6, 12.4, [9.4, 5.9, 3.7, 2.4]),
        ];
        for (height, bright, shadow, ratios) in table {
            let over = |ground| {
                sides(Cover::Clear, Height::clamped(height), ies::SOLAR_CONSTANT, Share::clamped(ground))
            };
            let got = over(0.2);
            assert!((got.bright.kilolux() / bright - 1.0).abs() < 0.02, "{height}: {got:?}");
            assert!((got.shadow.kilolux() / shadow - 1.0).abs() < 0.02, "{height}: {got:?}");
            for (ground, ratio) in [0.1, 0.2, 0.4, 0.8].into_iter().zip(ratios) {
                let half_digit = if ratio >= 10.0 { 0.5 } else { 0.05 };
                let got = over(ground).ratio();
                assert!((got - ratio).abs() <= ratio * 0.02 + half_digit, "{height} {ground}: {got}");
            }
        }
    }
}
