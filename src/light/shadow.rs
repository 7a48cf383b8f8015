//! Shadows on level ground.

use crate::maths;
use crate::units::Height;

/// Lowest sun whose shadow is worth a number; below it a hedge at the horizon decides. Our own choice.
const LOWEST: Height = Height::clamped(1.0);

/// Length of the shadow of an upright pole on level ground, in pole lengths: `cot h`. `None` for a sun under 1°.
///
/// ```
/// # use slantlight::{light::shadow::shadow_length, units::Height};
/// assert!((shadow_length(Height::clamped(45.0)).unwrap() - 1.0).abs() < 1e-12);
/// assert_eq!(shadow_length(Height::clamped(-3.0)), None);
/// ```
pub fn shadow_length(sun: Height) -> Option<f64> {
    (sun >= LOWEST).then(|| 1.0 / maths::tan(sun.radians()))
}
