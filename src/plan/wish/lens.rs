//! Where the lens may look: one bearing, a range, or wherever the background is good.

use serde::{Deserialize, Serialize};

use super::region::BearingArc;
use crate::place::background::Background;
use crate::units::{Bearing, Degrees};

/// How free a set-up is in turning its camera about the subject.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum LensChoice {
    /// The set-up's own bearing and no other.
    #[default]
    Fixed,
    /// Any bearing from one clockwise to another; the same twice means all the way round.
    Range {
        /// Where it begins.
        from_deg: Bearing,
        /// Where it ends.
        to_deg: Bearing,
    },
    /// Any bearing with a good background, or none that is bad where nothing is marked good.
    AnyGoodBackground,
}

/// What the camera sees behind the subject at a bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Behind {
    /// A background marked good (its place in the list).
    Good(usize),
    /// A background marked bad; it wins where both are marked.
    Bad(usize),
    /// Nothing is marked there.
    Unmarked,
}

/// What is behind the subject when the lens looks to `lens`.
pub fn behind(backgrounds: &[Background], lens: Bearing) -> Behind {
    let marked = |good: bool| backgrounds.iter().position(|one| one.good == good && one.contains(lens));
    match (marked(false), marked(true)) {
        (Some(bad), _) => Behind::Bad(bad),
        (None, Some(good)) => Behind::Good(good),
        (None, None) => Behind::Unmarked,
    }
}

/// How far a lens that becomes free may turn at first, each way. Our own choice.
const AROUND: Degrees = Degrees::from_degrees(30.0);

impl LensChoice {
    /// A range about a bearing, to begin with.
    pub fn around(bearing: Bearing) -> Self {
        Self::Range {
            from_deg: bearing.turned(Degrees::from_degrees(-AROUND.degrees())),
            to_deg: bearing.turned(AROUND),
        }
    }

    /// Whether it is the set-up's own bearing and no other.
    pub fn is_fixed(&self) -> bool {
        *self == Self::Fixed
    }

    /// The bearings that may be tried: the fixed one, or every whole degree that is allowed.
    pub fn bearings(&self, fixed: Bearing, backgrounds: &[Background]) -> Vec<Bearing> {
        let every = || (0..360).map(|degree| Bearing::from_degrees(f64::from(degree)));
        match *self {
            Self::Fixed => vec![fixed],
            Self::Range { from_deg, to_deg } => {
                let arc = clockwise(from_deg, to_deg);
                every().filter(|lens| arc.contains(*lens)).collect()
            }
            Self::AnyGoodBackground => {
                let any_good = backgrounds.iter().any(|one| one.good);
                every()
                    .filter(|lens| match behind(backgrounds, *lens) {
                        Behind::Good(_) => true,
                        Behind::Bad(_) => false,
                        Behind::Unmarked => !any_good,
                    })
                    .collect()
            }
        }
    }
}

/// The arc clockwise from one bearing to another, all round if they are the same.
fn clockwise(from: Bearing, to: Bearing) -> BearingArc {
    let width = from.turn_to(to).positive();
    let width = if width == Degrees::default() { Degrees::from_degrees(360.0) } else { width };
    BearingArc { from, width }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bearing(degrees: f64) -> Bearing {
        Bearing::from_degrees(degrees)
    }

    fn background(from: f64, to: f64, good: bool) -> Background {
        Background { from: bearing(from), to: bearing(to), good, why: String::new() }
    }

    #[test]
    fn fixed_is_one() {
        assert_eq!(LensChoice::Fixed.bearings(bearing(215.5), &[]), [bearing(215.5)]);
    }

    #[test]
    fn a_range_may_run_over_north() {
        let range = LensChoice::Range { from_deg: bearing(358.0), to_deg: bearing(1.0) };
        assert_eq!(range.bearings(bearing(90.0), &[]), [0.0, 1.0, 358.0, 359.0].map(bearing));
        let all = LensChoice::Range { from_deg: bearing(7.0), to_deg: bearing(7.0) };
        assert_eq!(all.bearings(bearing(90.0), &[]).len(), 360);
    }

    #[test]
    fn bad_backgrounds_are_out_and_good_ones_alone_are_in() {
        let any = LensChoice::AnyGoodBackground;
        assert_eq!(any.bearings(bearing(0.0), &[]).len(), 360);
        assert_eq!(any.bearings(bearing(0.0), &[background(10.0, 19.0, false)]).len(), 350);
        let marked = [background(100.0, 139.0, true), background(120.0, 150.0, false)];
        assert_eq!(any.bearings(bearing(0.0), &marked).len(), 20);
        assert_eq!(behind(&marked, bearing(130.0)), Behind::Bad(1));
        assert_eq!(behind(&marked, bearing(110.0)), Behind::Good(0));
        assert_eq!(behind(&marked, bearing(10.0)), Behind::Unmarked);
    }

    #[test]
    fn it_reads_back_from_a_file() {
        for choice in [
            LensChoice::Fixed,
            LensChoice::Range { from_deg: bearing(190.0), to_deg: bearing(228.0) },
            LensChoice::AnyGoodBackground,
        ] {
            let text = serde_json::to_string(&choice).unwrap();
            assert_eq!(serde_json::from_str::<LensChoice>(&text).unwrap(), choice, "{text}");
        }
    }
}
