//! Panes: what glazing bars leave of an opening.
//!
//! Bars stand between panes: `rows − 1` across and `columns − 1` upright, evenly, all of one width and without depth. Glass and
//! bars lie in the *outer* face of the wall, our own choice: that is where most windows in thick walls have them, and the
//! edge that makes the shadow.

use super::opening::{Bars, Opening};
use crate::units::{Metres, Share};

/// More panes than this are counted as one, dimmed by its bars: their shadows are too fine to plan by. Our own choice.
const MOST: usize = 144;

/// A rectangle in the face of a wall: from its first corner along, and up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Nearer edge along.
    pub left: Metres,
    /// Farther edge along.
    pub right: Metres,
    /// Lower edge.
    pub low: Metres,
    /// Upper edge.
    pub high: Metres,
}

impl Opening {
    /// All of it, as if without bars.
    pub fn whole(&self) -> Rectangle {
        let end = |from: Metres, size: Metres| Metres::from_metres(from.metres() + size.metres());
        let (right, high) = (end(self.offset, self.width), end(self.sill, self.height));
        Rectangle { left: self.offset, right, low: self.sill, high }
    }

    /// What bars leave of it: one rectangle for each pane, the whole if there are none (or more than can be told apart), and
    /// nothing if the bars leave nothing.
    pub fn pane_rectangles(&self) -> Vec<Rectangle> {
        let whole = self.whole();
        let Some(bars) = self.bars.filter(|bars| count(*bars) <= MOST) else { return vec![whole] };
        let columns = between(whole.left, whole.right, bars.columns, bars.thickness);
        let rows = between(whole.low, whole.high, bars.rows, bars.thickness);
        let row = |(low, high): (Metres, Metres)| {
            columns.iter().map(move |(left, right)| Rectangle { left: *left, right: *right, low, high })
        };
        rows.iter().copied().flat_map(row).collect()
    }

    /// How much of its area no bar covers.
    pub fn clear_of_bars(&self) -> Share {
        let Some(bars) = self.bars else { return Share::WHOLE };
        let left = |size: Metres, panes: u8| {
            1.0 - f64::from(panes.saturating_sub(1)) * bars.thickness.metres() / size.metres()
        };
        Share::clamped(left(self.width, bars.columns).max(0.0) * left(self.height, bars.rows).max(0.0))
    }

    /// How much of the light gets past what its panes do not show: bars too many to be drawn one by one.
    pub fn unseen_bars(&self) -> Share {
        if self.bars.is_some_and(|bars| count(bars) > MOST) { self.clear_of_bars() } else { Share::WHOLE }
    }
}

fn count(bars: Bars) -> usize {
    usize::from(bars.rows) * usize::from(bars.columns)
}

/// The stretches that evenly set bars leave between two ends.
fn between(from: Metres, to: Metres, panes: u8, bar: Metres) -> Vec<(Metres, Metres)> {
    let panes = panes.max(1);
    let bars = f64::from(panes - 1) * bar.metres();
    let pane = (to.metres() - from.metres() - bars) / f64::from(panes);
    if pane <= 0.0 {
        return Vec::new();
    }
    let start = |number: u8| from.metres() + f64::from(number) * (pane + bar.metres());
    let ends = |number| [start(number), start(number) + pane].map(Metres::from_metres);
    (0..panes).map(ends).map(|[start, end]| (start, end)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn window(rows: u8, columns: u8, bar: f64) -> Opening {
        let sizes = [1.0, 0.9, 1.2, 1.8].map(Metres::from_metres);
        let bars = Some(Bars { rows, columns, thickness: Metres::from_metres(bar) });
        Opening { bars, ..Opening::rectangle("o", "o", 0, sizes) }
    }

    fn area(opening: &Opening) -> f64 {
        let size = |from: Metres, to: Metres| to.metres() - from.metres();
        opening
            .pane_rectangles()
            .iter()
            .map(|pane| size(pane.left, pane.right) * size(pane.low, pane.high))
            .sum()
    }

    #[test]
    fn panes_and_bars_make_up_the_window() {
        let cross = window(2, 2, 0.04);
        let panes = cross.pane_rectangles();
        assert_eq!(panes.len(), 4);
        assert!(
            (panes[1].left.metres() - 1.62).abs() < 1e-12 && (panes[3].low.metres() - 1.82).abs() < 1e-12
        );
        assert!(
            (panes[3].right.metres() - 2.2).abs() < 1e-12 && (panes[3].high.metres() - 2.7).abs() < 1e-12
        );
        assert!((area(&cross) - 1.16 * 1.76).abs() < 1e-12);
        assert!((cross.clear_of_bars().fraction() - 1.16 * 1.76 / (1.2 * 1.8)).abs() < 1e-12);
        assert_eq!(cross.unseen_bars(), Share::WHOLE);
    }

    #[test]
    fn bars_wider_than_the_window_leave_nothing_and_a_mesh_only_dims() {
        assert_eq!(window(3, 4, 0.5).pane_rectangles(), []);
        let mesh = window(100, 100, 0.001);
        assert_eq!(mesh.pane_rectangles(), [mesh.whole()]);
        assert!(mesh.unseen_bars().fraction() < 0.9);
    }
}
