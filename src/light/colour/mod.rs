//! Colour of light: temperature, distance from white light's own line, mixtures, filters.
//!
//! Chromaticities are of the CIE 1931 observer, 2°. A saturated lamp has no colour temperature; it has a chromaticity.

mod chromaticity;
pub mod contrast;
pub mod correction;
pub mod correlated;
pub mod daylight_locus;
pub mod mix;
mod observer_table;
pub mod planck;
pub mod source;
mod spectrum;
pub mod sun;
pub mod swatch;

pub use chromaticity::Chromaticity;
pub use correlated::{Correlated, correlated};
