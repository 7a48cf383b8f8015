//! The same for kit, lights that are there, readings, rigs and cameras.

use super::sound::{Sound, Unsound, fault, first, number};
use crate::plan::kit::{Brightness, CameraSettings, Gear, Lamp, LampColour, Reading, Rig, There, Thing};
use crate::plan::levels::wished::LevelWish;
use crate::units::{Metres, Share};

/// Lux that no lamp and no sun exceeds, and a candela number with the same purpose.
const BRIGHTEST: f64 = 1e7;

/// Largest side of a board, a frame, a panel.
const LARGEST_M: f64 = 100.0;

impl Sound for Gear {
    fn unsound(&self) -> Unsound {
        let is = |sizes: [Metres; 2], least: f64| {
            let fits = |size: &Metres| (least..=LARGEST_M).contains(&size.metres());
            (!sizes.iter().all(fits)).then(|| fault(&["is"], "it has a size that cannot be"))
        };
        number(&["count"], f64::from(self.count), (0.0, 10_000.0)).or_else(|| match &self.is {
            Thing::Lamp(lamp) => lamp_fault(lamp).or_else(|| is([lamp.width, lamp.height], 0.0)),
            Thing::Board(board) => is([board.width, board.height], 0.01),
            Thing::Frame(frame) => is([frame.width, frame.height], 0.01)
                .or_else(|| number(&["is", "frame", "loss_stops"], frame.loss.stops(), (0.0, 20.0))),
        })
    }
}

fn lamp_fault(lamp: &Lamp) -> Unsound {
    let bright = match lamp.brightness {
        Brightness::Reading { lux, at } => {
            (0.0..=BRIGHTEST).contains(&lux.lux()) && (0.01..=1000.0).contains(&at.metres())
        }
        Brightness::Candela(candelas) => (0.0..=BRIGHTEST).contains(&candelas.candelas()),
    };
    let beam = lamp.beam.map_or(10.0, |beam| beam.degrees());
    (!bright)
        .then(|| fault(&["is", "lamp", "brightness"], "no lamp is so bright"))
        .or_else(|| number(&["is", "lamp", "beam_deg"], beam, (0.1, 360.0)))
        .or_else(|| {
            number(&["is", "lamp", "power_w"], lamp.power.unwrap_or_default().watts(), (0.0, BRIGHTEST))
        })
        .or_else(|| colour(&["is", "lamp", "colour"], lamp.colour))
}

fn colour(path: &[&str], colour: LampColour) -> Unsound {
    let fits = match colour {
        LampColour::White { duv, .. } => duv.is_none_or(|duv| duv.abs() <= 0.05),
        LampColour::Xy { x, y } => crate::light::colour::Chromaticity::from_xy(x, y).is_ok(),
    };
    (!fits).then(|| fault(path, "there is no such colour"))
}

impl Sound for There {
    fn unsound(&self) -> Unsound {
        number(&["lux"], self.lux.lux(), (0.0, BRIGHTEST)).or_else(|| colour(&["colour"], self.colour))
    }
}

impl Sound for Reading {
    fn unsound(&self) -> Unsound {
        number(&["says"], self.says.light().lux(), (0.0, BRIGHTEST))
    }
}

/// What is set on a camera.
pub(super) fn camera(settings: &CameraSettings) -> Unsound {
    number(&["settings", "shutter_deg"], settings.shutter.degrees(), (0.1, 360.0))
        .or_else(|| number(&["settings", "nd"], settings.nd.density(), (0.0, 10.0)))
        .or_else(|| number(&["settings", "load_m"], settings.load.metres(), (0.0, 10_000.0)))
}

/// Levels that a wish asks for.
pub(super) fn levels(wish: &LevelWish) -> Unsound {
    let fits = |[from, to]: [f64; 2]| from >= 1.0 && from <= to && to <= 10_000.0;
    let ratio = wish.ratio.is_some_and(|ends| !fits(ends));
    let balance = wish.balance.is_some_and(|balance| {
        !(0.0..=BRIGHTEST).contains(&balance.lamp.lux()) || !(0.0..=30.0).contains(&balance.within.stops())
    });
    let soft = wish.soft.is_some_and(|lux| !(0.0..=BRIGHTEST).contains(&lux.lux()));
    let wrong =
        [("ratio", ratio), ("balance", balance), ("soft_lux", soft)].into_iter().find(|(_, wrong)| *wrong)?;
    Some(fault(&["wish", "levels", wrong.0], "no light is like this"))
}

/// What stands at a set-up.
pub(super) fn rig(rig: &Rig) -> Unsound {
    let far = |metres: Metres| !(0.0..=1000.0).contains(&metres.metres());
    first(&["rig", "placed"], &rig.placed, |placed| far(placed.distance) || placed.level == Share::NONE)
        .or_else(|| rig.ratio.and_then(|ratio| number(&["rig", "ratio"], ratio, (1.01, 10_000.0))))
}
