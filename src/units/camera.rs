//! What is set on a camera: T-stop, film speed, frame rate, shutter time, neutral density.

use super::Stops;
use super::quantity::quantity;
use super::range::{OutOfRange, within};
use super::{Degrees, Share};
use crate::maths;

/// Declares a newtype over a number above zero. The range is there to refuse nonsense, not to forbid a camera.
macro_rules! positive {
    ($(#[$about:meta])* $name:ident, $from:ident, $exit:ident, $quantity:literal, $unit:literal, $range:expr) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd, serde::Serialize, serde::Deserialize)]
        #[serde(try_from = "f64", into = "f64")]
        pub struct $name(f64);

        impl $name {
            /// From a number.
            ///
            /// # Errors
            /// Outside the range of the quantity, or not a number.
            pub fn $from(number: f64) -> Result<Self, OutOfRange> {
                within($quantity, $unit, number, $range).map(Self)
            }

            /// Brought to the nearer end of its range when outside; for results and constants.
            pub const fn clamped(number: f64) -> Self {
                if number >= $range.1 {
                    Self($range.1)
                } else if number >= $range.0 {
                    Self(number)
                } else {
                    Self($range.0)
                }
            }

            /// As a number.
            pub const fn $exit(self) -> f64 {
                self.0
            }
        }

        impl TryFrom<f64> for $name {
            type Error = OutOfRange;
            fn try_from(number: f64) -> Result<Self, OutOfRange> {
                Self::$from(number)
            }
        }

        impl From<$name> for f64 {
            fn from(one: $name) -> Self {
                one.0
            }
        }
    };
}

positive! {
    /// A lens opening by the light it lets through: the f-number of a lens that loses none.
    TStop, from_number, number, "T-stop", "", (1e-3, 1e4)
}
positive! {
    /// Film or sensor speed, ISO arithmetic.
    Iso, from_iso, iso, "film speed", "ISO", (1e-3, 1e9)
}
positive! {
    /// Frames in a second.
    FrameRate, from_fps, fps, "frame rate", "fps", (1e-3, 1e6)
}
positive! {
    /// How long a frame is exposed, seconds.
    ShutterTime, from_seconds, seconds, "shutter time", "s", (1e-9, 1e6)
}

impl TStop {
    /// Of an f-number on a lens that lets through `transmittance`: `T = N/√τ`.
    pub fn of_lens(f_number: Self, transmittance: Share) -> Self {
        Self::clamped(f_number.number() / transmittance.fraction().sqrt())
    }

    /// How much less light it lets through than `wider`.
    pub fn closed_from(self, wider: Self) -> Stops {
        Stops::from_stops(2.0 * maths::log2(self.number() / wider.number()))
    }
}

impl ShutterTime {
    /// Of a shutter open for `angle` of its turn at a frame rate: `t = angle/(360 fps)`.
    pub fn of_angle(angle: Degrees, rate: FrameRate) -> Self {
        Self::clamped(angle.degrees() / (360.0 * rate.fps()))
    }

    /// The angle that gives it at a frame rate; over 360° there is no such shutter.
    pub fn angle(self, rate: FrameRate) -> Degrees {
        Degrees::from_degrees(self.seconds() * 360.0 * rate.fps())
    }
}

quantity! {
    /// Optical density of a filter: each 0.30 halves the light. Densities of stacked filters add.
    Density, from_density, density, "decades"
}

impl Density {
    /// Of a filter that takes so many stops (positive).
    pub fn from_stops(stops: Stops) -> Self {
        Self::from_density(stops.stops() * core::f64::consts::LOG10_2)
    }

    /// Stops it takes, positive: `D/0.30103`.
    pub fn stops(self) -> Stops {
        Stops::from_stops(self.density() / core::f64::consts::LOG10_2)
    }

    /// Filter factor, by which the light must grow: `10^D`.
    pub fn factor(self) -> f64 {
        maths::pow(10.0, self.density())
    }

    /// Share of the light it lets through: `10^−D`.
    pub fn transmittance(self) -> Share {
        Share::clamped(maths::pow(10.0, -self.density()))
    }
}

impl core::ops::Add for Density {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::from_density(self.density() + other.density())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn filters_of_the_handbook() {
        // F4: density, factor to three digits, stops to two decimals.
        let table = [
            (0.3, 2.00, 1.00),
            (0.6, 3.98, 1.99),
            (0.9, 7.94, 2.99),
            (1.2, 15.8, 3.99),
            (1.5, 31.6, 4.98),
            (1.8, 63.1, 5.98),
            (2.1, 126.0, 6.98),
            (2.4, 251.0, 7.97),
            (3.0, 1000.0, 9.97),
        ];
        for (density, factor, stops) in table {
            let filter = Density::from_density(density);
            assert!((filter.factor() / factor - 1.0).abs() < 0.0035, "{density}: {}", filter.factor());
            assert!((filter.stops().stops() - stops).abs() < 0.0051, "{density}: {}", filter.stops().stops());
        }
    }

    #[test]
    fn a_lens_that_loses_a_fifth() {
        // F4: f/2 at 80 % is T2.24, a third of a stop less.
        let f_two = TStop::clamped(2.0);
        let t_stop = TStop::of_lens(f_two, Share::clamped(0.8));
        assert!((t_stop.number() - 2.236).abs() < 0.001);
        assert!((t_stop.closed_from(f_two).stops() - 0.32).abs() < 0.005);
    }

    proptest! {
        #[test]
        fn filters_there_and_back(stops in 0.0..12.0f64, more in 0.0..12.0f64) {
            let [one, two] = [stops, more].map(|stops| Density::from_stops(Stops::from_stops(stops)));
            prop_assert!((one.stops().stops() - stops).abs() < 1e-12);
            prop_assert!(((one + two).factor() / (one.factor() * two.factor()) - 1.0).abs() < 1e-12);
            prop_assert!((one.factor() * one.transmittance().fraction() - 1.0).abs() < 1e-12);
        }

        #[test]
        fn angles_there_and_back(angle in 1.0..360.0f64, fps in 1.0..1000.0f64) {
            let rate = FrameRate::clamped(fps);
            let back = ShutterTime::of_angle(Degrees::from_degrees(angle), rate).angle(rate);
            prop_assert!((back.degrees() - angle).abs() < 1e-9);
        }
    }
}
