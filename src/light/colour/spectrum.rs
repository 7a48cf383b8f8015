//! From a spectrum to its three sums.

use super::observer_table::{FROM, OBSERVER, STEP};

/// The observer's wavelengths, micrometres.
pub(super) fn wavelengths() -> impl Iterator<Item = f64> {
    (0..OBSERVER.len()).map(|index| (FROM + STEP * index as f64) / 1000.0)
}

/// Sums of a spectrum, given by its power at each of the wavelengths, over the standard observer.
pub(super) fn sums(powers: impl Iterator<Item = f64>) -> [f64; 3] {
    let mut sums = [0.0; 3];
    for (light, observer) in powers.zip(&OBSERVER) {
        for (sum, sees) in sums.iter_mut().zip(observer) {
            *sum += light * sees;
        }
    }
    sums
}
