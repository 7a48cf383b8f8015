//! The exposure ramp of dusk: a camera's T-stops through the hours ahead, and when its slowest lens runs out.

use super::dusk::{Sample, opened, runs_out, whole_stops};
use super::exposure::{Sought, least_light, solved};
use crate::place::zone::Zone;
use crate::plan::kit::CameraSettings;
use crate::units::{Instant, TStop};
use crate::words::stops as numbers;
use crate::words::{self, Clock};

/// The hours ahead, as they are told.
#[derive(Clone, Copy, Debug)]
pub struct Ahead<'a> {
    /// Light of the key side.
    pub samples: &'a [Sample],
    /// The place's clock.
    pub zone: &'a Zone,
    /// 24 or 12 hours.
    pub clock: Clock,
}

impl Ahead<'_> {
    fn at(self, at: Instant) -> String {
        words::clock(words::to_the_minute(self.zone.local(at)).time(), self.clock)
    }

    /// A camera's T-stop now and whenever the light has fallen by one more stop, as far as its slowest lens opens.
    pub fn ramp(self, camera: &CameraSettings) -> Vec<(String, String)> {
        let Some((now, light)) = self.samples.first() else { return Vec::new() };
        let from = solved(camera, *light, Sought::TStop).camera.t_stop;
        let falls = whole_stops(self.samples).into_iter().map(|(at, down)| (at, opened(from, down)));
        let opens = |stop: &TStop| camera.slowest_lens.closed_from(*stop).stops() < 1e-9;
        let stops = core::iter::once((*now, from)).chain(falls).filter(|(_, stop)| opens(stop));
        let all: Vec<_> = stops.map(|(at, stop)| (self.at(at), numbers::t_stop(stop))).collect();
        if all.len() > 1 { all } else { Vec::new() }
    }

    /// "Runs out of stop at 18:52: T2 is its slowest lens."
    pub fn runs_out(self, camera: &CameraSettings) -> Option<String> {
        let at = self.at(runs_out(self.samples, least_light(camera))?);
        let lens = numbers::t_stop(camera.slowest_lens);
        Some(format!("Runs out of stop at {at}: {lens} is its slowest lens, without ND."))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::exposure::IncidentConstant;
    use crate::units::{Duration, Stops};

    #[test]
    fn a_lens_follows_the_dusk_until_it_is_open() {
        // A stop every five minutes from 18:50, from T5.6 on; the slowest lens is T2, three stops below.
        let camera = CameraSettings::default();
        let start = Instant::parse("2026-03-20T18:50:00Z").unwrap();
        let light = CameraSettings { t_stop: TStop::clamped(5.6569), ..camera }.exposure();
        let light = light.light(IncidentConstant::FLAT);
        let samples: Vec<Sample> = (0..6)
            .map(|n| {
                let down = Stops::from_stops(-f64::from(n));
                (start + Duration::from_minutes(5 * i64::from(n)), light.raised_by(down))
            })
            .collect();
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let ahead = Ahead { samples: &samples, zone: &zone, clock: Clock::TwentyFour };
        let ramp: Vec<String> = ahead.ramp(&camera).iter().map(|(at, stop)| format!("{at} {stop}")).collect();
        assert_eq!(ramp, ["18:50 T5.6", "18:55 T4", "19:00 T2.8", "19:05 T2"]);
        let out = ahead.runs_out(&camera);
        assert_eq!(out.as_deref(), Some("Runs out of stop at 19:05: T2 is its slowest lens, without ND."));
        let none = Ahead { samples: &samples[..1], ..ahead };
        assert_eq!((none.ramp(&camera), none.runs_out(&camera)), (Vec::new(), None));
    }
}
