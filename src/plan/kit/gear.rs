//! A piece of the kit: a lamp, a board, a frame of cloth.

use serde::{Deserialize, Serialize};

use super::Lamp;
use crate::light::board;
use crate::units::{Lux, Metres, Share, Stops, Watts};

/// A piece of the kit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Gear {
    /// Stable within the project.
    pub id: String,
    /// "Tube, 1.2 m".
    pub name: String,
    /// How many of them there are.
    #[serde(default = "one")]
    pub count: u32,
    /// Whether it is a generic example with invented numbers, not one that somebody has measured.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub invented: bool,
    /// What it is.
    pub is: Thing,
}

/// What a piece of the kit is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// It shines.
    Lamp(Lamp),
    /// It throws light back, or, being black, takes it away.
    Board(Board),
    /// It scatters what comes through it.
    Frame(Frame),
}

/// A matt board or cloth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Board {
    /// Width.
    #[serde(rename = "width_m")]
    pub width: Metres,
    /// Height.
    #[serde(rename = "height_m")]
    pub height: Metres,
    /// What it gives back, 0 to 1; black cloth about 0.03.
    pub reflectance: Share,
}

/// A frame of diffusion.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Frame {
    /// Width.
    #[serde(rename = "width_m")]
    pub width: Metres,
    /// Height.
    #[serde(rename = "height_m")]
    pub height: Metres,
    /// What its cloth takes, stops, positive.
    #[serde(rename = "loss_stops")]
    pub loss: Stops,
}

const METRE: Metres = Metres::from_metres(1.0);

/// Darker than this a board is black cloth: it is brought to take light away (our choice).
const BLACK: Share = Share::clamped(0.10);

impl Board {
    /// Whether it is black cloth.
    pub fn is_black(&self) -> bool {
        self.reflectance < BLACK
    }

    /// As `light` computes with it.
    pub const fn as_light(&self) -> board::Board {
        board::Board { width: self.width, height: self.height, reflectance: self.reflectance }
    }
}

impl Frame {
    /// What its cloth lets through.
    pub fn transmittance(&self) -> Share {
        Share::clamped((-self.loss).factor())
    }
}

impl Gear {
    /// The lamp, if it is one.
    pub const fn lamp(&self) -> Option<&Lamp> {
        match &self.is {
            Thing::Lamp(lamp) => Some(lamp),
            _ => None,
        }
    }

    /// What a lamp gives a metre before it, undimmed; `None` for what does not shine.
    pub fn lux_at_a_metre(&self) -> Option<Lux> {
        Some(self.lamp()?.at_level(Share::WHOLE).light(METRE))
    }

    /// Changes what it is; a piece that somebody has measured is invented no more.
    pub fn measure(&mut self, change: impl FnOnce(&mut Thing)) {
        change(&mut self.is);
        self.invented = false;
    }

    /// What a lamp draws, undimmed; nothing where nobody has said.
    pub fn power(&self) -> Watts {
        self.lamp().and_then(|lamp| lamp.power).unwrap_or_default()
    }

    /// Sets it; nothing is unsaid.
    pub fn set_power(&mut self, power: Watts) {
        if let Thing::Lamp(lamp) = &mut self.is {
            lamp.power = (power.watts() > 0.0).then_some(power);
        }
    }

    /// How wide it is, as it stands square to the light; a point has no width.
    pub const fn width(&self) -> Metres {
        match &self.is {
            Thing::Lamp(lamp) => lamp.width,
            Thing::Board(board) => board.width,
            Thing::Frame(frame) => frame.width,
        }
    }

    /// How near the subject it may stand (boards: half a metre, our choice: an arm's length out of the picture).
    pub fn nearest(&self) -> Metres {
        match &self.is {
            Thing::Lamp(lamp) => lamp.nearest(),
            _ => Metres::from_metres(0.5),
        }
    }
}

const fn one() -> u32 {
    1
}

#[cfg(test)]
mod tests {
    use super::super::{Brightness, generic};
    use super::*;

    #[test]
    fn one_reading_makes_a_lamp_ones_own() {
        let mut lamp = generic::gear("id", generic::examples().remove(0));
        assert!(lamp.invented);
        lamp.measure(|is| {
            if let Thing::Lamp(lamp) = is {
                lamp.brightness = Brightness::Reading { lux: Lux::from_lux(900.0), at: METRE };
            }
        });
        assert!(!lamp.invented && (lamp.lux_at_a_metre().unwrap().lux() - 900.0).abs() < 1e-9);
    }
}
