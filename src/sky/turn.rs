//! One turn of the Earth, minute by minute: the table that spares the day track its trigonometry.

use std::sync::LazyLock;

use crate::maths;

/// Minutes in a day.
pub(super) const MINUTES: usize = 1440;

/// Radians in a turn.
pub(super) const TURN: f64 = 2.0 * core::f64::consts::PI;

/// Cosine and sine of 2π·i/1440 for `i` in `0..=1440`.
pub(super) static TABLE: LazyLock<Box<[(f64, f64)]>> = LazyLock::new(|| {
    (0..=MINUTES)
        .map(|minute| {
            let (sin, cos) = maths::sin_cos(TURN * minute as f64 / MINUTES as f64);
            (cos, sin)
        })
        .collect()
});

/// Cosine and sine of `part` of a turn, 0 to 1: the nearest entry, turned on by a short series. Good to 2e-15.
pub(super) fn cos_sin(part: f64) -> (f64, f64) {
    let minutes = part * MINUTES as f64;
    let nearest = minutes + 0.5;
    let index = (nearest as usize).min(MINUTES);
    let (cos, sin) = TABLE[index];
    // At most 0.0022 rad: the terms left out are under 1e-15.
    let on = (minutes - index as f64) * (TURN / MINUTES as f64);
    let square = on * on;
    let (small_sin, small_cos) =
        (on * (1.0 - square * (1.0 / 6.0)), 1.0 - square * (0.5 - square * (1.0 / 24.0)));
    (cos * small_cos - sin * small_sin, sin * small_cos + cos * small_sin)
}

/// Whole number at or below; the library's own would be a call where the processor has no instruction for it.
pub(super) fn floor(number: f64) -> i64 {
    let cut = number as i64;
    if cut as f64 > number { cut.saturating_sub(1) } else { cut }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_elementary_functions() {
        for step in 0..=100_000 {
            let part = f64::from(step) / 100_000.0;
            let (cos, sin) = cos_sin(part);
            let (true_sin, true_cos) = maths::sin_cos(TURN * part);
            assert!((cos - true_cos).abs() < 2e-15 && (sin - true_sin).abs() < 2e-15, "{part}");
        }
    }
}
