//! How fast the edges of a patch move: over the floor or any level, and up a face.
//!
//! Between two directions of the sun some time apart. The whole opening counts, without its bars, as if the floor had no
//! end. Source: handbook D3 (textbook solar geometry).

use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::wall::Wall;
use crate::units::{Bearing, Duration, InRoom, Metres, Vector};

/// Two directions of the sun in room axes, and how long apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suns {
    /// Towards the sun now.
    pub now: Vector<InRoom>,
    /// Towards the sun later.
    pub then: Vector<InRoom>,
    /// How much later.
    pub apart: Duration,
}

/// An edge of an opening, and of its patch. Left and right as one stands in the room and looks out; of a roof light the
/// sill is the edge nearer to wall 0, the head the one farther.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// The lower edge of the opening, the patch's near one.
    Sill,
    /// The left one.
    Left,
    /// The upper edge of the opening, the patch's far one.
    Head,
    /// The right one.
    Right,
}

impl Edge {
    /// All of them in order round the opening.
    pub const ALL: [Self; 4] = [Self::Sill, Self::Left, Self::Head, Self::Right];

    /// What its shadow is called.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sill => "lower edge",
            Self::Left => "left edge",
            Self::Head => "upper edge",
            Self::Right => "right edge",
        }
    }
}

/// How one edge of a patch moves over a level plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeDrift {
    /// Which edge.
    pub edge: Edge,
    /// How far the middle of it goes in a minute.
    pub speed: Metres,
    /// The true bearing it goes to.
    pub towards: Bearing,
}

/// The drift of the edges of an opening's patch over the plane at a height above the floor; edges that are not above that
/// height have none.
pub fn drift(room: &Room, opening: usize, suns: Suns, level: Metres) -> Vec<EdgeDrift> {
    let found = room.openings.get(opening).and_then(|opening| Some((opening, room.face_of(opening)?)));
    let minutes = suns.apart.minutes().abs();
    let Some((opening, face)) = found.filter(|_| minutes > 0.0) else { return Vec::new() };
    let shines = |sun: Vector<InRoom>| sun.dot(face.outward) > 0.0;
    if opening.covered || !shines(suns.now) || !shines(suns.then) {
        return Vec::new();
    }
    let drift = |edge: Edge| {
        let middle = casts(edge, opening, &face, suns.now);
        let way = land(middle, suns.then, level)? - land(middle, suns.now, level)?;
        let towards = room.world_from_room(way).bearing();
        Some(EdgeDrift { edge, speed: Metres::from_metres(way.norm() / minutes), towards })
    };
    Edge::ALL.into_iter().filter_map(drift).collect()
}

/// How an edge of the light moves up or down at a spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climb {
    /// Which edge: the sill's shadow is below the light, the head's above it.
    pub edge: Edge,
    /// Height of it above the floor now.
    pub height: Metres,
    /// How far it rises in a minute; negative while it sinks.
    pub per_minute: Metres,
}

/// The lower and the upper edge of an opening's light where someone stands: "the shadow climbs the face 2 cm/min". Only
/// for openings in walls that the sun shines through.
pub fn climbs(room: &Room, opening: &Opening, spot: Vector<InRoom>, suns: Suns) -> Vec<Climb> {
    let minutes = suns.apart.minutes().abs();
    let Some(wall) = room.face_of(opening).filter(|_| minutes > 0.0 && !opening.in_ceiling) else {
        return Vec::new();
    };
    let height = |edge: Edge, sun: Vector<InRoom>| {
        let (corner, facing) = (casts(edge, opening, &wall, suns.now), sun.dot(wall.outward));
        let depth = wall.outward.dot(corner - spot);
        (facing > 1e-9).then(|| corner.z - depth * sun.z / facing)
    };
    let climb = |edge: Edge| {
        let (now, then) = (height(edge, suns.now)?, height(edge, suns.then)?);
        let per_minute = Metres::from_metres((then - now) / minutes);
        Some(Climb { edge, height: Metres::from_metres(now), per_minute })
    };
    [Edge::Sill, Edge::Head].into_iter().filter_map(climb).collect()
}

/// The middle of what casts the shadow of an edge: the inner edge, the outer one, or for the head a slab over it, whichever
/// shades most for this sun.
fn casts(edge: Edge, opening: &Opening, face: &Wall, sun: Vector<InRoom>) -> Vector<InRoom> {
    let whole = opening.whole();
    let half = |one: Metres, other: Metres| (one.metres() + other.metres()) / 2.0;
    let (middle, level, reveal) =
        (half(whole.left, whole.right), half(whole.low, whole.high), opening.reveal.metres());
    let beside = |x: Metres| [(x.metres(), level, 0.0), (x.metres(), level, reveal)];
    let over = |y: Metres| [(middle, y.metres(), 0.0), (middle, y.metres(), reveal)];
    let mut edges = match edge {
        Edge::Sill => over(whole.low),
        Edge::Head => over(whole.high),
        Edge::Left => beside(whole.right),
        Edge::Right => beside(whole.left),
    }
    .to_vec();
    if let Some(slab) = opening.overhang.filter(|_| edge == Edge::Head && !opening.in_ceiling) {
        edges.push((middle, whole.high.metres() + slab.above.metres(), reveal + slab.depth.metres()));
    }
    let facing = sun.dot(face.outward).max(1e-9);
    let (aside, down) = (-sun.dot(face.along) / facing, sun.dot(face.up) / facing);
    // How far its shadow comes into the opening on the inner face.
    let shades = |(along, up, depth): &(f64, f64, f64)| match edge {
        Edge::Sill => up - depth * down,
        Edge::Head => -(up - depth * down),
        Edge::Left => -(along + depth * aside),
        Edge::Right => along + depth * aside,
    };
    let most =
        edges.iter().copied().reduce(|most, other| if shades(&other) > shades(&most) { other } else { most });
    let (along, up, depth) = most.unwrap_or((middle, level, 0.0));
    face.point(Metres::from_metres(along), Metres::from_metres(up)) + face.outward * depth
}

/// Where light past a point meets a level; `None` for a point below it, and a level or rising beam.
fn land(point: Vector<InRoom>, sun: Vector<InRoom>, level: Metres) -> Option<Vector<InRoom>> {
    let fall = point.z - level.metres();
    (sun.z > 1e-9 && fall > 0.0).then(|| point - sun * (fall / sun.z))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::opening::Overhang;
    use crate::units::{Degrees, Height, World};

    fn m(metres: f64) -> Metres {
        Metres::from_metres(metres)
    }

    fn room() -> Room {
        let mut room = Room::rectangle("r", "r", [40.0, 10.0, 3.4].map(m), Bearing::from_degrees(240.0));
        room.openings.push(Opening::rectangle("o", "window", 0, [20.0, 0.9, 1.2, 1.5].map(m)));
        room
    }

    fn suns(room: &Room, [now, then]: [Vector<World>; 2], minutes: i64) -> Suns {
        let [now, then] = [now, then].map(|sun| room.room_from_world(sun));
        Suns { now, then, apart: Duration::from_minutes(minutes) }
    }

    fn sun(bearing: f64, height: f64) -> Vector<World> {
        Vector::towards(Bearing::from_degrees(bearing), Height::clamped(height))
    }

    #[test]
    fn t_d5_the_far_edge_drifts() {
        // Rates of T-A9: −9.91°/h and +12.46°/h, over two minutes around T-D1: 11.9 mm/min into the room, 15.7 aside.
        let at = |hours: f64| sun(261.01 + 12.46 * hours, 40.02 - 9.91 * hours);
        let room = room();
        let found = drift(&room, 0, suns(&room, [at(-1.0 / 60.0), at(1.0 / 60.0)], 2), m(0.0));
        let head = found.iter().find(|drift| drift.edge == Edge::Head).unwrap();
        assert!((head.speed.metres() * 1000.0 - (11.9f64 * 11.9 + 15.7 * 15.7).sqrt()).abs() < 0.1);
        // Into the room is 60°; aside is towards the wall's bearing − 90°, 150°.
        let expected = 60.0 + Degrees::from_radians(crate::maths::atan2(15.7, 11.9)).degrees();
        assert!((head.towards.degrees() - expected).abs() < 0.5, "{:?} {expected}", head.towards);
        let sill = found.iter().find(|drift| drift.edge == Edge::Sill).unwrap();
        assert!((sill.speed.metres() / head.speed.metres() - 0.9 / 2.4).abs() < 1e-9, "as they are high");
        // At the height of a face only what is above it.
        let face = drift(&room, 0, suns(&room, [at(-1.0 / 60.0), at(1.0 / 60.0)], 2), m(1.5));
        assert!(face.iter().all(|drift| drift.edge != Edge::Sill) && face.len() == 3);
    }

    #[test]
    fn the_shadow_climbs_as_the_sun_sinks() {
        // Straight in, 2 m inside, from 45° to 44°: the edges rise by 2 (tan 45° − tan 44°) = 0.0686 m.
        let room = room();
        let suns = suns(&room, [sun(240.0, 45.0), sun(240.0, 44.0)], 4);
        let found = climbs(&room, &room.openings[0], Vector::new(20.6, 2.0, 1.2), suns);
        let expected = 2.0 * (1.0 - crate::maths::tan(Degrees::from_degrees(44.0).radians())) / 4.0;
        assert_eq!(found.len(), 2);
        for (climb, height) in found.iter().zip([0.9 - 2.0, 2.4 - 2.0]) {
            assert!((climb.height.metres() - height).abs() < 1e-9);
            assert!((climb.per_minute.metres() - expected).abs() < 1e-9);
        }
    }

    #[test]
    fn reveal_and_slab_cast_the_heads_shadow() {
        let mut room = room();
        let height = |room: &Room| {
            let suns = suns(room, [sun(240.0, 45.0); 2], 1);
            climbs(room, &room.openings[0], Vector::new(20.6, 1.0, 1.2), suns)[1].height.metres()
        };
        assert!((height(&room) - 1.4).abs() < 1e-9);
        room.openings[0].reveal = m(0.3);
        assert!((height(&room) - 1.1).abs() < 1e-9);
        room.openings[0].overhang = Some(Overhang { depth: m(0.8), above: m(0.1) });
        assert!((height(&room) - 0.4).abs() < 1e-9);
    }
}
