//! Light that has been on a wall before: one number for all of a room, an estimate.
//!
//! Everything that comes in by the openings is taken to fall on surfaces of one mean reflectance and to spread evenly:
//! `E = ρ Φ / (A (1 − ρ))`. Good to about a factor of two: deep in the room there is less, beside a patch of sun more.
//!
//! # Source
//! The integrating sphere (Sumpner 1892), as in the split-flux method of Hopkinson, Longmore and Petherbridge (1954), with
//! one reflectance for all surfaces.

use super::daylight::Outdoors;
use super::patch::beams;
use super::sky_model::SkyModel;
use super::skylight::{Inside, of_the_beam, of_the_sky};
use crate::place::polygon::area;
use crate::units::{InRoom, Lux, Share, Vector};

/// Mean reflectance of a room when nobody has said better: light ceiling, middling walls, dark floor. Common practice.
pub const REFLECTANCE: Share = Share::clamped(0.5);

/// Light on any surface from all the others, mean over the room.
pub fn interreflected(inside: &Inside<'_>, outdoors: &Outdoors, reflectance: Share) -> Lux {
    let room = inside.room;
    let share = reflectance.fraction().min(0.95);
    let top = room.ceiling.metres();
    let floor: Vec<Vector<InRoom>> =
        room.floor.iter().map(|[x, y]| Vector::new(x.metres(), y.metres(), 0.0)).collect();
    let walls: f64 = room.walls().map(|(_, wall)| wall.length.metres() * top).sum();
    let surfaces = 2.0 * area(&floor) + walls;
    let entering = from_sky_and_ground(inside, outdoors) + from_sun(inside, outdoors);
    if surfaces <= 0.0 {
        Lux::default()
    } else {
        Lux::from_lux(share * entering / (surfaces * (1.0 - share)))
    }
}

/// Lumens through all openings from the sky above the skyline and the ground below it.
fn from_sky_and_ground(inside: &Inside<'_>, outdoors: &Outdoors) -> f64 {
    let model = SkyModel::of(outdoors.sky, outdoors.sun);
    let level = outdoors.light.beam * outdoors.sun.z.max(0.0) + outdoors.light.sky;
    let each = inside.room.openings.iter().filter(|opening| !opening.covered).filter_map(|opening| {
        let normal = inside.room.world_from_room(inside.room.face_of(opening)?.outward);
        let sky = inside.open_sky(normal, &model).of(outdoors.light.sky);
        let ground = level.share(outdoors.ground) * (0.5 * (1.0 - normal.z));
        let clear = opening.width.metres() * opening.height.metres() * opening.clear_of_bars().fraction();
        Some((sky + ground).lux() * clear * of_the_sky(opening).fraction())
    });
    each.sum()
}

/// Lumens of the sun through all openings.
fn from_sun(inside: &Inside<'_>, outdoors: &Outdoors) -> f64 {
    let (room, sun) = (inside.room, outdoors.sun);
    if !inside.line.clears(sun, Default::default()) {
        return 0.0;
    }
    let each = beams(room, room.room_from_world(sun)).into_iter().filter_map(|beam| {
        let opening = room.openings.get(beam.opening)?;
        let normal = room.world_from_room(room.face_of(opening)?.outward);
        let glass = of_the_beam(opening, normal.angle_to(sun)).fraction() * opening.unseen_bars().fraction();
        Some(outdoors.light.beam.lux() * area(&beam.clear) * normal.dot(sun) * glass)
    });
    each.sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::daylight::{Daylight, Sky};
    use crate::place::opening::Opening;
    use crate::place::room::Room;
    use crate::place::skyline::Skyline;
    use crate::units::{Bearing, Height, Metres};

    fn outdoors(height: f64, beam: f64) -> Outdoors {
        let light = Daylight { beam: Lux::from_lux(beam), sky: Lux::from_lux(10_000.0) };
        let sun = Vector::towards(Bearing::from_degrees(180.0), Height::clamped(height));
        Outdoors { sky: Sky::Overcast, light, sun, ground: Share::clamped(0.2) }
    }

    fn room() -> Room {
        let m = |sizes: [f64; 4]| sizes.map(Metres::from_metres);
        let [width, depth, ceiling, _] = m([5.0, 4.0, 2.5, 0.0]);
        let mut room = Room::rectangle("r", "r", [width, depth, ceiling], Bearing::from_degrees(180.0));
        room.openings.push(Opening::rectangle("o", "o", 0, m([1.0, 0.9, 2.0, 1.2])));
        room
    }

    #[test]
    fn the_flux_over_the_absorbing_surface() {
        let room = room();
        let found = interreflected(
            &Inside { room: &room, line: &Skyline::default() },
            &outdoors(40.0, 0.0),
            REFLECTANCE,
        );
        // An overcast sky brings 0.396 of its level light to a wall, the ground 0.2/2; 2.4 m² of opening; 85 m² of room.
        let exact = 3.0 / 14.0 + 4.0 / (7.0 * core::f64::consts::PI);
        let expected = 10_000.0 * (exact + 0.1) * 2.4 / 85.0;
        assert!((found.lux() / expected - 1.0).abs() < 1e-9, "{found:?} {expected}");
    }

    #[test]
    fn sun_on_the_floor_lights_the_room_and_black_walls_do_not() {
        let room = room();
        let inside = Inside { room: &room, line: &Skyline::default() };
        let (dull, sunny) = (outdoors(40.0, 0.0), outdoors(40.0, 60_000.0));
        assert!(
            interreflected(&inside, &sunny, REFLECTANCE) > interreflected(&inside, &dull, REFLECTANCE) * 5.0
        );
        assert_eq!(interreflected(&inside, &sunny, Share::NONE), Lux::default());
    }
}
