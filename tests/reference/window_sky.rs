//! window_sky.csv with rooms.json: the sky's light at points of rooms, on level and upright planes, under three skies.
//!
//! The exact columns print seven decimals, so half a digit, and the overcast and uniform ones are held to 1e-4 beside it;
//! the clear sky to 1 %. Radiance's columns hold sampling noise: each row within six of its standard errors, and all of a sky
//! within 1.5 in the root mean square.

use std::collections::HashMap;
use std::path::Path;

use slantlight::light::sky_model::SkyModel;
use slantlight::light::skylight::{Facing, Inside};
use slantlight::place::room::Room;
use slantlight::place::skyline::Skyline;
use slantlight::units::{Bearing, Height, Vector, World};

use super::kit::{self, Failure, Row, Table, Worst};
use super::window_light::rooms;

/// Half a digit of the exact columns and of its own quadrature's last step.
const PRINTED: f64 = 2e-6;

/// Share of the value that an exact column may be off, and the same for the clear sky.
const EXACT: f64 = 1e-4;
const CLEAR: f64 = 0.01;

/// Standard errors that one row may be off, what is added to them, and their root mean square over a sky.
const SIGMAS: f64 = 6.0;
const FLOOR: f64 = 1e-6;
const MEAN: f64 = 1.5;

/// A sky: its three columns, and how near the exact one must be.
struct Sky {
    exact: &'static str,
    traced: &'static str,
    error: &'static str,
    /// What the root mean square of its sampling errors is called.
    mean: &'static str,
    share: f64,
}

const SKIES: [Sky; 3] = [
    Sky {
        exact: "overcast_exact",
        traced: "overcast_radiance",
        error: "overcast_radiance_err",
        mean: "overcast_radiance, root mean square",
        share: EXACT,
    },
    Sky {
        exact: "uniform_exact",
        traced: "uniform_radiance",
        error: "uniform_radiance_err",
        mean: "uniform_radiance, root mean square",
        share: EXACT,
    },
    Sky {
        exact: "clear_exact",
        traced: "clear_radiance",
        error: "clear_radiance_err",
        mean: "clear_radiance, root mean square",
        share: CLEAR,
    },
];

#[test]
fn the_sky_through_the_openings_is_the_tables() {
    kit::verify(check);
}

/// Every row of window_sky.csv.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let rooms = rooms(folder)?;
    let table = Table::read(folder, "window_sky.csv")?;
    let mut worst = Worst::of("window_sky.csv");
    let mut squares = [0.0; 3];
    let mut last = None;
    for row in table.rows() {
        let sigmas = compare(&row, &rooms, &mut worst)?;
        squares = core::array::from_fn(|sky| squares[sky] + sigmas[sky] * sigmas[sky]);
        worst.row();
        last = Some(row);
    }
    let Some(row) = last else { return Ok(worst) };
    let count = table.rows().count() as f64;
    for (sky, square) in SKIES.iter().zip(squares) {
        worst.near(&row, (sky.mean, "σ"), ((square / count).sqrt(), 0.0), MEAN)?;
    }
    Ok(worst)
}

/// How many standard errors each sky is off.
fn compare(row: &Row<'_>, rooms: &HashMap<String, Room>, worst: &mut Worst) -> Result<[f64; 3], Failure> {
    let name = row.text("room")?;
    let room = rooms.get(name).ok_or_else(|| row.differs("room", "not in rooms.json", name))?;
    let at = Vector::new(row.number("x_m")?, row.number("y_m")?, row.number("z_m")?);
    let normal =
        row.optional("facing_bearing_deg")?.map_or(Vector::UP, |to| Bearing::from_degrees(to).level());
    let inside = Inside { room, line: &Skyline::default() };
    let clear = SkyModel::clear(sun(row)?);
    let mut sigmas = [0.0; 3];
    for (index, (sky, model)) in SKIES.iter().zip([SkyModel::OVERCAST, SkyModel::UNIFORM, clear]).enumerate()
    {
        let got = inside.sky_bare(Facing { at, normal }, &model).ratio();
        let exact = row.number(sky.exact)?;
        worst.near(row, (sky.exact, "of outdoors"), (got, exact), sky.share * exact + PRINTED)?;
        let (traced, error) = (row.number(sky.traced)?, row.number(sky.error)?);
        worst.near(row, (sky.traced, "of outdoors"), (got, traced), SIGMAS * error + FLOOR)?;
        // What the floor allows is no error of sampling.
        sigmas[index] = ((got - traced).abs() - FLOOR).max(0.0) / error.max(1e-12);
    }
    Ok(sigmas)
}

fn sun(row: &Row<'_>) -> Result<Vector<World>, Failure> {
    let height =
        Height::from_degrees(row.number("sun_alt_deg")?).map_err(|error| row.differs("height", error, ""))?;
    Ok(Vector::towards(Bearing::from_degrees(row.number("sun_az_deg")?), height))
}
