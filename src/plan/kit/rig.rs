//! What of the kit stands at a set-up, and the ratio wanted there.
//!
//! Sides are the lens': left and right of the camera stay where they are while the sun goes round, key and fill do not.

use serde::{Deserialize, Serialize};

use crate::light::ratio::Ratio;
use crate::units::{Degrees, Metres, Share, Stops};

/// From where a piece works on the subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Camera left, half-way between the lens and the side.
    Left,
    /// Camera right, half-way between the lens and the side.
    Right,
    /// From beside the lens.
    Front,
    /// From straight behind the subject, towards the lens.
    Back,
    /// On what stands behind the subject, not on the subject.
    Background,
}

impl Side {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Left, Self::Right, Self::Front, Self::Back, Self::Background];

    /// In words.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Front => "front",
            Self::Back => "back",
            Self::Background => "background",
        }
    }

    /// How far clockwise from the direction to the camera it stands, seen from above: the cheeks look half-way between
    /// the lens and the side (our choice: where a meter is held to a cheek).
    pub const fn off_the_camera(self) -> Degrees {
        Degrees::from_degrees(match self {
            Self::Left => 45.0,
            Self::Right => -45.0,
            Self::Front | Self::Background => 0.0,
            Self::Back => 180.0,
        })
    }

    /// The other cheek; the other sides are their own.
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            same => same,
        }
    }
}

/// A piece of the kit at its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Placed {
    /// Id of the piece.
    pub gear: String,
    /// From where it works.
    pub side: Side,
    /// How far from the subject, or from the background.
    #[serde(rename = "distance_m")]
    pub distance: Metres,
    /// What a lamp is dimmed to.
    #[serde(default = "whole", skip_serializing_if = "is_whole")]
    pub level: Share,
}

impl Placed {
    /// Two metres off at camera left, undimmed: to begin with (our choice).
    pub fn usual(gear: &str) -> Self {
        Self {
            gear: gear.to_owned(),
            side: Side::Left,
            distance: Metres::from_metres(2.0),
            level: Share::WHOLE,
        }
    }
}

/// All that is brought to a set-up, and the ratio wanted.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Rig {
    /// Bright side to shadow side, n : 1, both lights on the bright side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ratio: Option<f64>,
    /// What stands there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub placed: Vec<Placed>,
    /// How long a wetted floor stays wet, minutes, by the user's word; `None` for a floor that is not wetted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wet_minutes: Option<u16>,
}

impl Rig {
    /// Whether nothing was said and nothing stands there.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// The ratio wanted, in stops; none for none.
    pub fn wanted_stops(&self) -> f64 {
        self.wanted().map_or(0.0, |ratio| ratio.stops().stops())
    }

    /// Sets it; nothing wanted for no stops.
    pub fn set_wanted_stops(&mut self, stops: f64) {
        self.ratio = Ratio::from_stops(Stops::from_stops(stops)).ok().map(Ratio::number);
    }

    /// The ratio wanted; `None` where none was said.
    pub fn wanted(&self) -> Option<Ratio> {
        Ratio::from_number(self.ratio?).ok()
    }
}

const fn whole() -> Share {
    Share::WHOLE
}

fn is_whole(level: &Share) -> bool {
    *level == Share::WHOLE
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ratio_is_wished_in_stops() {
        let mut rig = Rig::default();
        rig.set_wanted_stops(2.0);
        assert!((rig.wanted_stops() - 2.0).abs() < 1e-12 && rig.ratio == Some(4.0));
        rig.set_wanted_stops(0.0);
        assert!(rig.is_empty() && rig.wanted_stops() == 0.0);
    }

    #[test]
    fn cheeks_are_each_others_other() {
        assert_eq!(
            (Side::Left.other(), Side::Right.other(), Side::Back.other()),
            (Side::Right, Side::Left, Side::Back)
        );
    }
}
