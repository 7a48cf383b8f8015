//! The same work by the crate that carries the full method.

use slantlight::place::cone::Cone;
use slantlight::sky::refraction::{self, Air};
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Duration, Height, Instant, Span, Vector, World};
use solar_positioning::time::JulianDate;
use solar_positioning::{Horizon, Location, SolarEvents, SolarPosition, SolarPositions};

use super::scenes::Scene;

/// Only one minute of so many is computed, and one day of so many searched.
pub const PART: f64 = 60.0;
pub const DAYS_PART: f64 = 365.0 / 8.0;
const DAYS_STEP: usize = 46;

/// Terrestrial time less UT1 in 2026, seconds.
const DELTA_T: f64 = 69.1;

fn place(scene: &Scene) -> Location {
    Location { latitude: scene.site.latitude.degrees(), longitude: scene.site.longitude.degrees() }
}

fn year(scene: &Scene, positions: SolarPositions, height: f64) -> f64 {
    let (place, start) = (place(scene), scene.year.start().julian_date());
    (0..525_600 / PART as u32)
        .map(|step| {
            let date = JulianDate::new(start + f64::from(step) * PART / 1440.0, DELTA_T).unwrap();
            let sun = positions.at_from_julian(date, place, height, None).unwrap();
            sun.azimuth() + sun.zenith_angle()
        })
        .sum()
}

pub fn spa_year(scene: &Scene) -> f64 {
    year(scene, SolarPositions::new(), scene.site.elevation.metres())
}

pub fn grena_year(scene: &Scene) -> f64 {
    year(scene, SolarPositions::grena3(), 0.0)
}

pub fn rise_and_set(scene: &Scene) -> usize {
    let found = scene.days(DAYS_STEP).map(|day| {
        let (from, to) = (day.start().julian_date(), day.end().julian_date());
        let events = SolarEvents::new()
            .for_interval_from_julian(from, to, place(scene), DELTA_T, Horizon::SunriseSunset)
            .unwrap();
        events.rises.len() + events.sets.len()
    });
    found.sum()
}

/// Every minute of a day, shared by all set-ups, then bisection to 10 ms. The sum of all edges, so that none is left out.
pub fn scan(scene: &Scene) -> f64 {
    scene.days(DAYS_STEP).map(|day| scan_day(scene, day)).sum()
}

fn scan_day(scene: &Scene, day: Span) -> f64 {
    let marks: Vec<Instant> = Sun::minute_marks(day).collect();
    let directions: Vec<Vector<World>> = marks.iter().map(|at| seen(scene, *at)).collect();
    let edges = scene.setups.iter().map(|region| {
        let inside: Vec<bool> = directions.iter().map(|direction| region.contains(*direction)).collect();
        let changes = (1..inside.len()).filter(|n| inside[*n] != inside[*n - 1]);
        changes.map(|n| bisect(scene, region, marks[n - 1], inside[n]).unix_seconds()).sum::<f64>()
    });
    edges.sum()
}

fn bisect(scene: &Scene, region: &Cone, from: Instant, after: bool) -> Instant {
    let (mut low, mut high) = (from, from + Duration::from_minutes(1));
    while (high - low).millis() > 10 {
        let middle = low + Duration::from_millis((high - low).millis() / 2);
        if region.contains(seen(scene, middle)) == after {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

fn position(scene: &Scene, at: Instant) -> SolarPosition {
    let date = JulianDate::new(at.julian_date(), DELTA_T).unwrap();
    SolarPositions::new().at_from_julian(date, place(scene), scene.site.elevation.metres(), None).unwrap()
}

fn seen(scene: &Scene, at: Instant) -> Vector<World> {
    let sun = position(scene, at);
    let height = refraction::apparent(Height::clamped(sun.elevation_angle()), Air::STANDARD);
    Vector::towards(Bearing::from_degrees(sun.azimuth()), height)
}

/// Between the day track and the full method, every 997 s.
pub fn largest_error(scene: &Scene, sun: Sun) -> f64 {
    let start = scene.year.start();
    let errors = (0..31_000).map(|step| {
        let at = start + Duration::from_millis(step * 997_000);
        let full = position(scene, at);
        let direction =
            Vector::towards(Bearing::from_degrees(full.azimuth()), Height::clamped(full.elevation_angle()));
        sun.direction(at).angle_to(direction).degrees()
    });
    errors.fold(0.0, f64::max)
}
