//! Plane convex polygons, and the one way to cut them.
//!
//! Corners in order. A polygon of directions from a point is cut by planes through that point, which is the same.

use crate::units::Vector;

/// The part of a polygon on the inner side of a plane. Source: Sutherland and Hodgman (1974).
pub(crate) fn clip<S>(polygon: &[Vector<S>], through: Vector<S>, inwards: Vector<S>) -> Vec<Vector<S>> {
    let mut kept = Vec::with_capacity(polygon.len() + 1);
    let side = |corner: Vector<S>| inwards.dot(corner - through);
    let Some(mut before) = polygon.last().copied() else { return kept };
    let mut was = side(before);
    for corner in polygon.iter().copied() {
        let is = side(corner);
        if (was < 0.0) != (is < 0.0) {
            kept.push(before + (corner - before) * (was / (was - is)));
        }
        if is >= 0.0 {
            kept.push(corner);
        }
        (before, was) = (corner, is);
    }
    kept
}

/// What of a polygon lies outside of another one, in convex pieces; `sides` are planes of the other, each a point of it
/// and the way in.
pub(crate) fn without<S>(polygon: &[Vector<S>], sides: &[(Vector<S>, Vector<S>)]) -> Vec<Vec<Vector<S>>> {
    let mut rest = polygon.to_vec();
    let mut outside = Vec::new();
    for (through, inwards) in sides {
        let piece = clip(&rest, *through, -*inwards);
        if piece.len() > 2 {
            outside.push(piece);
        }
        rest = clip(&rest, *through, *inwards);
    }
    outside
}

/// Area of a plane polygon.
pub(crate) fn area<S>(polygon: &[Vector<S>]) -> f64 {
    let Some(first) = polygon.first().copied() else { return 0.0 };
    let pairs = polygon.windows(2).map(|pair| (pair[0] - first).cross(pair[1] - first));
    pairs.fold(Vector::new(0.0, 0.0, 0.0), |sum, each| sum + each).norm() / 2.0
}

/// Corners that a few cuts can make of a window: four, three more from what walls leave of a roof light, a plane, the horizon
/// and three sides of a piece of skyline, and two to spare.
const FEW: usize = 14;

/// A polygon of directions with few corners, cut by planes through the eye without asking for memory.
#[derive(Debug)]
pub(crate) struct Few<S> {
    corners: [Vector<S>; FEW],
    count: usize,
}

// Written out because a derive would ask `S` to be `Copy` as well.
impl<S> Clone for Few<S> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<S> Copy for Few<S> {}

impl<S> Few<S> {
    /// From corners in order, of which there may be at most fourteen.
    pub(crate) fn new(corners: impl IntoIterator<Item = Vector<S>>) -> Self {
        let mut few = Self { corners: [Vector::new(0.0, 0.0, 0.0); FEW], count: 0 };
        corners.into_iter().for_each(|corner| few.push(corner));
        few
    }

    /// Its corners; fewer than three are nothing.
    pub(crate) fn corners(&self) -> &[Vector<S>] {
        &self.corners[..self.count]
    }

    /// Whether nothing is left.
    pub(crate) fn is_nothing(&self) -> bool {
        self.count < 3
    }

    /// Keeps what lies on the inner side of a plane through the eye.
    pub(crate) fn cut(&mut self, inwards: Vector<S>) {
        if self.corners().iter().any(|corner| inwards.dot(*corner) < 0.0) {
            self.cut_through(inwards);
        }
    }

    fn cut_through(&mut self, inwards: Vector<S>) {
        let whole = *self;
        let sides = whole.corners.map(|corner| inwards.dot(corner));
        self.count = 0;
        let (mut before, mut was) = (whole.corners[whole.count - 1], sides[whole.count - 1]);
        for (corner, is) in whole.corners().iter().copied().zip(sides) {
            if (was < 0.0) != (is < 0.0) {
                self.push(before + (corner - before) * (was / (was - is)));
            }
            if is >= 0.0 {
                self.push(corner);
            }
            (before, was) = (corner, is);
        }
    }

    /// The same corners in another space.
    pub(crate) fn map<T>(&self, to: impl Fn(Vector<S>) -> Vector<T>) -> Few<T> {
        Few::new(self.corners().iter().map(|corner| to(*corner)))
    }

    fn push(&mut self, corner: Vector<S>) {
        if let Some(free) = self.corners.get_mut(self.count) {
            *free = corner;
            self.count += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::InRoom;

    #[test]
    fn what_is_cut_and_what_is_left_make_the_whole() {
        let at = |x: f64, y: f64| Vector::<InRoom>::new(x, y, 0.0);
        let square = [at(0.0, 0.0), at(4.0, 0.0), at(4.0, 4.0), at(0.0, 4.0)];
        let (right, up) = (at(1.0, 0.0), at(0.0, 1.0));
        let hole = [(at(1.0, 0.0), right), (at(2.0, 0.0), -right), (at(0.0, 3.0), -up), (at(0.0, 1.0), up)];
        let outside: f64 = without(&square, &hole).iter().map(|piece| area(piece)).sum();
        assert!((outside - 14.0).abs() < 1e-12, "{outside}");
        assert_eq!(clip(&square, at(9.0, 0.0), right), []);
        assert_eq!(clip::<InRoom>(&[], at(9.0, 0.0), right), []);
    }

    #[test]
    fn a_few_corners_are_cut_as_many_are() {
        let at = |x: f64, y: f64| Vector::<InRoom>::new(x, y, 1.0);
        let square = [at(0.0, 0.0), at(4.0, 0.0), at(4.0, 4.0), at(0.0, 4.0)];
        let mut few = Few::new(square);
        let planes = [Vector::new(1.0, 0.2, -1.0), Vector::new(-1.0, -1.0, 6.0), Vector::new(0.0, 1.0, 0.5)];
        let mut many = square.to_vec();
        for plane in planes {
            few.cut(plane);
            many = clip(&many, Vector::new(0.0, 0.0, 0.0), plane);
        }
        assert_eq!(few.corners(), many);
        few.cut(Vector::new(-1.0, 0.0, -9.0));
        assert!(few.is_nothing());
        few.cut(Vector::new(1.0, 0.0, 0.0));
        assert!(few.is_nothing());
    }
}
