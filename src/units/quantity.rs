//! How a plain quantity is made: one number, entered and left by the name of its unit.

/// Declares a newtype over a number, any finite size and sign, with its constructor and its exit.
macro_rules! quantity {
    ($(#[$about:meta])* $name:ident, $from:ident, $exit:ident, $unit:literal) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, serde::Serialize, serde::Deserialize)]
        #[serde(transparent)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From ", $unit, ".")]
            pub const fn $from(number: f64) -> Self {
                Self(number)
            }

            #[doc = concat!("In ", $unit, ".")]
            pub const fn $exit(self) -> f64 {
                self.0
            }
        }
    };
}

/// Gives a linear quantity its sums: two of them added, many gathered, one made larger or smaller.
macro_rules! linear {
    ($name:ident) => {
        impl core::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl core::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl core::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self(0.0), |sum, one| sum + one)
            }
        }
    };
}

pub(super) use {linear, quantity};
