//! colour.csv: daylight and black bodies, colour temperatures, mireds.
//!
//! Compared: the CIE 15 daylight locus, black bodies, CIE 1960 u v, the nearest black body (Ohno's columns, which the header
//! finds exact), McCamy's cubic, mired shifts. Not implemented, so not compared: Robertson's and Hernández-Andrés' columns.

use std::path::Path;

use slantlight::light::colour::correlated::mccamy;
use slantlight::light::colour::daylight_locus::daylight;
use slantlight::light::colour::planck::black_body;
use slantlight::light::colour::{Chromaticity, correlated};
use slantlight::units::{Kelvin, Mired};

use super::kit::{self, Failure, Row, Table, Worst};

/// Half the last digit of a chromaticity.
const DIGIT: f64 = 5.1e-7;

/// The same, and what the observer every 5 nm instead of every 1 nm makes of black bodies.
const BLACK_BODY: f64 = DIGIT + 2.5e-6;

/// Mireds: what that and the digits of x and y make of the nearest black body.
const TEMPERATURE: f64 = 0.03;

/// Half the last digit of Duv, and the same.
const DUV: f64 = 5.1e-6 + 2.5e-6;

/// Half the last digit of kelvins.
const KELVIN: f64 = 0.051;

/// Half the last digit of mireds.
const MIRED: f64 = 0.000_51;

#[test]
fn colours() {
    kit::verify(check);
    println!("  columns skipped, no such method here: cct_robertson_k, duv_robertson, cct_hernandez_k");
}

/// Every row of `colour.csv`.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let mut worst = Worst::of("colour.csv");
    for row in Table::read(folder, "colour.csv")?.rows() {
        match row.text("kind")? {
            "mired" => mired(&row, &mut worst)?,
            "daylight" => {
                let got = daylight(kelvin(&row, "cct_k")?);
                same(&row, &mut worst, ["daylight x", "daylight y"], (got, DIGIT))?;
                temperature(&row, &mut worst)?;
            }
            "blackbody" => {
                let got = black_body(kelvin(&row, "cct_k")?);
                same(&row, &mut worst, ["black body x", "black body y"], (got, BLACK_BODY))?;
                temperature(&row, &mut worst)?;
            }
            _ => temperature(&row, &mut worst)?,
        }
        worst.row();
    }
    Ok(worst)
}

fn same(
    row: &Row<'_>,
    worst: &mut Worst,
    [x, y]: [&'static str; 2],
    (got, tolerance): (Chromaticity, f64),
) -> Result<(), Failure> {
    worst.near(row, (x, ""), (got.x(), row.number("x")?), tolerance)?;
    worst.near(row, (y, ""), (got.y(), row.number("y")?), tolerance)
}

fn temperature(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let light = Chromaticity::from_xy(row.number("x")?, row.number("y")?)
        .map_err(|error| row.differs("chromaticity", error, "a colour"))?;
    let (u, v) = light.uv_1960();
    worst.near(row, ("u", ""), (u, row.number("u_1960")?), DIGIT)?;
    worst.near(row, ("v", ""), (v, row.number("v_1960")?), DIGIT)?;
    worst.near(row, ("McCamy", "K"), (mccamy(light).kelvin(), row.number("cct_mccamy_k")?), KELVIN)?;
    let got = correlated(light).ok_or_else(|| row.differs("nearest black body", "none", "one"))?;
    let expected = kelvin(row, "cct_ohno_k")?;
    // The table's tenth of a kelvin is part of the tolerance where temperatures are low.
    let tolerance = TEMPERATURE + Mired::shift(expected, Kelvin::clamped(expected.kelvin() - KELVIN)).mired();
    let mireds = (got.temperature.mired().mired(), expected.mired().mired());
    worst.near(row, ("nearest black body", "mired"), mireds, tolerance)?;
    worst.near(row, ("Duv", ""), (got.duv, row.number("duv_ohno")?), DUV)
}

fn mired(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let shift = Mired::shift(kelvin(row, "from_k")?, kelvin(row, "to_k")?);
    worst.near(row, ("mired shift", "mired"), (shift.mired(), row.number("mired_shift")?), MIRED)
}

fn kelvin(row: &Row<'_>, column: &str) -> Result<Kelvin, Failure> {
    row.read(column, "a colour temperature", |text| Kelvin::from_kelvin(text.parse().ok()?).ok())
}
