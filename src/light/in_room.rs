//! What the sun does in a room at one instant: how far it reaches and how fast its patches drift and how much of
//! the room is in the sun.
//!
//! The patches themselves are [`super::patch`]'s. Drift is taken between two directions of the sun some time apart.

use super::drift::{Edge, Suns, drift};
use super::patch::{Surface, area_on, beams, of_beams, reach};
use crate::place::room::Room;
use crate::units::{Duration, Metres, Vector, World};

/// The numbers that go with the drawing of a room.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InRoom {
    /// Farthest that the sun reaches over the floor from the wall of its opening; `None` for no sun on the floor.
    pub reach: Option<Metres>,
    /// Slowest and fastest of the lower and upper edges on the floor, in a minute; `None` for no sun on the floor.
    pub drift: Option<[Metres; 2]>,
    /// Sunlit floor, square metres.
    pub floor_m2: f64,
    /// Sunlit walls and ceiling, square metres.
    pub walls_m2: f64,
}

impl InRoom {
    /// At an instant with the sun `now`, which stands at `then` a time `apart` later.
    pub fn of(room: &Room, [now, then]: [Vector<World>; 2], apart: Duration) -> Self {
        let [now, then] = [now, then].map(|sun| room.room_from_world(sun));
        let beams = beams(room, now);
        let found = of_beams(room, &beams, now);
        let floor_m2 = area_on(&found, |surface| surface == Surface::Floor);
        let walls_m2 = area_on(&found, |surface| surface != Surface::Floor);
        if floor_m2 <= 0.0 {
            return Self { walls_m2, ..Self::default() };
        }
        let mut openings: Vec<usize> = beams.iter().map(|beam| beam.opening).collect();
        openings.dedup();
        let suns = Suns { now, then, apart };
        let edges = openings.into_iter().flat_map(|opening| drift(room, opening, suns, Metres::default()));
        let across = edges.filter(|drift| matches!(drift.edge, Edge::Sill | Edge::Head));
        Self { reach: reach(room, &found), drift: range(across.map(|drift| drift.speed)), floor_m2, walls_m2 }
    }
}

/// The smallest and the largest.
fn range(all: impl Iterator<Item = Metres>) -> Option<[Metres; 2]> {
    let pairs = all.map(|one| [one.metres(); 2]);
    let wider = |[low, high]: [f64; 2], [one, other]: [f64; 2]| [low.min(one), high.max(other)];
    pairs.reduce(wider).map(|ends| ends.map(Metres::from_metres))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::opening::Opening;
    use crate::units::{Bearing, Height};

    fn loft() -> Room {
        let m = Metres::from_metres;
        let mut room = Room::rectangle("r", "r", [8.0, 6.0, 3.4].map(m), Bearing::from_degrees(248.0));
        room.openings.push(Opening::rectangle("o", "o", 0, [4.6, 0.9, 1.2, 1.7].map(m)));
        room
    }

    #[test]
    fn a_patch_reaches_as_far_as_the_head_is_high_over_the_suns_slope() {
        let sun = |bearing, height| Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height));
        let suns = [sun(248.0, 45.0), sun(248.0, 44.0)];
        let found = InRoom::of(&loft(), suns, Duration::from_minutes(1));
        assert!((found.reach.unwrap().metres() - 2.6).abs() < 1e-9, "the head at 2.6 m, the sun at 45°");
        let [slow, fast] = found.drift.unwrap().map(Metres::metres);
        // Below the sill at 0.9 m and the head at 2.6 m: by the difference of the cotangents, 0.035 53.
        assert!(
            (slow - 0.9 * 0.035_53).abs() < 1e-5 && (fast - 2.6 * 0.035_53).abs() < 1e-5,
            "{slow} {fast}"
        );
    }

    #[test]
    fn no_sun_no_numbers() {
        let behind = Vector::towards(Bearing::from_degrees(68.0), Height::clamped(30.0));
        assert_eq!(InRoom::of(&loft(), [behind; 2], Duration::from_minutes(1)), InRoom::default());
    }
}
