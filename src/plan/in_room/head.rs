//! How long all of a head is in the sun, not only the point where the mark has its face.

use super::RoomStage;
use crate::plan::search::met;
use crate::sky::sun::Sun;
use crate::units::{InRoom, Span, Spans, Vector};

/// Half of a head's height and width, metres: 23 and 16 cm, as drawing books have them. Common practice.
const HALF: (f64, f64) = (0.115, 0.08);

/// When crown, chin and both cheeks are in the sun at once. Cheeks are taken to both sides along each axis of the room, so
/// that it does not matter which way the face looks.
pub fn lit(sun: &Sun, place: &RoomStage, face: Vector<InRoom>, within: Span) -> Spans {
    let (up, side) = HALF;
    let rim = [
        (0.0, 0.0, up),
        (0.0, 0.0, -up),
        (side, 0.0, 0.0),
        (-side, 0.0, 0.0),
        (0.0, side, 0.0),
        (0.0, -side, 0.0),
    ];
    let at = |(x, y, z): (f64, f64, f64)| place.at(face + Vector::new(x, y, z));
    let each = rim.into_iter().map(|point| met::sun_on_mark(sun, &at(point), within));
    each.reduce(|all, one| all.and(&one)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{on, room_stage};

    #[test]
    fn a_head_is_lit_for_less_than_a_point() {
        let place = room_stage();
        let sun = Sun::new(place.stage.site);
        let day = place.stage.zone.day(on(2027, 3, 11)).unwrap();
        let face = Vector::new(3.6, 2.6, 1.25);
        let point = met::sun_on_mark(&sun, &place.at(face), day);
        let head = lit(&sun, &place, face, day);
        assert!(!head.is_empty() && head.total() < point.total());
        assert!(head.without(&point).is_empty());
    }
}
