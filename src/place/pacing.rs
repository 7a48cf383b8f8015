//! A floor from walking round it: the lengths of its sides, in order, with square corners.
//!
//! One walks counter-clockwise seen from above, a wall at the right hand, and notes each wall's length. Corners turn left
//! unless a length is noted as negative: then the corner *before* that wall turns right, as at the inner corner of an L.
//! What does not close is spread over all corners, as surveyors do.

use super::fault::CORNERS;
use super::reshape::to_centimetre;
use super::room::Room;
use crate::units::Metres;

/// A floor that was walked round.
#[derive(Clone, Debug, PartialEq)]
pub struct Paced {
    /// Its corners, as a room keeps them.
    pub floor: Vec<[Metres; 2]>,
    /// How far from the start the walk ended.
    pub gap: Metres,
}

/// The floor from its sides; `None` for fewer than three or more than twelve, and for a side that is no length.
///
/// # Source
/// The traverse and its adjustment by the lengths walked (Bowditch 1808).
pub fn paced(sides: &[Metres]) -> Option<Paced> {
    let sound = |side: &Metres| side.metres().is_finite() && side.metres() != 0.0;
    if !CORNERS.contains(&sides.len()) || !sides.iter().all(sound) || sides[0].metres() < 0.0 {
        return None;
    }
    let (mut at, mut way) = ([0.0, 0.0], [1.0, 0.0]);
    let mut corners = vec![at];
    for (number, side) in sides.iter().enumerate() {
        if number > 0 {
            way = if side.metres() > 0.0 { [-way[1], way[0]] } else { [way[1], -way[0]] };
        }
        let length = side.metres().abs();
        at = [at[0] + way[0] * length, at[1] + way[1] * length];
        corners.push(at);
    }
    let whole: f64 = sides.iter().map(|side| side.metres().abs()).sum();
    let mut walked = 0.0;
    let closed = corners.iter().zip(sides).map(|(corner, side)| {
        let share = walked / whole;
        walked += side.metres().abs();
        [corner[0] - at[0] * share, corner[1] - at[1] * share]
    });
    let floor = squared(closed.collect());
    Some(Paced { floor, gap: Metres::from_metres((at[0] * at[0] + at[1] * at[1]).sqrt()) })
}

/// Turned so that wall 0 runs along x again, and to the centimetre.
fn squared(corners: Vec<[f64; 2]>) -> Vec<[Metres; 2]> {
    let [x, y] = corners[1];
    let length = (x * x + y * y).sqrt();
    let (cos, sin) = (x / length, y / length);
    let turned = |[a, b]: [f64; 2]| [a * cos + b * sin, b * cos - a * sin].map(to_centimetre);
    corners.into_iter().map(turned).collect()
}

impl Room {
    /// With another floor; what stands outside of it or in walls that are gone stays, and [`Room::check`] says so.
    pub fn with_floor(&self, floor: Vec<[Metres; 2]>) -> Self {
        Self { floor, ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m(sizes: &[f64]) -> Vec<Metres> {
        sizes.iter().map(|size| Metres::from_metres(*size)).collect()
    }

    fn corners(paced: &Paced) -> Vec<[f64; 2]> {
        paced.floor.iter().map(|corner| corner.map(Metres::metres)).collect()
    }

    #[test]
    fn a_box_and_an_ell_close() {
        let found = paced(&m(&[6.0, 4.0, 6.0, 4.0])).unwrap();
        assert_eq!(corners(&found), [[0.0, 0.0], [6.0, 0.0], [6.0, 4.0], [0.0, 4.0]]);
        assert_eq!(found.gap, Metres::default());
        let ell = paced(&m(&[7.0, 3.0, 4.0, -3.0, 3.0, 6.0])).unwrap();
        assert_eq!(corners(&ell), [[0.0, 0.0], [7.0, 0.0], [7.0, 3.0], [3.0, 3.0], [3.0, 6.0], [0.0, 6.0]]);
        let room = Room::rectangle("r", "r", [1.0; 3].map(Metres::from_metres), Default::default());
        assert_eq!(room.with_floor(ell.floor).check(), []);
    }

    #[test]
    fn what_does_not_close_is_spread() {
        let found = paced(&m(&[6.0, 4.0, 5.8, 4.1])).unwrap();
        assert!((found.gap.metres() - crate::maths::hypot(0.2, 0.1)).abs() < 1e-9);
        let floor = corners(&found);
        assert!((floor[1][0] - 5.94).abs() < 0.011 && floor[1][1] == 0.0, "{floor:?}");
        assert!((floor[3][1] - 4.05).abs() < 0.06);
    }

    #[test]
    fn too_few_sides_are_no_floor() {
        assert_eq!(paced(&m(&[6.0, 4.0])), None);
        assert_eq!(paced(&m(&[6.0, 0.0, 6.0])), None);
        assert_eq!(paced(&m(&[-6.0, 4.0, 6.0])), None);
        assert_eq!(paced(&m(&[1.0; 13])), None);
    }
}
