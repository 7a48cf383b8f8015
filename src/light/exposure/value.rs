//! Exposure value: light and camera on one scale of stops.

use super::{IncidentConstant, ReflectedConstant};
use crate::maths;
use crate::units::{Iso, Luminance, Lux, ShutterTime, Stops, TStop};

/// Exposure value at ISO 100.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct ExposureValue(f64);

impl ExposureValue {
    /// From a number.
    pub const fn from_number(number: f64) -> Self {
        Self(number)
    }

    /// As a number.
    pub const fn number(self) -> f64 {
        self.0
    }

    /// Of light that arrives: `log₂(100 E/C)`.
    pub fn of_light(light: Lux, meter: IncidentConstant) -> Self {
        Self(maths::log2(100.0 * light.lux() / meter.number()))
    }

    /// Of light that leaves a surface: `log₂(100 L/K)`.
    pub fn of_luminance(luminance: Luminance, meter: ReflectedConstant) -> Self {
        Self(maths::log2(100.0 * luminance.candelas_per_square_metre() / meter.number()))
    }

    /// Of a camera at ISO 100: `log₂(T²/t)`.
    pub fn of_camera(t_stop: TStop, time: ShutterTime) -> Self {
        Self(maths::log2(t_stop.number() * t_stop.number() / time.seconds()))
    }

    /// The light that has it.
    pub fn light(self, meter: IncidentConstant) -> Lux {
        Lux::from_lux(maths::pow(2.0, self.0) * meter.number() / 100.0)
    }

    /// The luminance that has it.
    pub fn luminance(self, meter: ReflectedConstant) -> Luminance {
        Luminance::from_candelas_per_square_metre(maths::pow(2.0, self.0) * meter.number() / 100.0)
    }

    /// The value to set on a camera with this film: `EV + log₂(S/100)`.
    pub fn at_iso(self, iso: Iso) -> Self {
        Self(self.0 + maths::log2(iso.iso() / 100.0))
    }

    /// Stops from `other` up to here.
    pub fn over(self, other: Self) -> Stops {
        Stops::from_stops(self.0 - other.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::daylight::{ies, open, twilight};
    use crate::units::{Height, Share};
    use proptest::prelude::*;

    #[test]
    fn the_scale_of_the_handbook() {
        // F1: value, lux by disc and dome, cd/m², as printed.
        let table = [
            (-6.0, 0.039, 0.05, 0.002),
            (-4.0, 0.156, 0.21, 0.008),
            (-2.0, 0.625, 0.83, 0.031),
            (0.0, 2.5, 3.3, 0.125),
            (2.0, 10.0, 13.0, 0.5),
            (4.0, 40.0, 53.0, 2.0),
            (6.0, 160.0, 211.0, 8.0),
            (8.0, 640.0, 845.0, 32.0),
            (10.0, 2560.0, 3379.0, 128.0),
            (12.0, 10_240.0, 13_517.0, 512.0),
            (14.0, 40_960.0, 54_067.0, 2048.0),
            (15.0, 81_920.0, 108_134.0, 4096.0),
            (16.0, 163_840.0, 216_269.0, 8192.0),
        ];
        for (number, disc, dome, luminance) in table {
            let value = ExposureValue::from_number(number);
            assert!((value.light(IncidentConstant::FLAT).lux() - disc).abs() <= 0.0005, "{number}");
            let got = value.light(IncidentConstant::DOME).lux();
            assert!(
                (got - dome).abs()
                    <= if dome < 1.0 {
                        0.00501
                    } else if dome < 5.0 {
                        0.05
                    } else {
                        0.5
                    },
                "{got}"
            );
            let got = value.luminance(ReflectedConstant::USUAL).candelas_per_square_metre();
            assert!((got - luminance).abs() <= 0.0005, "{number}: {got}");
        }
    }

    #[test]
    fn dome_and_disc_differ_by_two_fifths() {
        // F1.
        let light = Lux::from_lux(1000.0);
        let [disc, dome] =
            [IncidentConstant::FLAT, IncidentConstant::DOME].map(|c| ExposureValue::of_light(light, c));
        assert!((disc.over(dome).stops() - 0.40).abs() < 0.005);
    }

    #[test]
    fn twilight_on_the_scale() {
        // Handbook C3, third row.
        let table =
            [(0.0, 8.2), (-0.83, 7.5), (-2.0, 6.3), (-3.0, 5.0), (-4.0, 3.6), (-5.0, 2.1), (-6.0, 0.5)];
        for (height, number) in
            table.into_iter().chain([(-8.0, -2.8), (-10.0, -5.8), (-12.0, -8.2), (-18.0, -11.9)])
        {
            let light = twilight::brown(Height::clamped(height));
            let got = ExposureValue::of_light(light, IncidentConstant::FLAT).number();
            assert!((got - number).abs() <= 0.0501, "{height}: {got}");
        }
    }

    #[test]
    fn sun_and_open_shade_of_the_printed_guide() {
        // Handbook F2 (ANSI PH2.7-1973): 15 in the sun, 12 in open shade, two hours and more after sunrise; C9 puts
        // both beside the model.
        for (height, bright, shadow) in [(20.0, 15.0, 11.1), (40.0, 15.2, 11.9), (60.0, 14.8, 12.3)] {
            let sides = open::sides(
                ies::Cover::Clear,
                Height::clamped(height),
                ies::SOLAR_CONSTANT,
                Share::clamped(0.2),
            );
            let value = |light| ExposureValue::of_light(light, IncidentConstant::FLAT).number();
            assert!(
                (value(sides.bright) - bright).abs() < 0.06 && (value(sides.shadow) - shadow).abs() < 0.06
            );
            assert!((value(sides.bright) - 15.0).abs() < 0.3 && (value(sides.shadow) - 12.0).abs() < 1.0);
        }
    }

    proptest! {
        #[test]
        fn apex_adds_up(t_stop in 0.7..64.0f64, time in 1e-4..10.0f64, iso in 6.0..25_600.0f64) {
            // ANSI PH2.12: Av = 2 log₂ N, Tv = −log₂ t, Ev = Av + Tv; film moves it by log₂(S/100).
            let value = ExposureValue::of_camera(TStop::clamped(t_stop), ShutterTime::clamped(time));
            let added = 2.0 * maths::log2(t_stop) - maths::log2(time);
            prop_assert!((value.number() - added).abs() < 1e-9);
            let on_film = value.at_iso(Iso::clamped(iso));
            prop_assert!((on_film.over(value).stops() - maths::log2(iso / 100.0)).abs() < 1e-9);
        }

        #[test]
        fn there_and_back(number in -12.0..20.0f64) {
            let value = ExposureValue::from_number(number);
            let light = ExposureValue::of_light(value.light(IncidentConstant::DOME), IncidentConstant::DOME);
            let luminance = value.luminance(ReflectedConstant::USUAL);
            let seen = ExposureValue::of_luminance(luminance, ReflectedConstant::USUAL);
            prop_assert!((light.number() - number).abs() < 1e-9 && (seen.number() - number).abs() < 1e-9);
        }
    }
}
