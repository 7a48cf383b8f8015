//! Air mass: how much air the light comes through, against straight down to the sea.

use crate::maths;
use crate::units::{Height, Metres};

/// Elevation over which the pressure of the air falls to a 2.718th (the standard atmosphere's scale height, metres).
const SCALE_HEIGHT: f64 = 8434.5;

/// Thickness of the air on the way of the light; 1 for a light in the zenith, seen from the sea.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct AirMass(f64);

impl AirMass {
    /// For an apparent height, from the sea.
    ///
    /// Kasten and Young, Applied Optics 28 (1989) 4735: `1/(sin h + 0.50572 (h + 6.07995°)^−1.6364)`. Good from the
    /// zenith to the horizon, where it is 38; below the horizon that of the horizon is kept.
    ///
    /// ```
    /// # use slantlight::{light::daylight::AirMass, units::Height};
    /// assert!((AirMass::kasten_young(Height::clamped(10.0)).number() - 5.586).abs() < 5e-4);
    /// ```
    pub fn kasten_young(apparent: Height) -> Self {
        let height = Height::clamped(apparent.degrees().max(0.0));
        Self(1.0 / (height.sin() + 0.505_72 * maths::pow(height.degrees() + 6.079_95, -1.6364)))
    }

    /// As if the air lay in flat layers, `1/sin h`: good above 30°, what older tables are made with.
    pub fn flat_layers(apparent: Height) -> Self {
        Self(1.0 / apparent.sin())
    }

    /// Seen from an elevation: less air remains above.
    pub fn at_elevation(self, elevation: Metres) -> Self {
        Self(self.0 * maths::exp(-elevation.metres() / SCALE_HEIGHT))
    }

    /// As a number.
    pub const fn number(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn air_masses_of_the_handbook() {
        // T-C2.
        for (height, mass, tolerance) in [
            (0.5, 31.35, 0.005),
            (2.0, 19.43, 0.005),
            (5.0, 10.31, 0.005),
            (10.0, 5.586, 0.0005),
            (30.0, 1.994, 0.0005),
        ] {
            let got = AirMass::kasten_young(Height::clamped(height)).number();
            assert!((got - mass).abs() <= tolerance, "{height}°: {got}");
        }
    }
}
