//! A swatch: how a light looks on a screen to a camera balanced to another.
//!
//! The kept library `palette` adapts (Bradford) and encodes (sRGB, IEC 61966-2-1). The brightest channel is taken to its full;
//! what a screen cannot show is cut. A swatch is an aid: the numbers beside it are what counts.

use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, FromColorUnclamped};
use palette::lms::matrix::Bradford;
use palette::white_point::D65;
use palette::{LinSrgb, Srgb, Xyz};

use super::Chromaticity;

/// Red, green and blue of sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Swatch(pub [u8; 3]);

impl Swatch {
    /// Of a light, seen by a camera that is balanced to `white`.
    ///
    /// ```
    /// # use slantlight::{light::colour::{daylight_locus::white, swatch::Swatch}, units::Kelvin};
    /// let [day, lamp] = [5600.0, 3200.0].map(|kelvin| white(Kelvin::clamped(kelvin)));
    /// assert_eq!(Swatch::of(day, day).hex(), "#ffffff");
    /// let Swatch([red, green, blue]) = Swatch::of(lamp, day);
    /// assert!(red == 255 && green < red && blue < green);
    /// ```
    pub fn of(light: Chromaticity, white: Chromaticity) -> Self {
        let matrix = adaptation_matrix::<f64, D65, D65, Bradford>(Some(tristimulus(white)), None);
        let seen: Xyz<D65, f64> = matrix.convert(tristimulus(light));
        let linear = LinSrgb::from_color_unclamped(seen);
        let most = linear.red.max(linear.green).max(linear.blue);
        let [red, green, blue] =
            [linear.red, linear.green, linear.blue].map(|one: f64| (one / most).clamp(0.0, 1.0));
        let coded: Srgb<f64> = Srgb::from_linear(LinSrgb::new(red, green, blue));
        Self([coded.red, coded.green, coded.blue].map(|one| (one * 255.0).round() as u8))
    }

    /// As style sheets write it: a hash and six hexadecimal digits.
    pub fn hex(self) -> String {
        let Self([red, green, blue]) = self;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// X, Y and Z of a light of luminance one.
fn tristimulus(light: Chromaticity) -> Xyz<D65, f64> {
    Xyz::new(light.x() / light.y(), 1.0, (1.0 - light.x() - light.y()) / light.y())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::colour::daylight_locus::white;
    use crate::units::Kelvin;

    #[test]
    fn a_red_lamp_is_red_and_a_blue_sky_is_blue() {
        let day = white(Kelvin::clamped(5600.0));
        let Swatch([red, green, blue]) = Swatch::of(Chromaticity::from_xy(0.67, 0.32).unwrap(), day);
        assert!(red == 255 && green < 90 && blue < 90);
        let Swatch([red, _, blue]) = Swatch::of(white(Kelvin::clamped(12_000.0)), day);
        assert!(blue == 255 && red < 220);
    }
}
