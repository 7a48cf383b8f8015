//! Lanes: a floor cut along one level direction, so that light going that way meets exactly one wall in each.
//!
//! Between the lines through neighbouring corners no corner lies, and walls do not cross: there every way across the room
//! enters through one wall and ends at one other. Only needed where a corner points inwards.

use super::room::Room;
use super::wall::Wall;
use crate::units::{InRoom, Vector};

/// Lanes narrower than this are nothing, metres. Our choice: far below any tape.
const NOTHING: f64 = 1e-9;

/// A piece of the floor between two lines along the way of the light and the walls it lies between.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lane {
    /// Its four corners on the floor, in order.
    pub floor: Vec<Vector<InRoom>>,
    /// The wall that light comes from, by its number.
    pub enters: usize,
    /// The wall that light ends at.
    pub ends: usize,
    /// Its two long sides: a point of each, and the way in.
    pub sides: [(Vector<InRoom>, Vector<InRoom>); 2],
}

/// All lanes of a floor along a level direction of any length above nought.
pub(crate) fn lanes(room: &Room, way: Vector<InRoom>) -> Vec<Lane> {
    let across = Vector::new(-way.y, way.x, 0.0);
    let walls: Vec<(usize, Wall)> = room.walls().collect();
    let mut lines: Vec<f64> = walls.iter().map(|(_, wall)| across.dot(wall.from)).collect();
    lines.sort_by(f64::total_cmp);
    let pairs = lines.windows(2).filter(|pair| pair[1] - pair[0] > NOTHING);
    pairs.flat_map(|pair| between(&walls, way, across, [pair[0], pair[1]])).collect()
}

/// The lanes between two lines: inside runs from an odd crossing to the next.
fn between(
    walls: &[(usize, Wall)],
    way: Vector<InRoom>,
    across: Vector<InRoom>,
    ends: [f64; 2],
) -> Vec<Lane> {
    let middle = (ends[0] + ends[1]) / 2.0;
    // Where a wall meets a line.
    let meets = |wall: &Wall, line: f64| {
        let (from, to) = (across.dot(wall.from), across.dot(wall.to));
        wall.from + (wall.to - wall.from) * ((line - from) / (to - from))
    };
    let spans = |wall: &Wall| (across.dot(wall.from) < middle) != (across.dot(wall.to) < middle);
    let mut crossed: Vec<&(usize, Wall)> = walls.iter().filter(|(_, wall)| spans(wall)).collect();
    let far = |wall: &Wall| way.dot(meets(wall, middle));
    crate::order::by(&mut crossed, |a, b| far(&a.1).total_cmp(&far(&b.1)));
    let lane = |pair: &[&(usize, Wall)]| {
        let [(enters, first), (end, last)] = [pair[0], pair[1]];
        let floor =
            vec![meets(first, ends[0]), meets(last, ends[0]), meets(last, ends[1]), meets(first, ends[1])];
        let sides = [(floor[0], across), (floor[2], -across)];
        Lane { floor, enters: *enters, ends: *end, sides }
    };
    crossed.chunks_exact(2).map(lane).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::polygon::area;
    use crate::units::Metres;
    use proptest::prelude::*;

    /// A U with its notch in the far wall: 9 × 6 less 3 × 4.
    const U: [[f64; 2]; 8] =
        [[0.0, 0.0], [9.0, 0.0], [9.0, 6.0], [6.0, 6.0], [6.0, 2.0], [3.0, 2.0], [3.0, 6.0], [0.0, 6.0]];

    fn room() -> Room {
        let mut room =
            Room::rectangle("r", "r", [9.0, 6.0, 3.0].map(Metres::from_metres), Default::default());
        room.floor = U.map(|corner| corner.map(Metres::from_metres)).to_vec();
        room
    }

    #[test]
    fn across_the_arms_there_are_two_runs() {
        let found = lanes(&room(), Vector::new(1.0, 0.0, 0.0));
        let walls: Vec<_> = found.iter().map(|lane| (lane.enters, lane.ends)).collect();
        assert_eq!(walls, [(7, 1), (7, 5), (3, 1)]);
    }

    proptest! {
        #[test]
        fn lanes_make_up_the_floor(turn in 0.0..core::f64::consts::TAU) {
            let (y, x) = crate::maths::sin_cos(turn);
            let sum: f64 = lanes(&room(), Vector::new(x, y, 0.0)).iter().map(|lane| area(&lane.floor)).sum();
            prop_assert!((sum - 42.0).abs() < 1e-6, "{}", sum);
        }
    }
}
