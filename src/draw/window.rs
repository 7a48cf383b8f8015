//! A window onto the sky: bearing across, height up, both in equal steps; it may lie across north.
//!
//! A bearing has a place in the window by its turn from the window's middle, so that nothing jumps at north.

use super::shape::Point;
use crate::units::{Bearing, Degrees, Height, Vector, World};

/// Narrowest and widest window. Our own choice: narrower looks like a lens, wider is more than a turn.
const NARROWEST: f64 = 120.0;
const WIDEST: f64 = 360.0;

/// Kept free beside what is shown.
const BESIDE: f64 = 15.0;

/// Kept free above what is shown, and the lowest top of a window.
const ABOVE: f64 = 6.0;
const LOWEST_TOP: f64 = 40.0;

/// Lower edge: enough to see the sun go, and to print the compass below the horizon.
const BOTTOM: f64 = -9.0;

/// A spot of the sky, as the horizon strip has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// True bearing.
    pub bearing: Bearing,
    /// Above the horizon.
    pub height: Height,
}

impl Spot {
    /// From its two parts.
    pub const fn new(bearing: Bearing, height: Height) -> Self {
        Self { bearing, height }
    }
}

impl From<Vector<World>> for Spot {
    fn from(direction: Vector<World>) -> Self {
        Self { bearing: direction.bearing(), height: direction.height() }
    }
}

/// A part of the sky and the paper it is shown on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    middle: Bearing,
    width: f64,
    top: f64,
    paper: (f64, f64),
}

impl Window {
    /// The smallest window that holds these spots with room around, on a paper of some width and height.
    pub fn around(spots: impl Iterator<Item = Spot>, paper: Point) -> Self {
        let shown: Vec<Spot> = spots.collect();
        let (from, extent) = extent(shown.iter().map(|spot| spot.bearing.degrees()).collect());
        let highest = shown.iter().map(|spot| spot.height.degrees()).fold(LOWEST_TOP - ABOVE, f64::max);
        Self {
            middle: Bearing::from_degrees(from + extent / 2.0),
            width: (extent + 2.0 * BESIDE).clamp(NARROWEST, WIDEST),
            top: (highest + ABOVE).min(90.0),
            paper: (paper.x, paper.y),
        }
    }

    /// Where a spot lies on the paper.
    pub fn place(&self, spot: Spot) -> Point {
        Point::new(self.across(self.turn(spot.bearing)), self.down(spot.height.degrees()))
    }

    /// The spot at a point of the paper.
    pub fn at(&self, point: Point) -> Spot {
        let turn = (point.x / self.paper.0 - 0.5) * self.width;
        let height = self.top - point.y / self.paper.1 * (self.top - BOTTOM);
        Spot::new(self.middle.turned(Degrees::from_degrees(turn)), Height::clamped(height))
    }

    /// Places for the points of one line, each the short way from the one before.
    pub fn line(&self, spots: &[Spot]) -> Vec<Point> {
        let mut points = Vec::with_capacity(spots.len());
        let mut before: Option<(Bearing, f64)> = None;
        for spot in spots {
            let turn = before.map_or_else(
                || self.turn(spot.bearing),
                |(bearing, turn)| turn + bearing.turn_to(spot.bearing).degrees(),
            );
            before = Some((spot.bearing, turn));
            points.push(Point::new(self.across(turn), self.down(spot.height.degrees())));
        }
        points
    }

    /// The line, as often as it comes onto the paper: a line may go all the way round.
    pub fn lines(&self, spots: &[Spot]) -> Vec<Vec<Point>> {
        let once = self.line(spots);
        let left = once.iter().map(|point| point.x).fold(f64::INFINITY, f64::min);
        let right = once.iter().map(|point| point.x).fold(f64::NEG_INFINITY, f64::max);
        let shifts = [-1.0, 0.0, 1.0].map(|turns| turns * self.whole_turn());
        let seen = shifts.into_iter().filter(|shift| left + shift < self.paper.0 && right + shift > 0.0);
        seen.map(|shift| once.iter().map(|point| Point::new(point.x + shift, point.y)).collect()).collect()
    }

    /// How far one whole turn is on the paper.
    pub fn whole_turn(&self) -> f64 {
        360.0 / self.width * self.paper.0
    }

    /// Height at the upper edge.
    pub const fn top(&self) -> Degrees {
        Degrees::from_degrees(self.top)
    }

    /// How far the window spans.
    pub const fn width(&self) -> Degrees {
        Degrees::from_degrees(self.width)
    }

    /// Clockwise from the middle.
    fn turn(&self, bearing: Bearing) -> f64 {
        self.middle.turn_to(bearing).degrees()
    }

    fn across(&self, turn: f64) -> f64 {
        (turn / self.width + 0.5) * self.paper.0
    }

    fn down(&self, height: f64) -> f64 {
        (self.top - height) / (self.top - BOTTOM) * self.paper.1
    }
}

/// Start and size of the smallest arc that holds all bearings: the circle without its largest gap.
fn extent(mut bearings: Vec<f64>) -> (f64, f64) {
    bearings.sort_by(f64::total_cmp);
    let (Some(first), Some(last)) = (bearings.first().copied(), bearings.last().copied()) else {
        return (0.0, 0.0);
    };
    let mut best = (first, last - first);
    for pair in bearings.windows(2) {
        let held = 360.0 - (pair[1] - pair[0]);
        if held < best.1 {
            best = (pair[1], held);
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PAPER: Point = Point::new(390.0, 228.0);

    fn spot(bearing: f64, height: f64) -> Spot {
        Spot::new(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn a_window_across_north_is_as_narrow_as_one_across_south() {
        let north = Window::around([spot(300.0, 20.0), spot(60.0, 30.0)].into_iter(), PAPER);
        assert_eq!((north.middle.degrees(), north.width), (0.0, 150.0));
        let south = Window::around([spot(120.0, 20.0), spot(240.0, 30.0)].into_iter(), PAPER);
        assert_eq!((south.middle.degrees(), south.width), (180.0, 150.0));
    }

    #[test]
    fn nothing_to_show_is_still_a_window() {
        let window = Window::around(core::iter::empty(), PAPER);
        assert_eq!((window.width, window.top), (NARROWEST, LOWEST_TOP));
    }

    #[test]
    fn a_line_goes_on_over_the_edge() {
        let window = Window::around([spot(10.0, 5.0)].into_iter(), PAPER);
        let line = window.line(&[spot(100.0, 0.0), spot(170.0, 0.0), spot(230.0, 0.0)]);
        assert!(line.windows(2).all(|pair| pair[0].x < pair[1].x), "{line:?}");
    }

    #[test]
    fn a_path_that_begins_behind_the_window_still_comes_into_it() {
        let window = Window::around([spot(250.0, 5.0)].into_iter(), PAPER);
        let round: Vec<Spot> = (0..=36).map(|step| spot(f64::from(step) * 10.0, 20.0)).collect();
        let seen = |bearing: f64| {
            let at = window.place(spot(bearing, 20.0));
            window.lines(&round).iter().flatten().any(|point| point.distance(at) < 1e-6)
        };
        assert!(seen(200.0) && seen(250.0) && seen(300.0));
        assert!(window.lines(&[]).is_empty());
    }

    proptest! {
        #[test]
        fn spot_there_and_back(
            one in 0.0..360.0f64, two in 0.0..360.0f64, x in 1.0..389.0f64, y in 1.0..227.0f64,
        ) {
            let window = Window::around([spot(one, 10.0), spot(two, 70.0)].into_iter(), PAPER);
            let back = window.place(window.at(Point::new(x, y)));
            prop_assert!(back.distance(Point::new(x, y)) < 1e-6);
        }

        #[test]
        fn what_is_shown_lies_on_the_paper(spots in proptest::collection::vec((0.0..360.0f64, -6.0..84.0f64), 1..9)) {
            let spots: Vec<Spot> = spots.into_iter().map(|(bearing, height)| spot(bearing, height)).collect();
            let window = Window::around(spots.iter().copied(), PAPER);
            for spot in spots {
                let point = window.place(spot);
                prop_assert!((0.0..=PAPER.x).contains(&point.x) && (0.0..=PAPER.y).contains(&point.y));
            }
        }
    }
}
