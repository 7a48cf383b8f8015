//! Exposure: what the light, the lens, the film and the shutter ask of one another.
//!
//! ISO 2720:1974, *General purpose photographic exposure meters*: `T²/t = E S/C` for the light that arrives, `T²/t = L S/K` for
//! the light that leaves. C and K are settings of the meter and are shown with every answer.

pub mod field_of_view;
pub mod film;
pub mod flicker;

pub mod meter;
pub mod placement;
pub mod settings;
pub mod value;

pub use meter::{IncidentConstant, ReflectedConstant};
pub use settings::Settings;
pub use value::ExposureValue;
