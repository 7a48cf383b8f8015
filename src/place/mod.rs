//! Where we shoot: coordinates, zone, skyline, room, opening, mark.
//!
//! Nothing here knows the time or the sun; a place only says which directions of the sky are open.

pub mod aperture;
pub mod background;
pub mod cone;
pub mod fault;
mod floor;
pub mod frame;
mod inside;
pub mod mark;
pub mod opening;
pub mod room;
pub mod sighting;
pub mod site;
pub mod skyline;
pub mod wall;
pub mod zone;
