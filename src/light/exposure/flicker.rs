//! Shutters that lamps on the mains do not flicker in.
//!
//! A lamp on the mains pulses twice in a period. A frame that takes in whole pulses takes in the same light every time;
//! and where pulses in a frame come out whole, any shutter does. Common practice of the trade, derivable. Lamps driven
//! at kilohertz, three-phase feeds and wandering generators follow other rules: shoot a test.

use crate::units::{Degrees, FrameRate};

/// How near to whole a number of pulses must come (our choice: 24 and 23.976 stay apart).
const WHOLE: f64 = 1e-6;

/// Frequency of the mains.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mains {
    /// 50 Hz: 100 pulses a second.
    Hertz50,
    /// 60 Hz: 120 pulses a second.
    Hertz60,
}

impl Mains {
    /// Pulses of light in a second.
    pub const fn pulses(self) -> f64 {
        match self {
            Self::Hertz50 => 100.0,
            Self::Hertz60 => 120.0,
        }
    }
}

/// The shutter angles up to 360° that take in one, two … whole pulses: `360 fps n/(2f)`. None where even an open shutter
/// is too short for one.
///
/// ```
/// # use slantlight::{light::exposure::flicker::{Mains, safe_angles}, units::FrameRate};
/// let angles: Vec<_> = safe_angles(FrameRate::clamped(24.0), Mains::Hertz50).map(|angle| angle.degrees()).collect();
/// assert_eq!(angles, [86.4, 172.8, 259.2, 345.6]);
/// ```
pub fn safe_angles(rate: FrameRate, mains: Mains) -> impl Iterator<Item = Degrees> {
    let frame = mains.pulses() / rate.fps();
    let most = (frame + WHOLE).floor() as u32;
    (1..=most).map(move |n| Degrees::from_degrees(360.0 * rate.fps() * f64::from(n) / mains.pulses()))
}

/// Whether pulses in a frame come out whole, so that any shutter will do (if camera and mains keep their beat).
pub fn any_angle_is_safe(rate: FrameRate, mains: Mains) -> bool {
    let frame = mains.pulses() / rate.fps();
    frame > 0.5 && (frame - frame.round()).abs() < WHOLE
}

/// The safe angle nearest to the one wished for; `None` where there is none.
pub fn nearest_safe_angle(wished: Degrees, rate: FrameRate, mains: Mains) -> Option<Degrees> {
    let off = |angle: &Degrees| (angle.degrees() - wished.degrees()).abs();
    safe_angles(rate, mains).min_by(|one, two| off(one).total_cmp(&off(two)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::ShutterTime;
    use proptest::prelude::*;

    #[test]
    fn the_table_of_the_handbook() {
        // T-F5: frames a second, safe angles at 50 and 60 Hz, as printed.
        let table: [(f64, &[f64], &[f64]); 10] = [
            (24_000.0 / 1001.0, &[86.3, 172.6, 258.9, 345.3], &[71.9, 143.9, 215.8, 287.7, 359.6]),
            (24.0, &[86.4, 172.8, 259.2, 345.6], &[72.0, 144.0, 216.0, 288.0, 360.0]),
            (25.0, &[90.0, 180.0, 270.0, 360.0], &[75.0, 150.0, 225.0, 300.0]),
            (30.0, &[108.0, 216.0, 324.0], &[90.0, 180.0, 270.0, 360.0]),
            (48.0, &[172.8, 345.6], &[144.0, 288.0]),
            (50.0, &[180.0, 360.0], &[150.0, 300.0]),
            (60.0, &[216.0], &[180.0, 360.0]),
            (96.0, &[345.6], &[288.0]),
            (100.0, &[360.0], &[300.0]),
            (120.0, &[], &[360.0]),
        ];
        for (fps, fifty, sixty) in table {
            for (mains, expected) in [(Mains::Hertz50, fifty), (Mains::Hertz60, sixty)] {
                let got: Vec<f64> =
                    safe_angles(FrameRate::clamped(fps), mains).map(|angle| angle.degrees()).collect();
                assert_eq!(got.len(), expected.len(), "{fps} {mains:?}: {got:?}");
                for (got, expected) in got.iter().zip(expected) {
                    assert!((got - expected).abs() <= 0.0501, "{fps} {mains:?}: {got} beside {expected}");
                }
            }
        }
    }

    #[test]
    fn whole_pulses_in_a_frame_forgive_any_shutter() {
        // F5: 120/n or 100/n frames a second.
        for (fps, fifty, sixty) in
            [(24.0, false, true), (25.0, true, false), (50.0, true, false), (60.0, false, true)]
        {
            let rate = FrameRate::clamped(fps);
            assert_eq!(
                (any_angle_is_safe(rate, Mains::Hertz50), any_angle_is_safe(rate, Mains::Hertz60)),
                (fifty, sixty)
            );
        }
        assert!(!any_angle_is_safe(FrameRate::clamped(240.0), Mains::Hertz60));
    }

    #[test]
    fn half_a_turn_gives_way_to_the_mains() {
        let half = Degrees::from_degrees(180.0);
        let near = nearest_safe_angle(half, FrameRate::clamped(24.0), Mains::Hertz50).unwrap();
        assert!((near.degrees() - 172.8).abs() < 1e-9);
        assert_eq!(nearest_safe_angle(half, FrameRate::clamped(120.0), Mains::Hertz50), None);
    }

    proptest! {
        #[test]
        fn safe_shutters_take_in_whole_pulses(fps in 1.0..240.0f64) {
            let rate = FrameRate::clamped(fps);
            for angle in safe_angles(rate, Mains::Hertz60) {
                let pulses = ShutterTime::of_angle(angle, rate).seconds() * Mains::Hertz60.pulses();
                prop_assert!((pulses - pulses.round()).abs() < 1e-9 && angle.degrees() <= 360.0 + 1e-3);
            }
        }
    }
}
