//! Slantlight's computing: where the sun is, what it does at a place, and when to shoot.
//!
//! The library is pure. It knows no browser, reads no clock and touches no storage; the screens in
//! `src/app` ask it and draw what comes back. The light flows one way, and the rooms say so:
//!
//! | room | what it answers |
//! |---|---|
//! | [`units`] | angles, lengths, instants, spans and vectors that know what they are |
//! | [`sky`] | where the light comes from: sun, events, searches over time |
//! | [`place`] | where we shoot: coordinates, zone, skyline, room, opening, mark |
//! | [`light`] | what the light does there: direction classes, the ball, patches |
//! | [`plan`] | what to shoot when: wish, slots, runs of days |
//! | [`project`] | the file: schema, edits, restore, records |
//! | [`draw`] | plain shapes (paths, labels) for the drawings |
//! | [`words`] | numbers, dates and times in words |
//!
//! # Conventions
//! * World frame: x east, y north, z up, metres. Directions are unit vectors that point *to* the light.
//! * Bearings are degrees clockwise from **true** north; heights are degrees above the horizon.
//! * Instants are UTC; local time exists only at the edges, through a [`place::zone::Zone`].
//! * *Off the lens* is signed: 0 front, 90 side, 180 back, positive to camera right.

pub mod draw;
pub mod light;
mod maths;
mod order;
pub mod place;
pub mod plan;
pub mod project;
pub mod sky;
mod solve;
pub mod units;
pub mod words;
