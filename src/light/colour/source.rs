//! Colour temperatures to plan with, for lights that are not the sun's beam.
//!
//! Common practice unless named otherwise; outdoors worth 10 %, so shown in steps of 100 K and as ranges.

use crate::units::Kelvin;

/// A light of the world.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// Sun and sky together at noon (typical 5700 K at Granada: Hernández-Andrés et al., J. Opt. Soc. Am. A 18 (2001) 1325).
    SunAndSky,
    /// An overcast sky.
    Overcast,
    /// Open shade under a blue sky.
    Shade,
    /// The sky of the blue hour.
    BlueHour,
    /// The moon.
    Moon,
    /// A tungsten lamp for film.
    Tungsten,
    /// Lamps of a home.
    HomeLamp,
}

impl Source {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::SunAndSky,
        Self::Overcast,
        Self::Shade,
        Self::BlueHour,
        Self::Moon,
        Self::Tungsten,
        Self::HomeLamp,
    ];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::SunAndSky => "sun and sky",
            Self::Overcast => "overcast",
            Self::Shade => "open shade",
            Self::BlueHour => "blue hour",
            Self::Moon => "moon",
            Self::Tungsten => "tungsten",
            Self::HomeLamp => "lamps of a home",
        }
    }

    /// The range to expect.
    pub const fn range(self) -> (Kelvin, Kelvin) {
        let (from, to) = match self {
            Self::SunAndSky => (5500.0, 5700.0),
            Self::Overcast => (6000.0, 7000.0),
            Self::Shade => (7000.0, 10_000.0),
            Self::BlueHour => (9000.0, 15_000.0),
            Self::Moon => (4100.0, 4100.0),
            Self::Tungsten => (3200.0, 3200.0),
            Self::HomeLamp => (2700.0, 4000.0),
        };
        (Kelvin::clamped(from), Kelvin::clamped(to))
    }

    /// One number to plan with: the middle of the range in mireds.
    pub fn usual(self) -> Kelvin {
        let (from, to) = self.range();
        crate::units::Mired::from_mired((from.mired().mired() + to.mired().mired()) / 2.0).kelvin()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_lies_in_the_range() {
        for source in Source::ALL {
            let ((from, to), usual) = (source.range(), source.usual());
            assert!(
                from.kelvin() <= usual.kelvin() + 1e-6 && usual.kelvin() <= to.kelvin() + 1e-6,
                "{source:?}"
            );
        }
    }
}
