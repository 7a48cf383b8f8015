//! What the light does there.
//!
//! Directions as the lens sees them, and sunlight on surfaces. Nothing here knows the time or a wish.

mod above_line;
pub mod aim;
pub mod beam;
pub mod board;
pub mod class;
pub mod colour;
pub mod cover;
pub mod daylight;
pub mod drift;
pub mod exposure;
pub mod face;
pub mod fixture;
pub mod form_factor;
pub mod format;
pub mod fresnel;
pub mod glazing;
pub mod haze;
pub mod in_room;
pub mod interreflected;
pub mod mirror;
pub mod patch;
pub mod penumbra;
pub mod phase;
pub mod picture;
pub mod ratio;
pub mod reach;
pub mod relative;
mod seen_sky;
pub mod shadow;
pub mod sky_component;
pub mod sky_model;
pub mod skylight;
pub mod told_patch;
pub mod view;
pub mod wall_bearing;
