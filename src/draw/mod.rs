//! Drawings as plain shapes: paths and labels, computed here, printed by the screens.
//!
//! A drawing is a function from plain values to a [`Drawing`]: one path per layer, labels, areas to touch, and a
//! sentence that says the same. Coordinates are those of its view box, x right and y down, about one to a pixel
//! of a phone 390 wide. Colours are not here: each layer has a class that the style sheet paints ([`Paint`], [`Ink`]).

pub mod arc;
pub mod around;
pub mod axonometric;
pub mod ball;
pub mod code;
pub mod dayline;
pub mod face;
pub mod hold;
pub mod hours;
pub mod ink;
mod labels;
pub mod levels;
pub mod outline;
pub mod overhead;
mod paint;
mod path;
pub mod plan;
pub mod ring;
pub mod scale;
mod shape;
pub mod strip;
pub mod window;
pub mod year;

pub use paint::{Ink, Paint};
pub use path::Path;
pub use shape::{Anchor, Drawing, Hit, Label, Layer, Point, Target, ViewBox};
