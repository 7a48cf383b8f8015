//! From a spectrum to its three sums.

use super::observer_table::{FROM, OBSERVER, STEP};

/// Sums of a spectrum, given by wavelength in micrometres, over the standard observer.
pub(super) fn sums(power: impl Fn(f64) -> f64) -> [f64; 3] {
    let mut sums = [0.0; 3];
    for (index, observer) in OBSERVER.iter().enumerate() {
        let light = power((FROM + STEP * index as f64) / 1000.0);
        for (sum, sees) in sums.iter_mut().zip(observer) {
            *sum += light * sees;
        }
    }
    sums
}
