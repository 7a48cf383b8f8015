//! Numbers of light as the trade says them: stops in thirds, T-stops by their marks, lux and kelvins without false digits.

use crate::light::ratio::Ratio;
use crate::units::{Density, Kelvin, Lux, Mired, Stops, TStop};

/// What is engraved on lenses, in thirds of a stop from T1 (convention of the trade).
const MARKS: [&str; 34] = [
    "1", "1.1", "1.3", "1.4", "1.6", "1.8", "2", "2.2", "2.5", "2.8", "3.2", "3.6", "4", "4.5", "5", "5.6",
    "6.3", "7.1", "8", "9", "10", "11", "13", "14", "16", "18", "20", "22", "25", "29", "32", "36", "40",
    "45",
];

/// "1⅔ stops", "⅓ stop", "2 stops", "0 stops"; without a sign.
pub fn stops(stops: Stops) -> String {
    let number = thirds(stops);
    let thirds = (stops.stops().abs() * 3.0).round();
    format!("{number} {}", if (1.0..=3.0).contains(&thirds) { "stop" } else { "stops" })
}

/// "1⅔", "⅓", "0": a number of stops to the nearest third, without its sign.
pub fn thirds(stops: Stops) -> String {
    if !stops.stops().is_finite() {
        return "many".to_owned();
    }
    let thirds = (stops.stops().abs() * 3.0).round() as i64;
    let part = ["", "⅓", "⅔"][(thirds % 3) as usize];
    match thirds / 3 {
        0 if !part.is_empty() => part.to_owned(),
        whole => format!("{whole}{part}"),
    }
}

/// "T2.8": the nearest third on a lens; beyond its marks "over T45", "under T1".
pub fn t_stop(t_stop: TStop) -> String {
    let thirds = t_stop.closed_from(TStop::clamped(1.0)).stops() * 3.0;
    match thirds.round() {
        below if below < 0.0 => "under T1".to_owned(),
        at => MARKS.get(at as usize).map_or_else(|| "over T45".to_owned(), |mark| format!("T{mark}")),
    }
}

/// "92,000 lx", "1,600 lx", "12 lx", "0.35 lx": two digits.
pub fn lux(lux: Lux) -> String {
    format!("{} lx", two_digits(lux.lux()))
}

/// "3 : 1", "1.6 : 1", "16 : 1".
pub fn ratio(ratio: Ratio) -> String {
    let number = ratio.number();
    let tenths = if number < 3.0 { (number * 10.0).round() / 10.0 } else { (number * 2.0).round() / 2.0 };
    let whole = if number >= 10.0 { number.round() } else { tenths };
    format!("{whole} : 1")
}

/// "4,400 K": steps of 100; from 10,000 on, of 1000.
pub fn kelvin(kelvin: Kelvin) -> String {
    let step = if kelvin.kelvin() < 10_000.0 { 100.0 } else { 1000.0 };
    format!("{} K", grouped((kelvin.kelvin() / step).round() * step))
}

/// "+134 mired", "−45 mired": whole ones.
pub fn mired(shift: Mired) -> String {
    let number = shift.mired().round();
    let sign = if number < 0.0 { "−" } else { "+" };
    format!("{sign}{} mired", number.abs())
}

/// "ND 0.9", "no ND": tenths and whole stops as they are sold, to the nearest third of a stop.
pub fn nd(density: Density) -> String {
    let tenths = (density.density() * 10.0).round();
    if tenths <= 0.0 { "no ND".to_owned() } else { format!("ND {:.1}", tenths / 10.0) }
}

/// "92,000": two digits, with commas; below one as far as it takes.
fn two_digits(number: f64) -> String {
    if !(number > 0.0 && number.is_finite()) {
        return "0".to_owned();
    }
    let mut step = 1e-6;
    while number / step >= 99.5 {
        step *= 10.0;
    }
    let rounded = (number / step).round() * step;
    if rounded >= 10.0 {
        return grouped(rounded);
    }
    // As many decimals as the step has.
    let decimals = [1.0, 0.1, 0.01, 0.001].iter().position(|one| step >= one * 0.5).unwrap_or(4);
    let text = format!("{rounded:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// "1,600": a whole number with commas.
pub fn whole(number: f64) -> String {
    grouped(number.round())
}

/// A whole number with commas between thousands.
fn grouped(number: f64) -> String {
    let digits = format!("{:.0}", number.abs());
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stops_are_said_in_thirds() {
        let said = |number: f64| stops(Stops::from_stops(number));
        assert_eq!(said(1.6), "1⅔ stops");
        assert_eq!(said(0.35), "⅓ stop");
        assert_eq!(said(-1.0), "1 stop");
        assert_eq!(said(1.34), "1⅓ stops");
        assert_eq!(said(0.1), "0 stops");
        assert_eq!(said(f64::INFINITY), "many stops");
    }

    #[test]
    fn t_stops_by_their_marks() {
        for (number, mark) in
            [(2.8, "T2.8"), (3.15, "T3.2"), (11.1, "T11"), (1.0, "T1"), (0.7, "under T1"), (90.0, "over T45")]
        {
            assert_eq!(t_stop(TStop::clamped(number)), mark);
        }
        // Every mark is a third of a stop from the next.
        for (at, mark) in MARKS.iter().enumerate() {
            let third = TStop::clamped(crate::maths::pow(2.0, at as f64 / 6.0));
            assert_eq!(t_stop(third), format!("T{mark}"));
        }
    }

    #[test]
    fn light_without_false_digits() {
        let said = |number: f64| lux(Lux::from_lux(number));
        assert_eq!(said(91_834.0), "92,000 lx");
        assert_eq!(said(1649.0), "1,600 lx");
        assert_eq!(said(99.7), "100 lx");
        assert_eq!(said(12.3), "12 lx");
        assert_eq!(said(3.47), "3.5 lx");
        assert_eq!(said(0.356), "0.36 lx");
        assert_eq!(said(0.0), "0 lx");
        assert_eq!(said(0.000_66), "0.0007 lx");
    }

    #[test]
    fn ratios_kelvins_mireds_filters() {
        let said = |number: f64| ratio(Ratio::from_number(number).unwrap());
        assert_eq!(
            (said(3.1).as_str(), said(1.62).as_str(), said(15.7).as_str()),
            ("3 : 1", "1.6 : 1", "16 : 1")
        );
        assert_eq!(kelvin(Kelvin::clamped(4420.0)), "4,400 K");
        assert_eq!(kelvin(Kelvin::clamped(12_345.0)), "12,000 K");
        assert_eq!(
            (mired(Mired::from_mired(133.9)), mired(Mired::from_mired(-45.2))),
            ("+134 mired".into(), "−45 mired".into())
        );
        assert_eq!(
            (nd(Density::from_density(0.9)), nd(Density::default())),
            ("ND 0.9".into(), "no ND".into())
        );
    }
}
