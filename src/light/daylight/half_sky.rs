//! What one half of the sky gives: a wall, or a window, sees no more.
//!
//! IES, *Recommended Practice for the Calculation of Daylight Availability*, J. Illum. Eng. Soc. 13 (1984) 381–392. The
//! ground's light is not in it.

use super::ies::Cover;
use crate::maths;
use crate::units::{Degrees, Height, Lux};

/// The half sky on a vertical plane whose bearing is `apart` from the sun's (0° faces it).
///
/// ```
/// # use slantlight::{light::daylight::{half_sky, ies::Cover}, units::{Degrees, Height}};
/// let sun = Height::clamped(40.0);
/// let [towards, away] = [0.0, 180.0].map(|apart| half_sky::vertical(Cover::Clear, sun, Degrees::from_degrees(apart)));
/// assert!(towards.lux() > 3.0 * away.lux());
/// ```
pub fn vertical(cover: Cover, sun: Height, apart: Degrees) -> Lux {
    let Some((sin, cos)) = above_horizon(sun) else { return Lux::default() };
    let (height, towards) = (sun.radians(), maths::cos(apart.radians()));
    Lux::from_kilolux(match cover {
        Cover::Clear => {
            let level = 4.0 * maths::pow(height, 1.3) + 12.0 * maths::pow(sin, 0.3) * maths::pow(cos, 1.3);
            level * (2.0 + towards) / (3.0 - towards)
        }
        Cover::PartlyCloudy => {
            (12.0 * height + 30.2 * maths::pow(sin, 0.8) * cos) * (1.0 + towards) / (3.0 - towards)
        }
        Cover::Overcast => 8.5 * sin,
    })
}

/// The same half sky on level ground.
pub fn level(cover: Cover, sun: Height, apart: Degrees) -> Lux {
    let Some((sin, cos)) = above_horizon(sun) else { return Lux::default() };
    let towards = maths::cos(apart.radians());
    Lux::from_kilolux(match cover {
        Cover::Clear => 8.2 * sin.sqrt() + 6.9 * sin * cos * towards,
        Cover::PartlyCloudy => 22.7 * sin + 14.1 * maths::pow(sin, 1.3) * cos * towards,
        Cover::Overcast => 10.7 * sin,
    })
}

/// Sine and cosine of the sun's height; `None` below the horizon, where the practice says nothing.
fn above_horizon(sun: Height) -> Option<(f64, f64)> {
    (sun.degrees() > 0.0).then(|| {
        let (sin, cos) = maths::sin_cos(sun.radians());
        // The cosine of 90° may come out a hair below zero, which has no power.
        (sin, cos.max(0.0))
    })
}

#[cfg(test)]
mod tests {
    use super::super::ies;
    use super::*;

    #[test]
    fn two_halves_make_the_sky() {
        // The whole sky has a small constant, 0.8 and 0.3 kilolux, that the halves lack: no more lies between them.
        for (cover, constant) in [(Cover::Clear, 0.8), (Cover::PartlyCloudy, 0.3), (Cover::Overcast, 0.3)] {
            for height in [5.0, 10.0, 20.0, 40.0, 60.0, 90.0] {
                let sun = Height::clamped(height);
                let halves = [40.0, 220.0].map(|apart| level(cover, sun, Degrees::from_degrees(apart)));
                let off = (halves[0] + halves[1] - ies::sky(cover, sun)).kilolux();
                assert!(off.abs() < constant, "{cover:?} {height}: {off}");
            }
        }
    }

    #[test]
    fn the_zenith_and_the_night_are_ordinary() {
        let up = vertical(Cover::Clear, Height::clamped(90.0), Degrees::from_degrees(30.0));
        assert!(up.lux() > 0.0);
        assert_eq!(vertical(Cover::Clear, Height::clamped(-5.0), Degrees::default()), Lux::default());
    }
}
