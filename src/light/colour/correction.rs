//! Filters that correct colour: orange and blue by strength, green and magenta by density.
//!
//! Two families of strengths are sold under the same words; the number is what counts, so a project keeps the number. Light
//! losses are common practice, no source.

use crate::units::{Mired, Stops};

/// A filter for colour temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filter {
    /// Its strength in words.
    pub name: &'static str,
    /// What it shifts.
    pub shift: Mired,
    /// What it takes, negative.
    pub loss: Stops,
}

const fn filter(name: &'static str, shift: f64, loss: f64) -> Filter {
    Filter { name, shift: Mired::from_mired(shift), loss: Stops::from_stops(-loss) }
}

/// Orange, of the family that takes 6500 K to 3200 K (one published table).
pub const ORANGE: [Filter; 5] = [
    filter("eighth orange", 26.0, 0.1),
    filter("quarter orange", 64.0, 0.3),
    filter("half orange", 109.0, 0.5),
    filter("three-quarter orange", 124.0, 0.6),
    filter("full orange", 159.0, 0.7),
];

/// Orange, of the family that takes 5600 K to 3200 K (from memory; it has no three-quarter).
pub const ORANGE_5600: [Filter; 4] = [
    filter("eighth orange", 20.0, 0.1),
    filter("quarter orange", 42.0, 0.3),
    filter("half orange", 81.0, 0.5),
    filter("full orange", 131.0, 0.7),
];

/// Blue (one published table).
pub const BLUE: [Filter; 5] = [
    filter("eighth blue", -18.0, 0.3),
    filter("quarter blue", -35.0, 0.5),
    filter("half blue", -78.0, 1.0),
    filter("three-quarter blue", -112.0, 1.2),
    filter("full blue", -137.0, 1.5),
];

/// The filter that comes nearest to a wished shift; `None` where none comes nearer than doing nothing.
///
/// ```
/// # use slantlight::{light::colour::correction::{ORANGE, nearest}, units::{Kelvin, Mired}};
/// let wished = Mired::shift(Kelvin::clamped(5600.0), Kelvin::clamped(4100.0));
/// assert_eq!(nearest(&ORANGE, wished).unwrap().name, "quarter orange");
/// ```
pub fn nearest(filters: &[Filter], wished: Mired) -> Option<&Filter> {
    let off = |shift: Mired| (shift - wished).mired().abs();
    let best = filters.iter().min_by(|one, two| off(one.shift).total_cmp(&off(two.shift)))?;
    (off(best.shift) < wished.mired().abs()).then_some(best)
}

/// Density of green or magenta, colour compensating units: 30 is a full correction of a tube.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Cc(f64);

/// Duv that a unit of magenta takes away (common practice: Duv 0.006 is a quarter to a half correction, 7.5 to 15 units).
const DUV_A_UNIT: f64 = 0.006 / 11.25;

impl Cc {
    /// The strengths sold: full, half, quarter, eighth (common practice).
    pub const STRENGTHS: [(&'static str, Self); 4] =
        [("full", Self(30.0)), ("half", Self(15.0)), ("quarter", Self(7.5)), ("eighth", Self(3.5))];

    /// Magenta that takes away a Duv above the line of black bodies; below zero it is green.
    pub fn against(duv: f64) -> Self {
        Self(duv / DUV_A_UNIT)
    }

    /// In units.
    pub const fn units(self) -> f64 {
        self.0
    }

    /// The strength sold that comes nearest, by name; `None` where none comes nearer than doing nothing.
    pub fn nearest_strength(self) -> Option<&'static str> {
        let wished = self.0.abs();
        let off = |strength: &(&str, Self)| (strength.1.0 - wished).abs();
        let best = Self::STRENGTHS.iter().min_by(|one, two| off(one).total_cmp(&off(two)))?;
        (off(best) < wished).then_some(best.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Kelvin;

    #[test]
    fn full_strengths_do_what_they_say() {
        // H6: 6500 K to 3200 K, 5600 K to 3200 K, 3200 K to about 5700 K.
        let to = |from, filter: &Filter| Kelvin::clamped(from).shifted(filter.shift).kelvin();
        assert!((to(6500.0, &ORANGE[4]) - 3196.0).abs() < 0.6);
        assert!((to(5600.0, &ORANGE_5600[3]) - 3230.0).abs() < 1.0);
        assert!((to(3200.0, &BLUE[4]) - 5698.0).abs() < 0.6);
        assert_eq!(ORANGE[1].shift + ORANGE[2].shift, Mired::from_mired(173.0));
    }

    #[test]
    fn a_small_wish_needs_no_filter() {
        assert_eq!(nearest(&BLUE, Mired::from_mired(-8.0)), None);
        assert_eq!(nearest(&BLUE, Mired::from_mired(40.0)), None);
        assert_eq!(nearest(&BLUE, Mired::from_mired(-120.0)).unwrap().name, "three-quarter blue");
    }

    #[test]
    fn green_tubes_want_magenta() {
        // H6: Duv +0.006 is about quarter to half.
        let wished = Cc::against(0.006);
        assert!((7.5..=15.0).contains(&wished.units()));
        assert!(matches!(wished.nearest_strength(), Some("quarter" | "half")));
        assert_eq!(Cc::against(0.0005).nearest_strength(), None);
        assert_eq!(Cc::against(-0.016).nearest_strength(), Some("full"));
    }
}
