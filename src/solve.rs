//! The one root finder and the one search for changes of sign.
//!
//! A *sign* here is "not negative" or "negative", the same question that a half-space asks of a direction.

/// More rounds than any bracket needs: two of them at least halve it.
const ROUNDS: usize = 120;

/// Where a function changes its sign between two arguments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bracket {
    /// Lower end.
    pub(crate) from: f64,
    /// Upper end.
    pub(crate) to: f64,
    /// Whether the function is negative at the lower end and not at the upper one.
    pub(crate) rising: bool,
}

/// The root in a bracket, to `tolerance` in the argument, from a first guess and the rough slope there.
///
/// Newton's first step, then secants (regula falsi would stall where the function is curved), and a halving
/// wherever a step leaves the bracket or is more than half the one before: Dekker's safeguard (1969).
pub(crate) fn root(
    mut function: impl FnMut(f64) -> f64,
    mut bracket: Bracket,
    (guess, mut slope): (f64, f64),
    tolerance: f64,
) -> f64 {
    let mut here = guess.clamp(bracket.from, bracket.to);
    let mut value = function(here);
    let mut last_step = 2.0 * (bracket.to - bracket.from);
    for _ in 0..ROUNDS {
        if (value >= 0.0) == bracket.rising {
            bracket.to = here;
        } else {
            bracket.from = here;
        }
        let step = safe_step(bracket, here, value / slope, last_step);
        if step.abs() <= tolerance {
            return here + step;
        }
        let ahead = function(here + step);
        slope = (ahead - value) / step;
        (here, value, last_step) = (here + step, ahead, step);
    }
    here
}

/// The step to `-down`, or to the middle of the bracket.
fn safe_step(bracket: Bracket, here: f64, down: f64, last_step: f64) -> f64 {
    let next = here - down;
    // Written so that a step that is not a number goes to the middle as well.
    if next >= bracket.from && next <= bracket.to && down.abs() <= 0.5 * last_step.abs() {
        -down
    } else {
        0.5 * (bracket.from + bracket.to) - here
    }
}

/// Every change of sign between `from` and `to`, in order, for a function whose second derivative stays under `bend`.
///
/// Nothing is missed that stays apart by more than `tolerance`: a stretch is left only when the bend allows no root
/// in it, or exactly one.
pub(crate) fn sign_changes(
    mut function: impl FnMut(f64) -> f64,
    (from, to): (f64, f64),
    bend: f64,
    tolerance: f64,
) -> Vec<f64> {
    let mut found = Vec::new();
    let end = (to, function(to));
    let mut ahead = vec![end];
    let mut left = (from, function(from));
    while let Some(right) = ahead.pop() {
        match judge(left, right, bend, tolerance) {
            Stretch::None => left = right,
            Stretch::One => {
                let bracket = Bracket { from: left.0, to: right.0, rising: right.1 >= 0.0 };
                let slope = (right.1 - left.1) / (right.0 - left.0);
                found.push(root(&mut function, bracket, (left.0 - left.1 / slope, slope), tolerance));
                left = right;
            }
            Stretch::Unknown => {
                let middle = 0.5 * (left.0 + right.0);
                ahead.push(right);
                ahead.push((middle, function(middle)));
            }
        }
    }
    found
}

/// How many roots a stretch has.
enum Stretch {
    None,
    One,
    Unknown,
}

fn judge(left: (f64, f64), right: (f64, f64), bend: f64, tolerance: f64) -> Stretch {
    let width = right.0 - left.0;
    let changes = (left.1 >= 0.0) != (right.1 >= 0.0);
    // The function leaves its chord by at most this.
    let sag = bend * width * width * 0.125;
    // The slope is the chord's somewhere, and cannot come down to nothing from there.
    let steep = (right.1 - left.1).abs() > bend * width * width;
    match changes {
        true if steep || width <= tolerance => Stretch::One,
        false if left.1.abs().min(right.1.abs()) > sag || steep || width <= tolerance => Stretch::None,
        _ => Stretch::Unknown,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::maths;
    use proptest::prelude::*;

    #[test]
    fn a_useless_slope_still_leads_to_the_root() {
        for slope in [0.0, f64::NAN, -1.0, 1e-9, 1e9] {
            let bracket = Bracket { from: -3.0, to: 4.0, rising: true };
            let found = root(|x| x * x * x - 2.0, bracket, (0.0, slope), 1e-13);
            assert!((found - maths::pow(2.0, 1.0 / 3.0)).abs() < 1e-12, "{slope}: {found}");
        }
    }

    #[test]
    fn two_roots_a_hair_apart_are_both_found() {
        let found = sign_changes(|x| (x - 0.3) * (x - 0.300_001), (0.0, 1.0), 2.0, 1e-9);
        assert_eq!(found.len(), 2);
        assert!((found[0] - 0.3).abs() < 1e-9 && (found[1] - 0.300_001).abs() < 1e-9);
        assert!(sign_changes(|x| (x - 0.3) * (x - 0.3) + 1e-12, (0.0, 1.0), 2.0, 1e-9).is_empty());
    }

    proptest! {
        #[test]
        fn all_crossings_of_a_wave_are_found(level in -1.2..1.2f64, phase in 0.0..6.0f64, turns in 1.0..30.0f64) {
            let wave = |x: f64| maths::sin(turns * x + phase) - level;
            let found = sign_changes(wave, (0.0, 3.0), turns * turns, 1e-10);
            let steps = 200_000;
            let signs = (0..=steps).map(|step| wave(3.0 * f64::from(step) / f64::from(steps)) >= 0.0);
            let scanned = signs.collect::<Vec<_>>().windows(2).filter(|pair| pair[0] != pair[1]).count();
            prop_assert!(found.windows(2).all(|pair| pair[0] < pair[1]));
            // A scan may miss a pair of roots within one step, the search must not.
            prop_assert!(found.len() == scanned || found.len() == scanned + 2 && level.abs() > 0.999_999);
            for at in found {
                prop_assert!(wave(at).abs() < 1e-8);
            }
        }
    }
}
