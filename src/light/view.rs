//! What a spot sees of the outside, as directions with weights: sky, and ground with all that stands on it.
//!
//! Made once for a spot; the light of any hour on a plane of any tilt is then one sum. In a room only what openings show is
//! here ([`super::skylight`]'s outlines and glass, so that both say the same); the room's own light is
//! [`super::interreflected`]'s. A window seen small has some thirty directions.

use super::above_line;
use super::seen_sky::samples;
use super::skylight::{Inside, of_the_sky};
use crate::maths;
use crate::place::aperture::for_each_outline;
use crate::place::cone::Cone;
use crate::place::inside::Spot;
use crate::place::polygon::Few;
use crate::place::skyline::Skyline;
use crate::units::{Degrees, InRoom, Share, Vector, World};

/// Rings (from nadir to zenith, even in the sine of the height) and sectors in the open, where all of it is seen (our choice,
/// within 1 %).
const OPEN: (usize, usize) = (32, 32);

/// What a piece shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shows {
    /// Sky.
    Sky,
    /// Ground, houses, hills: taken as matt and level with the ground's light.
    Ground,
}

/// A piece of what is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Where to, a unit vector.
    pub towards: Vector<World>,
    /// How large, steradians, less what glass and bars keep.
    pub steradians: f64,
    /// What it shows.
    pub shows: Shows,
}

/// All that a spot sees of the outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct View {
    /// Its pieces.
    pub pieces: Vec<Piece>,
}

impl View {
    /// In the open, with what blocks the sky.
    pub fn open(skyline: &Skyline) -> Self {
        let mut pieces = Vec::with_capacity(OPEN.0 * OPEN.1);
        sphere(OPEN, |towards, steradians| {
            pieces.push(Piece { towards, steradians, shows: shows(skyline, towards) });
        });
        Self { pieces }
    }

    /// Through a room's openings alone.
    pub fn through(inside: &Inside<'_>, at: Vector<InRoom>) -> Self {
        let mut view = Self::default();
        let Some(spot) = Spot::new(inside.room, at) else { return view };
        for opening in &inside.room.openings {
            let share = of_the_sky(opening).fraction() * opening.unseen_bars().fraction();
            for_each_outline(&spot, opening, Degrees::default(), |outline| {
                let outline = outline.map(|corner| inside.room.world_from_room(corner));
                view.add(&outline, inside.line, share);
            });
        }
        view
    }

    /// With an opening that is known only by where it is seen; nothing is known of its glass.
    pub fn add_sighted(&mut self, cone: &Cone, line: &Skyline) {
        let (east, north) = (Vector::new(1.0, 0.0, 0.0), Vector::new(0.0, 1.0, 0.0));
        let rim = [east, north, -east, -north];
        for (at, pole) in (0..4).flat_map(|at| [(at, Vector::UP), (at, -Vector::UP)]) {
            let mut part = Few::new([rim[at], rim[(at + 1) % 4], pole]);
            cone.sides.iter().for_each(|side| part.cut(side.normal));
            self.add(&part, line, 1.0);
        }
    }

    fn add(&mut self, outline: &Few<World>, line: &Skyline, share: f64) {
        let pieces = &mut self.pieces;
        let mut put = |shows, part: &[Vector<World>]| {
            samples(part, &mut |towards, steradians| {
                pieces.push(Piece { towards, steradians: steradians * share, shows });
            });
        };
        above_line::sky(line, outline, |part| put(Shows::Sky, part));
        above_line::ground(line, outline, |part| put(Shows::Ground, part));
    }

    /// Share of a plane's half-sphere, weighed by the cosine, that shows something: its form factor.
    pub fn form_factor(&self, normal: Vector<World>) -> Share {
        let sum: f64 =
            self.pieces.iter().map(|piece| piece.steradians * piece.towards.dot(normal).max(0.0)).sum();
        Share::clamped(sum / core::f64::consts::PI)
    }
}

fn shows(skyline: &Skyline, towards: Vector<World>) -> Shows {
    let sky = if skyline.is_level() { towards.z >= 0.0 } else { skyline.clears(towards, Degrees::default()) };
    if sky { Shows::Sky } else { Shows::Ground }
}

/// Calls `each` with the middle and the size of every piece of the whole sphere.
fn sphere((rings, sectors): (usize, usize), mut each: impl FnMut(Vector<World>, f64)) {
    let size = 4.0 * core::f64::consts::PI / (rings * sectors) as f64;
    let turn = 2.0 * core::f64::consts::PI / sectors as f64;
    let around: Vec<(f64, f64)> = (0..sectors).map(|at| maths::sin_cos(turn * (at as f64 + 0.5))).collect();
    for ring in 0..rings {
        let up = 2.0 * (ring as f64 + 0.5) / rings as f64 - 1.0;
        let flat = (1.0 - up * up).sqrt();
        for (east, north) in &around {
            each(Vector::new(flat * east, flat * north, up), size);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::sky_model::SkyModel;
    use crate::light::skylight::Facing;
    use crate::place::aperture::cones;
    use crate::place::opening::Opening;
    use crate::place::room::Room;
    use crate::place::skyline::Point;
    use crate::units::{Bearing, Height, Metres};

    #[test]
    fn the_open_is_a_whole_half_sphere_for_any_plane() {
        let view = View::open(&Skyline::default());
        for (bearing, height) in [(0.0, 0.0), (123.0, 40.0), (280.0, -70.0), (0.0, 90.0)] {
            let normal = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let whole = view.form_factor(normal).fraction();
            assert!((whole - 1.0).abs() < 0.004, "{bearing} {height}: {whole}");
        }
    }

    /// A window 2 m wide, sill 0.9 and head 2.4 m, its middle before x = 5.
    fn room() -> Room {
        let m = |sizes: [f64; 4]| sizes.map(Metres::from_metres);
        let [width, depth, ceiling, _] = m([10.0, 8.0, 4.0, 0.0]);
        let mut room = Room::rectangle("r", "r", [width, depth, ceiling], Bearing::from_degrees(130.0));
        room.openings.push(Opening::rectangle("o", "o", 0, m([4.0, 0.9, 2.0, 1.5])));
        room
    }

    fn part(view: &View, shows: Shows) -> View {
        View { pieces: view.pieces.iter().filter(|piece| piece.shows == shows).copied().collect() }
    }

    #[test]
    fn a_window_before_a_face() {
        // T-C11: 2 × 1.5 m, 2 m away, sill 0.6 below and head 0.9 above the eye: 0.1885, of which 0.0782 ground.
        let (room, line) = (room(), Skyline::default());
        let outward = Bearing::from_degrees(130.0).level();
        let inside = Inside { room: &room, line: &line };
        let view = View::through(&inside, Vector::new(5.0, 2.0, 1.5));
        let factor = |view: &View| view.form_factor(outward).fraction();
        assert!((factor(&view) - 0.1885).abs() < 5e-5 + 1e-4, "{}", factor(&view));
        assert!((factor(&part(&view, Shows::Sky)) - 0.1104).abs() < 1e-4);
        assert!((factor(&part(&view, Shows::Ground)) - 0.0782).abs() < 1e-4);
        // The same window, only sighted.
        let cone = cones(&room, &room.openings[0], Vector::new(5.0, 2.0, 1.5), Degrees::default()).remove(0);
        let mut sighted = View::default();
        sighted.add_sighted(&cone, &line);
        assert!((factor(&sighted) - factor(&view)).abs() < 1e-4);
        let outdoors = Vector::new(5.0, -2.0, 1.5);
        assert_eq!(View::through(&inside, outdoors), View::default());
    }

    #[test]
    fn it_says_what_the_closed_form_says() {
        let mut room = room();
        (room.openings[0].reveal, room.openings[0].transmittance) = (Metres::from_metres(0.3), 0.8);
        let point = |bearing, height| Point {
            bearing: Bearing::from_degrees(bearing),
            height: Height::clamped(height),
        };
        let hill = Skyline::new(
            [(0.0, 3.0), (110.0, 4.0), (140.0, 14.0), (200.0, 2.0)].map(|(b, h)| point(b, h)).to_vec(),
        );
        for line in [Skyline::default(), hill] {
            let inside = Inside { room: &room, line: &line };
            let at = Vector::new(4.2, 3.0, 1.4);
            let seen = part(&View::through(&inside, at), Shows::Sky);
            let normal = Bearing::from_degrees(140.0).level();
            let overcast = |piece: &Piece| {
                let sky = (1.0 + 2.0 * piece.towards.z) / 3.0;
                sky * piece.steradians * piece.towards.dot(normal).max(0.0)
            };
            let sum: f64 = seen.pieces.iter().map(overcast).sum();
            let through = inside.sky(Facing { at, normal }, &SkyModel::OVERCAST);
            let exact = through[0].light.ratio() * 7.0 * core::f64::consts::PI / 9.0;
            assert!((sum / exact - 1.0).abs() < 1e-3, "{sum} {exact}");
        }
    }
}
