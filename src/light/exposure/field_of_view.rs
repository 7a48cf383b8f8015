//! What a lens takes in: field of view and crop of the picture formats of [`super::super::format`].

use super::super::format::Format;
use crate::maths;
use crate::units::{Degrees, Metres};

/// Diagonal of the full frame, 36 × 24 mm: what crop factors are counted from.
const FULL_FRAME_DIAGONAL_MM: f64 = 43.27;

/// How many times longer a lens on full frame sees the same, by the diagonals.
pub fn crop_factor(format: &Format) -> f64 {
    FULL_FRAME_DIAGONAL_MM / maths::hypot(format.width_mm, format.height_mm)
}

/// What a lens takes in across; `squeeze` of an anamorphic lens, 1 for others.
pub fn angle_across(format: &Format, focal: Metres, squeeze: f64) -> Degrees {
    field_of_view(millimetres(format.width_mm * squeeze), focal)
}

/// What a lens takes in from bottom to top.
pub fn angle_up(format: &Format, focal: Metres) -> Degrees {
    field_of_view(millimetres(format.height_mm), focal)
}

/// `2 atan(w/2f)`, for a lens focused far away.
///
/// ```
/// # use slantlight::{light::exposure::field_of_view::field_of_view, units::Metres};
/// let across = field_of_view(Metres::from_metres(0.036), Metres::from_metres(0.050));
/// assert!((across.degrees() - 39.6).abs() < 0.01);
/// ```
pub fn field_of_view(size: Metres, focal: Metres) -> Degrees {
    Degrees::from_radians(2.0 * maths::atan2(size.metres(), 2.0 * focal.metres()))
}

fn millimetres(millimetres: f64) -> Metres {
    Metres::from_metres(millimetres / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::super::super::format::FORMATS;
    use super::*;

    #[test]
    fn the_table_of_the_handbook() {
        // F6: crop factor, angle across with 25, 35 and 50 mm, as printed (6 × 7 in whole degrees).
        let table = [
            (6.14, [13.2, 9.5, 6.6]),
            (3.93, [21.7, 15.6, 11.0]),
            (3.41, [23.2, 16.7, 11.7]),
            (2.97, [28.1, 20.3, 14.3]),
            (2.73, [29.6, 21.4, 15.0]),
            (2.00, [38.2, 27.8, 19.6]),
            (1.59, [47.4, 34.8, 24.8]),
            (1.53, [50.5, 37.3, 26.6]),
            (1.52, [52.9, 39.1, 28.0]),
            (1.39, [52.9, 39.1, 28.0]),
            (1.00, [71.5, 54.4, 39.6]),
            (0.79, [82.4, 64.1, 47.3]),
            (0.76, [92.8, 73.7, 55.4]),
            (0.48, [109.0, 90.0, 70.0]),
        ];
        for (format, (crop, angles)) in FORMATS.iter().zip(table) {
            assert!((crop_factor(format) - crop).abs() < 0.0101, "{}: {}", format.name, crop_factor(format));
            for (focal, angle) in [25.0, 35.0, 50.0].into_iter().zip(angles) {
                let got = angle_across(format, millimetres(focal), 1.0).degrees();
                let half_digit = if format.name == "6 × 7" { 0.5 } else { 0.051 };
                assert!((got - angle).abs() <= half_digit, "{} {focal}: {got}", format.name);
            }
        }
    }

    #[test]
    fn a_squeeze_of_two_widens_across_alone() {
        let (format, focal) = (&FORMATS[9], millimetres(50.0));
        let tangent = |angle: Degrees| maths::tan(angle.radians() / 2.0);
        let wider = tangent(angle_across(format, focal, 2.0)) / tangent(angle_across(format, focal, 1.0));
        assert!((wider - 2.0).abs() < 1e-12);
        let up = tangent(angle_up(format, focal)) / tangent(angle_across(format, focal, 1.0));
        assert!((up - format.height_mm / format.width_mm).abs() < 1e-12);
    }
}
