//! The light of takes as far as it must match: of one, and from the least to the most of several.

use super::match_limit::MatchLimit;
use crate::light::shadow::shadow_length;
use crate::maths;
use crate::units::{Bearing, Mired, Stops, Vector, World};

/// How many things must match: the light's bearing, the length of shadows, the ratio, the colour; always in this order.
pub const MEASURES: usize = 4;

/// The light of a take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Look {
    bearing: Bearing,
    /// Logarithm to base two of the shadow's length, so that a change in proportion is a difference.
    shadow: Option<f64>,
    ratio: Option<f64>,
    colour: Option<f64>,
}

impl Look {
    pub(super) fn of(light: Vector<World>, ratio: Option<Stops>, colour: Option<Mired>) -> Self {
        Self {
            bearing: light.bearing(),
            shadow: shadow_length(light.height()).map(maths::log2),
            ratio: ratio.map(Stops::stops),
            colour: colour.map(Mired::mired),
        }
    }

    /// The numbers that must match; the bearing as a turn from another.
    pub(super) fn values(&self, from: Bearing) -> [Option<f64>; MEASURES] {
        [Some(from.turn_to(self.bearing).degrees()), self.shadow, self.ratio, self.colour]
    }
}

/// From the least to the most that some takes have.
#[derive(Clone, Copy, Debug)]
pub(super) struct Range {
    /// The bearing that turns are told from.
    from: Bearing,
    ends: [Option<(f64, f64)>; MEASURES],
}

/// What takes are apart of which some have a shadow, a ratio, a colour, and some have none.
const NO_END: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);

impl Range {
    pub(super) fn of(look: Look) -> Self {
        let point = |value: Option<f64>| value.map(|value| (value, value));
        Self { from: look.bearing, ends: look.values(look.bearing).map(point) }
    }

    /// Of the takes of both.
    pub(super) fn and(self, other: Self) -> Self {
        let turn = self.from.turn_to(other.from).degrees();
        let ends = core::array::from_fn(|n| {
            let by = if n == 0 { turn } else { 0.0 };
            match (self.ends[n], other.ends[n]) {
                (Some(one), Some(two)) => Some((one.0.min(two.0 + by), one.1.max(two.1 + by))),
                (None, None) => None,
                _ => Some(NO_END),
            }
        });
        Self { ends, ..self }
    }

    /// The first measure in which its takes are further apart than they may be, and how far.
    pub(super) fn too_far(&self, limit: &MatchLimit) -> Option<(usize, f64)> {
        let apart = self.ends.map(|ends| ends.map_or(0.0, |(least, most)| most - least));
        let most = most(limit);
        (0..MEASURES).find(|n| apart[*n] > most[*n]).map(|n| (n, apart[n]))
    }

    pub(super) fn keeps(&self, limit: &MatchLimit) -> bool {
        self.too_far(limit).is_none()
    }
}

/// How far each measure may be apart.
pub(super) fn most(limit: &MatchLimit) -> [f64; MEASURES] {
    let shadow = maths::log2(1.0 + limit.shadow.fraction());
    [limit.class_angle.degrees(), shadow, limit.ratio.stops(), limit.colour.mired()]
}
