//! Quantities that know their unit.
//!
//! A quantity is entered and left by the name of its unit; there is no unit-blind constructor.
//! The types of the edges (bearing, height, latitude, length …) keep the number a person typed, so that
//! a saved file reads back to the same bytes; inside, directions are unit [`Vector`]s.

mod angle;
mod camera;
mod length;
mod magnetic;
mod photometric;
mod quantity;
mod radiometric;
mod range;
mod share;
mod span;
mod speed;
mod stops;
mod temperature;
mod time;
mod vector;

pub use angle::{Bearing, Degrees, Height, Latitude, Longitude};
pub use camera::{Density, FrameRate, Iso, ShutterTime, TStop};
pub use length::Metres;
pub use magnetic::{MagneticBearing, Nanoteslas};
pub use photometric::{Candelas, Lumens, Luminance, Lux};
pub use radiometric::{Watts, WattsPerSquareMetre};
pub use range::OutOfRange;
pub use share::Share;
pub use span::{Span, Spans};
pub use speed::Speed;
pub use stops::Stops;
pub use temperature::{Kelvin, Mired};
pub use time::{Duration, Instant, NotAnInstant};
pub use vector::{InRoom, Vector, World};
