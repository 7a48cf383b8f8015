//! window_light.csv with rooms.json: through which opening the direct sun reaches a point of a room.
//!
//! The table's rows keep 1 cm away from every shadow edge, so each must agree exactly. Its rooms are boxes whose y axis
//! has a bearing; ours turn by the outward normal of wall 0. Box wall y0 becomes wall 0, x1 wall 1, y1 wall 2, x0
//! wall 3; the axes are then the same, but the offsets of walls 2 and 3 run the other way.

use std::collections::HashMap;
use std::fs;
use std::path::Path;

use serde_json::Value;
use slantlight::place::aperture::lets_in;
use slantlight::place::opening::Opening;
use slantlight::place::room::Room;
use slantlight::units::{Bearing, Height, Metres, Vector};

use super::kit::{self, Failure, Row, Table, Worst};

/// Half a digit of a point's world coordinates, printed to 0.00001 m, and rounding.
const PRINTED: f64 = 0.000_005_000_1;

#[test]
fn the_sun_reaches_where_the_table_says() {
    kit::verify(check);
}

/// Every row of window_light.csv.
pub fn check(folder: &Path) -> Result<Worst, Failure> {
    let rooms = rooms(folder)?;
    let table = Table::read(folder, "window_light.csv")?;
    let mut worst = Worst::of("window_light.csv");
    for row in table.rows() {
        let name = row.text("room")?;
        let room = rooms.get(name).ok_or_else(|| row.differs("room", "not in rooms.json", name))?;
        compare(&row, room, &mut worst)?;
        worst.row();
    }
    Ok(worst)
}

fn compare(row: &Row<'_>, room: &Room, worst: &mut Worst) -> Result<(), Failure> {
    let point = Vector::new(row.number("x_m")?, row.number("y_m")?, row.number("z_m")?);
    let height =
        Height::from_degrees(row.number("sun_alt_deg")?).map_err(|e| row.differs("height", e, ""))?;
    let sun = Vector::towards(Bearing::from_degrees(row.number("sun_az_deg")?), height);
    let world = room.world_from_room(point);
    worst.near(row, ("east", "m"), (world.x, row.number("east_m")?), PRINTED)?;
    worst.near(row, ("north", "m"), (world.y, row.number("north_m")?), PRINTED)?;
    let through = through(room, |opening| lets_in(room, opening, point, sun));
    let expected = row.text("opening")?;
    if through != expected {
        return Err(row.differs("openings the sun comes through", through, expected));
    }
    let reaches = if through.is_empty() { "0" } else { "1" };
    if reaches != row.text("sun_reaches")? {
        return Err(row.differs("sun reaches", reaches, row.text("sun_reaches")?));
    }
    Ok(())
}

/// Numbers of the openings that let the sun in, counted from 1.
fn through(room: &Room, lets_in: impl Fn(&Opening) -> bool) -> String {
    let lit = room.openings.iter().filter(|opening| lets_in(opening));
    lit.map(|opening| opening.id.clone()).collect::<Vec<_>>().join(";")
}

/// All rooms of rooms.json by their ids.
pub fn rooms(folder: &Path) -> Result<HashMap<String, Room>, Failure> {
    let file = "rooms.json";
    let text = fs::read_to_string(folder.join(file)).map_err(|error| Failure::unreadable(file, &error))?;
    let malformed = |reason: &str| Failure::malformed(file, 0, reason);
    let json: Value = serde_json::from_str(&text).map_err(|error| malformed(&error.to_string()))?;
    let boxes = json["rooms"].as_array().ok_or_else(|| malformed("no rooms"))?;
    let named = boxes.iter().map(|one| {
        let room = room(one).ok_or_else(|| malformed(&format!("not a room: {one}")))?;
        let faults = room.check();
        if faults.is_empty() { Ok((room.id.clone(), room)) } else { Err(malformed(&format!("{faults:?}"))) }
    });
    named.collect()
}

/// A box of rooms.json as a room.
fn room(json: &Value) -> Option<Room> {
    let metres = |name: &str| json[name].as_f64().map(Metres::from_metres);
    let (width, depth) = (metres("width_m")?, metres("depth_m")?);
    let bearing = Bearing::from_degrees(json["y_axis_bearing_deg"].as_f64()?).reversed();
    let id = json["id"].as_str()?;
    let mut room = Room::rectangle(id, id, [width, depth, metres("height_m")?], bearing);
    let openings = json["openings"].as_array()?.iter().enumerate();
    let reveal = metres("wall_thickness_m")?;
    room.openings = openings
        .map(|(index, one)| Some(Opening { reveal, ..opening(index + 1, one, (width, depth))? }))
        .collect::<Option<_>>()?;
    Some(room)
}

fn opening(number: usize, json: &Value, (width, depth): (Metres, Metres)) -> Option<Opening> {
    let size = |name: &str| json[name].as_f64();
    let (from, to) = (size("along_min_m")?, size("along_max_m")?);
    let (sill, head) = (size("z_min_m")?, size("z_max_m")?);
    let (wall, offset) = match json["wall"].as_str()? {
        "y0" => (0, from),
        "x1" => (1, from),
        "y1" => (2, width.metres() - to),
        "x0" => (3, depth.metres() - to),
        _ => return None,
    };
    let sizes = [offset, sill, to - from, head - sill].map(Metres::from_metres);
    Some(Opening::rectangle(&number.to_string(), "opening", wall, sizes))
}
