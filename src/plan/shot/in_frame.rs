//! What a set-up's picture holds at an instant: the sun, windows, the crew's shadow; and whether the camera has room.

use super::Vantage;
use super::own_shadow;
use crate::light::picture::{Picture, SunSeen};
use crate::place::aperture;
use crate::place::opening::Opening;
use crate::plan::stage::Stage;
use crate::plan::wish::face::InPicture;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Instant, Metres, Span, Spans, Vector, World};

/// What is in the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct InFrame {
    /// The sun, unless the skyline hides it or no opening lets it onto the lens.
    pub sun: Option<SunSeen>,
    /// Names of the openings in the picture.
    pub windows: Vec<String>,
    /// Whether a camera at its distance would stand outside the room.
    pub outside: bool,
    /// When, on that day, the crew's shadow is in the picture.
    pub shadow: Spans,
}

/// What the picture of `stage` holds `at` an instant of `day`, the lens `height` above the floor.
pub fn in_frame(sun: &Sun, stage: &Stage, height: Metres, (at, day): (Instant, Span)) -> Option<InFrame> {
    let picture = stage.shot.picture?;
    let camera = stage.shot.vantage.as_ref();
    Some(InFrame {
        sun: sees_sun(sun, stage, at).map(|light| picture.sun(stage.lens, light)),
        windows: camera.map_or_else(Vec::new, |camera| windows(camera, &picture, stage.lens)),
        outside: camera.is_some_and(|camera| !camera.is_inside(stage.lens)),
        shadow: own_shadow::in_picture(sun, stage, height, day),
    })
}

/// Where the sun stands if it shines on the lens.
fn sees_sun(sun: &Sun, stage: &Stage, at: Instant) -> Option<Vector<World>> {
    let Some(camera) = &stage.shot.vantage else {
        return crate::plan::search::on_mark::sun_there(sun, stage.skyline_at(at), at);
    };
    let around = camera.around(stage.lens);
    let light = crate::plan::search::on_mark::sun_there(sun, around.on(stage.zone.date(at)), at)?;
    camera.sees_sky(stage.lens, light).then_some(light)
}

/// Openings of which some is in the picture and no wall of the room hides all.
fn windows(camera: &Vantage, picture: &Picture, lens: Bearing) -> Vec<String> {
    let at = camera.lens_at(lens);
    let seen = |opening: &&Opening| {
        let open = Opening { covered: false, ..(*opening).clone() };
        !aperture::cones(&camera.room, &open, at, Degrees::default()).is_empty()
            && camera.room.frame(opening).is_some_and(|frame| {
                let corners = frame.inner.map(|corner| camera.room.world_from_room(corner - at));
                shows(picture, lens, &corners)
            })
    };
    camera.room.openings.iter().filter(seen).map(|opening| opening.name.clone()).collect()
}

/// Whether some of a flat outline, its corners given from the lens, is in the picture.
///
/// The outline is cut by the picture's planes one after the other (Sutherland and Hodgman 1974).
pub fn shows(picture: &Picture, lens: Bearing, corners: &[Vector<World>]) -> bool {
    let mut left = corners.to_vec();
    for side in picture.sides(lens, Degrees::default()) {
        let mut cut = Vec::with_capacity(left.len() + 1);
        for (n, from) in left.iter().enumerate() {
            let to = left[(n + 1) % left.len()];
            let (start, end) = (side.normal.dot(*from), side.normal.dot(to));
            if start >= 0.0 {
                cut.push(*from);
            }
            if (start >= 0.0) != (end >= 0.0) {
                cut.push(*from + (to - *from) * (start / (start - end)));
            }
        }
        left = cut;
    }
    !left.is_empty()
}

/// The wish for the sun in the picture, in the order of the screens, and its words.
pub const WISHES: [(InPicture, &str); 4] = [
    (InPicture::Any, "any"),
    (InPicture::In, "in"),
    (InPicture::JustOut, "just out"),
    (InPicture::Out, "out"),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::room::Room;
    use crate::place::seasons::Around;
    use crate::plan::fixture::{field, span};
    use proptest::prelude::*;
    use std::sync::Arc;

    fn metres(metres: f64) -> Metres {
        Metres::from_metres(metres)
    }

    fn picture() -> Picture {
        let degrees = Degrees::from_degrees;
        Picture { across: degrees(40.0), up: degrees(27.0), tilt: degrees(0.0) }
    }

    /// Six by five metres, wall 0 faces south, with windows in walls 0 and 2.
    fn camera(distance: f64) -> Vantage {
        let mut room = Room::rectangle("r", "r", [6.0, 5.0, 3.0].map(metres), Bearing::from_degrees(180.0));
        room.openings.push(Opening::rectangle("s", "south", 0, [2.5, 0.9, 1.0, 1.4].map(metres)));
        room.openings.push(Opening::rectangle("n", "north", 2, [2.5, 0.9, 1.0, 1.4].map(metres)));
        Vantage {
            room: Arc::new(room),
            subject: [metres(3.0), metres(2.5)],
            distance: metres(distance),
            height: metres(1.5),
            far: Around::default(),
        }
    }

    #[test]
    fn the_lens_sees_the_window_it_looks_at() {
        assert_eq!(windows(&camera(2.0), &picture(), Bearing::from_degrees(180.0)), ["south"]);
        assert_eq!(windows(&camera(2.0), &picture(), Bearing::from_degrees(0.0)), ["north"]);
        assert!(windows(&camera(2.0), &picture(), Bearing::from_degrees(90.0)).is_empty());
    }

    #[test]
    fn a_camera_too_far_back_is_outside() {
        let outside = |distance| {
            let mut stage = field();
            stage.lens = Bearing::from_degrees(180.0);
            stage.shot.picture = Some(picture());
            stage.shot.vantage = Some(camera(distance));
            let day = span("2027-03-21T00:00:00Z", "2027-03-22T00:00:00Z");
            in_frame(&Sun::new(stage.site), &stage, metres(1.5), (day.middle(), day)).unwrap().outside
        };
        assert!(!outside(2.4) && outside(2.6));
    }

    proptest! {
        #[test]
        fn cutting_agrees_with_a_grid_of_points(
            x in -6.0..6.0f64, y in -3.0..8.0f64, z in -3.0..3.0f64, turn in 0.0..360.0f64, wide in 0.3..3.0f64, high in 0.3..3.0f64,
        ) {
            let along = Bearing::from_degrees(turn).level();
            let first = Vector::new(x, y, z);
            let corners = [first, first + along * wide, first + along * wide + Vector::UP * high, first + Vector::UP * high];
            // A point of the outline in front of a lens that looks north, on its sensor.
            let seen = |by: f64| (0..=60).any(|a| (0..=60).any(|b| {
                let at = first + along * (wide * f64::from(a) / 60.0) + Vector::UP * (high * f64::from(b) / 60.0);
                let edge = |degrees: f64| crate::maths::tan(Degrees::from_degrees(degrees / 2.0).radians()) * by;
                at.y > 0.0 && (at.x / at.y).abs() <= edge(40.0) && (at.z / at.y).abs() <= edge(27.0)
            }));
            let found = shows(&picture(), Bearing::from_degrees(0.0), &corners);
            if seen(0.999) { prop_assert!(found); }
            // Near the lens the grid is too coarse on the sensor to tell the other way round.
            if found && corners.iter().all(|corner| corner.y > 0.8) {
                prop_assert!(seen(1.3), "nothing is near the picture");
            }
        }
    }
}
