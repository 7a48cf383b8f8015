//! Where we shoot: coordinates, zone, skyline, room, opening, mark.
//!
//! Nothing here knows the time or the sun; a place only says which directions of the sky are open.

pub mod background;
pub mod cone;
pub mod mark;
pub mod opening;
pub mod room;
pub mod site;
pub mod zone;
