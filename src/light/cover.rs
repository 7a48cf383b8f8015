//! Cloth in the way of the sun: where a diffusion frame stands over a mark, and a flag before a lens, for a whole hold.
//!
//! The sun's way in the hold is projected from the mark on the cloth's plane, which stands square to the middle of that
//! way: its box, widened by what must stay covered and by the sun's own radius, is what the cloth must be. Positions are
//! metres from the middle of what is covered. Source: central projection of the way of the sun; the extent of a round
//! thing of radius c on a plane, seen along (u, v, 1), is c√(1 + u²) across and c√(1 + v²) up; that of the sun at a
//! distance d is d r √(1 + u²) √(1 + u² + v²) across. Wind and stands are not here.

use crate::maths;
use crate::sky::search::SUN_RADIUS;
use crate::units::{Metres, Vector, World};

/// Rounds in which the middle of the cloth settles; each is a hundredth of the one before.
const ROUNDS: usize = 8;

/// A piece of cloth in a frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cloth {
    /// Along the ground.
    pub width: Metres,
    /// Up its slope.
    pub height: Metres,
}

/// How far away the cloth is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Away {
    /// Its middle is this much higher than the middle of what is covered.
    Above(Metres),
    /// Its plane is this far off.
    At(Metres),
}

/// Where the cloth stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Its middle, metres from the middle of what is covered.
    pub centre: Vector<World>,
    /// Level unit vector along its width.
    pub along: Vector<World>,
    /// Unit vector up its slope.
    pub up: Vector<World>,
    /// The least it may be.
    pub needs: Cloth,
}

/// Why no cloth can stand there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoStand {
    /// The sun is not above the horizon all the time.
    NoSun,
    /// The sun goes too far round for one flat cloth.
    TooFarRound,
    /// The cloth would stand no higher than what it covers.
    TooLow,
}

impl Stand {
    /// Unit vector square to the cloth, towards the sun.
    pub fn normal(&self) -> Vector<World> {
        self.along.cross(self.up)
    }

    /// Corners of a cloth that stands there.
    pub fn corners(&self, cloth: Cloth) -> [Vector<World>; 4] {
        let (across, up) =
            (self.along * (cloth.width.metres() / 2.0), self.up * (cloth.height.metres() / 2.0));
        [
            self.centre - across - up,
            self.centre + across - up,
            self.centre + across + up,
            self.centre - across + up,
        ]
    }

    /// Whether a cloth is large enough.
    pub fn is_covered_by(&self, cloth: Cloth) -> bool {
        cloth.width >= self.needs.width && cloth.height >= self.needs.height
    }
}

/// Where cloth stands so that nothing within `covers` of the middle gets sun from any of `lights` (unit vectors, in
/// order of time, close together), and how large it must be.
///
/// # Errors
/// There is no such place.
pub fn stand(lights: &[Vector<World>], away: Away, covers: Metres) -> Result<Stand, NoStand> {
    let axis = match (lights.first(), lights.last()) {
        (Some(first), Some(last)) if lights.iter().all(|light| light.z > 0.0) => (*first + *last).unit(),
        _ => None,
    };
    let axis = axis.ok_or(NoStand::NoSun)?;
    let along = Vector::UP.cross(axis).unit().unwrap_or(Vector::new(1.0, 0.0, 0.0));
    let up = axis.cross(along);
    let mut way = Vec::with_capacity(lights.len());
    for light in lights {
        let ahead = light.dot(axis);
        // Beyond 60° to the side a flat cloth is more hole than cover.
        if ahead < 0.5 {
            return Err(NoStand::TooFarRound);
        }
        way.push((light.dot(along) / ahead, light.dot(up) / ahead));
    }
    let mut middle = (0.0, 0.0);
    let mut needs = Cloth { width: Metres::default(), height: Metres::default() };
    let mut off = 0.0;
    for _ in 0..ROUNDS {
        off = match away {
            Away::At(distance) => distance.metres(),
            Away::Above(rise) => {
                let slope = axis.z + middle.1 * up.z;
                if rise.metres() <= 0.0 || slope <= 0.0 {
                    return Err(NoStand::TooLow);
                }
                rise.metres() / slope
            }
        };
        let across = box_of(way.iter().copied(), off, covers.metres());
        let slope = box_of(way.iter().map(|(along, up)| (*up, *along)), off, covers.metres());
        middle = ((across.0 + across.1) / 2.0 / off, (slope.0 + slope.1) / 2.0 / off);
        needs = Cloth {
            width: Metres::from_metres(across.1 - across.0),
            height: Metres::from_metres(slope.1 - slope.0),
        };
    }
    let centre = (axis + along * middle.0 + up * middle.1) * off;
    Ok(Stand { centre, along, up, needs })
}

/// The margin is of first order in the sun's radius; a hundredth more covers what that leaves out.
const SECOND_ORDER: f64 = 1.01;

/// From the least to the most that is needed along one axis of a plane `off` away; `way` has that axis first.
fn box_of(way: impl Iterator<Item = (f64, f64)>, off: f64, covers: f64) -> (f64, f64) {
    let radius = maths::tan(SUN_RADIUS.radians());
    way.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), (at, other)| {
        let square = 1.0 + at * at;
        let limb = off * radius * (square * (square + other * other)).sqrt();
        let margin = (covers * square.sqrt() + limb) * SECOND_ORDER;
        (least.min(off * at - margin), most.max(off * at + margin))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::site::Site;
    use crate::sky::sun::Sun;
    use crate::units::{Duration, Instant, Latitude, Longitude};
    use proptest::prelude::*;

    type Plain = [f64; 3];

    fn minus(a: Plain, b: Plain) -> Plain {
        [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
    }

    fn times(a: Plain, b: Plain) -> Plain {
        [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
    }

    fn dot(a: Plain, b: Plain) -> f64 {
        a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
    }

    fn plain(vector: Vector<World>) -> Plain {
        [vector.x, vector.y, vector.z]
    }

    /// Whether a ray hits a triangle (Möller and Trumbore 1997); shares nothing with the projection.
    fn hits(from: Plain, to: Plain, [a, b, c]: [Plain; 3]) -> bool {
        let (one, two) = (minus(b, a), minus(c, a));
        let p = times(to, two);
        let det = dot(one, p);
        if det.abs() < 1e-15 {
            return false;
        }
        let s = minus(from, a);
        let u = dot(s, p) / det;
        let q = times(s, one);
        let (v, t) = (dot(to, q) / det, dot(two, q) / det);
        u >= 0.0 && v >= 0.0 && u + v <= 1.0 && t > 0.0
    }

    fn covered(corners: [Vector<World>; 4], from: Plain, light: Plain) -> bool {
        let [a, b, c, d] = corners.map(plain);
        hits(from, light, [a, b, c]) || hits(from, light, [a, c, d])
    }

    fn lights(latitude: f64, minute: i64, hold: i64) -> Vec<Vector<World>> {
        let site = Site {
            latitude: Latitude::from_degrees(latitude).unwrap(),
            longitude: Longitude::from_degrees(0.0).unwrap(),
            elevation: Metres::default(),
        };
        let start = Instant::parse("2027-01-01T00:00:00Z").unwrap() + Duration::from_minutes(minute);
        (0..=hold).map(|n| Sun::new(site).apparent(start + Duration::from_minutes(n))).collect()
    }

    /// Directions to the sun's limb and points about the middle, many of each.
    fn around(light: Vector<World>) -> Vec<(Plain, Plain)> {
        let side = Vector::UP.cross(light).unit().unwrap();
        let top = light.cross(side);
        let ring = |n: usize| maths::sin_cos(n as f64 / 16.0 * core::f64::consts::TAU);
        let mut rays = Vec::new();
        for n in 0..16 {
            for m in 0..16 {
                let ((a, b), (c, d)) = (ring(n), ring(m));
                rays.push((plain(side * a + top * b), plain(light + (side * c + top * d) * 0.004_652)));
            }
        }
        rays
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        #[test]
        fn rays_to_the_sun_end_on_the_cloth_and_no_smaller_one_would_do(
            latitude in -60.0..60.0f64, minute in 0i64..525_000, hold in 1i64..120,
            rise in 0.5..5.0f64, covers in 0.05..0.8f64, at in any::<bool>(),
        ) {
            let lights = lights(latitude, minute, hold);
            let away = Metres::from_metres(rise);
            let away = if at { Away::At(away) } else { Away::Above(away) };
            let Ok(stand) = stand(&lights, away, Metres::from_metres(covers)) else { return Ok(()) };
            if let Away::Above(rise) = away {
                prop_assert!((stand.centre.z - rise.metres()).abs() < 1e-6, "{}", stand.centre.z);
            }
            let grown = |by: f64| Cloth {
                width: Metres::from_metres(stand.needs.width.metres() * by),
                height: Metres::from_metres(stand.needs.height.metres() * by),
            };
            let rays: Vec<(Plain, Plain)> = lights.iter().flat_map(|light| around(*light)).map(|(from, to)| (from.map(|part| part * covers), to)).collect();
            let all = |cloth: Cloth| rays.iter().all(|(from, to)| covered(stand.corners(cloth), *from, *to));
            prop_assert!(all(grown(1.0005)), "a hole in the cover");
            // Sixteen points on a ring miss its widest by up to 2 %.
            let narrow = Cloth { width: Metres::from_metres(stand.needs.width.metres() * 0.96), ..grown(1.0) };
            let low = Cloth { height: Metres::from_metres(stand.needs.height.metres() * 0.96), ..grown(1.0) };
            prop_assert!(!all(narrow) && !all(low), "larger than needed");
        }

        #[test]
        fn turned_and_mirrored_scenes_need_the_same(
            latitude in -60.0..60.0f64, minute in 0i64..525_000, hold in 1i64..120, rise in 0.5..5.0f64, by in 0.0..360.0f64,
        ) {
            let lights = lights(latitude, minute, hold);
            let needs = |lights: Vec<Vector<World>>| {
                stand(&lights, Away::Above(Metres::from_metres(rise)), Metres::from_metres(0.3))
                    .map(|stand| [stand.needs.width.metres(), stand.needs.height.metres(), stand.centre.z])
            };
            let turned = lights.iter().map(|light| light.turned(crate::units::Degrees::from_degrees(by))).collect();
            let mirrored = lights.iter().map(|light| Vector::new(-light.x, light.y, light.z)).collect();
            let (one, two, three) = (needs(lights), needs(turned), needs(mirrored));
            match (one, two, three) {
                (Ok(a), Ok(b), Ok(c)) => {
                    for n in 0..3 {
                        prop_assert!((a[n] - b[n]).abs() < 1e-9 * a[n] && (a[n] - c[n]).abs() < 1e-9 * a[n]);
                    }
                }
                (a, b, c) => prop_assert!(a == b && b == c),
            }
        }
    }
}
