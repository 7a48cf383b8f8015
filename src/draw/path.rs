//! A path of an SVG, written as it grows; numbers to a hundredth.

use core::f64::consts::FRAC_PI_2;
use core::fmt::Write;

use super::shape::Point;
use crate::maths;

/// Control points of a quarter circle, seen from its ends: `4/3·tan(π/8)`; off by under 0.03 % of the radius.
const QUARTER: f64 = 0.552_284_749_830_793_4;

/// The `d` of a path.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Path(String);

impl Path {
    /// Nothing yet.
    pub const fn new() -> Self {
        Self(String::new())
    }

    /// What to print.
    pub fn text(&self) -> &str {
        &self.0
    }

    /// Whether there is nothing to print.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Begins a new piece.
    pub fn move_to(&mut self, to: Point) -> &mut Self {
        self.put('M', &[to])
    }

    /// A straight line.
    pub fn line_to(&mut self, to: Point) -> &mut Self {
        self.put('L', &[to])
    }

    /// A curve with two control points.
    pub fn curve_to(&mut self, first: Point, second: Point, to: Point) -> &mut Self {
        self.put('C', &[first, second, to])
    }

    /// Back to where the piece began.
    pub fn close(&mut self) -> &mut Self {
        self.0.push('Z');
        self
    }

    /// Adds a line through points.
    pub fn polyline(&mut self, points: &[Point]) -> &mut Self {
        for (index, point) in points.iter().enumerate() {
            self.put(if index == 0 { 'M' } else { 'L' }, &[*point]);
        }
        self
    }

    /// Adds a closed polygon.
    pub fn polygon(&mut self, points: &[Point]) -> &mut Self {
        if points.is_empty() { self } else { self.polyline(points).close() }
    }

    /// Adds an upright rectangle between two opposite corners.
    pub fn rectangle(&mut self, one: Point, two: Point) -> &mut Self {
        self.polygon(&[one, Point::new(two.x, one.y), two, Point::new(one.x, two.y)])
    }

    /// Adds an ellipse with upright axes.
    pub fn ellipse(&mut self, centre: Point, across: f64, down: f64) -> &mut Self {
        let place = |x: f64, y: f64| Point::new(centre.x + x * across, centre.y + y * down);
        self.move_to(place(1.0, 0.0));
        self.turn(&place, 0.0, 4.0 * FRAC_PI_2).close()
    }

    /// Goes on along the unit circle from angle `from` to `to` (radians), as `place` puts its points down.
    /// `place` must be affine; the path already stands at `from`.
    pub fn turn(&mut self, place: &impl Fn(f64, f64) -> Point, from: f64, to: f64) -> &mut Self {
        let pieces = ((to - from).abs() / FRAC_PI_2).ceil().max(1.0);
        let step = (to - from) / pieces;
        // Exact for quarters, and for smaller pieces by the same rule.
        let reach =
            if step.abs() == FRAC_PI_2 { QUARTER.copysign(step) } else { maths::tan(step / 4.0) * 4.0 / 3.0 };
        for piece in 0..pieces as usize {
            let (start, end) = (from + step * piece as f64, from + step * (piece + 1) as f64);
            let ((sin_a, cos_a), (sin_b, cos_b)) = (maths::sin_cos(start), maths::sin_cos(end));
            self.curve_to(
                place(cos_a - reach * sin_a, sin_a + reach * cos_a),
                place(cos_b + reach * sin_b, sin_b - reach * cos_b),
                place(cos_b, sin_b),
            );
        }
        self
    }

    fn put(&mut self, letter: char, points: &[Point]) -> &mut Self {
        self.0.push(letter);
        for (index, point) in points.iter().enumerate() {
            let gap = if index == 0 { "" } else { " " };
            write!(self.0, "{gap}{} {}", Short(point.x), Short(point.y)).expect("a string takes all");
        }
        self
    }
}

/// A number to a hundredth, without needless digits.
struct Short(f64);

impl core::fmt::Display for Short {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let rounded = (self.0 * 100.0).round() / 100.0;
        // No minus before a zero.
        write!(f, "{}", if rounded == 0.0 { 0.0 } else { rounded })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short() {
        let mut path = Path::new();
        path.polygon(&[Point::new(0.0, -0.001), Point::new(1.0 / 3.0, 2.0), Point::new(-1.5, 1.25)]);
        assert_eq!(path.text(), "M0 0L0.33 2L-1.5 1.25Z");
    }

    #[test]
    fn a_circle_is_four_quarters() {
        let mut path = Path::new();
        path.ellipse(Point::new(10.0, 10.0), 10.0, 10.0);
        assert_eq!(
            path.text(),
            "M20 10C20 15.52 15.52 20 10 20C4.48 20 0 15.52 0 10C0 4.48 4.48 0 10 0C15.52 0 20 4.48 20 10Z"
        );
    }

    #[test]
    fn nothing_stays_nothing() {
        assert!(Path::new().polygon(&[]).is_empty());
    }
}
