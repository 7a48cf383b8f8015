//! Rows of colour: what colour each light of a subject is, what a camera makes of it, and what would correct it.

use super::level::Level;
use super::sides::Levels;
use crate::light::colour::contrast::{Look, rendered, warmer};
use crate::light::colour::correction::{BLUE, Cc, Filter, ORANGE, nearest};
use crate::light::colour::{Chromaticity, correlated};
use crate::plan::kit::{CameraSettings, Side};
use crate::units::{Kelvin, Mired};

/// A light less tinted than this needs no green or magenta (our choice: the smallest strength that is sold takes 0.002).
const DUV_COUNTS: f64 = 0.002;

/// The colour of one side.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The colour itself.
    pub colour: Chromaticity,
    /// Colour temperature, and how far off white's own line; `None` for a saturated light.
    pub white: Option<(Kelvin, f64)>,
    /// How the camera renders it: positive warm.
    pub rendered: Option<Mired>,
    /// What on the lens, or on this light, would make it neutral to the camera; `None` where nothing does better.
    pub filter: Option<&'static Filter>,
    /// Magenta (positive) or green that would take its tint away.
    pub tint: Option<Cc>,
}

impl Row {
    /// Of a level; `None` without light.
    pub fn of(level: &Level, camera: &CameraSettings) -> Option<Self> {
        let colour = level.colour()?;
        let white = correlated(colour).map(|found| (found.temperature, found.duv));
        let shift = white.map(|(kelvin, _)| Mired::shift(kelvin, camera.balance));
        let filters =
            |shift: Mired| if shift.mired() > 0.0 { nearest(&ORANGE, shift) } else { nearest(&BLUE, shift) };
        Some(Self {
            colour,
            white,
            rendered: white.map(|(kelvin, _)| rendered(kelvin, camera.balance)),
            filter: shift.and_then(filters),
            tint: white.filter(|(_, duv)| duv.abs() >= DUV_COUNTS).map(|(_, duv)| Cc::against(duv)),
        })
    }
}

/// Key against background.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contrast {
    /// How much warmer the key is; `None` where one of the two has no colour temperature.
    pub warmer: Option<(Mired, Look)>,
    /// Difference in u′ v′; 0.001 to 0.002 is just to be seen.
    pub difference: f64,
}

/// The contrast of the bright side to what stands behind it; `None` without light on one of them.
pub fn contrast(levels: &Levels) -> Option<Contrast> {
    let [key, behind] = [levels.bright(), levels.level(Side::Background)].map(Level::colour);
    let (key, behind) = (key?, behind?);
    let whites = correlated(key).zip(correlated(behind));
    let warmer = whites.map(|(key, behind)| warmer(key.temperature, behind.temperature));
    Some(Contrast {
        warmer: warmer.map(|mired| (mired, Look::of(mired))),
        difference: key.difference(behind),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::kit::LampColour;
    use crate::plan::levels::{Origin, Part};
    use crate::units::Lux;

    fn lit(colour: LampColour) -> Level {
        let part = Part {
            origin: Origin::Lamp,
            name: String::new(),
            lux: Lux::from_lux(100.0),
            colour: colour.chromaticity(),
            hard: false,
        };
        Level { parts: vec![part] }
    }

    #[test]
    fn a_lamp_on_daylight_stock_is_warm_and_full_blue_mends_it() {
        // H6: 5600 to 3200 is +133.9 mired; full blue of −137 comes nearest.
        let row = Row::of(&lit(LampColour::white(3200.0)), &CameraSettings::default()).unwrap();
        assert!((row.rendered.unwrap().mired() - 133.9).abs() < 1.0, "{row:?}");
        assert_eq!(row.filter.unwrap().name, "full blue");
        let day = Row::of(&lit(LampColour::white(5600.0)), &CameraSettings::default()).unwrap();
        assert!(day.filter.is_none() && day.rendered.unwrap().mired().abs() < 1.0);
    }

    #[test]
    fn green_is_taken_away_by_magenta_and_red_has_no_temperature() {
        let green = LampColour::White { cct: Kelvin::clamped(4000.0), duv: Some(0.006) };
        let row = Row::of(&lit(green), &CameraSettings::default()).unwrap();
        assert!((row.tint.unwrap().units() - 11.25).abs() < 0.3, "{row:?}");
        let red = Row::of(&lit(LampColour::Xy { x: 0.67, y: 0.32 }), &CameraSettings::default()).unwrap();
        assert_eq!((red.white, red.rendered, red.filter), (None, None, None));
        assert_eq!(Row::of(&Level::default(), &CameraSettings::default()), None);
    }
}
