//! A lamp as its owner knows it: by one reading or its candelas, with size, beam, colour and whether it dims.

use serde::{Deserialize, Serialize};

use super::LampColour;
use crate::light::fixture::{self, Shape, panel, point, tube};
use crate::units::{Candelas, Degrees, Lux, Metres, Share, Watts};

/// How near a lamp of no size may stand; nearer, a reading means nothing (our choice).
const NEAREST: f64 = 0.2;

/// What shines.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Form {
    /// Small beside its distance.
    #[default]
    Point,
    /// An even rectangle.
    Panel,
    /// A tube.
    Tube,
}

/// How bright it is, undimmed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Brightness {
    /// Read straight before it.
    Reading {
        /// What the meter said.
        lux: Lux,
        /// How far off it was held.
        #[serde(rename = "at_m")]
        at: Metres,
    },
    /// Along its axis, from far.
    Candela(Candelas),
}

/// A lamp.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lamp {
    /// What shines.
    pub form: Form,
    /// How bright it is.
    pub brightness: Brightness,
    /// Width of a panel, length of a tube; of no account for a point.
    #[serde(rename = "width_m", default)]
    pub width: Metres,
    /// Height of a panel.
    #[serde(rename = "height_m", default)]
    pub height: Metres,
    /// Full angle at half the peak, where it is known.
    #[serde(rename = "beam_deg", default, skip_serializing_if = "Option::is_none")]
    pub beam: Option<Degrees>,
    /// Its colour.
    #[serde(default)]
    pub colour: LampColour,
    /// Whether it can be dimmed.
    #[serde(default)]
    pub dims: bool,
    /// What it draws undimmed, where it is known.
    #[serde(rename = "power_w", default, skip_serializing_if = "Option::is_none")]
    pub power: Option<Watts>,
}

impl Form {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Point, Self::Panel, Self::Tube];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Point => "a point",
            Self::Panel => "a panel",
            Self::Tube => "a tube",
        }
    }
}

impl Lamp {
    /// As `light` computes with it, dimmed to a level.
    pub fn at_level(&self, level: Share) -> fixture::Lamp {
        let level = if self.dims { level } else { Share::WHOLE };
        fixture::Lamp { shape: self.shape(), level }
    }

    /// What it gives at a distance, dimmed to a level; nearer than it may stand, as if it stood there.
    pub fn light(&self, level: Share, distance: Metres) -> Lux {
        let distance = distance.metres().max(self.nearest().metres());
        self.at_level(level).light(Metres::from_metres(distance))
    }

    /// How near the subject it may stand: half its largest dimension, at least a hand's breadth.
    pub fn nearest(&self) -> Metres {
        let size = self.width.metres().max(self.height.metres());
        Metres::from_metres((size / 2.0).max(NEAREST))
    }

    /// What it gives along its axis, seen from far.
    pub fn candelas(&self) -> Candelas {
        match self.shape() {
            Shape::Panel(luminance, size) => panel::intensity(luminance, size),
            Shape::Point(candelas) | Shape::Tube(candelas, _) => candelas,
            Shape::Disc(..) | Shape::Focused(_) => Candelas::default(),
        }
    }

    /// Says the same light by candelas, or by a reading at a metre.
    pub fn say_by_candelas(&mut self, by_candelas: bool) {
        self.brightness = if by_candelas {
            Brightness::Candela(self.candelas())
        } else {
            let at = Metres::from_metres(1.0);
            Brightness::Reading { lux: self.at_level(Share::WHOLE).light(at), at }
        };
    }

    fn shape(&self) -> Shape {
        match self.form {
            Form::Point => Shape::Point(match self.brightness {
                Brightness::Reading { lux, at } => point::intensity(lux, at),
                Brightness::Candela(candelas) => candelas,
            }),
            Form::Panel => self.panel((some(self.width), some(self.height))),
            Form::Tube => {
                let length = some(self.width);
                Shape::Tube(
                    match self.brightness {
                        Brightness::Reading { lux, at } => tube::intensity(lux, length, at),
                        Brightness::Candela(candelas) => candelas,
                    },
                    length,
                )
            }
        }
    }

    fn panel(&self, size: (Metres, Metres)) -> Shape {
        let luminance = match self.brightness {
            Brightness::Reading { lux, at } => panel::luminance(lux, size, at),
            Brightness::Candela(candelas) => {
                let of_one =
                    panel::intensity(crate::units::Luminance::from_candelas_per_square_metre(1.0), size);
                crate::units::Luminance::from_candelas_per_square_metre(
                    candelas.candelas() / of_one.candelas(),
                )
            }
        };
        Shape::Panel(luminance, size)
    }
}

/// A length that can be divided by: what was left empty is a centimetre.
fn some(length: Metres) -> Metres {
    Metres::from_metres(length.metres().max(0.01))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lamp(form: Form, brightness: Brightness) -> Lamp {
        let [width, height] = [0.6, 0.3].map(Metres::from_metres);
        let (colour, power) = (LampColour::default(), None);
        Lamp { form, brightness, width, height, beam: None, colour, dims: true, power }
    }

    #[test]
    fn a_reading_is_given_back() {
        // T-H3 and T-H4 by way of the document: one reading, and the same number comes back there.
        for form in [Form::Point, Form::Panel, Form::Tube] {
            let at = Metres::from_metres(1.0);
            let read = lamp(form, Brightness::Reading { lux: Lux::from_lux(5027.0), at });
            assert!((read.at_level(Share::WHOLE).light(at).lux() - 5027.0).abs() < 1e-6, "{form:?}");
        }
    }

    #[test]
    fn candelas_of_a_panel_are_its_light_from_far() {
        // T-H3: 30 000 cd/m² on 0.6 × 0.3 m are 5400 cd: 5027 lx at a metre, 595 at three.
        let panel = lamp(Form::Panel, Brightness::Candela(Candelas::from_candelas(5400.0)));
        for (metres, lux) in [(0.5, 16_766.0), (1.0, 5027.0), (2.0, 1325.0), (3.0, 595.0)] {
            let got = panel.at_level(Share::WHOLE).light(Metres::from_metres(metres)).lux();
            assert!((got - lux).abs() < 0.51, "{metres}: {got}");
        }
    }

    #[test]
    fn the_same_light_by_candelas_and_by_a_reading() {
        // T-H3's panel.
        let read = Brightness::Reading { lux: Lux::from_lux(5027.0), at: Metres::from_metres(1.0) };
        let mut panel = lamp(Form::Panel, read);
        assert!((panel.candelas().candelas() - 5400.0).abs() < 1.0, "{:?}", panel.candelas());
        panel.say_by_candelas(true);
        assert!(matches!(panel.brightness, Brightness::Candela(_)));
        panel.say_by_candelas(false);
        let Brightness::Reading { lux, .. } = panel.brightness else { panic!("{panel:?}") };
        assert!((lux.lux() - 5027.0).abs() < 1e-6);
    }

    #[test]
    fn what_does_not_dim_stays_bright() {
        let fixed =
            Lamp { dims: false, ..lamp(Form::Point, Brightness::Candela(Candelas::from_candelas(100.0))) };
        assert_eq!(fixed.at_level(Share::clamped(0.1)).level, Share::WHOLE);
    }
}
