//! Warm against cool: how far two lights of a scene are apart in colour.
//!
//! In mireds the distance does not depend on the camera's white balance. The words are common practice, no source.

use crate::units::{Kelvin, Mired};

/// How a contrast of colour looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// Nobody notices.
    Unnoticed,
    /// A gentle difference.
    Gentle,
    /// A clear split of warm and cool.
    Split,
    /// Two worlds.
    TwoWorlds,
}

impl Look {
    /// The look of a contrast, whichever light is warmer; bounds at 25, 60 and 135 mireds lie between the trade's words
    /// (under 20, 30 to 60, 60 to 120, over 150).
    pub fn of(contrast: Mired) -> Self {
        match contrast.mired().abs() {
            apart if apart < 25.0 => Self::Unnoticed,
            apart if apart < 60.0 => Self::Gentle,
            apart if apart < 135.0 => Self::Split,
            _ => Self::TwoWorlds,
        }
    }

    /// In words.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unnoticed => "hardly to be seen",
            Self::Gentle => "gentle",
            Self::Split => "clear warm and cool",
            Self::TwoWorlds => "two worlds",
        }
    }
}

/// How much warmer `subject` is than `background`.
///
/// ```
/// # use slantlight::{light::colour::contrast::{Look, warmer}, units::Kelvin};
/// let contrast = warmer(Kelvin::clamped(3200.0), Kelvin::clamped(12_000.0));
/// assert!((contrast.mired() - 229.0).abs() < 0.5 && Look::of(contrast) == Look::TwoWorlds);
/// ```
pub fn warmer(subject: Kelvin, background: Kelvin) -> Mired {
    Mired::shift(background, subject)
}

/// How a light comes out with a camera balanced to `white`: positive warm, negative cool.
pub fn rendered(light: Kelvin, white: Kelvin) -> Mired {
    warmer(light, white)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn key_and_ambient_of_the_handbook() {
        // T-H11: key 4300, ambient 7500: 99 apart; balanced to 5600, +54 and −45.
        let [key, ambient, white] = [4300.0, 7500.0, 5600.0].map(Kelvin::clamped);
        let contrast = warmer(key, ambient);
        assert!((contrast.mired() - 99.0).abs() < 0.5 && Look::of(contrast) == Look::Split);
        assert!((rendered(key, white).mired() - 54.0).abs() < 0.5);
        assert!((rendered(ambient, white).mired() + 45.0).abs() < 0.5);
        let apart = rendered(key, white) - rendered(ambient, white);
        assert!((apart - contrast).mired().abs() < 1e-9);
    }
}
