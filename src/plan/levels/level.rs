//! The light on one side of a subject, in its parts.

use crate::light::colour::{Chromaticity, mix};
use crate::units::Lux;

/// Where a part comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The sun's disc.
    Sun,
    /// The moon's disc.
    Moon,
    /// The sky, in the open or through openings.
    Sky,
    /// The ground and what stands on it.
    Ground,
    /// Walls, floor and ceiling of the room.
    Room,
    /// A light that is there already.
    There,
    /// A lamp that was brought.
    Lamp,
    /// A board that was brought.
    Board,
    /// A frame of cloth in the sun.
    Frame,
}

/// A part.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Where it comes from.
    pub origin: Origin,
    /// Through which opening, from which piece; empty where the origin says it all.
    pub name: String,
    /// How much.
    pub lux: Lux,
    /// Its colour.
    pub colour: Chromaticity,
    /// Whether it throws hard shadows.
    pub hard: bool,
}

/// One side.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Level {
    /// Its parts; those without light are left out.
    pub parts: Vec<Part>,
}

impl Level {
    /// All of it.
    pub fn total(&self) -> Lux {
        self.parts.iter().map(|part| part.lux).sum()
    }

    /// The part that gives most.
    pub fn main(&self) -> Option<&Part> {
        self.parts.iter().max_by(|one, other| one.lux.lux().total_cmp(&other.lux.lux()))
    }

    /// Its colour; `None` without light.
    pub fn colour(&self) -> Option<Chromaticity> {
        let lights: Vec<_> = self.parts.iter().map(|part| (part.lux, part.colour)).collect();
        mix::mix(&lights).map(|(_, colour)| colour)
    }

    /// Share of it that throws hard shadows, 0 to 1.
    pub fn hard(&self) -> f64 {
        let hard: Lux = self.parts.iter().filter(|part| part.hard).map(|part| part.lux).sum();
        if self.total().lux() > 0.0 { hard.lux() / self.total().lux() } else { 0.0 }
    }

    /// Adds a part, unless it has no light.
    pub fn add(&mut self, part: Part) {
        if part.lux.lux() > 0.0 {
            self.parts.push(part);
        }
    }
}
