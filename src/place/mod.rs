//! Where we shoot: coordinates, zone, skyline, room, opening, mark.
//!
//! Nothing here knows the time or the sun; a place only says which directions of the sky are open.

mod floor;
pub(crate) mod inside;
pub(crate) mod lane;
pub(crate) mod polygon;

pub mod aim;
pub mod aperture;
pub mod background;
pub mod blocker;
pub mod cone;
pub mod coordinates;
pub mod fault;
pub mod frame;
pub mod heading;
pub mod mark;
pub mod opening;
pub mod outside;
pub mod pacing;
pub mod pane;
pub mod plus_code;
pub mod reshape;
pub mod room;
pub mod seasons;
pub mod sighting;
pub mod site;
pub mod skyline;
pub mod wall;
pub mod zone;
