//! Conditions on levels, as a wish says them. When they hold is in [`super::wished`].

use serde::{Deserialize, Serialize};

use crate::units::{Lux, Stops};

/// Conditions on levels; all that are said must hold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct LevelWish {
    /// Bright side to shadow side, n : 1, from the first to the second.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ratio: Option<[f64; 2]>,
    /// Soft only: no sun on the mark, and at least so much light on the bright side.
    #[serde(rename = "soft_lux", default, skip_serializing_if = "Option::is_none")]
    pub soft: Option<Lux>,
    /// The blue hour's balance.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub balance: Option<Balance>,
}

/// A lamp that the sky shall match.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Balance {
    /// What the lamp gives where it matters.
    #[serde(rename = "lamp_lux")]
    pub lamp: Lux,
    /// How far the light on level ground may be over or under it.
    #[serde(rename = "within_stops")]
    pub within: Stops,
}

/// Largest ratio, where no other end was said.
const ANY: f64 = 10_000.0;

/// How near sky and lamp shall be until somebody says otherwise (our choice: both still read as lit).
const NEAR: Stops = Stops::from_stops(1.0);

/// The numbers as fields show them: nothing for no wish.
impl LevelWish {
    /// Whether nothing is wished.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Lowest ratio.
    pub fn lowest_ratio(&self) -> f64 {
        self.ratio.map_or(0.0, |[from, _]| if from > 1.0 { from } else { 0.0 })
    }

    /// Highest ratio.
    pub fn highest_ratio(&self) -> f64 {
        self.ratio.map_or(0.0, |[_, to]| if to < ANY { to } else { 0.0 })
    }

    /// Sets the lowest; the highest gives way.
    pub fn set_lowest_ratio(&mut self, from: f64) {
        let to = self.highest_ratio();
        self.set_ratio(from, if to > 0.0 { to.max(from) } else { to });
    }

    /// Sets the highest; the lowest gives way.
    pub fn set_highest_ratio(&mut self, to: f64) {
        let from = self.lowest_ratio();
        self.set_ratio(if to > 0.0 { from.min(to) } else { from }, to);
    }

    /// Least light of soft light only.
    pub fn soft_lux(&self) -> f64 {
        self.soft.map_or(0.0, Lux::lux)
    }

    /// Sets it.
    pub fn set_soft_lux(&mut self, lux: f64) {
        self.soft = (lux > 0.0).then(|| Lux::from_lux(lux));
    }

    /// Light of the lamp.
    pub fn lamp_lux(&self) -> f64 {
        self.balance.map_or(0.0, |balance| balance.lamp.lux())
    }

    /// Sets it.
    pub fn set_lamp_lux(&mut self, lux: f64) {
        let within = self.balance.map_or(NEAR, |balance| balance.within);
        self.balance = (lux > 0.0).then(|| Balance { lamp: Lux::from_lux(lux), within });
    }

    /// How near sky and lamp shall be.
    pub fn lamp_stops(&self) -> f64 {
        self.balance.map_or(0.0, |balance| balance.within.stops())
    }

    /// Sets it, where there is a lamp.
    pub fn set_lamp_stops(&mut self, stops: f64) {
        if let Some(balance) = &mut self.balance {
            balance.within = Stops::from_stops(stops);
        }
    }

    fn set_ratio(&mut self, from: f64, to: f64) {
        let said = from > 1.0 || to > 1.0;
        self.ratio = said.then_some([from.max(1.0), if to > 1.0 { to } else { ANY }]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_typed_one_at_a_time() {
        let mut wish = LevelWish::default();
        wish.set_lowest_ratio(4.0);
        assert_eq!((wish.ratio, wish.lowest_ratio(), wish.highest_ratio()), (Some([4.0, ANY]), 4.0, 0.0));
        wish.set_highest_ratio(3.0);
        assert_eq!(wish.ratio, Some([3.0, 3.0]), "the other end gives way");
        wish.set_lowest_ratio(0.0);
        assert_eq!(wish.ratio, Some([1.0, 3.0]));
        wish.set_highest_ratio(0.0);
        wish.set_soft_lux(0.0);
        wish.set_lamp_stops(2.0);
        assert!(wish.is_empty());
        wish.set_lamp_lux(20.0);
        wish.set_lamp_stops(0.5);
        assert_eq!((wish.lamp_lux(), wish.lamp_stops()), (20.0, 0.5));
        wish.set_soft_lux(150.0);
        assert_eq!(wish.soft_lux(), 150.0);
        wish.set_lamp_lux(0.0);
        assert_eq!(wish.balance, None);
    }
}
