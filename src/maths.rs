//! Elementary functions, in one place.
//!
//! All go through `libm`, so that native tests and the browser run the same arithmetic, bit for bit.
//! Angles here are bare radians: the edges of the library speak the types of [`crate::units`].
#![allow(clippy::disallowed_methods, reason = "the one place that may call them")]
#![allow(unused_imports, reason = "a set of names, whether or not each is called today")]

pub(crate) use libm::{acos, asin, atan, atan2, cos, exp, expm1, hypot, log, log2, log10, pow, sin, tan};

/// Sine and cosine of `radians`.
pub(crate) fn sin_cos(radians: f64) -> (f64, f64) {
    libm::sincos(radians)
}
