//! Reshaping a room by hand: rectangles made larger, corners added and moved, openings slid along their walls.
//!
//! Nothing is moved along silently: marks and openings stay where they are, and [`Room::check`] says what no longer
//! fits.

use super::opening::Opening;
use super::room::Room;
use crate::units::Metres;

/// Corners nearer to square than this count as square, metres. Our own choice: below any tape.
const SQUARE: f64 = 1e-6;

impl Room {
    /// Width along wall 0 and depth, if the floor is a rectangle.
    pub fn rectangle_sizes(&self) -> Option<[Metres; 2]> {
        let [_, along, far, side] = self.floor[..] else { return None };
        let [width, depth] = far;
        let expected = [[width, Metres::default()], [Metres::default(), depth]];
        let near = |one: [Metres; 2], other: [Metres; 2]| {
            one.iter().zip(other).all(|(a, b)| (a.metres() - b.metres()).abs() < SQUARE)
        };
        (near(along, expected[0]) && near(side, expected[1])).then_some(far)
    }

    /// The mean of the corners: in the middle of a rectangle, and inside every convex floor.
    pub fn middle(&self) -> [Metres; 2] {
        let count = self.floor.len().max(1) as f64;
        [0, 1].map(|axis| {
            to_centimetre(self.floor.iter().map(|corner| corner[axis].metres()).sum::<f64>() / count)
        })
    }

    /// With a rectangular floor of these sizes.
    pub fn with_rectangle(&self, [width, depth]: [Metres; 2]) -> Self {
        let zero = Metres::default();
        let floor = vec![[zero, zero], [width, zero], [width, depth], [zero, depth]];
        Self { floor, ..self.clone() }
    }

    /// With one more corner, half-way along a wall; openings stay in the walls they are in.
    pub fn with_corner_in(&self, wall: usize) -> Option<Self> {
        let there = self.wall(wall)?;
        let half = there.length.metres() / 2.0;
        let middle = there.point(Metres::from_metres(half), Metres::default());
        let mut room = self.clone();
        room.floor.insert(wall + 1, [middle.x, middle.y].map(Metres::from_metres));
        for opening in &mut room.openings {
            if opening.in_ceiling {
                continue;
            }
            let beyond = opening.wall == wall && opening.offset.metres() >= half;
            if beyond {
                opening.offset = Metres::from_metres(opening.offset.metres() - half);
            }
            if beyond || opening.wall > wall {
                opening.wall += 1;
            }
        }
        Some(room)
    }

    /// Without a corner; its wall goes with it, and so do the openings in that wall. The first two corners, which
    /// carry the room's axes, stay, and so do the last three.
    pub fn without_corner(&self, corner: usize) -> Option<Self> {
        if corner < 2 || corner >= self.floor.len() || self.floor.len() < 4 {
            return None;
        }
        let mut room = self.clone();
        room.floor.remove(corner);
        room.openings.retain(|opening| opening.in_ceiling || opening.wall != corner);
        for opening in &mut room.openings {
            if !opening.in_ceiling && opening.wall > corner {
                opening.wall -= 1;
            }
        }
        Some(room)
    }
}

impl Opening {
    /// Slid so that its middle comes as near to `middle` along its wall as the wall allows.
    pub fn slid_to(&self, middle: Metres, room: &Room) -> Self {
        let Some(wall) = room.wall(self.wall) else { return self.clone() };
        let most = (wall.length.metres() - self.width.metres()).max(0.0);
        let offset = (middle.metres() - self.width.metres() / 2.0).clamp(0.0, most);
        Self { offset: to_centimetre(offset), ..self.clone() }
    }
}

impl Opening {
    /// A roof light moved so that its middle comes to a spot of the floor below it, if all of it is over the floor there.
    pub fn put_over(&self, [x, y]: [Metres; 2], room: &Room) -> Self {
        let near = |middle: Metres, size: Metres| to_centimetre(middle.metres() - size.metres() / 2.0);
        let moved = Self { offset: near(x, self.width), sill: near(y, self.height), ..self.clone() };
        let fits = room.frame(&moved).is_some_and(|frame| {
            frame
                .inner
                .iter()
                .all(|corner| room.holds(Metres::from_metres(corner.x), Metres::from_metres(corner.y)))
        });
        if fits { moved } else { self.clone() }
    }
}

/// What a hand drags is not finer than a tape.
pub fn to_centimetre(length: f64) -> Metres {
    Metres::from_metres((length * 100.0).round() / 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m<const N: usize>(numbers: [f64; N]) -> [Metres; N] {
        numbers.map(Metres::from_metres)
    }

    fn room() -> Room {
        let mut room = Room::rectangle("r", "room", m([6.0, 4.0, 2.5]), Default::default());
        room.openings = vec![
            Opening::rectangle("a", "a", 0, m([0.5, 0.9, 1.0, 1.2])),
            Opening::rectangle("b", "b", 0, m([4.0, 0.9, 1.0, 1.2])),
            Opening::rectangle("c", "c", 2, m([1.0, 0.9, 1.0, 1.2])),
        ];
        room
    }

    #[test]
    fn a_rectangle_is_known_and_resized() {
        assert_eq!(room().rectangle_sizes(), Some(m([6.0, 4.0])));
        let larger = room().with_rectangle(m([7.0, 5.0]));
        assert_eq!(larger.rectangle_sizes(), Some(m([7.0, 5.0])));
        assert_eq!(larger.check(), []);
        assert_eq!(larger.middle(), m([3.5, 2.5]));
        assert_eq!(room().with_corner_in(1).unwrap().rectangle_sizes(), None);
    }

    #[test]
    fn a_new_corner_leaves_every_opening_where_it_is() {
        let (before, after) = (room(), room().with_corner_in(0).unwrap());
        assert_eq!(after.floor.len(), 5);
        for (one, other) in before.openings.iter().zip(&after.openings) {
            let (one, other) = (before.frame(one).unwrap(), after.frame(other).unwrap());
            assert!((0..4).all(|n| (one.inner[n] - other.inner[n]).norm() < 1e-9));
        }
        assert_eq!(after.without_corner(1), None, "the axes' corners stay");
        assert_eq!(after.without_corner(2).unwrap().openings.len(), 3);
    }

    #[test]
    fn a_roof_light_stays_over_the_floor() {
        let room = room();
        let light = Opening { in_ceiling: true, ..room.openings[0].clone() };
        let moved = light.put_over(m([3.0, 2.0]), &room);
        assert_eq!([moved.offset, moved.sill], m([2.5, 1.4]));
        assert_eq!(light.put_over(m([5.9, 2.0]), &room), light);
    }

    #[test]
    fn an_opening_slides_no_further_than_its_wall() {
        let room = room();
        let slid = |middle| room.openings[0].slid_to(Metres::from_metres(middle), &room).offset.metres();
        assert_eq!([slid(2.0), slid(-3.0), slid(9.0)], [1.5, 0.0, 5.0]);
    }
}
