//! What the light does there.
//!
//! Directions as the lens sees them, and sunlight on surfaces. Nothing here knows the time or a wish.

pub mod class;
pub mod daylight;
pub mod exposure;
pub mod format;
pub mod patch;
pub mod phase;
pub mod relative;
pub mod shadow;
