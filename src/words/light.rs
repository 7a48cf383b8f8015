//! Illuminance: "47 lx", "1,200 lx", "54 klx".

use crate::units::Lux;

/// Two digits that count: a model of the sky is good to half a stop.
pub fn lux(light: Lux) -> String {
    let lux = light.lux().max(0.0);
    if lux < 10.0 {
        return format!("{lux:.1} lx");
    }
    let steps = [10_000.0, 1000.0, 100.0, 10.0];
    let step = steps.into_iter().find(|step| *step * 10.0 <= lux).unwrap_or(1.0);
    let rounded = (lux / step).round() * step;
    match rounded as u64 {
        few @ 0..1000 => format!("{few} lx"),
        some @ 1000..10_000 => format!("{},{:03} lx", some / 1000, some % 1000),
        many => format!("{} klx", many / 1000),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_digits_count() {
        let words = |number: f64| lux(Lux::from_lux(number));
        assert_eq!(words(3.47), "3.5 lx");
        assert_eq!(words(46.6), "47 lx");
        assert_eq!(words(474.0), "470 lx");
        assert_eq!(words(1234.0), "1,200 lx");
        assert_eq!(words(54_321.0), "54 klx");
        assert_eq!(words(103_000.0), "100 klx");
    }
}
