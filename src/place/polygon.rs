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
}
