//! Form factors: which share of what a face sees is a rectangle in front of it.
//!
//! Geometry only. A face in even surroundings of luminance L gets `π L` from all of them, and `π L F` from a part with the
//! form factor F.

use crate::maths;
use crate::units::{Metres, Share};

/// A rectangle parallel to the face, with one corner straight in front of it.
///
/// # Source
/// Standard closed form of radiative exchange (e.g. Howell, *A Catalog of Radiation Heat Transfer Configuration Factors*, B-3):
/// `F = 1/2π · [a/√(1+a²) · atan(b/√(1+a²)) + b/√(1+b²) · atan(a/√(1+b²))]`, `a = w/d`, `b = h/d`.
///
/// ```
/// # use slantlight::{light::form_factor::corner, units::Metres};
/// let factor = corner(Metres::from_metres(1.0), Metres::from_metres(0.9), Metres::from_metres(2.0));
/// assert!((factor.fraction() - 0.055_176).abs() < 5e-7);
/// ```
pub fn corner(width: Metres, height: Metres, distance: Metres) -> Share {
    let (a, b) = (width.metres() / distance.metres(), height.metres() / distance.metres());
    let half = |one: f64, other: f64| {
        let slant = (1.0 + one * one).sqrt();
        one / slant * maths::atan(other / slant)
    };
    Share::clamped((half(a, b) + half(b, a)) / (2.0 * core::f64::consts::PI))
}

/// A rectangle parallel to the face, with its middle straight in front of it.
pub fn centred(width: Metres, height: Metres, distance: Metres) -> Share {
    let half = |length: Metres| Metres::from_metres(length.metres() / 2.0);
    Share::clamped(4.0 * corner(half(width), half(height), distance).fraction())
}

/// A disc parallel to the face, with its middle straight in front of it: `r²/(d² + r²)`.
pub fn disc(radius: Metres, distance: Metres) -> Share {
    let (r, d) = (radius.metres() * radius.metres(), distance.metres() * distance.metres());
    Share::clamped(r / (d + r))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn metres(metres: f64) -> Metres {
        Metres::from_metres(metres)
    }

    #[test]
    fn a_window_before_a_face() {
        // T-C11: two metres wide, sill 0.6 m under and head 0.9 m over the eye, 2 m away: 0.1104 sky, 0.0782 ground.
        let both = |height| 2.0 * corner(metres(1.0), metres(height), metres(2.0)).fraction();
        let (sky, ground) = (both(0.9), both(0.6));
        assert!((sky - 0.1104).abs() < 5e-5 && (ground - 0.0782).abs() < 5e-5, "{sky} {ground}");
        assert!((sky + ground - 0.1885).abs() < 1e-4);
        // Even sky of 10 kilolux, ground 0.2, glass and frame 0.612: 771 lx.
        assert!((10_000.0 * 0.612 * (sky + 0.2 * ground) - 771.0).abs() < 0.6);
    }

    #[test]
    fn a_nearby_rectangle_is_everything() {
        assert!((centred(metres(1.0), metres(1.0), metres(1e-6)).fraction() - 1.0).abs() < 1e-5);
        assert!((disc(metres(1.0), metres(0.0)).fraction() - 1.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn nearer_is_more(width in 0.01..5.0f64, height in 0.01..5.0f64, distance in 0.05..20.0f64) {
            let at = |distance| centred(metres(width), metres(height), metres(distance)).fraction();
            prop_assert!(at(distance) > at(distance * 1.01) && at(distance) <= 1.0);
            // Far away, area over π d².
            let far = 200.0 * width.max(height);
            let point = width * height / (core::f64::consts::PI * far * far);
            prop_assert!((at(far) / point - 1.0).abs() < 1e-4);
        }
    }
}
