//! Light that has been on a wall before: one number for all of a room, an estimate.
//!
//! Everything that comes in by the openings is taken to fall on surfaces of one mean reflectance and to spread evenly:
//! `E = ρ Φ / (A (1 − ρ))`. Good to about a factor of two: deep in the room there is less, beside a patch of sun more.
//!
//! # Source
//! The integrating sphere (Sumpner 1892), as in the split-flux method of Hopkinson, Longmore and Petherbridge (1954), with
//! one reflectance for all surfaces.

use super::patch::beams;
use super::skylight::{Inside, of_the_beam, of_the_sky};
use crate::place::polygon::area;
use crate::place::room::Room;
use crate::units::{Degrees, InRoom, Lux, Vector, World};

/// Light on any surface of a room from all the others, mean over the room, by where it came in from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bounced {
    /// From the sun.
    pub sun: Lux,
    /// From the sky above the skyline.
    pub sky: Lux,
    /// From the ground outside.
    pub ground: Lux,
}

impl Bounced {
    /// In a room with the sun towards a direction, its beam so strong, and `before` the light of sky and ground on a plane
    /// before the room.
    pub fn of(
        inside: &Inside<'_>,
        (sun, beam): (Vector<World>, Lux),
        before: impl Fn(Vector<World>) -> (Lux, Lux),
    ) -> Self {
        let mut lumens = (sun_lets_in(inside, sun) * beam.lux(), 0.0, 0.0);
        for (outward, square_metres) in facades(inside.room) {
            let (sky, ground) = before(outward);
            lumens.1 += sky.lux() * square_metres;
            lumens.2 += ground.lux() * square_metres;
        }
        let spread = |lumens: f64| Lux::from_lux(lumens * per_lumen(inside.room));
        Self { sun: spread(lumens.0), sky: spread(lumens.1), ground: spread(lumens.2) }
    }

    /// All of it.
    pub fn total(self) -> Lux {
        self.sun + self.sky + self.ground
    }
}

/// Lux that a lumen makes after its first surface: `ρ/(A (1 − ρ))`.
fn per_lumen(room: &Room) -> f64 {
    let share = room.reflectance.fraction().min(0.95);
    let walls: f64 = room.walls().map(|(_, wall)| wall.length.metres() * room.ceiling.metres()).sum();
    let surfaces = 2.0 * room.floor_area_m2() + walls;
    if surfaces > 0.0 { share / (surfaces * (1.0 - share)) } else { 0.0 }
}

/// Outward normals of the faces with openings, and what is clear in each: square metres less bars and glass.
fn facades(room: &Room) -> Vec<(Vector<World>, f64)> {
    let mut all: Vec<(Vector<World>, f64)> = Vec::new();
    for opening in room.openings.iter().filter(|opening| !opening.covered) {
        let Some(face) = room.face_of(opening) else { continue };
        let outward = room.world_from_room(face.outward);
        let clear = opening.width.metres() * opening.height.metres() * opening.clear_of_bars().fraction();
        let clear = clear * of_the_sky(opening).fraction();
        match all.iter_mut().find(|(other, _)| other.dot(outward) > 1.0 - 1e-12) {
            Some((_, sum)) => *sum += clear,
            None => all.push((outward, clear)),
        }
    }
    all
}

/// Square metres across the sun's beam that all openings let in, glass counted.
fn sun_lets_in(inside: &Inside<'_>, sun: Vector<World>) -> f64 {
    let room = inside.room;
    if !inside.line.clears(sun, Degrees::default()) {
        return 0.0;
    }
    let to_sun: Vector<InRoom> = room.room_from_world(sun);
    let each = beams(room, to_sun).into_iter().filter_map(|beam| {
        let opening = room.openings.get(beam.opening)?;
        let outward = room.face_of(opening)?.outward;
        let glass = of_the_beam(opening, outward.angle_to(to_sun)).fraction();
        Some(area(&beam.clear) * outward.dot(to_sun) * glass * opening.unseen_bars().fraction())
    });
    each.sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::sky_model::SkyModel;
    use crate::place::opening::Opening;
    use crate::place::skyline::Skyline;
    use crate::units::{Bearing, Height, Metres, Share};

    fn room() -> Room {
        let m = |sizes: [f64; 4]| sizes.map(Metres::from_metres);
        let [width, depth, ceiling, _] = m([5.0, 4.0, 2.5, 0.0]);
        let mut room = Room::rectangle("r", "r", [width, depth, ceiling], Bearing::from_degrees(180.0));
        room.openings.push(Opening::rectangle("o", "o", 0, m([1.0, 0.9, 2.0, 1.2])));
        room
    }

    /// Under an overcast sky of 10 kilolux over a ground of 0.2, with a beam.
    fn bounced(room: &Room, beam: f64) -> Bounced {
        let inside = Inside { room, line: &Skyline::default() };
        let sky = Lux::from_lux(10_000.0);
        let before = |normal: Vector<World>| {
            (inside.open_sky(normal, &SkyModel::OVERCAST).of(sky), sky * (0.2 * 0.5 * (1.0 - normal.z)))
        };
        let sun = Vector::towards(Bearing::from_degrees(180.0), Height::clamped(40.0));
        Bounced::of(&inside, (sun, Lux::from_lux(beam)), before)
    }

    #[test]
    fn the_flux_over_the_absorbing_surface() {
        // An overcast sky brings 0.396 of its level light to a wall, the ground 0.2/2; 2.4 m² of opening; 85 m² of room.
        let exact = 3.0 / 14.0 + 4.0 / (7.0 * core::f64::consts::PI);
        let expected = 10_000.0 * (exact + 0.1) * 2.4 / 85.0;
        let found = bounced(&room(), 0.0).total();
        assert!((found.lux() / expected - 1.0).abs() < 1e-9, "{found:?} {expected}");
    }

    #[test]
    fn it_follows_what_the_room_gives_back() {
        // ρ/(1 − ρ): four times as much at 0.8 as at 0.5, none from black walls.
        let with = |reflectance| {
            let room = Room { reflectance: Share::clamped(reflectance), ..room() };
            bounced(&room, 0.0).total().lux()
        };
        assert!((with(0.8) / with(0.5) - 4.0).abs() < 1e-9 && with(0.0) == 0.0);
    }

    #[test]
    fn sun_on_the_floor_lights_the_room() {
        assert!(bounced(&room(), 60_000.0).total() > bounced(&room(), 0.0).total() * 5.0);
    }
}
