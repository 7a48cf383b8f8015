//! At which distance a light gives what is wished.

use crate::maths;
use crate::solve::{self, Bracket};
use crate::units::{Lux, Metres};

/// Distances that a stand or a hand can take (our choice), metres.
const RANGE: (f64, f64) = (0.05, 200.0);

/// To a tenth of a millimetre in a metre.
const TOLERANCE: f64 = 1e-4;

/// How a light reaches a level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// From so far.
    At(Metres),
    /// Not even from touch: so many of them would do from the distance given.
    TooWeak {
        /// The nearest distance tried.
        nearest: Metres,
        /// Lights of the kind needed there.
        needed: u32,
    },
    /// Even from the far end of the range it is brighter.
    TooStrong,
}

/// The distance at which `light`, which falls with distance, comes down to `wished`; `nearest` is how near it may stand.
pub fn distance_for(light: impl Fn(Metres) -> Lux, wished: Lux, nearest: Metres) -> Reach {
    let near = nearest.metres().clamp(RANGE.0, RANGE.1);
    // Stops over the wish, by the logarithm of the distance: nearly a straight line.
    let over = |log: f64| light(Metres::from_metres(maths::exp(log))).stops_over(wished).stops();
    let (from, to) = (maths::log(near), maths::log(RANGE.1));
    let at_nearest = over(from);
    if at_nearest < 0.0 || at_nearest.is_nan() {
        let nearest = Metres::from_metres(near);
        return Reach::TooWeak { nearest, needed: count(wished.lux() / light(nearest).lux()) };
    }
    if over(to) > 0.0 {
        return Reach::TooStrong;
    }
    let slope = (over(to) - over(from)) / (to - from);
    let bracket = Bracket { from, to, rising: false };
    let log = solve::root(over, bracket, (from - over(from) / slope, slope), TOLERANCE);
    Reach::At(Metres::from_metres(maths::exp(log)))
}

/// The next whole number, at least 1; no light is never enough.
fn count(number: f64) -> u32 {
    if number.is_finite() { number.ceil().max(1.0) as u32 } else { u32::MAX }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(candelas: f64) -> impl Fn(Metres) -> Lux {
        move |distance| Lux::from_lux(candelas / (distance.metres() * distance.metres()))
    }

    #[test]
    fn inverse_square() {
        let nearest = Metres::from_metres(0.5);
        let Reach::At(far) = distance_for(point(400.0), Lux::from_lux(100.0), nearest) else { panic!() };
        assert!((far.metres() - 2.0).abs() < 1e-4);
        let weak = distance_for(point(1.0), Lux::from_lux(10.0), nearest);
        assert_eq!(weak, Reach::TooWeak { nearest, needed: 3 });
        assert_eq!(distance_for(point(1e9), Lux::from_lux(1.0), nearest), Reach::TooStrong);
        let dark = distance_for(point(0.0), Lux::from_lux(1.0), nearest);
        assert_eq!(dark, Reach::TooWeak { nearest, needed: u32::MAX });
    }
}
