//! Rooms beside rays: a tracer of its own says what the sun and the sky reach, for rooms that no table has.
//!
//! Non-convex floors, roof lights, reveals, overhangs, bars and screens. [`tracer`] reads the same numbers of the document
//! and shares no code with the library: it follows one ray at a time from surface to surface. [`some`] makes up rooms.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::disallowed_methods, reason = "the tracer computes on its own, not through the library")]

mod laws;
mod sky;
mod some;
mod sun;
mod tracer;
