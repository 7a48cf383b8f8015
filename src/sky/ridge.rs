//! A skyline made ready for a search: by sector, how high the sun is surely clear and how low surely not.
//!
//! Sectors are steps of the monotone angle that [`crate::place::skyline`] sorts by, so that looking one up takes no
//! trigonometry. Bounds are sines of *airless* heights.

use super::search::{Limb, SUN_RADIUS};
use crate::maths;
use crate::place::skyline::{Edge, Skyline, monotone};
use crate::units::{Vector, World};

/// Sectors in a quarter turn; 256 in all.
const QUARTER: f64 = 64.0;
const SECTORS: usize = 256;

/// Once round, in the monotone angle.
pub(super) const ROUND: f64 = 4.0;

/// The most that standard air lifts the sun, and the most above 5°, radians.
const MOST_LIFT: f64 = 0.011;
const HIGHER_LIFT: (f64, f64) = (0.087, 0.003);

/// A skyline for one limb of the sun.
#[derive(Debug)]
pub(super) struct Ridge<'a> {
    pub(super) edges: &'a [Edge],
    /// Sine of how far the disc reaches beyond its centre, negative for the whole disc.
    pub(super) reach: f64,
    starts: Vec<f64>,
    sectors: Vec<Bounds>,
}

/// Sines of airless heights: below `low` the sun is hidden, from `high` on it is clear.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    pub(super) low: f64,
    pub(super) high: f64,
}

/// From a monotone angle on, at most once round, upwards.
pub(super) type Sweep = (f64, f64);

impl<'a> Ridge<'a> {
    /// `None` for the level horizon, which has no pieces.
    pub(super) fn of(skyline: &'a Skyline, limb: Limb) -> Option<Self> {
        let edges = skyline.edges();
        let radius = maths::sin(SUN_RADIUS.radians());
        let reach = match limb {
            Limb::Upper => radius,
            Limb::Centre => 0.0,
            Limb::Lower => -radius,
        };
        let starts = edges.iter().map(|edge| monotone(edge.start)).collect();
        let mut sectors = vec![Bounds { low: f64::INFINITY, high: f64::NEG_INFINITY }; SECTORS];
        for edge in edges {
            let (from, end) = (monotone(edge.start), monotone(edge.end));
            let bounds = Bounds::over(edge, reach);
            for sector in sectors_of((from, if end < from { end + ROUND } else { end })) {
                sectors[sector] = sectors[sector].and(bounds);
            }
        }
        (!edges.is_empty()).then_some(Self { edges, reach, starts, sectors })
    }

    /// Bounds for every bearing in a sweep.
    pub(super) fn bounds(&self, sweep: Sweep) -> Bounds {
        let none = Bounds { low: f64::INFINITY, high: f64::NEG_INFINITY };
        sectors_of(sweep).fold(none, |all, sector| all.and(self.sectors[sector]))
    }

    /// The pieces that a sweep touches.
    pub(super) fn touched(&self, (from, to): Sweep) -> impl Iterator<Item = &Edge> {
        let (count, start) = (self.starts.len(), wrapped(from));
        let first = (self.starts.partition_point(|begins| *begins <= start) + count - 1) % count;
        // Every further piece begins in the sweep; each is there once.
        let more = (1..count).take_while(move |step| {
            let ahead = wrapped(self.starts[(first + step) % count] - start);
            ahead <= to - from
        });
        core::iter::once(0).chain(more).map(move |step| &self.edges[(first + step) % count])
    }

    /// Whether the asked limb of a sun that is seen in `direction` shows over the edge there.
    pub(super) fn clears(&self, direction: Vector<World>) -> bool {
        let after = self.starts.partition_point(|start| *start <= monotone(direction));
        self.edges[(after + self.edges.len() - 1) % self.edges.len()].clears(direction, self.reach)
    }
}

impl Bounds {
    fn over(edge: &Edge, reach: f64) -> Self {
        let (lowest, highest) = edge.heights();
        let low = lowest - reach.max(0.0);
        let lift = if low > HIGHER_LIFT.0 { HIGHER_LIFT.1 } else { MOST_LIFT };
        Self { low: low - lift, high: highest - reach.min(0.0) }
    }

    fn and(self, other: Self) -> Self {
        Self { low: self.low.min(other.low), high: self.high.max(other.high) }
    }
}

/// A monotone angle at most once round off, in 0..4.
fn wrapped(angle: f64) -> f64 {
    if angle < 0.0 {
        angle + ROUND
    } else if angle >= ROUND {
        angle - ROUND
    } else {
        angle
    }
}

/// Sectors that a sweep touches, and one more to either side for rounding.
fn sectors_of((from, to): Sweep) -> impl Iterator<Item = usize> {
    // Shifted up by a round, so that cutting off the fraction rounds down.
    let number = |angle: f64| ((angle + ROUND) * QUARTER) as usize;
    let first = number(from) - 1;
    let last = (number(to) + 1).min(first + SECTORS - 1);
    (first..=last).map(|sector| sector % SECTORS)
}
