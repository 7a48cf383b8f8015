//! The year, the site and the set-ups that are timed.

use slantlight::place::cone::{Cone, HalfSpace};
use slantlight::place::site::Site;
use slantlight::place::skyline::{Point, Skyline};
use slantlight::place::zone::Zone;
use slantlight::plan::stage::Stage;
use slantlight::plan::wish::face::InPicture;
use slantlight::plan::wish::{DateRange, SunOnMark};
use slantlight::project::demo;
use slantlight::project::stage::of_set_up;
use slantlight::sky::ephemeris::Ephemeris;
use slantlight::sky::search::Limb;
use slantlight::sky::sun::Sun;
use slantlight::units::{
    Bearing, Degrees, Duration, Height, Instant, Latitude, Longitude, Metres, Span, Vector,
};

/// Set-ups of a scene.
pub const SETUPS: usize = 10;

/// What is timed.
pub struct Scene {
    pub site: Site,
    pub year: Span,
    /// Eight planes each: a window, an arc of bearings, heights.
    pub setups: Vec<Cone>,
    /// 360 points between 2° and 13°.
    pub skyline: Skyline,
}

impl Scene {
    /// 2026 at 48.21 N 16.37 E.
    pub fn new() -> Self {
        let site = Site {
            latitude: Latitude::from_degrees(48.21).unwrap(),
            longitude: Longitude::from_degrees(16.37).unwrap(),
            elevation: Metres::from_metres(190.0),
        };
        let start = Instant::parse("2026-01-01T00:00:00Z").unwrap();
        let year = Span::new(start, start + Duration::from_minutes(365 * 1440)).unwrap();
        let setups = (0..SETUPS).map(|number| set_up(120.0 + 14.0 * number as f64)).collect();
        Self { site, year, setups, skyline: skyline() }
    }

    /// Days of the year, every `step`-th.
    pub fn days(&self, step: usize) -> impl Iterator<Item = Span> {
        let start = self.year.start();
        (0..365).step_by(step).map(move |day| {
            let from = start + Duration::from_minutes(day * 1440);
            Span::new(from, from + Duration::DAY).unwrap()
        })
    }
}

/// A store that holds nothing yet.
pub fn cold() -> &'static Ephemeris {
    Box::leak(Box::new(Ephemeris::new()))
}

/// The search for so many set-ups over the year; the number of spans found.
pub fn slots(scene: &Scene, sun: Sun, setups: usize) -> usize {
    let found = scene.setups[..setups].iter();
    found
        .map(|region| sun.spans_in(core::slice::from_ref(region), Limb::Centre, scene.year).as_slice().len())
        .sum()
}

/// The year that set-ups of the demo are searched in.
pub fn dates() -> DateRange {
    let date = |text: &str| text.parse().unwrap();
    DateRange { from: date("2027-01-01"), to: date("2027-12-31") }
}

/// The sail-maker at the bench by two windows: with her own lens, with one that is free to any bearing, and free with the
/// sun wished in the picture.
pub fn lenses() -> [Stage; 3] {
    let stage = of_set_up(&demo::project(), "set-up-4a", Zone::fixed("UTC", Duration::ZERO)).unwrap();
    let every = (0..360).map(|degree| Bearing::from_degrees(f64::from(degree)));
    let free = Stage { free: Some(every.collect()), ..stage.clone() };
    let mut in_picture = free.clone();
    (in_picture.wish.in_picture, in_picture.wish.sun_on_mark) = (InPicture::In, SunOnMark::Any);
    [stage, free, in_picture]
}

/// Hills between 2° and 12° with a corner every 10°, and roofs of half a degree on them: a fixed disorder.
fn skyline() -> Skyline {
    let hill = |number: u32| 2.0 + f64::from(number % 36 * 7919 % 101) / 10.0;
    let point = |degree: u32| {
        let (low, high, share) = (hill(degree / 10), hill(degree / 10 + 1), f64::from(degree % 10) / 10.0);
        let roof = f64::from(degree * 4153 % 11) / 20.0;
        Point {
            bearing: Bearing::from_degrees(f64::from(degree)),
            height: Height::clamped(low + (high - low) * share + roof),
        }
    };
    Skyline::new((0..360).map(point).collect())
}

/// A window 70° wide and from 2° to 50° high about a bearing, an arc of 50° in it, sun between 4° and 40°.
fn set_up(bearing: f64) -> Cone {
    let to = |off: f64, height: f64| {
        Vector::towards(Bearing::from_degrees(bearing + off), Height::clamped(height))
    };
    let corners = [to(-35.0, 2.0), to(35.0, 2.0), to(30.0, 50.0), to(-30.0, 50.0)];
    let mut sides: Vec<HalfSpace> = (0..4)
        .map(|n| HalfSpace::beside(corners[(n + 1) % 4].cross(corners[n]).unit().unwrap() * -1.0))
        .collect();
    let middle = to(0.0, 25.0);
    for side in &mut sides {
        if side.normal.dot(middle) < 0.0 {
            side.normal = -side.normal;
        }
    }
    let level = |off: f64, turn: f64| {
        HalfSpace::beside(Bearing::from_degrees(bearing + off).turned(Degrees::from_degrees(turn)).level())
    };
    sides.extend([level(-25.0, 90.0), level(25.0, -90.0)]);
    sides.push(HalfSpace { normal: Vector::UP, least: Height::clamped(4.0).sin() });
    sides.push(HalfSpace { normal: -Vector::UP, least: -Height::clamped(40.0).sin() });
    Cone { sides }
}
