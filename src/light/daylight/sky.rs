//! The day as the app sees it: four skies, from noon to the end of twilight without a step.
//!
//! From 10° up, the models of [`super::ies`] (for haze, [`super::clear_sky`]); from 3° down, Brown's curve; between
//! them a blend, even in stops. All of it is worth a third of a stop for clear skies, one to two stops under cloud.

use super::AirMass;
use super::clear_sky::{Turbidity, ineichen_perez};
use super::efficacy::{Water, perez};
use super::ies::{self, Cover};
use super::twilight::brown;
use crate::maths;
use crate::units::{Height, Lux, Metres};

/// Between these heights the models are blended, degrees (our choice; below 3° the practice is too bright by a stop).
const BLEND: (f64, f64) = (3.0, 10.0);

/// Apparent height of the centre at which the last of the disc is gone: the sun's mean radius (fact).
const DISC_GONE: Height = Height::clamped(-0.266);

/// Haze that the word stands for: a town in damp heat (our choice).
const HAZE: Turbidity = Turbidity::from_linke(5.0);

/// What the sky is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Sky {
    /// Blue, shadows sharp.
    #[default]
    Clear,
    /// No cloud, but milky, shadows soft at the edge.
    Hazy,
    /// Sun comes and goes.
    Broken,
    /// No sun.
    Overcast,
}

impl Sky {
    /// All of them, clearest first.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Hazy, Self::Broken, Self::Overcast];

    /// Its name.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clear => "clear",
            Self::Hazy => "hazy",
            Self::Broken => "broken cloud",
            Self::Overcast => "overcast",
        }
    }

    /// The practice's sky that is nearest to it.
    pub const fn cover(self) -> Cover {
        match self {
            Self::Clear | Self::Hazy => Cover::Clear,
            Self::Broken => Cover::PartlyCloudy,
            Self::Overcast => Cover::Overcast,
        }
    }

    /// By what a clear twilight is to be divided: Circular 171 has 2 for thin cloud before the sun, 3 for average
    /// cloud, 10 for dark stratus.
    const fn dims_twilight(self) -> f64 {
        match self {
            Self::Clear | Self::Hazy => 1.0,
            Self::Broken => 2.0,
            Self::Overcast => 3.0,
        }
    }
}

/// Sun and sky.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Daylight {
    /// The beam on a surface that faces the sun.
    pub beam: Lux,
    /// The sky on level ground.
    pub sky: Lux,
}

impl Daylight {
    /// Both on level ground.
    pub fn level(self, sun: Height) -> Lux {
        self.beam * sun.sin().max(0.0) + self.sky
    }

    /// Both, brighter or darker by one factor.
    fn times(self, factor: f64) -> Self {
        Self { beam: self.beam * factor, sky: self.sky * factor }
    }
}

/// Sun and sky by apparent height of the sun; `outside` is [`ies::outside`] of the day.
///
/// ```
/// # use slantlight::{light::daylight::{Sky, daylight, ies}, units::Height};
/// let noon = daylight(Sky::Clear, Height::clamped(60.0), ies::SOLAR_CONSTANT);
/// assert!((noon.level(Height::clamped(60.0)).kilolux() - 101.9).abs() < 0.1);
/// ```
pub fn daylight(sky: Sky, sun: Height, outside: Lux) -> Daylight {
    let dusk = brown(sun) * (1.0 / sky.dims_twilight());
    let day = by_day(sky, sun, outside);
    let level = day.level(sun);
    let share = ((sun.degrees() - BLEND.0) / (BLEND.1 - BLEND.0)).clamp(0.0, 1.0);
    if share == 1.0 {
        return day;
    }
    if level.lux() <= 0.0 {
        return Daylight { beam: Lux::default(), sky: dusk };
    }
    // Even in stops: (day/dusk)^share of the way from dusk to day.
    let blended = dusk * maths::pow(level.lux() / dusk.lux(), share);
    day.times(blended.lux() / level.lux())
}

fn by_day(sky: Sky, sun: Height, outside: Lux) -> Daylight {
    if sun <= DISC_GONE {
        return Daylight::default();
    }
    if sky == Sky::Hazy {
        let nearness = outside.lux() / ies::SOLAR_CONSTANT.lux();
        return perez(ineichen_perez(sun, HAZE, Metres::default()), sun, Water::USUAL).times(nearness);
    }
    let cover = sky.cover();
    Daylight { beam: ies::beam(cover, outside, AirMass::kasten_young(sun)), sky: ies::sky(cover, sun) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Stops;
    use proptest::prelude::*;

    fn level(sky: Sky, height: f64) -> Lux {
        let sun = Height::clamped(height);
        daylight(sky, sun, ies::SOLAR_CONSTANT).level(sun)
    }

    #[test]
    fn the_day_has_no_step() {
        for sky in Sky::ALL {
            for tenth in -180..900 {
                let height = f64::from(tenth) * 0.1;
                let step: Stops = level(sky, height + 0.1).stops_over(level(sky, height));
                // Twilight is steepest at 2 stops a degree.
                assert!(step.stops() > -0.02 && step.stops() < 0.25, "{sky:?} {height}: {}", step.stops());
            }
        }
    }

    proptest! {
        #[test]
        fn more_cloud_less_light(height in -18.0..90.0f64) {
            let [clear, hazy, broken, overcast] = Sky::ALL.map(|sky| level(sky, height).lux());
            prop_assert!(clear >= broken && broken > overcast && overcast > 0.0);
            prop_assert!(hazy <= clear * 1.15 && hazy >= overcast);
        }
    }
}
