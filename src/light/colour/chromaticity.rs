//! Chromaticity: what colour a light is, whatever its amount.

use crate::maths;
use crate::units::OutOfRange;

/// x and y of CIE 1931.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chromaticity {
    x: f64,
    y: f64,
}

impl Chromaticity {
    /// From x and y.
    ///
    /// # Errors
    /// No light has it: outside 0 to 1, y at 0, x + y over 1, or not a number.
    pub fn from_xy(x: f64, y: f64) -> Result<Self, OutOfRange> {
        let within = |quantity, given, (min, max)| {
            if (min..=max).contains(&given) {
                Ok(given)
            } else {
                Err(OutOfRange { quantity, given, min, max, unit: "" })
            }
        };
        let x = within("chromaticity x", x, (0.0, 1.0))?;
        let y = within("chromaticity y", y, (1e-4, 1.0))?;
        within("chromaticity x + y", x + y, (0.0, 1.0))?;
        Ok(Self { x, y })
    }

    /// From the three sums of a light, of which the second is its amount.
    pub(super) fn from_sums([x, y, z]: [f64; 3]) -> Self {
        let all = x + y + z;
        Self { x: x / all, y: y / all }
    }

    /// From u and v of CIE 1960.
    pub(super) fn from_uv((u, v): (f64, f64)) -> Self {
        let scale = 2.0 * u - 8.0 * v + 4.0;
        Self { x: 3.0 * u / scale, y: 2.0 * v / scale }
    }

    /// x.
    pub const fn x(self) -> f64 {
        self.x
    }

    /// y.
    pub const fn y(self) -> f64 {
        self.y
    }

    /// u and v of CIE 1960, in which colour temperature is measured.
    pub fn uv_1960(self) -> (f64, f64) {
        let scale = -2.0 * self.x + 12.0 * self.y + 3.0;
        (4.0 * self.x / scale, 6.0 * self.y / scale)
    }

    /// u′ and v′ of CIE 1976, in which differences are about even.
    pub fn uv_1976(self) -> (f64, f64) {
        let (u, v) = self.uv_1960();
        (u, 1.5 * v)
    }

    /// How far another colour is in u′ v′ of CIE 1976; 0.001 to 0.002 is just to be seen side by side.
    ///
    /// ```
    /// # use slantlight::light::colour::Chromaticity;
    /// let day = Chromaticity::from_xy(0.3127, 0.3290)?;
    /// let lamp = Chromaticity::from_xy(0.4234, 0.3990)?;
    /// assert!((day.difference(lamp) - 0.0673).abs() < 0.0001);
    /// # Ok::<(), slantlight::units::OutOfRange>(())
    /// ```
    pub fn difference(self, other: Self) -> f64 {
        let ((u1, v1), (u2, v2)) = (self.uv_1976(), other.uv_1976());
        maths::hypot(u1 - u2, v1 - v2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn no_light_is_refused_by_name() {
        let message = Chromaticity::from_xy(0.8, 0.4).unwrap_err().to_string();
        assert!(message.starts_with("chromaticity x + y 1.2"), "{message}");
        assert!(Chromaticity::from_xy(f64::NAN, 0.3).is_err() && Chromaticity::from_xy(0.3, 0.0).is_err());
    }

    proptest! {
        #[test]
        fn there_and_back(x in 0.05..0.65f64, y in 0.05..0.34f64) {
            let colour = Chromaticity::from_xy(x, y).unwrap();
            let back = Chromaticity::from_uv(colour.uv_1960());
            prop_assert!((back.x() - x).abs() < 1e-12 && (back.y() - y).abs() < 1e-12);
        }
    }
}
