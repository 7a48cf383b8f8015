//! Light: illuminance, luminance, intensity, flux.
//!
//! All are linear: they add. Stops are logarithms and live in [`super::Stops`]; the two meet only in conversions that
//! name a reference level.

use super::quantity::{linear, quantity};
use super::{Share, Stops};
use crate::maths;

/// Lux in a foot-candle (a lumen on a square foot; exact by the international foot).
const FOOT_CANDLE: f64 = 1.0 / (0.3048 * 0.3048);

quantity! {
    /// Illuminance: light that arrives on a surface, lumens on a square metre.
    Lux, from_lux, lux, "lux"
}
linear!(Lux);

quantity! {
    /// Luminance: light that leaves a surface towards the eye, candelas from a square metre.
    Luminance, from_candelas_per_square_metre, candelas_per_square_metre, "cd/m²"
}
linear!(Luminance);

quantity! {
    /// Luminous intensity: light of a source in one direction.
    Candelas, from_candelas, candelas, "candelas"
}
linear!(Candelas);

quantity! {
    /// Luminous flux: all the light of a source.
    Lumens, from_lumens, lumens, "lumens"
}
linear!(Lumens);

impl Lux {
    /// From thousands of lux.
    pub fn from_kilolux(kilolux: f64) -> Self {
        Self::from_lux(kilolux * 1000.0)
    }

    /// In thousands of lux.
    pub fn kilolux(self) -> f64 {
        self.lux() / 1000.0
    }

    /// From foot-candles.
    pub fn from_foot_candles(foot_candles: f64) -> Self {
        Self::from_lux(foot_candles * FOOT_CANDLE)
    }

    /// In foot-candles.
    pub fn foot_candles(self) -> f64 {
        self.lux() / FOOT_CANDLE
    }

    /// How far this is over `reference`, negative under it; no light at all is infinitely far under.
    ///
    /// ```
    /// # use slantlight::units::Lux;
    /// assert_eq!(Lux::from_lux(1600.0).stops_over(Lux::from_lux(400.0)).stops(), 2.0);
    /// ```
    pub fn stops_over(self, reference: Self) -> Stops {
        Stops::from_stops(maths::log2(self.lux() / reference.lux()))
    }

    /// The level that stands `stops` over this one.
    pub fn raised_by(self, stops: Stops) -> Self {
        self * stops.factor()
    }

    /// What a share of it is.
    pub fn share(self, share: Share) -> Self {
        self * share.fraction()
    }
}

impl Luminance {
    /// How far this is over `reference`, negative under it.
    pub fn stops_over(self, reference: Self) -> Stops {
        Stops::from_stops(maths::log2(
            self.candelas_per_square_metre() / reference.candelas_per_square_metre(),
        ))
    }

    /// Of a matt surface that gives back `reflectance` of `light`: L = ρE/π (Lambert's law).
    pub fn of_matt(light: Lux, reflectance: Share) -> Self {
        Self::from_candelas_per_square_metre(reflectance.fraction() * light.lux() / core::f64::consts::PI)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_foot_candle_is_ten_lux_and_three_quarters() {
        // Handbook F1.
        assert!((Lux::from_foot_candles(1.0).lux() - 10.764).abs() < 5e-4);
        assert!((Lux::from_foot_candles(100.0).lux() - 1076.4).abs() < 0.05);
    }

    proptest! {
        #[test]
        fn one_more_stop_doubles_the_light(lux in 1e-4..1e6f64, stops in -20.0..20.0f64) {
            let light = Lux::from_lux(lux);
            let raised = light.raised_by(Stops::from_stops(stops));
            prop_assert!((raised.stops_over(light).stops() - stops).abs() < 1e-12);
            let more = light.raised_by(Stops::from_stops(stops + 1.0));
            prop_assert!((more.lux() / raised.lux() - 2.0).abs() < 1e-12);
        }
    }
}
