//! Where a tone lands: stops over or under the middle of the picture.

use crate::units::{Lux, Share, Stops};

/// What a meter's middle gives back of its light (convention: the 18 % grey card).
pub const MIDDLE_GREY: Share = Share::clamped(0.18);

/// Stops of a surface over middle grey in the light that is exposed for: `log₂(ρ E/(0.18 E₀))`.
///
/// ```
/// # use slantlight::{light::exposure::placement::placed, units::{Lux, Share}};
/// let key = Lux::from_lux(1000.0);
/// let white = placed(key, Share::clamped(0.9), key);
/// assert!((white.stops() - 2.32).abs() < 0.005);
/// ```
pub fn placed(light: Lux, reflectance: Share, exposed_for: Lux) -> Stops {
    light.stops_over(exposed_for) + (Stops::left_by(reflectance) - Stops::left_by(MIDDLE_GREY))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grey_in_the_key_is_the_middle() {
        let key = Lux::from_lux(640.0);
        assert!(placed(key, MIDDLE_GREY, key).stops().abs() < 1e-12);
        let shade = placed(Lux::from_lux(80.0), MIDDLE_GREY, key);
        assert!((shade.stops() + 3.0).abs() < 1e-12);
    }
}
