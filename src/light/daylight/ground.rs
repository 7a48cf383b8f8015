//! What grounds and walls give back of daylight.
//!
//! Broadband reflectances from public tables (secondary sources; the default 0.2 and fresh snow as in Muneer, *Solar
//! Radiation and Daylight Models*, 2004). Wet ground is darker by a third to a half. The eye sees greens darker than they are here.

use serde::{Deserialize, Serialize};

use crate::units::Share;

/// Surfaces that a location may have in front of the lens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Surface {
    /// Not known.
    #[default]
    Unknown,
    /// Asphalt, fresh.
    FreshAsphalt,
    /// Asphalt, worn.
    WornAsphalt,
    /// Grass, green.
    Grass,
    /// Bare soil.
    Soil,
    /// Trees that shed their leaves.
    Deciduous,
    /// Conifers.
    Conifers,
    /// Open water under a high sun.
    Water,
    /// Desert sand.
    Sand,
    /// Concrete, new.
    NewConcrete,
    /// Concrete, old.
    OldConcrete,
    /// Brick or stone.
    Brick,
    /// Snow, fresh.
    Snow,
}

impl Surface {
    /// All of them, the unknown one first.
    pub const ALL: [Self; 13] = [
        Self::Unknown,
        Self::FreshAsphalt,
        Self::WornAsphalt,
        Self::Grass,
        Self::Soil,
        Self::Deciduous,
        Self::Conifers,
        Self::Water,
        Self::Sand,
        Self::NewConcrete,
        Self::OldConcrete,
        Self::Brick,
        Self::Snow,
    ];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unknown => "not known",
            Self::FreshAsphalt => "fresh asphalt",
            Self::WornAsphalt => "worn asphalt",
            Self::Grass => "grass",
            Self::Soil => "bare soil",
            Self::Deciduous => "leafy trees",
            Self::Conifers => "conifers",
            Self::Water => "water",
            Self::Sand => "sand",
            Self::NewConcrete => "new concrete",
            Self::OldConcrete => "old concrete",
            Self::Brick => "brick or stone",
            Self::Snow => "fresh snow",
        }
    }

    /// Whether nobody has said.
    pub fn is_unknown(&self) -> bool {
        *self == Self::Unknown
    }

    /// What it gives back; the middle where the tables give a range.
    pub const fn reflectance(self) -> Share {
        Share::clamped(match self {
            Self::Unknown => 0.20,
            Self::FreshAsphalt => 0.04,
            Self::WornAsphalt => 0.12,
            Self::Grass => 0.25,
            Self::Soil => 0.17,
            Self::Deciduous => 0.165,
            Self::Conifers => 0.115,
            Self::Water => 0.075,
            Self::Sand => 0.40,
            Self::NewConcrete => 0.55,
            Self::OldConcrete => 0.25,
            Self::Brick => 0.30,
            Self::Snow => 0.875,
        })
    }
}
