//! How soft the edge of a shadow is: the sun is half a degree wide.
//!
//! Source: handbook B5, D4 (geometry). Textured glass or a net curtain replaces the sun's width by its own.

use crate::maths;
use crate::units::{Degrees, Height, Metres};

/// Diameter of the sun's disc at its mean distance: 2 × 959.63″ (Auwers 1891, the almanacs' value).
const DISC: Degrees = Degrees::from_degrees(2.0 * 959.63 / 3600.0);

/// Width of the soft edge across the light, at a distance along it from what casts the shadow: `2 D tan(β/2)`, 1/107 of D.
///
/// ```
/// # use slantlight::{light::penumbra::across, units::Metres};
/// assert!((across(Metres::from_metres(3.73)).metres() - 0.035).abs() < 0.0005);
/// ```
pub fn across(distance: Metres) -> Metres {
    Metres::from_metres(2.0 * distance.metres() * maths::tan(DISC.radians() / 2.0))
}

/// The same on the floor, towards and away from the sun, for an edge at a height over it; `None` for a sun not up.
///
/// ```
/// # use slantlight::{light::penumbra::on_floor, units::{Height, Metres}};
/// let blur = on_floor(Metres::from_metres(2.4), Height::clamped(40.02)).unwrap();
/// assert!((blur.metres() - 0.054).abs() < 0.0005);
/// ```
pub fn on_floor(edge: Metres, sun: Height) -> Option<Metres> {
    let rise = sun.sin();
    (rise > 1e-3)
        .then(|| Metres::from_metres(across(Metres::from_metres(edge.metres() / rise)).metres() / rise))
}

/// Farthest that a bar of this width casts a full shadow; beyond it the sun shows on both sides.
pub fn full_shadow(bar: Metres) -> Metres {
    Metres::from_metres(bar.metres() / (2.0 * maths::tan(DISC.radians() / 2.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_blurs_with_the_way_of_the_light() {
        // T-D6: the head of T-D1, 3.73 m along the ray: 35 mm across it, 54 mm along the floor.
        let head = Metres::from_metres(2.4);
        assert!((across(Metres::from_metres(3.73)).metres() - 0.035).abs() < 0.0005);
        let floor = on_floor(head, Height::clamped(40.02)).unwrap();
        assert!((floor.metres() - 0.054).abs() < 0.0005);
    }

    #[test]
    fn bars_lose_their_shadow() {
        // T-B4: a bar of 50 mm at 5.4 m, of 100 mm at 10.8 m; printed to 0.1 m, with the sun's width rounded to 0.0093.
        for (bar, far) in [(0.05, 5.4), (0.1, 10.8)] {
            let rounded = 0.05 + far * 0.00005 / 0.0093;
            assert!((full_shadow(Metres::from_metres(bar)).metres() - far).abs() < rounded);
        }
        assert_eq!(on_floor(Metres::from_metres(2.0), Height::clamped(0.0)), None);
    }
}
