//! A mirror board by the sun: which way it faces, what it throws where, and how far its patch has wandered.
//!
//! Positions are metres from the mark. Source: the law of reflection; handbook G3 for the way it faces
//! ([`super::aim::facing`]). A fixed mirror's beam turns as fast as the sun does: it is the *mirror* whose turn shows
//! twice, so that the handbook's "twice the sun's rate" holds for a hand that follows, not for the patch.
//! How much light comes back is [`super::board`]'s.

use super::aim;
use crate::units::{Metres, Vector, World};

/// A square mirror.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mirror {
    /// Its middle, metres from the mark.
    pub at: Vector<World>,
    /// Unit vector square to its bright side.
    pub normal: Vector<World>,
    /// Length of its side.
    pub side: Metres,
}

impl Mirror {
    /// At `at`, facing so that the sun at `sun` is thrown on the mark. `None` for a mirror at the mark itself, or with
    /// the sun straight behind it.
    pub fn aimed(at: Vector<World>, side: Metres, sun: Vector<World>) -> Option<Self> {
        Some(Self { at, normal: aim::facing(sun, (-at).unit()?)?, side })
    }

    /// The way its light goes on with the sun at `sun`; `None` if that shines on its back.
    pub fn throws(&self, sun: Vector<World>) -> Option<Vector<World>> {
        let facing = sun.dot(self.normal);
        (facing > 0.0).then(|| self.normal * (2.0 * facing) - sun)
    }

    /// Whether everything within `covers` of the mark gets the light of the sun's middle from it.
    ///
    /// The mark looks along the beam into the mirror: the place it sees there must be on the board.
    pub fn lights(&self, sun: Vector<World>, covers: Metres) -> bool {
        let Some(beam) = self.throws(sun) else { return false };
        let ahead = beam.dot(self.normal);
        if ahead <= 0.0 {
            return false;
        }
        let back = self.at.dot(self.normal) / ahead;
        let seen = beam * back - self.at;
        self.edges().into_iter().all(|edge| {
            let slope = beam.dot(edge) / ahead;
            seen.dot(edge).abs() + covers.metres() * (1.0 + slope * slope).sqrt() <= self.side.metres() / 2.0
        })
    }

    /// Unit vectors along its edges: level, and up its slope.
    pub fn edges(&self) -> [Vector<World>; 2] {
        let along = Vector::UP.cross(self.normal).unit().unwrap_or(Vector::new(1.0, 0.0, 0.0));
        [along, self.normal.cross(along)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Bearing, Height};
    use proptest::prelude::*;

    fn to(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    /// Whether a point gets the sun by the board: the point's image behind the mirror looks straight at the sun, and
    /// must see it through the board's square. Plain numbers, no part of the code above.
    fn by_image(point: [f64; 3], mirror: &Mirror, sun: [f64; 3]) -> bool {
        let n = [mirror.normal.x, mirror.normal.y, mirror.normal.z];
        let b = [mirror.at.x, mirror.at.y, mirror.at.z];
        let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        let depth = dot(point, n) - dot(b, n);
        let image: Vec<f64> = (0..3).map(|k| point[k] - 2.0 * depth * n[k]).collect();
        let climb = dot(sun, n);
        if depth <= 0.0 || climb <= 0.0 {
            return false;
        }
        let far = depth / climb;
        let on = [0, 1, 2].map(|k| image[k] + sun[k] * far - b[k]);
        // Edges of the square: level, and the rest by the right-hand rule.
        let flat = (n[0] * n[0] + n[1] * n[1]).sqrt();
        let along = [-n[1] / flat, n[0] / flat, 0.0];
        let up = [-n[2] * n[0] / flat, -n[2] * n[1] / flat, flat];
        dot(on, along).abs() <= mirror.side.metres() / 2.0 && dot(on, up).abs() <= mirror.side.metres() / 2.0
    }

    proptest! {
        #[test]
        fn the_image_behind_the_mirror_says_the_same(
            bearing in 0.0..360.0f64, height in -20.0..20.0f64, distance in 2.0..20.0f64, side in 0.3..2.0f64,
            sun in 0.0..360.0f64, high in 5.0..70.0f64, on in (-4.0..4.0f64, -4.0..4.0f64), covers in 0.0..0.4f64,
        ) {
            let at = to(bearing, height) * distance;
            let Some(mirror) = Mirror::aimed(at, Metres::from_metres(side), to(sun, high)) else { return Ok(()) };
            prop_assume!(maths_flat(mirror.normal) > 1e-3 && mirror.normal.dot(to(sun, high)) > 0.05);
            prop_assert!(mirror.lights(to(sun, high), Metres::from_metres(0.0)), "aimed at the mark");
            let later = to(sun + on.0, high + on.1);
            let plain = [later.x, later.y, later.z];
            // The widest points about the mark, across and up the beam's foot on the board.
            let lit = |radius: f64| {
                let ring = (0..720).map(|n| crate::maths::sin_cos(f64::from(n) / 720.0 * core::f64::consts::TAU));
                let beam = mirror.throws(later).unwrap();
                let side = Vector::UP.cross(beam).unit().unwrap();
                let top = beam.cross(side);
                let points = ring.map(|(s, c)| side * (s * radius) + top * (c * radius));
                points.map(|point| [point.x, point.y, point.z]).all(|point| by_image(point, &mirror, plain))
            };
            prop_assume!(mirror.throws(later).is_some());
            if mirror.lights(later, Metres::from_metres(covers)) {
                prop_assert!(lit(covers * 0.999));
            } else {
                prop_assert!(!lit(covers * 1.001 + 1e-6));
            }
        }

        #[test]
        fn the_beam_turns_as_fast_as_the_sun(
            bearing in 0.0..360.0f64, sun in 0.0..360.0f64, high in 5.0..70.0f64, on in (-4.0..4.0f64, -4.0..4.0f64),
        ) {
            let Some(mirror) = Mirror::aimed(to(bearing, 0.0) * 5.0, Metres::from_metres(1.0), to(sun, high)) else { return Ok(()) };
            let (now, then) = (to(sun, high), to(sun + on.0, high + on.1));
            if let (Some(one), Some(two)) = (mirror.throws(now), mirror.throws(then)) {
                prop_assert!((one.angle_to(two).degrees() - now.angle_to(then).degrees()).abs() < 1e-9);
            }
        }
    }

    fn maths_flat(normal: Vector<World>) -> f64 {
        crate::maths::hypot(normal.x, normal.y)
    }

    #[test]
    fn a_board_north_of_the_mark_throws_the_south_sun_back() {
        let mirror = Mirror::aimed(to(0.0, 0.0) * 6.0, Metres::from_metres(1.0), to(180.0, 40.0)).unwrap();
        assert!((mirror.normal.bearing().degrees() - 180.0).abs() < 1e-9);
        assert!((mirror.normal.height().degrees() - 20.0).abs() < 1e-9);
        let beam = mirror.throws(to(180.0, 40.0)).unwrap();
        assert!((beam - to(180.0, 0.0)).norm() < 1e-12);
        assert_eq!(mirror.throws(to(0.0, 10.0)), None, "sun on its back");
    }
}
