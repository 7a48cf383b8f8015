//! T-stop, film speed, shutter time and filter: any one of them solved from the light and the others.

use super::IncidentConstant;
use crate::units::{Density, Iso, Lux, ShutterTime, Stops, TStop};

/// How a camera is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settings {
    /// Lens opening.
    pub t_stop: TStop,
    /// Film or sensor speed.
    pub iso: Iso,
    /// How long a frame is exposed.
    pub time: ShutterTime,
    /// Neutral density before the lens.
    pub filter: Density,
}

impl Settings {
    /// The light on the subject that these settings expose for: `E = C T²/(S t) · 10^D`.
    ///
    /// ```
    /// # use slantlight::light::exposure::{IncidentConstant, Settings};
    /// # use slantlight::units::{Degrees, Density, FrameRate, Iso, ShutterTime, TStop};
    /// let time = ShutterTime::of_angle(Degrees::from_degrees(180.0), FrameRate::clamped(24.0));
    /// let (t_stop, iso, filter) = (TStop::clamped(2.8), Iso::clamped(800.0), Density::default());
    /// let light = Settings { t_stop, iso, time, filter }.light(IncidentConstant::FLAT);
    /// assert!((light.lux() - 117.6).abs() < 0.05);
    /// ```
    pub fn light(&self, meter: IncidentConstant) -> Lux {
        let opening = self.t_stop.number() * self.t_stop.number();
        Lux::from_lux(
            meter.number() * opening / (self.iso.iso() * self.time.seconds()) * self.filter.factor(),
        )
    }

    /// How far a picture of a subject in `light` comes out over; negative under.
    pub fn over(&self, light: Lux, meter: IncidentConstant) -> Stops {
        light.stops_over(self.light(meter))
    }

    /// With the lens opened or closed to suit `light`.
    pub fn with_t_stop_for(self, light: Lux, meter: IncidentConstant) -> Self {
        let factor = self.over(light, meter).factor().sqrt();
        Self { t_stop: TStop::clamped(self.t_stop.number() * factor), ..self }
    }

    /// With another film speed to suit `light`.
    pub fn with_iso_for(self, light: Lux, meter: IncidentConstant) -> Self {
        Self { iso: Iso::clamped(self.iso.iso() / self.over(light, meter).factor()), ..self }
    }

    /// With another shutter time to suit `light`; whether a shutter can do it is for [`ShutterTime::angle`] to say.
    pub fn with_time_for(self, light: Lux, meter: IncidentConstant) -> Self {
        Self { time: ShutterTime::clamped(self.time.seconds() / self.over(light, meter).factor()), ..self }
    }

    /// With another filter to suit `light`; a density below zero is light that is missing.
    pub fn with_filter_for(self, light: Lux, meter: IncidentConstant) -> Self {
        Self { filter: self.filter + Density::from_stops(self.over(light, meter)), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{ExposureValue, ReflectedConstant};
    use super::*;
    use crate::units::{Degrees, FrameRate, Luminance};
    use proptest::prelude::*;

    fn film(t_stop: f64, iso: f64) -> Settings {
        let time = ShutterTime::of_angle(Degrees::from_degrees(180.0), FrameRate::clamped(24.0));
        Settings { t_stop: TStop::clamped(t_stop), iso: Iso::clamped(iso), time, filter: Density::default() }
    }

    #[test]
    fn light_for_a_lens_and_a_film() {
        // T-F1.
        assert!((film(2.8, 800.0).light(IncidentConstant::FLAT).lux() - 117.6).abs() < 0.05);
        assert!((film(2.8, 800.0).light(IncidentConstant::DOME).lux() - 155.0).abs() < 0.5);
    }

    #[test]
    fn hundred_foot_candles() {
        // T-F2: 100 foot-candles, ISO 100, 1/50 s, f/2.8 suit each other at C 275.
        let time = ShutterTime::clamped(1.0 / 50.0);
        let settings = Settings { time, ..film(2.8, 100.0) };
        let unit = settings.light(IncidentConstant::from_number(1.0)).lux();
        assert!((Lux::from_foot_candles(100.0).lux() / unit - 275.0).abs() < 0.6);
    }

    #[test]
    fn sunny_sixteen() {
        // T-F3: f/16, 1/100 s, ISO 100: EV 14.64, 64.0 kilolux by disc, 84.5 by dome, 3200 cd/m².
        let settings = Settings { time: ShutterTime::clamped(0.01), ..film(16.0, 100.0) };
        assert!((settings.light(IncidentConstant::FLAT).kilolux() - 64.0).abs() < 0.05);
        assert!((settings.light(IncidentConstant::DOME).kilolux() - 84.5).abs() < 0.05);
        let value = ExposureValue::of_camera(settings.t_stop, settings.time);
        assert!((value.number() - 14.64).abs() < 0.005);
        let luminance = Luminance::from_candelas_per_square_metre(3200.0);
        let same = ExposureValue::of_luminance(luminance, ReflectedConstant::USUAL);
        assert!((same.number() - value.number()).abs() < 0.005);
    }

    #[test]
    fn planning_exposures() {
        // Handbook F3: lux, T at ISO 800, 24 fps, 180°, C 250, as printed.
        let table = [
            (95_000.0, 79.6, 0.05),
            (30_000.0, 44.7, 0.05),
            (10_000.0, 25.8, 0.05),
            (3000.0, 14.1, 0.05),
            (757.0, 7.1, 0.05),
            (400.0, 5.2, 0.05),
            (100.0, 2.6, 0.05),
            (31.0, 1.4, 0.05),
            (10.0, 0.82, 0.005),
            (3.5, 0.48, 0.005),
        ];
        for (lux, t_stop, half_digit) in table {
            let got = film(2.8, 800.0).with_t_stop_for(Lux::from_lux(lux), IncidentConstant::FLAT).t_stop;
            assert!((got.number() - t_stop).abs() <= half_digit, "{lux}: {}", got.number());
        }
    }

    #[test]
    fn filter_for_the_sun_and_speed_for_dusk() {
        // T-F4: 95 kilolux to T2.8 is 9.66 stops, ND 2.9; at T2 ISO 480, 1564, 4800, 13.8 k for 100, 31, 10, 3.5 lx.
        let filter = film(2.8, 800.0).with_filter_for(Lux::from_lux(95_000.0), IncidentConstant::FLAT).filter;
        assert!((filter.stops().stops() - 9.66).abs() < 0.005 && (filter.density() - 2.9).abs() < 0.05);
        for (lux, iso) in [(100.0, 480.0), (31.0, 1564.0), (10.0, 4800.0), (3.5, 13_800.0)] {
            let got = film(2.0, 800.0).with_iso_for(Lux::from_lux(lux), IncidentConstant::FLAT).iso.iso();
            assert!((got / iso - 1.0).abs() < 0.012, "{lux}: {got}");
        }
    }

    proptest! {
        #[test]
        fn each_unknown_solved_meets_the_light(
            t_stop in 0.7..32.0f64, iso in 25.0..12_800.0f64, lux in 0.01..200_000.0f64, meter in 200.0..540.0f64,
        ) {
            let (from, light) = (film(t_stop, iso), Lux::from_lux(lux));
            let meter = IncidentConstant::from_number(meter);
            for solved in [
                from.with_t_stop_for(light, meter),
                from.with_iso_for(light, meter),
                from.with_time_for(light, meter),
                from.with_filter_for(light, meter),
            ] {
                prop_assert!(solved.over(light, meter).stops().abs() < 1e-9);
            }
        }

        #[test]
        fn a_stop_more_light_is_a_stop_over(lux in 0.01..200_000.0f64, t_stop in 0.7..32.0f64) {
            let settings = film(t_stop, 400.0);
            let over = |lux| settings.over(Lux::from_lux(lux), IncidentConstant::FLAT).stops();
            prop_assert!((over(2.0 * lux) - over(lux) - 1.0).abs() < 1e-9);
        }
    }
}
