//! Lighting ratio, and the fill that makes it.
//!
//! Two conventions are in use, and 2 : 1 of one is 1 : 1 of the other. Here a [`Ratio`] is key *and* fill to fill, as cinema
//! has it: both lights reach the bright side, the fill alone the shadow side. The other is turned into it by name.

use crate::maths;
use crate::units::{Lux, OutOfRange, Share, Stops};

/// Bright side to shadow side, n : 1; more than 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Ratio(f64);

impl Ratio {
    /// Smallest ratio that can be asked for, and the largest.
    const RANGE: (f64, f64) = (1.01, 10_000.0);

    /// Key and fill to fill, as n : 1.
    ///
    /// # Errors
    /// Not above 1 : 1, or beyond 10 000 : 1.
    pub fn from_number(number: f64) -> Result<Self, OutOfRange> {
        let (min, max) = Self::RANGE;
        if (min..=max).contains(&number) {
            return Ok(Self(number));
        }
        Err(OutOfRange { quantity: "ratio", given: number, min, max, unit: ": 1" })
    }

    /// From a difference in stops: `2^stops : 1`.
    ///
    /// # Errors
    /// As [`Self::from_number`].
    pub fn from_stops(stops: Stops) -> Result<Self, OutOfRange> {
        Self::from_number(stops.factor())
    }

    /// From key : fill, the two lights metered singly, where the fill reaches the bright side too.
    ///
    /// # Errors
    /// As [`Self::from_number`].
    pub fn from_key_to_fill(number: f64) -> Result<Self, OutOfRange> {
        Self::from_number(number + 1.0)
    }

    /// Of two sides as metered; `None` if the shadow side is dark, or not the darker one.
    pub fn of_sides(bright: Lux, shadow: Lux) -> Option<Self> {
        Self::from_number(bright.lux() / shadow.lux()).ok()
    }

    /// n of n : 1.
    pub const fn number(self) -> f64 {
        self.0
    }

    /// Key : fill, the two lights metered singly.
    pub const fn key_to_fill(self) -> f64 {
        self.0 - 1.0
    }

    /// As a difference in stops.
    pub fn stops(self) -> Stops {
        Stops::from_stops(maths::log2(self.0))
    }
}

/// What makes a wished ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fill {
    /// Add so much light to both sides.
    Add(Lux),
    /// There is too much light about: take it down, or bring the key up.
    TooMuchAround {
        /// What may be left of it.
        leave: Lux,
        /// How far down that is, negative.
        by: Stops,
        /// The key that would do instead.
        or_key: Lux,
    },
}

/// Fill for a ratio, with a key on the bright side and light around on both: `F = K/(R − 1) − A`.
///
/// ```
/// # use slantlight::{light::ratio::{Fill, Ratio, fill_for}, units::Lux};
/// let [key, around] = [3200.0, 400.0].map(Lux::from_lux);
/// let Fill::Add(fill) = fill_for(Ratio::from_number(4.0)?, key, around) else { unreachable!() };
/// assert!((fill.lux() - 667.0).abs() < 0.5);
/// # Ok::<(), slantlight::units::OutOfRange>(())
/// ```
pub fn fill_for(wished: Ratio, key: Lux, around: Lux) -> Fill {
    let leave = key * (1.0 / wished.key_to_fill());
    if leave >= around {
        return Fill::Add(leave - around);
    }
    Fill::TooMuchAround { leave, by: leave.stops_over(around), or_key: around * wished.key_to_fill() }
}

/// How far black cloth takes a shadow side down when it fills a form factor of an even surround: what it hides is gone,
/// but for what the cloth itself gives back.
///
/// Source: handbook G4, `1 − F (1 − ρ_cloth/ρ_scene)`.
pub fn darkened_by_cloth(form_factor: Share, cloth: Share, scene: Share) -> Stops {
    let hidden = form_factor.fraction() * (1.0 - cloth.fraction() / scene.fraction()).max(0.0);
    Stops::left_by(Share::clamped(1.0 - hidden))
}

/// Brightest to darkest tone of a subject: the ratio of the light times that of the surfaces.
pub fn contrast(ratio: Ratio, lightest: Share, darkest: Share) -> Stops {
    ratio.stops() + Stops::left_by(lightest) - Stops::left_by(darkest)
}

#[cfg(test)]
mod tests {
    use super::super::form_factor::centred;
    use super::*;
    use crate::units::{Luminance, Metres};
    use proptest::prelude::*;

    fn ratio(number: f64) -> Ratio {
        Ratio::from_number(number).unwrap()
    }

    #[test]
    fn ratios_in_stops() {
        // G1.
        for (number, stops) in [(2.0, 1.0), (3.0, 1.58), (4.0, 2.0), (8.0, 3.0), (16.0, 4.0)] {
            assert!((ratio(number).stops().stops() - stops).abs() < 0.006);
        }
        assert_eq!(Ratio::from_key_to_fill(1.0).unwrap().number(), 2.0);
        assert!(Ratio::from_number(1.0).is_err() && Ratio::from_number(f64::NAN).is_err());
        assert_eq!(Ratio::of_sides(Lux::from_lux(10.0), Lux::from_lux(0.0)), None);
        assert_eq!(Ratio::of_sides(Lux::from_lux(900.0), Lux::from_lux(100.0)).unwrap().number(), 9.0);
    }

    #[test]
    fn fill_for_a_wished_ratio() {
        // T-G1.
        let [key, around] = [3200.0, 400.0].map(Lux::from_lux);
        for (wished, lux) in [(8.0, 57.0), (4.0, 667.0), (2.0, 2800.0)] {
            let Fill::Add(fill) = fill_for(ratio(wished), key, around) else { panic!("{wished}") };
            assert!((fill.lux() - lux).abs() < 0.5, "{wished}: {fill:?}");
        }
        let Fill::TooMuchAround { leave, by, or_key } = fill_for(ratio(16.0), key, around) else { panic!() };
        assert!((leave.lux() - 213.0).abs() < 0.5 && (by.stops() + 0.91).abs() < 0.005);
        assert!((around.lux() - leave.lux() - 187.0).abs() < 0.5 && (or_key.lux() - 6000.0).abs() < 1e-9);
    }

    #[test]
    fn black_cloth() {
        // T-G3, cloth of no light at all.
        for (side, factor, stops) in [(1.2, 0.311, -0.54), (2.4, 0.641, -1.48)] {
            let metres = Metres::from_metres;
            let got = centred(metres(side), metres(side), metres(1.0));
            assert!((got.fraction() - factor).abs() < 0.0006, "{side}: {got:?}");
            let darker = darkened_by_cloth(got, Share::NONE, Share::clamped(0.5)).stops();
            assert!((darker - stops).abs() < 0.01, "{side}: {darker}");
        }
    }

    #[test]
    fn contrast_of_a_scene() {
        // T-G4: 4 : 1 with 0.90 and 0.04 is 6.5 stops. T-G5: a wall in 326 lx beside ground in 53.7 kilolux, 6.0 stops.
        let stops = contrast(ratio(4.0), Share::clamped(0.90), Share::clamped(0.04)).stops();
        assert!((stops - 6.5).abs() < 0.02, "{stops}");
        let inside = Luminance::of_matt(Lux::from_lux(326.0), Share::clamped(0.5));
        let outside = Luminance::of_matt(Lux::from_lux(53_700.0), Share::clamped(0.2));
        assert!((inside.candelas_per_square_metre() - 52.0).abs() < 0.5);
        assert!((outside.candelas_per_square_metre() - 3419.0).abs() < 0.5);
        assert!((outside.stops_over(inside).stops() - 6.0).abs() < 0.05);
    }

    proptest! {
        #[test]
        fn the_fill_makes_the_ratio(key in 1.0..1e5f64, around in 0.0..1e5f64, wished in 1.1..100.0f64) {
            let [key, around] = [key, around].map(Lux::from_lux);
            let (bright, shadow) = match fill_for(ratio(wished), key, around) {
                Fill::Add(fill) => (key + around + fill, around + fill),
                Fill::TooMuchAround { leave, or_key, .. } => {
                    let raised = Ratio::of_sides(or_key + around, around).unwrap();
                    prop_assert!((raised.number() / wished - 1.0).abs() < 1e-9);
                    (key + leave, leave)
                }
            };
            prop_assert!((bright.lux() / shadow.lux() / wished - 1.0).abs() < 1e-9);
        }
    }
}
