//! One reading of a meter, and the model is right for this place and hour.

use crate::units::{Lux, Stops};

/// Largest disagreement that can be weather; beyond it the reading, or the hour, is taken wrongly (our choice).
const BELIEVABLE: Stops = Stops::from_stops(6.0);

/// How far the light of a place is over its model.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Correction(Stops);

impl Correction {
    /// From what a meter says and what the model says of the same surface; `None` where the two have nothing to do with
    /// each other: either is dark, or they are more than six stops apart.
    ///
    /// ```
    /// # use slantlight::{light::daylight::Correction, units::Lux};
    /// let hazy = Correction::from_reading(Lux::from_lux(30_000.0), Lux::from_lux(60_000.0)).unwrap();
    /// assert_eq!(hazy.applied(Lux::from_lux(5_000.0)).lux(), 2_500.0);
    /// ```
    pub fn from_reading(measured: Lux, modelled: Lux) -> Option<Self> {
        let over = measured.stops_over(modelled);
        // Written so that what is not a number is refused too.
        (over.stops().abs() <= BELIEVABLE.stops()).then_some(Self(over))
    }

    /// How far over; negative under.
    pub const fn stops(self) -> Stops {
        self.0
    }

    /// Light of the model, corrected.
    pub fn applied(self, modelled: Lux) -> Lux {
        modelled.raised_by(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_refused() {
        let lux = Lux::from_lux;
        assert_eq!(Correction::from_reading(lux(0.0), lux(100.0)), None);
        assert_eq!(Correction::from_reading(lux(100.0), lux(0.0)), None);
        assert_eq!(Correction::from_reading(lux(0.0), lux(0.0)), None);
        assert_eq!(Correction::from_reading(lux(100.0), lux(100_000.0)), None);
        assert_eq!(Correction::from_reading(lux(100.0), lux(100.0)), Some(Correction::default()));
    }
}
