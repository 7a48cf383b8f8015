//! Stops: ratios of light on a scale where one step doubles.

use core::ops::{Add, Neg, Sub};

use super::Share;
use super::quantity::quantity;
use crate::maths;

quantity! {
    /// A difference of exposure; positive is more light.
    Stops, from_stops, stops, "stops"
}

impl Stops {
    /// From the ratio of two amounts of light; nothing is infinitely many stops down.
    pub fn from_factor(factor: f64) -> Self {
        Self::from_stops(maths::log2(factor))
    }

    /// The ratio it stands for: 2 for one stop.
    pub fn factor(self) -> f64 {
        maths::pow(2.0, self.stops())
    }

    /// What is lost where only `share` of the light gets on: negative or zero.
    pub fn left_by(share: Share) -> Self {
        Self::from_factor(share.fraction())
    }

    /// To the nearest third, as a meter shows it.
    pub fn to_third(self) -> Self {
        Self::from_stops((self.stops() * 3.0).round() / 3.0)
    }
}

impl Add for Stops {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::from_stops(self.stops() + other.stops())
    }
}

impl Sub for Stops {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::from_stops(self.stops() - other.stops())
    }
}

impl Neg for Stops {
    type Output = Self;
    fn neg(self) -> Self {
        Self::from_stops(-self.stops())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_the_light_is_a_stop_less() {
        // Handbook H4: 50 % −1, 25 % −2, 10 % −3.32, 1 % −6.64.
        for (percent, stops) in [(50.0, -1.0), (25.0, -2.0), (10.0, -3.32), (1.0, -6.64)] {
            let left = Stops::left_by(Share::clamped(percent / 100.0)).stops();
            assert!((left - stops).abs() < 0.005, "{percent} %: {left}");
        }
        assert_eq!(Stops::from_stops(1.2).to_third().stops(), 4.0 / 3.0);
    }
}
