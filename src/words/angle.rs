//! Angles: "10–4°", "215° SW", "13.1°".

use crate::units::{Bearing, Degrees};

/// The sixteen points, clockwise from north.
const POINTS: [&str; 16] =
    ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

/// Whole degrees: "4°", "−6°".
pub fn degrees(angle: Degrees) -> String {
    format!("{}°", whole(angle.degrees()))
}

/// Degrees with one decimal: "13.1°". The sun is known to a few hundredths (handbook L).
pub fn degrees_fine(angle: Degrees) -> String {
    let tenths = (angle.degrees() * 10.0).round();
    let sign = if tenths < 0.0 { "−" } else { "" };
    format!("{sign}{:.1}°", tenths.abs() / 10.0)
}

/// "10–4°", in the order given; one number where both round to the same; "−6° to −4°" below zero.
pub fn degrees_from_to(from: Degrees, to: Degrees) -> String {
    let (first, last) = (from.degrees().round(), to.degrees().round());
    if first == last {
        degrees(to)
    } else if first < 0.0 || last < 0.0 {
        format!("{} to {}", degrees(from), degrees(to))
    } else {
        format!("{}–{}", whole(first), degrees(to))
    }
}

/// "215° SW".
pub fn bearing(bearing: Bearing) -> String {
    // 359.6° is north, not 360°.
    let turn = (bearing.degrees().round() as i64).rem_euclid(360);
    format!("{turn}° {}", compass_point(bearing))
}

/// "190°–228°".
pub fn bearings_from_to(from: Bearing, to: Bearing) -> String {
    let turn = |bearing: Bearing| (bearing.degrees().round() as i64).rem_euclid(360);
    format!("{}°–{}°", turn(from), turn(to))
}

/// Nearest of the sixteen points: "SW", "WSW".
pub fn compass_point(bearing: Bearing) -> &'static str {
    let step = 360.0 / POINTS.len() as f64;
    POINTS[(bearing.degrees() / step).round() as usize % POINTS.len()]
}

/// A whole number with a true minus sign and no minus zero.
fn whole(number: f64) -> String {
    let rounded = number.round();
    if rounded < 0.0 { format!("−{}", -rounded) } else { format!("{}", rounded.abs()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(degrees: f64) -> Degrees {
        Degrees::from_degrees(degrees)
    }

    #[test]
    fn degrees_are_whole_and_know_no_minus_zero() {
        assert_eq!(degrees(of(4.4)), "4°");
        assert_eq!(degrees(of(-6.0)), "−6°");
        assert_eq!(degrees(of(-0.2)), "0°");
        assert_eq!(degrees_fine(of(13.08)), "13.1°");
        assert_eq!(degrees_fine(of(-0.04)), "0.0°");
        assert_eq!(degrees_fine(of(-0.06)), "−0.1°");
    }

    #[test]
    fn ranges_keep_their_order() {
        assert_eq!(degrees_from_to(of(10.2), of(3.9)), "10–4°");
        assert_eq!(degrees_from_to(of(12.2), of(11.9)), "12°");
        assert_eq!(degrees_from_to(of(-6.0), of(-4.0)), "−6° to −4°");
        assert_eq!(degrees_from_to(of(2.0), of(-4.0)), "2° to −4°");
    }

    #[test]
    fn bearings_have_a_point() {
        assert_eq!(bearing(Bearing::from_degrees(215.0)), "215° SW");
        assert_eq!(bearing(Bearing::from_degrees(248.0)), "248° WSW");
        assert_eq!(bearing(Bearing::from_degrees(359.6)), "0° N");
    }
}
