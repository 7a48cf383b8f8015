//! The colours of an hour: its sun, its sky, its ground.

use super::hour::Hour;
use crate::light::colour::source::Source;
use crate::light::colour::sun::{Haze, beam};
use crate::light::colour::{Chromaticity, daylight_locus, mix};
use crate::light::daylight::Sky;
use crate::units::{Height, Kelvin, Mired};

/// A clear sky by day: the middle of 9000 to 10 000 K (common practice, handbook H7).
const CLEAR_SKY: Kelvin = Kelvin::clamped(9500.0);

/// A hazy one, and one with broken cloud: between the clear and the overcast one (our choice).
const HAZY_SKY: Kelvin = Kelvin::clamped(8000.0);
const BROKEN_SKY: Kelvin = Kelvin::clamped(7500.0);

/// From a sun at the first height down to the second, the sky turns from its day's colour to the blue hour's (our choice).
const TURNS_BLUE: (f64, f64) = (0.0, -4.0);

/// Lowest sun whose beam has a colour to speak of.
const LOWEST: Height = Height::clamped(0.0);

/// Colours of the light.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tints {
    /// The beam.
    pub sun: Chromaticity,
    /// The sky.
    pub sky: Chromaticity,
    /// What lies on the ground, and so what a grey ground gives back.
    pub ground: Chromaticity,
    /// The moon.
    pub moon: Chromaticity,
}

impl Tints {
    /// Of an hour.
    pub fn of(hour: &Hour) -> Self {
        let haze = match hour.sky {
            Sky::Clear => Haze::CLEAR,
            Sky::Hazy => Haze::HAZY,
            Sky::Broken | Sky::Overcast => Haze::MIDDLING,
        };
        let height = hour.height();
        let sun = beam(if height > LOWEST { height } else { LOWEST }, haze);
        let sky = daylight_locus::white(sky(hour.sky, height));
        let level = [(hour.light.beam * height.sin().max(0.0), sun), (hour.light.sky, sky)];
        let ground = mix::mix(&level).map_or(sky, |(_, colour)| colour);
        Self { sun, sky, ground, moon: daylight_locus::white(Source::Moon.usual()) }
    }
}

/// Colour temperature of a sky; the overcast one stays grey down to the night.
fn sky(sky: Sky, sun: Height) -> Kelvin {
    let by_day = match sky {
        Sky::Clear => CLEAR_SKY,
        Sky::Hazy => HAZY_SKY,
        Sky::Broken => BROKEN_SKY,
        Sky::Overcast => return Source::Overcast.usual(),
    };
    let share = ((sun.degrees() - TURNS_BLUE.0) / (TURNS_BLUE.1 - TURNS_BLUE.0)).clamp(0.0, 1.0);
    let (day, blue) = (by_day.mired().mired(), Source::BlueHour.usual().mired().mired());
    Mired::from_mired(day + share * (blue - day)).kelvin()
}
