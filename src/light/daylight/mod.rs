//! How much light sun, sky and moon give, outdoors, on level ground and on tilted planes.
//!
//! Models, each named by its authors; a meter on the day corrects them. No file here knows a time or a place: the sun's
//! height comes from `sky`.

mod air_mass;
pub mod cie_sky;
pub mod clear_sky;
pub mod efficacy;
mod efficacy_table;
pub mod ground;
pub mod half_sky;
pub(in crate::light) mod hemisphere;
pub mod ies;
pub mod moonlight;
pub mod open;
mod plane;
mod reading;
mod sky;
pub mod sky_table;
pub mod twilight;
mod twilight_table;

pub use air_mass::AirMass;
pub use plane::{OnPlane, Outdoors, on_plane};
pub use reading::Correction;
pub use sky::{Daylight, Sky, daylight};
