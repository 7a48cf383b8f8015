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
    let Some(start) = outline.last().copied() else { return Moments::default() };
    let (mut even, mut graded, mut solid) = (0.0, 0.0, SolidAngle::default());
    let first = start.norm();
    // Lengths of the corners are kept beside them: no corner is made a unit vector.
    let (mut from, mut far, mut rise, mut from_start) = (start, first, start.z / first, first * first);
    for to in outline.iter().copied() {
        let (across, dot, to_far, to_start) = (from.cross(to), from.dot(to), to.norm(), start.dot(to));
        let (sine, to_rise, both) = (across.norm(), to.z / to_far, far * to_far + dot);
        if sine > 0.0 {
            let (facing, per) = (normal.dot(across), 1.0 / both);
            // Half of the side's length is the arc of sin/(1 + cos), the tangent of that half.
            even += facing / sine * maths::atan(sine * per);
            graded += facing * (rise + to_rise) * per;
        }
        solid.add(start.dot(across), first * both + from_start * to_far + to_start * far);
        (from, far, rise, from_start) = (to, to_far, to_rise, to_start);
    }
    // Clockwise corners have outward normals.
    let solid = solid.steradians();
    let sign = if solid < 0.0 { -1.0 } else { 1.0 };
    Moments { even: sign * even, graded: (normal.z * solid.abs() + sign * graded) / 3.0 }
}

/// Solid angle of a fan of triangles of directions, signed by the way round, not over a half-sphere: the angle of a product of
/// complex numbers, one for each triangle, so that it is asked for once. Source: van Oosterom and Strackee (1983), eq. 8.
struct SolidAngle {
    real: f64,
    imaginary: f64,
}

impl Default for SolidAngle {
    fn default() -> Self {
        Self { real: 1.0, imaginary: 0.0 }
    }
}

impl SolidAngle {
    /// A triangle, by its triple product, and by the product of its corners' lengths and each length times the product of the
    /// other two corners.
    fn add(&mut self, triple: f64, dots: f64) {
        let Self { real, imaginary } = *self;
        (self.real, self.imaginary) = (real * dots - imaginary * triple, real * triple + imaginary * dots);
    }

    fn steradians(&self) -> f64 {
        2.0 * maths::atan2(self.imaginary, self.real)
    }
}

/// `∫ f(ω) dω` by quadrature.
pub(super) fn integral(outline: &[Way], function: &impl Fn(Way) -> f64) -> f64 {
    let mut sum = 0.0;
    samples(outline, &mut |way, steradians| sum += function(way) * steradians);
    sum
}

/// Calls `each` with the directions of the quadrature, unit vectors, and the steradians that each stands for.
pub(super) fn samples(outline: &[Way], each: &mut impl FnMut(Way, f64)) {
    let mut units = outline.iter().filter_map(|corner| corner.unit());
    let Some((first, mut from)) = units.next().zip(units.next()) else { return };
    for to in units {
        triangle([first, from, to], each);
        from = to;
    }
}

/// A triangle, halved across its longest side until it is small.
fn triangle([a, b, c]: [Way; 3], each: &mut impl FnMut(Way, f64)) {
    let square = |one: Way, other: Way| (one - other).dot(one - other);
    let sides = [(square(a, b), [a, b, c]), (square(b, c), [b, c, a]), (square(c, a), [c, a, b])];
    let (longest, [from, to, apex]) =
        sides.into_iter().fold(sides[0], |most, side| if side.0 > most.0 { side } else { most });
    if let Some(middle) = (from + to).unit().filter(|_| longest > LONGEST) {
        triangle([from, middle, apex], each);
        return triangle([middle, to, apex], each);
    }
    // A flat piece of the plane through the corners: dω = (distance of the plane)/r³ dA.
    let volume = (b - a).cross(c - a).dot(a).abs() / 2.0;
    for ([p, q, r], weight) in &RULE {
        let point = a * *p + b * *q + c * *r;
        let distance = point.norm();
        each(point * (1.0 / distance), volume * weight / (distance * distance * distance));
    }
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
