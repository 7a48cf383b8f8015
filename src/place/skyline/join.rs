//! The higher of two skylines: cut at every end of an edge, and where two edges cross.

use super::{Edge, Point, Skyline};
use crate::units::{Bearing, Degrees, Vector};

/// Ends nearer to each other than this are one, degrees.
const SAME: f64 = 1e-9;

/// The higher of two skylines, neither of them without points.
pub(super) fn higher(a: &Skyline, b: &Skyline) -> Skyline {
    let cuts = cuts(a, b);
    let next = cuts.iter().cycle().skip(1);
    let mut points: Vec<Point> = Vec::new();
    for (from, to) in cuts.iter().zip(next) {
        let (from, to) = (Bearing::from_degrees(*from), Bearing::from_degrees(*to));
        let width = from.turn_to(to).positive();
        let middle = from.turned(Degrees::from_degrees(width.degrees() / 2.0)).level();
        if let (Some(a), Some(b)) = (a.edge_at(middle), b.edge_at(middle)) {
            points.extend(sector(a, b, (from, to)));
        }
    }
    // The last end stands at the first cut, to the left of a step there.
    points.rotate_right(1);
    points.dedup();
    Skyline::new(points)
}

/// Bearings of all ends, in order, each once.
fn cuts(a: &Skyline, b: &Skyline) -> Vec<f64> {
    let mut cuts: Vec<f64> = a.edges().iter().chain(b.edges()).map(|edge| edge.from.degrees()).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|next, before| *next - *before < SAME);
    cuts
}

/// The higher line over a sector in which each skyline is one edge.
fn sector(a: &Edge, b: &Edge, (from, to): (Bearing, Bearing)) -> Vec<Point> {
    let apart = |at: Bearing| a.height_at(at).degrees() - b.height_at(at).degrees();
    let top = |at: Bearing| {
        let higher = if apart(at) >= 0.0 { a } else { b };
        Point { bearing: at, height: higher.height_at(at) }
    };
    let mut points = vec![top(from)];
    if apart(from) * apart(to) < 0.0 {
        points.extend(crossing(a, b, from).map(top));
    }
    points.push(top(to));
    points
}

/// Where two great circles cross on the side of `near`.
fn crossing(a: &Edge, b: &Edge, near: Bearing) -> Option<Bearing> {
    let along = a.above.normal.cross(b.above.normal).unit()?;
    let level = Vector::new(along.x, along.y, 0.0).unit()?;
    Some(if level.dot(near.level()) > 0.0 { level } else { -level }.bearing())
}
