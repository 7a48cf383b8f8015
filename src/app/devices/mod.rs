//! What the phone has: clock, position, compass, zones, files, sharing, storage.
//!
//! One browser API per file. Each answers with plain values or with a reason why not; none throws, none keeps
//! a state that a screen shows (that is the store's). What must happen inside a tap (sharing, permissions,
//! clipboard) is called directly by the tap, before anything is awaited.

pub mod address;
pub mod awake;
pub mod bridge;
pub mod camera_roll;
pub mod clipboard;
pub mod clock;
pub mod compass;
pub mod database;
pub mod download;
pub mod file;
pub mod geolocation;
pub mod id;
pub mod install;
pub mod js;
pub mod local;
pub mod look;
pub mod orientation;
pub mod persistence;
pub mod png;
pub mod ring;
pub mod settled;
pub mod share;
pub mod slices;
pub mod squeeze;
pub mod visibility;
pub mod writer;
pub mod zone;
