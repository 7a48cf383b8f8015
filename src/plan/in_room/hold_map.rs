//! Minutes of the wished light over the floor on a day: the best place for a chair.

use super::RoomStage;
use crate::plan::search::met;
use crate::sky::sun::Sun;
use crate::units::{Duration, Metres, Span, Spans, Vector};

/// Spots that are asked at most, and the finest grid, metres. Our own choice: a hand's breadth of a chair is no difference.
const SPOTS: f64 = 400.0;
const FINEST: f64 = 0.25;

/// Kept free along the walls, metres: nobody sits nearer. Our own choice.
const WALL: f64 = 0.2;

/// A spot of the floor and its light.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Along wall 1 from corner 1.
    pub x: Metres,
    /// From wall 1 into the room.
    pub y: Metres,
    /// When a face there has the wished light.
    pub light: Spans,
}

impl Spot {
    /// The longest time in one piece.
    pub fn hold(&self) -> Duration {
        self.longest().map_or(Duration::ZERO, Span::duration)
    }

    /// The longest piece.
    pub fn longest(&self) -> Option<Span> {
        self.light.iter().max_by_key(|span| span.duration())
    }
}

/// The floor of a room on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct HoldMap {
    /// Distance between neighbouring spots along both axes.
    pub step: Metres,
    /// Every spot of the grid that is on the floor, row by row.
    pub spots: Vec<Spot>,
}

impl HoldMap {
    /// For a face at a height above the floor.
    pub fn of(sun: &Sun, place: &RoomStage, face: Metres, day: Span) -> Self {
        let room = &place.room;
        let ends = |axis: usize| {
            let sizes = room.floor.iter().map(|corner| corner[axis].metres());
            sizes.fold((f64::MAX, f64::MIN), |(low, high), size| (low.min(size), high.max(size)))
        };
        let ((left, right), (near, far)) = (ends(0), ends(1));
        // To five centimetres, so that tapes read well.
        let step = (((right - left) * (far - near) / SPOTS).sqrt().max(FINEST) * 20.0).ceil() / 20.0;
        let along = |from: f64, to: f64| {
            let count = ((to - from - 2.0 * WALL) / step).floor().max(0.0) as u32;
            (0..=count).map(move |number| from + WALL + f64::from(number) * step)
        };
        let on_floor = |x: f64, y: f64| room.holds(Metres::from_metres(x), Metres::from_metres(y));
        let mut spots = Vec::new();
        for y in along(near, far) {
            for x in along(left, right).filter(|x| on_floor(*x, y)) {
                let light = met::met(sun, &place.at(Vector::new(x, y, face.metres())), day);
                spots.push(Spot { x: Metres::from_metres(x), y: Metres::from_metres(y), light });
            }
        }
        Self { step: Metres::from_metres(step), spots }
    }

    /// Where a chair has the light for longest without being moved; `None` in a room without any.
    pub fn best(&self) -> Option<&Spot> {
        let lit = self.spots.iter().filter(|spot| !spot.light.is_empty());
        lit.max_by_key(|spot| (spot.hold(), spot.light.total()))
    }

    /// The longest hold of all.
    pub fn longest(&self) -> Duration {
        self.best().map_or(Duration::ZERO, Spot::hold)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{on, room_stage};

    #[test]
    fn the_best_chair_is_no_worse_than_any_other_and_dark_rooms_have_none() {
        let mut place = room_stage();
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        let map = HoldMap::of(&sun, &place, Metres::from_metres(1.2), day);
        assert!(map.spots.len() > 200 && map.spots.len() <= 500, "{}", map.spots.len());
        let best = map.best().unwrap();
        assert!(map.spots.iter().all(|spot| spot.hold() <= best.hold()));
        let asked = met::met(&sun, &place.at(Vector::new(best.x.metres(), best.y.metres(), 1.2)), day);
        assert_eq!(asked, best.light);
        place.room.openings.clear();
        let dark = HoldMap::of(&sun, &place, Metres::from_metres(1.2), day);
        assert_eq!((dark.best(), dark.longest()), (None, Duration::ZERO));
    }
}
