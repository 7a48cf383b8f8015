//! What window glass lets through, straight and aslant.
//!
//! Straight-through values from building-simulation tables and window makers' handbooks; common practice for frames and
//! dirt. Tinted and coated glass is green or grey and not here: measure it.

use super::fresnel::{RefractiveIndex, polarised};
use crate::units::{Degrees, Share};

/// Panes of plain glass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Glazing {
    /// No glass.
    Open,
    /// One pane.
    Single,
    /// Two panes.
    Double,
    /// Three panes.
    Triple,
}

impl Glazing {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Open, Self::Single, Self::Double, Self::Triple];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Single => "single glass",
            Self::Double => "double glass",
            Self::Triple => "triple glass",
        }
    }

    /// Straight through: 4 mm panes, clear.
    pub const fn straight(self) -> Share {
        Share::clamped(match self {
            Self::Open => 1.0,
            Self::Single => 0.89,
            Self::Double => 0.78,
            Self::Triple => 0.70,
        })
    }

    /// Aslant, relative to straight through: reflections between all surfaces of `panes` clear panes, of both
    /// polarisations, `(1 − r)/(1 + (2n − 1) r)` each.
    ///
    /// # Source
    /// Duffie and Beckman, *Solar Engineering of Thermal Processes* (1991), section 5.1; index 1.526, absorption left out.
    pub fn aslant(self, incidence: Degrees) -> Share {
        let straight = self.reflected_through(Degrees::default());
        Share::clamped(self.reflected_through(incidence) / straight)
    }

    /// What gets through at an angle of incidence.
    ///
    /// ```
    /// # use slantlight::{light::glazing::Glazing, units::Degrees};
    /// let grazing = Glazing::Double.transmittance(Degrees::from_degrees(80.0));
    /// assert!((grazing.fraction() - 0.78 * 0.366).abs() < 0.001);
    /// ```
    pub fn transmittance(self, incidence: Degrees) -> Share {
        Share::clamped(self.straight().fraction() * self.aslant(incidence).fraction())
    }

    const fn panes(self) -> f64 {
        match self {
            Self::Open => 0.0,
            Self::Single => 1.0,
            Self::Double => 2.0,
            Self::Triple => 3.0,
        }
    }

    fn reflected_through(self, incidence: Degrees) -> f64 {
        if self == Self::Open {
            return 1.0;
        }
        let (across, along) = polarised(RefractiveIndex::GLASS, incidence);
        let through = |r: Share| (1.0 - r.fraction()) / (1.0 + (2.0 * self.panes() - 1.0) * r.fraction());
        (through(across) + through(along)) / 2.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Stops;

    #[test]
    fn aslant_through_one_pane_and_two() {
        // Handbook C7.
        let table = [
            (Glazing::Single, [(60.0, 0.918), (70.0, 0.789), (80.0, 0.497)]),
            (Glazing::Double, [(60.0, 0.896), (70.0, 0.715), (75.0, 0.558)]),
        ];
        for (glazing, angles) in table {
            for (angle, share) in angles {
                let got = glazing.aslant(Degrees::from_degrees(angle)).fraction();
                assert!((got - share).abs() < 0.0006, "{glazing:?} {angle}: {got}");
            }
        }
        let grazing = Glazing::Double.aslant(Degrees::from_degrees(80.0));
        assert!((grazing.fraction() - 0.366).abs() < 0.0006);
        assert!((Stops::left_by(grazing).stops() + 1.5).abs() < 0.06);
    }

    #[test]
    fn no_glass_takes_nothing() {
        for angle in [0.0, 60.0, 90.0] {
            assert_eq!(Glazing::Open.transmittance(Degrees::from_degrees(angle)), Share::WHOLE);
        }
        assert!(Glazing::Single.transmittance(Degrees::from_degrees(90.0)).fraction() < 1e-12);
    }
}
