//! When the sun lies on the floor on a day, and when it climbs a wall.
//!
//! Looked at every few minutes and refined where the answer changes, so that a patch of under that length between two looks is
//! missed; no patch that matters is.

use super::RoomStage;
use crate::light::patch::{Surface, beams, of_beams};
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span, Spans, Vector, World};

/// Time between two looks. Our own choice.
const STEP: Duration = Duration::from_minutes(5);

/// An edge is right to this.
const EXACT: i64 = 1000;

/// Smallest patch that counts, square metres: a hand. Our own choice.
const HAND: f64 = 0.01;

/// Sun in a room on a day.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PatchDay {
    /// When a patch lies on the floor.
    pub on_floor: Spans,
    /// When a patch lies on each wall, by the wall's number.
    pub on_walls: Vec<(usize, Spans)>,
}

impl PatchDay {
    /// Within `day`; `there` says where the sun is seen, unless it is hidden.
    pub fn of(place: &RoomStage, day: Span, there: &impl Fn(Instant) -> Option<Vector<World>>) -> Self {
        let room = &place.room;
        let walls = room.floor.len();
        // The floor first, then each wall.
        let lit = |at: Instant| -> Vec<bool> {
            let mut areas = vec![0.0; walls + 1];
            let Some(sun) = there(at).map(|sun| room.room_from_world(sun)) else {
                return vec![false; walls + 1];
            };
            for patch in of_beams(room, &beams(room, sun), sun) {
                match patch.surface {
                    Surface::Floor => areas[0] += patch.area(),
                    Surface::Wall(n) => areas[n + 1] += patch.area(),
                    Surface::Ceiling => {}
                }
            }
            areas.into_iter().map(|area| area > HAND).collect()
        };
        let mut found = vec![Vec::new(); walls + 1];
        let mut began: Vec<Option<Instant>> = vec![None; walls + 1];
        let (mut at, mut before) = (day.start(), lit(day.start()));
        for (surface, is_lit) in before.iter().enumerate() {
            began[surface] = is_lit.then_some(at);
        }
        while at < day.end() {
            let next = (at + STEP).min(day.end());
            let now = lit(next);
            for surface in (0..=walls).filter(|surface| before[*surface] != now[*surface]) {
                let edge = refine(at, next, |when| lit(when)[surface] == before[surface]);
                match began[surface].take() {
                    Some(start) => found[surface].extend(Span::new(start, edge)),
                    None => began[surface] = Some(edge),
                }
            }
            (at, before) = (next, now);
        }
        for (surface, start) in began.into_iter().enumerate() {
            found[surface].extend(start.and_then(|start| Span::new(start, day.end())));
        }
        let mut each = found.into_iter().map(Spans::gather);
        let on_floor = each.next().unwrap_or_default();
        Self { on_floor, on_walls: each.enumerate().filter(|(_, spans)| !spans.is_empty()).collect() }
    }

    /// The same with the sun seen from the stage's mark.
    pub fn on(sun: &Sun, place: &RoomStage, day: Span) -> Self {
        Self::of(place, day, &|at| crate::plan::search::on_mark::sun_there(sun, &place.stage.skyline, at))
    }

    /// The wall that the sun climbs first, and when.
    pub fn climbs(&self) -> Option<(usize, Instant)> {
        let first =
            self.on_walls.iter().filter_map(|(wall, spans)| Some((*wall, spans.as_slice().first()?.start())));
        first.min_by_key(|(_, at)| *at)
    }
}

/// Halves a stretch until the change of an answer is known to a second.
fn refine(mut from: Instant, mut to: Instant, is_as_before: impl Fn(Instant) -> bool) -> Instant {
    while (to - from).millis() > EXACT {
        let middle = from + Duration::from_millis((to - from).millis() / 2);
        if is_as_before(middle) { from = middle } else { to = middle }
    }
    to
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::patch::patches;
    use crate::plan::fixture::{on, room_stage};

    #[test]
    fn the_loft_has_sun_on_its_floor_and_then_on_the_far_wall() {
        let place = room_stage();
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        let found = PatchDay::on(&sun, &place, day);
        assert_eq!(found.on_floor.iter().len(), 1);
        let span = found.on_floor.as_slice()[0];
        let on_floor = |at: Instant| {
            let to_sun = place.room.room_from_world(sun.apparent(at));
            patches(&place.room, to_sun)
                .iter()
                .filter(|patch| patch.surface == Surface::Floor)
                .map(|patch| patch.area())
                .sum::<f64>()
        };
        let second = Duration::from_seconds(2.0);
        assert!(on_floor(span.start() + second) > HAND && on_floor(span.start() - second) <= HAND);
        let (wall, at) = found.climbs().unwrap();
        assert!(wall != 0 && at > span.start());
    }

    #[test]
    fn a_dark_room_has_none() {
        let mut place = room_stage();
        place.room.openings.clear();
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        assert_eq!(PatchDay::on(&sun, &place, day), PatchDay::default());
        assert_eq!(PatchDay::default().climbs(), None);
    }
}
