//! Rise, set, transit and twilight, beside Skyfield with the ephemeris DE440: per civil date and per solar day.
//!
//! Two ways at once: the events that users get, from the day track, and those of the full method by the crate that
//! carries it. Times are good to 1 s where the height changes faster than 1° an hour, else to 2 s; the tables
//! themselves are rounded to the second. No event may be missing or extra.

use std::path::Path;

use slantlight::place::site::Site;
use slantlight::sky::delta_t::delta_t;
use slantlight::sky::events;
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Height, Instant, Latitude, Longitude, Metres, Span};
use solar_positioning::{Horizon, Location, SolarEvents};

use super::kit::{self, Failure, Row, Table, Worst};

/// Names in the columns, and the airless height of the centre.
const HEIGHTS: [(&str, Height); 6] = [
    ("rise_set", events::RISE_AND_SET),
    ("civil", events::CIVIL),
    ("nautical", events::NAUTICAL),
    ("astronomical", events::ASTRONOMICAL),
    ("plus6", Height::clamped(6.0)),
    ("minus4", Height::clamped(-4.0)),
];

/// Seconds, for a sun that climbs faster than [`FAST`], and for a slower one.
const FAST_TOLERANCE: f64 = 1.0;
const SLOW_TOLERANCE: f64 = 2.0;

/// Degrees an hour.
const FAST: f64 = 1.0;

/// Degrees: the day track with the app's own delta-T, see `sun_positions`.
const TRANSIT_HEIGHT: f64 = 0.0005;

/// The table reads this height off a cubic spline through samples 4 minutes apart, which flattens a peak near the
/// zenith by up to 5/384 · (4 min)⁴ · 3 (15°/h)⁴ / z³, z the distance from the zenith (de Boor 1978, chapter V).
const SPLINE: f64 = 0.039;

#[test]
fn sun_events() {
    kit::verify(civil_dates);
}

#[test]
fn sun_events_of_solar_days() {
    kit::verify(solar_days);
}

/// Every row of `sun_events.csv`.
pub fn civil_dates(folder: &Path) -> Result<Worst, Failure> {
    let mut worst = Worst::of("sun_events.csv");
    for row in Table::read(folder, "sun_events.csv")?.rows() {
        civil_date(&row, &mut worst)?;
        worst.row();
    }
    Ok(worst)
}

/// Every row of `sun_events_solar_day.csv`.
pub fn solar_days(folder: &Path) -> Result<Worst, Failure> {
    let mut worst = Worst::of("sun_events_solar_day.csv");
    for row in Table::read(folder, "sun_events_solar_day.csv")?.rows() {
        solar_day(&row, &mut worst)?;
        worst.row();
    }
    Ok(worst)
}

fn civil_date(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let (site, sun) = (site(row)?, Sun::new(site(row)?));
    let day = span(row, "day_start_utc", "day_end_utc")?;
    same(row, worst, &sun, "transit", &sun.transits(day), "transit_utc")?;
    same(row, worst, &sun, "transit", &sun.lower_transits(day), "lower_transit_utc")?;
    if let Some(height) = row.optional("transit_alt_deg")? {
        let transit = row.instants("transit_utc")?[0];
        let found = sun.direction(transit).height().degrees();
        let flattened = SPLINE / (90.0 - height).powi(3);
        worst.near(row, ("transit height", "°"), (found, height), TRANSIT_HEIGHT + flattened)?;
    }
    for (name, height) in HEIGHTS {
        let passage = sun.passage(height, day);
        let full = full_method(site, height, day);
        for (way, [up, down]) in
            [("day track", [passage.up(), passage.down()]), ("full method", [&full.0, &full.1])]
        {
            same(row, worst, &sun, way, up, &format!("{name}_up_utc"))?;
            same(row, worst, &sun, way, down, &format!("{name}_down_utc"))?;
        }
        state(row, name, &passage)?;
    }
    Ok(())
}

/// From lower transit to lower transit: the last crossing upwards before the noon and the first downwards after it.
fn solar_day(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let sun = Sun::new(site(row)?);
    let noon = row.instant("transit_utc")?;
    let (morning, evening) = (span(row, "from_utc", "transit_utc")?, span(row, "transit_utc", "to_utc")?);
    for (name, height) in HEIGHTS {
        let up: Vec<Instant> = sun.passage(height, morning).up().last().copied().into_iter().collect();
        let down: Vec<Instant> = sun.passage(height, evening).down().first().copied().into_iter().collect();
        same(row, worst, &sun, "day track", &up, &format!("{name}_up_utc"))?;
        same(row, worst, &sun, "day track", &down, &format!("{name}_down_utc"))?;
        let expected = row.text(&format!("{name}_state"))?;
        let above = sun.direction(noon).height() > height;
        let found = match (up.is_empty() && down.is_empty(), above) {
            (false, _) => "crosses",
            (true, true) => "above",
            (true, false) => "below",
        };
        if found != expected {
            return Err(row.differs(name, found, expected));
        }
    }
    let wide = Span::new(noon - Duration::from_minutes(60), noon + Duration::from_minutes(60)).unwrap();
    same(row, worst, &sun, "transit", &sun.transits(wide), "transit_utc")?;
    for column in ["from_utc", "to_utc"] {
        let midnight = row.instant(column)?;
        let wide =
            Span::new(midnight - Duration::from_minutes(60), midnight + Duration::from_minutes(60)).unwrap();
        same(row, worst, &sun, "transit", &sun.lower_transits(wide), column)?;
    }
    Ok(())
}

/// Crossings by the crate that carries the full method.
fn full_method(site: Site, height: Height, day: Span) -> (Vec<Instant>, Vec<Instant>) {
    let place = Location { latitude: site.latitude.degrees(), longitude: site.longitude.degrees() };
    let found = SolarEvents::new()
        .for_interval_from_julian(
            day.start().julian_date(),
            day.end().julian_date(),
            place,
            delta_t(day.middle()).seconds(),
            Horizon::Custom(height.degrees()),
        )
        .unwrap();
    let instants = |dates: &[f64]| dates.iter().map(|date| Instant::from_julian_date(*date)).collect();
    (instants(&found.rises), instants(&found.sets))
}

/// As many as the column holds, each at its time.
fn same(
    row: &Row<'_>,
    worst: &mut Worst,
    sun: &Sun,
    way: &'static str,
    found: &[Instant],
    column: &str,
) -> Result<(), Failure> {
    let expected = row.instants(column)?;
    if found.len() != expected.len() {
        return Err(row.differs(&format!("{way} {column}: count"), found.len(), expected.len()));
    }
    for (found, expected) in found.iter().zip(expected) {
        let off = (*found - expected).seconds();
        let fast = way == "transit" || climb(sun, expected) > FAST;
        let tolerance = if fast { FAST_TOLERANCE } else { SLOW_TOLERANCE };
        let kind = match (way, fast) {
            ("transit", _) => "transit",
            ("day track", true) => "day track, fast sun",
            ("day track", false) => "day track, slow sun",
            (_, true) => "full method, fast sun",
            (_, false) => "full method, slow sun",
        };
        worst.near(row, (kind, "s"), (off, 0.0), tolerance)?;
    }
    Ok(())
}

/// How fast the height changes, degrees an hour.
fn climb(sun: &Sun, at: Instant) -> f64 {
    let step = Duration::from_minutes(1);
    let (before, after) = (sun.direction(at - step).height(), sun.direction(at + step).height());
    (after.degrees() - before.degrees()).abs() * 30.0
}

fn state(row: &Row<'_>, name: &str, passage: &events::Passage) -> Result<(), Failure> {
    let found = match passage {
        events::Passage::Crosses { .. } => "crosses",
        events::Passage::AboveAllDay => "above",
        events::Passage::BelowAllDay => "below",
    };
    let expected = row.text(&format!("{name}_state"))?;
    if found == expected { Ok(()) } else { Err(row.differs(name, found, expected)) }
}

fn span(row: &Row<'_>, from: &str, to: &str) -> Result<Span, Failure> {
    let (from, to) = (row.instant(from)?, row.instant(to)?);
    Span::new(from, to).ok_or_else(|| row.differs("span", from, to))
}

fn site(row: &Row<'_>) -> Result<Site, Failure> {
    Ok(Site {
        latitude: row
            .read("lat_deg", "a latitude", |text| Latitude::from_degrees(text.parse().ok()?).ok())?,
        longitude: row
            .read("lon_deg", "a longitude", |text| Longitude::from_degrees(text.parse().ok()?).ok())?,
        elevation: Metres::default(),
    })
}
