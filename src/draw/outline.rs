//! Outlines of parts of the sky on the horizon strip: what a cone holds, a wish, a skyline.
//!
//! On the strip bearings run across and heights up, so that planes through the eye are curves there. They are followed
//! by the bearing: at each one, a half-space leaves a span of heights.

use super::window::Spot;
use crate::maths;
use crate::place::cone::{Cone, HalfSpace};
use crate::place::skyline::Skyline;
use crate::plan::wish::Heights;
use crate::plan::wish::region::BearingArc;
use crate::units::{Bearing, Degrees, Height, Vector};

/// Steps of the bearing, degrees. Our own choice: an opening narrower than this is a line on the strip.
const STEP: f64 = 0.5;

/// Halvings that find where an outline begins within a step: to 0.001°.
const HALVINGS: u32 = 9;

/// Steps along a skyline and a wish, degrees. Our own choice: a great circle is straight enough over them.
const COARSE: f64 = 3.0;

/// Outlines of a cone, one for each stretch of bearings that it holds; clockwise along the top, then back below.
pub fn cone(cone: &Cone) -> Vec<Vec<Spot>> {
    let count = (360.0 / STEP) as usize;
    let heights: Vec<Option<(f64, f64)>> = (0..count).map(|step| span(cone, step as f64 * STEP)).collect();
    let Some(gap) = heights.iter().position(Option::is_none) else {
        return vec![outline(
            (0..=count).filter_map(|step| Some((step as f64 * STEP, heights[step % count]?))),
        )];
    };
    let mut pieces: Vec<Vec<(f64, (f64, f64))>> = Vec::new();
    // From a bearing that holds nothing once round, so that no piece is cut at north.
    for step in gap + 1..=gap + count {
        let (bearing, before) = (step as f64 * STEP, (step - 1) as f64 * STEP);
        let spot = match (heights[(step - 1) % count], heights[step % count]) {
            (None, Some(here)) => {
                pieces.push(vec![edge(cone, before, (bearing, here))]);
                (bearing, here)
            }
            (Some(_), Some(here)) => (bearing, here),
            (Some(there), None) => edge(cone, bearing, (before, there)),
            (None, None) => continue,
        };
        if let Some(piece) = pieces.last_mut() {
            piece.push(spot);
        }
    }
    pieces.into_iter().map(|piece| outline(piece.into_iter())).collect()
}

/// Outlines of where the light may come from: arcs of bearings, between two heights.
pub fn wish(arcs: &[BearingArc], heights: Heights) -> Vec<Vec<Spot>> {
    let heights = (heights.from.degrees(), heights.to.degrees());
    let along = |arc: &BearingArc| {
        let (from, width) = (arc.from.degrees(), arc.width.degrees());
        let steps = (width / COARSE).ceil().max(1.0);
        outline((0..=steps as u32).map(move |step| (from + width * f64::from(step) / steps, heights)))
    };
    arcs.iter().map(along).collect()
}

/// The upper edge of what blocks the sky, once round; nothing for the level horizon.
pub fn skyline(line: &Skyline) -> Vec<Spot> {
    let along = |edge: &crate::place::skyline::Edge| {
        let steps = (edge.width.degrees() / COARSE).ceil().max(1.0);
        let spots: Vec<Spot> = (0..=steps as u32)
            .map(|step| {
                let turn = edge.width.degrees() * f64::from(step) / steps;
                let bearing = edge.from.turned(Degrees::from_degrees(turn));
                Spot::new(bearing, edge.height_at(bearing))
            })
            .collect();
        spots
    };
    line.edges().iter().flat_map(along).collect()
}

/// The last bearing at which the cone holds something, with what it holds there: from a bearing where it holds nothing
/// to one where it does.
fn edge(cone: &Cone, nothing: f64, something: (f64, (f64, f64))) -> (f64, (f64, f64)) {
    let (mut out, mut inside) = (nothing, something);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (out + inside.0);
        match span(cone, middle) {
            Some(held) => inside = (middle, held),
            None => out = middle,
        }
    }
    inside
}

/// Heights that a cone holds at a bearing, degrees.
fn span(cone: &Cone, bearing: f64) -> Option<(f64, f64)> {
    let bearing = Bearing::from_degrees(bearing);
    cone.sides.iter().try_fold((-90.0, 90.0), |(low, high), side| {
        let (from, to) = heights(side, bearing)?;
        let (low, high) = (f64::max(low, from), f64::min(high, to));
        (low < high).then_some((low, high))
    })
}

/// Heights that a half-space holds at a bearing: there `n·s` is a cosine of the height, about the one it faces.
fn heights(side: &HalfSpace, bearing: Bearing) -> Option<(f64, f64)> {
    let ahead = side.normal.dot(bearing.level());
    let size = maths::hypot(ahead, side.normal.z);
    let middle = Degrees::from_radians(maths::atan2(side.normal.dot(Vector::UP), ahead)).degrees();
    if size < side.least {
        return None;
    }
    let reach = if size == 0.0 {
        180.0
    } else {
        Degrees::from_radians(maths::acos((side.least / size).max(-1.0))).degrees()
    };
    let whole = [middle, middle - 360.0, middle + 360.0].map(|middle| (middle - reach, middle + reach));
    // Of the turns, the one that comes into view: from straight down to straight up.
    whole.into_iter().map(|(from, to)| (from.max(-90.0), to.min(90.0))).find(|(from, to)| from < to)
}

/// Along the upper heights, then back along the lower ones.
fn outline(at: impl Iterator<Item = (f64, (f64, f64))>) -> Vec<Spot> {
    let at: Vec<_> = at.collect();
    let spot = |bearing: f64, height: f64| Spot::new(Bearing::from_degrees(bearing), Height::clamped(height));
    let above = at.iter().map(|(bearing, (_, high))| spot(*bearing, *high));
    above.chain(at.iter().rev().map(|(bearing, (low, _))| spot(*bearing, *low))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::skyline::Point;
    use crate::place::zone::Zone;
    use crate::plan::wish::Arc;
    use crate::plan::wish::region;
    use crate::project::{demo, stage};
    use crate::units::{Duration, World};
    use proptest::prelude::*;

    fn direction(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    proptest! {
        #[test]
        fn a_half_space_is_a_span_of_heights(
            facing in 0.0..360.0f64, up in -89.0..89.0f64, least in -0.9..0.9f64,
            bearing in 0.0..360.0f64, height in -89.0..89.0f64,
        ) {
            let side = HalfSpace { normal: direction(facing, up), least };
            let at = direction(bearing, height);
            prop_assume!((side.normal.dot(at) - least).abs() > 1e-9);
            // A half-space that reaches over the zenith (least below nought) may leave two spans; ours has no such.
            prop_assume!(least >= 0.0);
            let found = heights(&side, Bearing::from_degrees(bearing));
            let inside = found.is_some_and(|(from, to)| (from..=to).contains(&height));
            prop_assert_eq!(inside, side.contains(at));
        }
    }

    #[test]
    fn the_windows_of_the_loft_are_outlined() {
        let project = demo::project();
        let loft = stage::of_set_up(&project, "set-up-4a", Zone::fixed("UTC", Duration::ZERO)).unwrap();
        for opening in loft.openings.unwrap() {
            let pieces = cone(&opening.cones[0]);
            assert_eq!(pieces.len(), 1, "{}", opening.name);
            let count = pieces[0].len();
            let mean = |pick: fn(&Spot) -> f64| pieces[0].iter().map(pick).sum::<f64>() / count as f64;
            // The middle of a convex outline is inside, and a degree beyond each of its ends is not.
            let (bearing, height) = (mean(|spot| spot.bearing.degrees()), mean(|spot| spot.height.degrees()));
            assert!(opening.contains(direction(bearing, height)));
            let (first, last) = (pieces[0][0].bearing.degrees(), pieces[0][count / 2 - 1].bearing.degrees());
            assert!(!opening.contains(direction(first - 1.0, height)));
            assert!(!opening.contains(direction(last + 1.0, height)));
        }
    }

    #[test]
    fn a_north_window_is_one_piece() {
        let sides = [(-20.0 + 90.0), (20.0 - 90.0)]
            .map(|bearing| HalfSpace::beside(Bearing::from_degrees(bearing).level()));
        let pieces = cone(&Cone { sides: sides.to_vec() });
        assert_eq!(pieces.len(), 1);
        assert!((pieces[0][0].bearing.degrees() - 340.0).abs() < 0.01);
        assert_eq!(cone(&Cone::default()).len(), 1, "the whole sky");
    }

    #[test]
    fn a_wish_is_a_box_on_each_side() {
        let arc =
            Arc { from: Degrees::from_degrees(100.0), to: Degrees::from_degrees(160.0), either_side: true };
        let heights = Heights { from: Height::clamped(4.0), to: Height::clamped(16.0) };
        let boxes = wish(&region::bearings(arc, Bearing::from_degrees(180.0)), heights);
        assert_eq!(boxes.len(), 2);
        assert!(boxes.iter().flatten().all(|spot| [4.0, 16.0].contains(&spot.height.degrees())));
    }

    #[test]
    fn a_skyline_goes_once_round() {
        let point = |bearing, height| Point {
            bearing: Bearing::from_degrees(bearing),
            height: Height::clamped(height),
        };
        let line =
            Skyline::new(vec![point(90.0, 5.0), point(90.0, 20.0), point(120.0, 20.0), point(120.0, 5.0)]);
        let spots = skyline(&line);
        let turn: f64 = spots.windows(2).map(|pair| pair[0].bearing.turn_to(pair[1].bearing).degrees()).sum();
        assert!((turn - 360.0).abs() < 1e-6, "{turn}");
        assert!(skyline(&Skyline::default()).is_empty());
    }
}
