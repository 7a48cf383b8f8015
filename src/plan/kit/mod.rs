//! What a production brings or finds: lamps, boards, cloths, frames, lights already there, a meter's word, cameras.
//!
//! Plain data of the document, each with the way to what `light` computes with. Numbers carry their unit in their name.

pub mod camera;
pub mod colour;
pub mod gear;
pub mod generic;
pub mod lamp;
pub mod reading;
pub mod rig;
pub mod there;

pub use camera::CameraSettings;
pub use colour::LampColour;
pub use gear::{Board, Frame, Gear, Thing};
pub use lamp::{Brightness, Form, Lamp};
pub use reading::{Facing, Metered, Reading};
pub use rig::{Placed, Rig, Side};
pub use there::There;
