//! The floor of a room as a polygon: which way round, whether it crosses itself, what stands on it.

use super::room::Room;
use crate::units::Metres;

/// Points nearer to an edge than this count as on it, metres. Our choice: below any tape.
const TOUCH: f64 = 1e-6;

/// A point of the floor, metres.
type Spot = [f64; 2];

impl Room {
    /// Whether a point lies on the floor; points on a wall count.
    pub fn holds(&self, x: Metres, y: Metres) -> bool {
        let spot = [x.metres(), y.metres()];
        if !(spot[0].is_finite() && spot[1].is_finite()) {
            return false;
        }
        let mut inside = false;
        for (a, b) in sides(&self.floor) {
            if touches(a, b, spot) {
                return true;
            }
            // A ray to the right crosses the side.
            if (a[1] > spot[1]) != (b[1] > spot[1]) && (area(a, b, spot) > 0.0) == (b[1] > a[1]) {
                inside = !inside;
            }
        }
        inside
    }

    /// Whether no corner points inwards, so that every spot sees every other.
    pub fn is_convex(&self) -> bool {
        let count = self.floor.len();
        let spot = |at: usize| self.floor[at % count].map(Metres::metres);
        (0..count).all(|at| area(spot(at), spot(at + 1), spot(at + 2)) >= -TOUCH * TOUCH)
    }
}

/// Twice the area of the floor; positive for corners that run counter-clockwise.
impl Room {
    /// Area of the floor, square metres.
    pub fn floor_area_m2(&self) -> f64 {
        (twice_area(&self.floor) / 2.0).abs()
    }
}

pub(super) fn twice_area(floor: &[[Metres; 2]]) -> f64 {
    sides(floor).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum()
}

/// The first two walls, not neighbours, that meet; or neighbours that fold back on each other.
pub(super) fn crossing(floor: &[[Metres; 2]]) -> Option<(usize, usize)> {
    let walls: Vec<_> = sides(floor).collect();
    let count = walls.len();
    let pairs = (0..count).flat_map(|a| (a + 1..count).map(move |b| (a, b)));
    pairs.into_iter().find(|(a, b)| {
        let ((p, q), (r, s)) = (walls[*a], walls[*b]);
        if b - a == 1 {
            touches(p, q, s) || touches(r, s, p)
        } else if *a == 0 && b + 1 == count {
            touches(p, q, r) || touches(r, s, q)
        } else {
            meet((p, q), (r, s))
        }
    })
}

/// Whether two sides share a point.
fn meet((p, q): (Spot, Spot), (r, s): (Spot, Spot)) -> bool {
    let parted = |a: f64, b: f64| a > 0.0 && b < 0.0 || a < 0.0 && b > 0.0;
    parted(area(p, q, r), area(p, q, s)) && parted(area(r, s, p), area(r, s, q))
        || [r, s].iter().any(|spot| touches(p, q, *spot))
        || [p, q].iter().any(|spot| touches(r, s, *spot))
}

/// Whether `spot` lies on the side from `a` to `b`.
fn touches(a: Spot, b: Spot, spot: Spot) -> bool {
    let (along, to) = ([b[0] - a[0], b[1] - a[1]], [spot[0] - a[0], spot[1] - a[1]]);
    let square = along[0] * along[0] + along[1] * along[1];
    let share =
        if square > 0.0 { ((to[0] * along[0] + to[1] * along[1]) / square).clamp(0.0, 1.0) } else { 0.0 };
    let off = [to[0] - share * along[0], to[1] - share * along[1]];
    off[0] * off[0] + off[1] * off[1] <= TOUCH * TOUCH
}

/// Twice the area of a triangle; positive when counter-clockwise.
fn area(a: Spot, b: Spot, c: Spot) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Each side from corner to corner.
fn sides(floor: &[[Metres; 2]]) -> impl Iterator<Item = (Spot, Spot)> + '_ {
    let spot = |corner: &[Metres; 2]| corner.map(Metres::metres);
    let next = floor.iter().cycle().skip(1);
    floor.iter().zip(next).map(move |(a, b)| (spot(a), spot(b)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn floor(corners: &[[f64; 2]]) -> Vec<[Metres; 2]> {
        corners.iter().map(|corner| corner.map(Metres::from_metres)).collect()
    }

    /// An L: the corner at 4, 4 is cut out.
    const ELL: [[f64; 2]; 6] = [[0.0, 0.0], [4.0, 0.0], [4.0, 2.0], [2.0, 2.0], [2.0, 4.0], [0.0, 4.0]];

    #[test]
    fn an_ell_is_not_convex() {
        let mut room =
            Room::rectangle("r", "room", [4.0, 4.0, 2.5].map(Metres::from_metres), Default::default());
        assert!(room.is_convex() && room.with_corner_in(1).unwrap().is_convex());
        room.floor = floor(&ELL);
        assert!(!room.is_convex());
    }

    #[test]
    fn an_ell_is_simple_and_counter_clockwise() {
        assert_eq!(twice_area(&floor(&ELL)), 24.0);
        assert_eq!(crossing(&floor(&ELL)), None);
    }

    #[test]
    fn crossed_and_folded_floors_are_found() {
        let bow = [[0.0, 0.0], [4.0, 0.0], [0.0, 3.0], [4.0, 3.0]];
        assert_eq!(crossing(&floor(&bow)), Some((1, 3)));
        let folded = [[0.0, 0.0], [4.0, 0.0], [2.0, 0.0], [2.0, 3.0]];
        assert_eq!(crossing(&floor(&folded)), Some((0, 1)));
        let pinched = [[0.0, 0.0], [4.0, 0.0], [4.0, 3.0], [2.0, 0.0], [0.0, 3.0]];
        assert!(crossing(&floor(&pinched)).is_some());
    }

    #[test]
    fn the_notch_of_an_ell_is_outside() {
        let sizes = [4.0, 4.0, 2.5].map(Metres::from_metres);
        let mut room = Room::rectangle("r", "room", sizes, Default::default());
        room.floor = floor(&ELL);
        let holds = |x, y| room.holds(Metres::from_metres(x), Metres::from_metres(y));
        assert!(holds(1.0, 3.0) && holds(3.0, 1.0) && holds(2.0, 3.0) && holds(0.0, 0.0));
        assert!(!holds(3.0, 3.0) && !holds(-0.1, 1.0) && !holds(5.0, 2.0) && !holds(f64::NAN, 1.0));
    }
}
