//! daylight.csv: each model beside the row of the same model, with the digits the table prints as tolerance.
//!
//! Implemented: the clear sky of Ineichen and Perez; Perez' efficacies, for the radiation of every row that has any
//! (those of Bird and Hulstrom and of the simplified Solis among them); the polynomials of sun and sky and of the moon.
//! Not implemented, and counted: `gensky`'s absolute skies, and luminances of the zenith.

use std::path::Path;

use slantlight::light::daylight::clear_sky::{Irradiance, Turbidity, ineichen_perez};
use slantlight::light::daylight::efficacy::{Water, perez};
use slantlight::light::daylight::{moonlight, twilight};
use slantlight::units::{Degrees, Height, Metres, WattsPerSquareMetre};

use super::kit::{self, Failure, Row, Table, Worst};

/// Half the last digit of radiation, W/m².
const WATTS: f64 = 0.0005;

/// Half the last digit of light, lux.
const LUX: f64 = 0.05;

/// The program behind the table prints −5.52 for Perez' −5.53 in one class: 0.01 lm/W of some 90.
const EFFICACY: f64 = 0.000_11;

/// Half the last of six digits of the polynomials.
const SIX_DIGITS: f64 = 5.1e-6;

/// Half the last digit of the moon's parallax, relative; it counts twice.
const PARALLAX: f64 = 1e-9;

/// Equatorial radius of the Earth, metres: parallax and distance are one another's measure.
const EARTH_RADIUS: f64 = 6_378_137.0;

#[test]
fn daylight() {
    kit::verify(check);
    println!("  {}", skipped(&kit::folder()));
}

/// Every row of `daylight.csv` whose model there is.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let mut worst = Worst::of("daylight.csv");
    for row in Table::read(folder, "daylight.csv")?.rows() {
        match row.text("model")? {
            "ineichen_perez" => {
                clear_sky(&row, &mut worst)?;
                efficacies(&row, &mut worst)?;
            }
            "bird_perez" | "solis_perez" => efficacies(&row, &mut worst)?,
            "twilight_polynomial" => {
                let got = twilight::seidelmann(height(&row)?).lux();
                relative(&row, &mut worst, "sun and sky, polynomial", got)?;
            }
            "moonlight_polynomial" => moon(&row, &mut worst)?,
            model if model.starts_with("gensky") => continue,
            model => return Err(row.differs("model", "none of that name", model)),
        }
        worst.row();
    }
    Ok(worst)
}

fn clear_sky(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let turbidity = Turbidity::from_linke(row.number("linke_turbidity")?);
    let got = ineichen_perez(height(row)?, turbidity, Metres::default());
    let beam = (got.beam.watts_per_square_metre(), row.number("direct_normal_wm2")?);
    worst.near(row, ("clear sky: beam", "W/m²"), beam, WATTS * 1.001)?;
    let sky = (got.sky.watts_per_square_metre(), row.number("diffuse_horizontal_wm2")?);
    worst.near(row, ("clear sky: sky", "W/m²"), sky, WATTS * 1.001)
}

fn efficacies(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let (beam, sky) = (row.number("direct_normal_wm2")?, row.number("diffuse_horizontal_wm2")?);
    let watts = WattsPerSquareMetre::from_watts_per_square_metre;
    let radiation = Irradiance { beam: watts(beam), sky: watts(sky) };
    let got = perez(radiation, height(row)?, Water::USUAL);
    let expected = row.number("direct_normal_lux")?;
    worst.near(
        row,
        ("light of the beam", "lx"),
        (got.beam.lux(), expected),
        tolerance(expected, beam, sky),
    )?;
    let expected = row.number("diffuse_horizontal_lux")?;
    worst.near(row, ("light of the sky", "lx"), (got.sky.lux(), expected), tolerance(expected, sky, sky))?;
    let expected = row.number("global_horizontal_lux")?;
    let level = got.level(height(row)?).lux();
    worst.near(
        row,
        ("light on level ground", "lx"),
        (level, expected),
        tolerance(expected, beam.min(sky), sky),
    )
}

/// What the digits of the radiation leave open: its own, and those of the brightness in the efficacy.
fn tolerance(lux: f64, watts: f64, sky: f64) -> f64 {
    LUX + lux * (WATTS / watts.max(WATTS) + WATTS / sky + EFFICACY)
}

fn moon(row: &Row<'_>, worst: &mut Worst) -> Result<(), Failure> {
    let parallax = row.number("moon_parallax_deg")?.to_radians().sin();
    let phase = Degrees::from_degrees(row.number("moon_phase_angle_deg")?);
    let got = moonlight::seidelmann(height(row)?, phase, Metres::from_metres(EARTH_RADIUS / parallax)).lux();
    relative(row, worst, "moon, polynomial", got)
}

fn relative(row: &Row<'_>, worst: &mut Worst, what: &'static str, got: f64) -> Result<(), Failure> {
    let expected = row.number("global_horizontal_lux")?;
    worst.near(row, (what, "of it"), (got / expected, 1.0), SIX_DIGITS + PARALLAX)
}

fn height(row: &Row<'_>) -> Result<Height, Failure> {
    row.read("altitude_deg", "a height", |text| Height::from_degrees(text.parse().ok()?).ok())
}

/// The models without an implementation, and how many rows each has.
fn skipped(folder: &Path) -> String {
    let table = Table::read(folder, "daylight.csv").unwrap();
    let models: Vec<&str> = table.rows().map(|row| row.text("model").unwrap()).collect();
    let count = |name: &str| models.iter().filter(|model| **model == name).count();
    let names = ["gensky_cie_clear", "gensky_cie_intermediate", "gensky_cie_overcast"];
    let rows = names.map(|name| format!("{name} {}", count(name))).join(", ");
    format!("rows skipped, no such model here: {rows}")
}
