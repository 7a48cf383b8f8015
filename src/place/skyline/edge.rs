//! What one straight piece of a skyline hides.

use super::Edge;
use crate::units::{Bearing, Height, Vector, World};

impl Edge {
    /// Height of its line, or of the great circle that goes on from it.
    pub fn height_at(&self, bearing: Bearing) -> Height {
        self.above.edge_at(bearing)
    }

    /// Where it ends.
    pub fn to(&self) -> Bearing {
        self.from.turned(self.width)
    }

    /// Sines of the least and the greatest height along it: its great circle may hang lower between its ends than at
    /// either, or stand higher.
    pub(crate) fn heights(&self) -> (f64, f64) {
        let normal = self.above.normal;
        let top = Vector::<World>::new(-normal.x, -normal.y, 0.0);
        let passes = |level| turns_right(self.start, level) && turns_right(level, self.end);
        let flat = (1.0 - normal.z * normal.z).max(0.0).sqrt();
        let lowest = if passes(-top) { -flat } else { self.start.z.min(self.end.z) };
        (lowest, if passes(top) { flat } else { self.start.z.max(self.end.z) })
    }

    /// Whether a disc that reaches so far (sine, negative for the whole disc) clears it, its middle in `direction`.
    ///
    /// The disc is measured to the edge's great circle, but that goes on beyond both ends: below the lower end no part
    /// of the disc shows, above the higher one all of it does.
    pub(crate) fn clears(&self, direction: Vector<World>, reach: f64) -> bool {
        let over = self.above.normal.dot(direction) >= -reach;
        let (lowest, highest) = self.heights();
        if reach > 0.0 {
            over && direction.z >= lowest - reach
        } else {
            over || direction.z >= highest - reach
        }
    }
}

/// Whether `to` is clockwise of `from` by less than half a turn, seen from above.
fn turns_right(from: Vector<World>, to: Vector<World>) -> bool {
    from.y * to.x - from.x * to.y >= 0.0
}
