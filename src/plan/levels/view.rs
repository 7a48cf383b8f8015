//! What a spot sees around it, cut into pieces of the sphere: how much of each is sky, and through what it is seen.
//!
//! Made once for a spot; the light of any hour on a plane of any tilt is then one sum. In a room only what openings show is
//! here; the room's own light is [`super::bare`]'s. Even pieces (rings even in the sine of the height); a window of 0.2 sr
//! has some 500.

use crate::light::glazing::Glazing;
use crate::maths;
use crate::place::cone::Cone;
use crate::place::skyline::Skyline;
use crate::units::{Degrees, Share, Vector, World};

/// Rings (from nadir to zenith) and sectors in the open, where all of it is seen (our choice, within 1 %).
const OPEN: (usize, usize) = (32, 32);

/// The same for openings (our choice: a window 0.5 m wide, 5 m away, still has 20 pieces).
const FINE: (usize, usize) = (128, 256);

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

/// An opening as a spot sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pane {
    /// Cones whose union it is.
    pub cones: Vec<Cone>,
    /// What comes through straight, bars counted.
    pub through: Share,
    /// Outward normal of its wall; `None` where nobody knows it.
    pub outward: Option<Vector<World>>,
    /// Whether there is glass, which throws back slanting light.
    pub glass: bool,
}

impl Pane {
    /// Whether a direction is seen through it.
    pub fn contains(&self, towards: Vector<World>) -> bool {
        self.cones.iter().any(|cone| cone.contains(towards))
    }

    /// What comes through from a direction.
    pub fn passes(&self, towards: Vector<World>) -> Share {
        let Some(outward) = self.outward.filter(|_| self.glass) else { return self.through };
        let incidence = Degrees::from_radians(maths::acos(outward.dot(towards).clamp(0.0, 1.0)));
        Share::clamped(self.through.fraction() * Glazing::Single.aslant(incidence).fraction())
    }
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

    /// Through openings alone.
    pub fn through(panes: &[Pane], skyline: &Skyline) -> Self {
        let mut pieces = Vec::new();
        if panes.is_empty() {
            return Self { pieces };
        }
        sphere(FINE, |towards, whole| {
            if let Some(pane) = panes.iter().find(|pane| pane.contains(towards)) {
                let steradians = whole * pane.passes(towards).fraction();
                pieces.push(Piece { towards, steradians, shows: shows(skyline, towards) });
            }
        });
        Self { pieces }
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
    use crate::place::cone::HalfSpace;
    use crate::units::{Bearing, Height};

    #[test]
    fn the_open_is_a_whole_half_sphere_for_any_plane() {
        let view = View::open(&Skyline::default());
        for (bearing, height) in [(0.0, 0.0), (123.0, 40.0), (280.0, -70.0), (0.0, 90.0)] {
            let normal = Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
            let whole = view.form_factor(normal).fraction();
            assert!((whole - 1.0).abs() < 0.004, "{bearing} {height}: {whole}");
        }
    }

    #[test]
    fn a_window_before_a_face() {
        // T-C11: 2 × 1.5 m, 2 m away, sill 0.6 below and head 0.9 above the eye: 0.1885, of which 0.0782 ground.
        let north = Vector::new(0.0, 1.0, 0.0);
        let edge = |normal: Vector<World>| HalfSpace::beside(normal.unit().unwrap());
        let sides = vec![
            HalfSpace::beside(north),
            edge(Vector::new(1.0, 0.5, 0.0)),
            edge(Vector::new(-1.0, 0.5, 0.0)),
            edge(Vector::new(0.0, 0.3, 1.0)),
            edge(Vector::new(0.0, 0.45, -1.0)),
        ];
        let pane = |glass| Pane {
            cones: vec![Cone { sides: sides.clone() }],
            through: Share::WHOLE,
            outward: Some(north),
            glass,
        };
        let view = View::through(&[pane(false)], &Skyline::default());
        assert!((view.form_factor(north).fraction() - 0.1885).abs() < 0.002, "{:?}", view.form_factor(north));
        let of_ground = |piece: &&Piece| piece.shows == Shows::Ground;
        let ground = View { pieces: view.pieces.iter().filter(of_ground).copied().collect() };
        assert!((ground.form_factor(north).fraction() - 0.0782).abs() < 0.002);
        let glazed = View::through(&[pane(true)], &Skyline::default());
        assert!(glazed.form_factor(north) < view.form_factor(north));
        assert_eq!(View::through(&[], &Skyline::default()), View::default());
    }
}
