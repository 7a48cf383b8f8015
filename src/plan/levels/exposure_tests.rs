//! A camera against handbook F and G5, and each setting found from the others there and back.

use super::*;
use crate::units::Metres;
use proptest::prelude::*;

fn camera(iso: f64) -> CameraSettings {
    CameraSettings { iso: Iso::clamped(iso), ..CameraSettings::default() }
}

#[test]
fn the_planning_exposures_of_the_handbook() {
    // F3: ISO 800, 24 fps, 180°, C 250; printed to three digits.
    let table =
        [(95_000.0, 79.6), (30_000.0, 44.7), (10_000.0, 25.8), (3000.0, 14.1), (757.0, 7.1), (400.0, 5.2)];
    for (lux, t) in table.into_iter().chain([(100.0, 2.6), (31.0, 1.4), (10.0, 0.82), (3.5, 0.48)]) {
        let got = solved(&camera(800.0), Lux::from_lux(lux), Sought::TStop).camera.t_stop.number();
        let half_digit = if t > 0.9 { 0.051 } else { 0.0051 };
        assert!((got - t).abs() <= half_digit, "{lux}: {got}");
    }
}

#[test]
fn a_lens_that_is_too_slow_says_by_how_much() {
    let set = solved(&camera(800.0), Lux::from_lux(10.0), Sought::TStop);
    let Some(Trouble::LensTooSlow(short)) = set.trouble else { panic!("{set:?}") };
    // F3: T0.82 (√(10 · 800/48/250) = 0.8165) where the lens opens to T2.
    assert!((short.stops() - 2.0 * crate::maths::log2(2.0 / 0.8165)).abs() < 0.01, "{short:?}");
    assert!((least_light(&camera(800.0)).lux() - 60.0).abs() < 0.01);
    // T-F4: 4800 at T2 and 10 lx.
    assert!((least_iso(&camera(800.0), Lux::from_lux(10.0)).iso() - 4800.0).abs() < 1.0);
}

#[test]
fn filters_and_shutters_have_their_limits() {
    let bright = solved(&camera(800.0), Lux::from_lux(95_000.0), Sought::Nd);
    assert!((bright.camera.nd.density() - 2.9).abs() < 0.05 && bright.trouble.is_none(), "T-F4");
    let dim = solved(&camera(800.0), Lux::from_lux(10.0), Sought::Nd);
    assert!(matches!(dim.trouble, Some(Trouble::NoLightToTake(_))) && dim.camera.nd == Density::default());
    let fixed = CameraSettings { shutter_is_fixed: true, ..camera(800.0) };
    assert_eq!(solved(&fixed, Lux::from_lux(100.0), Sought::Shutter).trouble, Some(Trouble::ShutterFixed));
    let short = solved(&camera(100.0), Lux::from_lux(100.0), Sought::Shutter);
    assert!(
        matches!(short.trouble, Some(Trouble::ShutterTooShort(_))) && short.camera.shutter.degrees() == 360.0
    );
}

#[test]
fn tones_and_windows() {
    // T-G4: 4 : 1 with 0.90 and 0.04 is 6.5 stops from end to end.
    let tones = Tones::of(Lux::from_lux(400.0), Lux::from_lux(100.0));
    assert!(((tones.highlight - tones.shadow).stops() - 6.5).abs() < 0.02);
    // T-G5: ground of 3419 cd/m² seen from a room of 326 lx: 6 stops over its wall of 50 %, 7.5 over middle grey.
    let view = window_view(Luminance::from_candelas_per_square_metre(3419.0), Lux::from_lux(326.0));
    assert!((view.over.stops() - 7.5).abs() < 0.05, "{view:?}");
    assert!((view.nd.stops().stops() - (view.over.stops() - 3.0)).abs() < 1e-9);
    assert_eq!(
        window_view(Luminance::from_candelas_per_square_metre(20.0), Lux::from_lux(326.0)).nd,
        Density::default()
    );
}

#[test]
fn mains_and_loads() {
    // T-F5 by way of the camera: 25 fps at 50 Hz is any; 24 fps has four; 120 fps has none.
    assert_eq!(
        shutters(&CameraSettings { rate: FrameRate::clamped(25.0), ..camera(400.0) }, Mains::Hertz50),
        Shutters::Any
    );
    let Shutters::Angles(angles) = shutters(&camera(400.0), Mains::Hertz50) else { panic!() };
    assert_eq!(angles.iter().map(|angle| angle.degrees()).collect::<Vec<_>>(), [86.4, 172.8, 259.2, 345.6]);
    let fast = CameraSettings { rate: FrameRate::clamped(120.0), ..camera(400.0) };
    assert_eq!(shutters(&fast, Mains::Hertz50), Shutters::Angles(vec![]));
    let film = CameraSettings { film: Some(Film::Mm16), load: Metres::from_feet(400.0), ..camera(400.0) };
    let (run, reels) = loads(&film, Duration::from_minutes(25)).unwrap();
    assert!((run.minutes() - 11.11).abs() < 0.01 && reels == 3);
    assert_eq!(loads(&camera(400.0), Duration::from_minutes(25)), None);
}

proptest! {
    #[test]
    fn whatever_is_sought_exposes_for_the_light(lux in 200.0..2e5f64, iso in 50.0..3200.0f64, t in 1.0..16.0f64) {
        let from = CameraSettings {
            t_stop: TStop::clamped(t),
            slowest_lens: TStop::clamped(0.1),
            ..camera(iso)
        };
        for sought in Sought::ALL {
            let set = solved(&from, Lux::from_lux(lux), sought);
            if set.trouble.is_none() {
                let over = set.camera.exposure().over(Lux::from_lux(lux), IncidentConstant::FLAT).stops();
                prop_assert!(over.abs() < 1e-9, "{:?} {}", sought, over);
            }
        }
    }
}
