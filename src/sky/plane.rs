//! One half-space of the sky, solved for time.
//!
//! For `n·s ≥ c` with the sun at hour angle H and declination δ the left side is
//! `cos δ ρ cos(H − H₀) + k sin δ − ξ m`, so within a day the sun is inside from `H₀ − a` to `H₀ + a`, with
//! `cos a = κ = (c + ξ m − k sin δ)/(ρ cos δ)`. A [`Plane`] holds what depends on the site alone; [`Plane::track`]
//! costs one arc cosine a day and says how far it may be off, because δ, the equation of time and refraction change
//! on the way. The exact edge is a root of [`Plane::value_at`].

use super::noon::Noon;
use super::refraction::{self, Air};
use super::side::Side;
use super::sun::{SiteTurn, Sun};
use super::turn::TURN;
use crate::maths;
use crate::place::cone::HalfSpace;
use crate::units::{Degrees, Height};

/// Largest change of the declination from mean noon to the ends of the day, and of the hour angle's own pace, radians.
const DECLINATION_DRIFT: f64 = 0.0037;
const PACE_DRIFT: f64 = 0.0015;

/// Largest tangent and smallest cosine of the declination.
const MAX_TAN: f64 = 0.435;
const MIN_COS: f64 = 0.917;

/// Directions of the day track have length one within this.
const LENGTH: f64 = 5e-5;

/// Closed form leaves edges that a sun without drift passes more slowly than this, radians a day. Our choice.
const SLOWEST: f64 = 0.1;

/// Fastest change of the declination, radians a day.
const DECLINATION_PACE: f64 = 0.0073;

/// A half-space as seen from one site.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plane {
    pub(super) side: Side,
    /// `k`, `m`, `ρ` and `H₀` of the module comment.
    axial: f64,
    parallax: f64,
    swing: f64,
    middle: f64,
    /// How far `κ` may be off.
    slack: f64,
    /// Change of [`Plane::value_at`] a day, for a swing of one, that is not the Earth's turn.
    drift: f64,
}

/// When the sun is inside, in one day about a mean noon. Times are days since 1970-01-01.
#[derive(Clone, Copy, Debug)]
pub(super) enum Track {
    /// All day.
    Always,
    /// Never.
    Never,
    /// From `middle − half` to `middle + half` and a whole number of days before and after, edges within `pad`;
    /// `slope` is about that of the value at the first edge, a day.
    Arc { middle: f64, half: f64, pad: f64, slope: f64 },
    /// Not outside of that arc, if at all.
    Perhaps { middle: f64, half: f64 },
}

/// What refraction does to a sun no lower than some height: the most, and the most change for a change in height.
#[derive(Clone, Copy, Debug, Default)]
struct Lift {
    most: f64,
    pace: f64,
}

impl Lift {
    fn from(lowest: Height) -> Self {
        let at = |height: f64| {
            let (sin, cos) = maths::sin_cos(Degrees::from_degrees(height).radians());
            refraction::extended_lift(sin, cos)
        };
        let (low, step) = (lowest.degrees(), 0.1);
        Self { most: at(low), pace: (at(low - step) - at(low)).abs() / Degrees::from_degrees(step).radians() }
    }
}

impl Plane {
    /// A half-space of the airless sky, or of the sky so low that nothing is lifted.
    pub(super) fn airless(side: HalfSpace, site: &SiteTurn) -> Self {
        Self::new(side, None, site)
    }

    /// A half-space of the sky as it is seen through standard air, by a sun that stands no lower than `lowest`.
    ///
    /// Limits of height are lowered once; planes upright through the eye stay as they are.
    pub(super) fn seen(side: HalfSpace, lowest: Height, site: &SiteTurn) -> Self {
        let HalfSpace { normal, least } = side;
        if normal.x == 0.0 && normal.y == 0.0 {
            let sine = (least / normal.z).clamp(-1.0, 1.0);
            let seen = Height::clamped(Degrees::from_radians(maths::asin(sine)).degrees());
            let airless = refraction::airless(seen, Air::STANDARD).sin();
            let beyond = least.abs() > normal.z.abs();
            return Self::new(
                HalfSpace { normal, least: if beyond { least } else { airless * normal.z } },
                None,
                site,
            );
        }
        let upright = normal.z == 0.0 && least == 0.0;
        let lift = Lift::from(lowest);
        Self::new(side, (!upright && lift.most > 0.0).then_some(lift), site)
    }

    fn new(limit: HalfSpace, lift: Option<Lift>, site: &SiteTurn) -> Self {
        let normal = limit.normal;
        let (to_meridian, to_east) = (normal.z * site.cos_latitude - normal.y * site.sin_latitude, -normal.x);
        let axial = normal.y * site.cos_latitude + normal.z * site.sin_latitude;
        let swing = maths::hypot(to_meridian, to_east);
        let leaning = axial.abs() + MAX_TAN * swing;
        let Lift { most, pace } = lift.unwrap_or_default();
        Self {
            side: Side { limit, lifted: lift.is_some() },
            axial,
            parallax: normal.y * site.centre_north + normal.z * site.centre_up,
            swing,
            middle: maths::atan2(to_east, to_meridian),
            slack: (DECLINATION_DRIFT * leaning + (LENGTH + 1.02 * most) / MIN_COS) / swing,
            drift: (DECLINATION_PACE * leaning + TURN * pace * normal.z.abs() / MIN_COS) / swing,
        }
    }

    /// Whether refraction moves the edge in a way that no limit can be lowered for.
    pub(super) fn is_lifted(&self) -> bool {
        self.side.lifted
    }

    /// Whether it is a limit of heights.
    pub(super) fn is_level(&self) -> bool {
        self.side.limit.normal.x == 0.0 && self.side.limit.normal.y == 0.0
    }

    /// When the sun is inside on the day of `noon`.
    pub(super) fn track(&self, noon: &Noon) -> Track {
        let level = self.side.limit.least + noon.parallax * self.parallax - self.axial * noon.sin_declination;
        let kappa = level / (self.swing * noon.cos_declination);
        if kappa - self.slack >= 1.0 {
            return Track::Never;
        }
        if kappa + self.slack <= -1.0 {
            return Track::Always;
        }
        let middle = noon.time_of(self.middle);
        // Near the top of its arc the sun passes an edge so slowly that the drift decides, if it passes at all.
        let nearest = (kappa.abs() + self.slack).min(1.0);
        let steep = (1.0 - nearest * nearest).sqrt();
        if steep * TURN > 1.1 * self.drift + SLOWEST {
            let pad = (self.slack / steep + PACE_DRIFT) / TURN;
            let slope = TURN * self.swing * noon.cos_declination * (1.0 - kappa * kappa).sqrt();
            return Track::Arc { middle, half: maths::acos(kappa) / TURN, pad, slope };
        }
        // A swing of nothing leaves no number here: then the sun may be inside at any time.
        let widest = kappa - self.slack;
        let half = if widest > -1.0 { maths::acos(widest.min(1.0)) + PACE_DRIFT } else { TURN };
        Track::Perhaps { middle, half: half / TURN }
    }

    /// Not negative while the sun is inside.
    pub(super) fn value_at(&self, sun: &Sun, time: f64) -> f64 {
        self.side.value(sun.at(time))
    }

    /// A bound on the second derivative of the value.
    pub(super) fn bend(&self) -> f64 {
        self.side.bend(self.swing)
    }
}
