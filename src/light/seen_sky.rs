//! Sums over a part of the sky with great circles for sides: what it brings to a plane.
//!
//! Corners are directions in order, of any length, all on the sky side of the horizon and of the plane. Closed forms for
//! skies that are even or linear in the sine of the height, a quadrature for all others.

use crate::maths;
use crate::units::{Vector, World};

type Way = Vector<World>;

/// Longest side of a piece of the quadrature, as the square of its chord: 15°. Our choice: 0.1 % for the clear sky.
const LONGEST: f64 = 0.068_15;

/// Corners and weights of the rule of degree 5 on a triangle, as shares of its three corners.
/// Source: Radon (1948), in the form of Strang and Fix (1973), table 4.1, number 5.
const RULE: [([f64; 3], f64); 7] = {
    let (a, b, wa) = (0.059_715_871_789_77, 0.470_142_064_105_115, 0.132_394_152_788_506);
    let (c, d, wc) = (0.797_426_985_353_087, 0.101_286_507_323_456, 0.125_939_180_544_827);
    let third = 1.0 / 3.0;
    [
        ([third, third, third], 0.225),
        ([a, b, b], wa),
        ([b, a, b], wa),
        ([b, b, a], wa),
        ([c, d, d], wc),
        ([d, c, d], wc),
        ([d, d, c], wc),
    ]
};

/// What an even sky of luminance 1 and one of luminance "sine of the height" bring to a plane.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Moments {
    /// `∫ n·ω dω`.
    pub even: f64,
    /// `∫ (n·ω)(z·ω) dω`.
    pub graded: f64,
}

/// Both in closed form.
///
/// Even: Lambert (1760), `½ Σ θ n·Γ` over the sides, θ their lengths and Γ their inward normals. Graded: the divergence
/// theorem on the sphere for the field `(z·ω)(n − (n·ω) ω)`, `⅓ [(n·z) Ω + Σ (n·Γ) z·∫ω ds]`, with
/// `∫ω ds = (a + b) tan(θ/2)` along a side from a to b. Derived here and checked by quadrature.
pub(super) fn moments<S>(outline: &[Vector<S>], normal: Vector<S>) -> Moments {
    let mut sum = Moments::default();
    let Some(last) = outline.last().and_then(|corner| corner.unit()) else { return sum };
    let (mut from, mut turn, mut solid) = (last, 0.0, 0.0);
    let mut first = None;
    for corner in outline {
        let Some(to) = corner.unit() else { continue };
        let (across, cos) = (from.cross(to), from.dot(to));
        let sin = across.norm();
        if sin > 0.0 {
            let facing = normal.dot(across) / sin;
            sum.even += 0.5 * maths::atan2(sin, cos) * facing;
            sum.graded += facing * (from.z + to.z) * sin / (1.0 + cos);
        }
        let start = *first.get_or_insert(to);
        let piece = solid_angle(start, from, to);
        (solid, turn) = (solid + piece.abs(), turn + piece);
        from = to;
    }
    // Clockwise corners have outward normals.
    let sign = if turn < 0.0 { -1.0 } else { 1.0 };
    Moments { even: sign * sum.even, graded: (normal.z * solid + sign * sum.graded) / 3.0 }
}

/// Solid angle of a triangle of directions, signed by the way round. Source: van Oosterom and Strackee (1983), eq. 8.
fn solid_angle<S>(a: Vector<S>, b: Vector<S>, c: Vector<S>) -> f64 {
    2.0 * maths::atan2(a.dot(b.cross(c)), 1.0 + a.dot(b) + b.dot(c) + c.dot(a))
}

/// `∫ f(ω) dω` by quadrature.
pub(super) fn integral(outline: &[Way], function: &impl Fn(Way) -> f64) -> f64 {
    let units: Vec<Way> = outline.iter().filter_map(|corner| corner.unit()).collect();
    let Some((first, rest)) = units.split_first() else { return 0.0 };
    rest.windows(2).map(|pair| triangle([*first, pair[0], pair[1]], function)).sum()
}

/// A triangle, halved across its longest side until it is small.
fn triangle([a, b, c]: [Way; 3], function: &impl Fn(Way) -> f64) -> f64 {
    let square = |one: Way, other: Way| (one - other).dot(one - other);
    let sides = [(square(a, b), [a, b, c]), (square(b, c), [b, c, a]), (square(c, a), [c, a, b])];
    let (longest, [from, to, apex]) =
        sides.into_iter().fold(sides[0], |most, side| if side.0 > most.0 { side } else { most });
    if let Some(middle) = (from + to).unit().filter(|_| longest > LONGEST) {
        return triangle([from, middle, apex], function) + triangle([middle, to, apex], function);
    }
    // A flat piece of the plane through the corners: dω = (distance of the plane)/r³ dA.
    let twice_area = (b - a).cross(c - a);
    let volume = twice_area.dot(a).abs() / 2.0;
    let sample = |([p, q, r], weight): &([f64; 3], f64)| {
        let point = a * *p + b * *q + c * *r;
        let distance = point.norm();
        function(point * (1.0 / distance)) * weight / (distance * distance * distance)
    };
    volume * RULE.iter().map(sample).sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::polygon::Few;
    use crate::units::{Bearing, Height};
    use proptest::prelude::*;

    const QUARTER: [Way; 3] = [Vector::new(1.0, 0.0, 0.0), Vector::new(0.0, 1.0, 0.0), Vector::UP];

    #[test]
    fn a_quarter_of_the_sky() {
        // ∫ cos = π/4 and ∫ cos² = (2π/3)/4 over an eighth of the sphere, for the level plane.
        let found = moments(&QUARTER, Vector::UP);
        let pi = core::f64::consts::PI;
        assert!(
            (found.even - pi / 4.0).abs() < 1e-14 && (found.graded - pi / 6.0).abs() < 1e-14,
            "{found:?}"
        );
        let mut back = QUARTER;
        back.reverse();
        assert!((moments(&back, Vector::UP).graded - found.graded).abs() < 1e-15);
        assert!((integral(&QUARTER, &|_| 1.0) - pi / 2.0).abs() < 1e-7);
        assert_eq!(moments::<World>(&[], Vector::UP), Moments::default());
    }

    proptest! {
        #[test]
        fn closed_forms_are_the_integrals(
            at in 0.0..360.0f64, width in 1.0..80.0f64, low in 0.0..40.0f64, tall in 1.0..40.0f64,
            facing in -80.0..80.0f64, tilt in -60.0..90.0f64,
        ) {
            let to = |bearing: f64, height: f64| Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let outline = [to(at, low), to(at + width, low), to(at + width, low + tall), to(at, low + tall)];
            let normal = to(at + facing, tilt);
            let mut outline = Few::new(outline);
            outline.cut(normal);
            let outline = outline.corners();
            let found = moments(outline, normal);
            let even = integral(outline, &|way| way.dot(normal));
            let graded = integral(outline, &|way| way.dot(normal) * way.z);
            prop_assert!((found.even - even).abs() < 1e-6 && (found.graded - graded).abs() < 1e-6, "{:?} {} {}", found, even, graded);
        }
    }
}
