//! The shadow of camera and crew in a room: the part of a sun patch that they stand in the way of.
//!
//! People are upright poles, as in [`super::own_shadow`]. The lit part of a pole is what a beam cuts out of it; its shadow
//! runs over the floor and, where that ends, up a wall. It is in the picture when some of either piece is inside the four
//! planes of the lens. What else stands in the room hides nothing: better a caution too many.

use super::Vantage;
use super::own_shadow::{BESIDE, is_cut};
use crate::light::patch::{Beam, beams};
use crate::light::picture::Picture;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector, World};

/// A straight piece of shadow.
type Piece = (Vector<InRoom>, Vector<InRoom>);

/// Whether some shadow of those at the camera is in its picture; `light` is where the sun stands.
pub(in crate::plan) fn falls_in(
    camera: &Vantage,
    picture: &Picture,
    lens: Bearing,
    (tall, light): (Metres, Vector<World>),
) -> bool {
    let (room, sun) = (&camera.room, camera.room.room_from_world(light));
    let beams = beams(room, sun);
    let eye = camera.lens_at(lens);
    let right = room.room_from_world(lens.turned(Degrees::from_degrees(90.0)).level());
    let seen = |(from, to): Piece| {
        let [from, to] = [from, to].map(|point| room.world_from_room(point - eye));
        is_cut(picture, lens, from, to)
    };
    let feet = [-BESIDE, 0.0, BESIDE].map(|aside| {
        let foot = eye + right * aside;
        Vector::new(foot.x, foot.y, 0.0)
    });
    let stands = |foot: &Vector<InRoom>| room.holds(Metres::from_metres(foot.x), Metres::from_metres(foot.y));
    feet.into_iter().filter(stands).any(|foot| {
        let mut lit = beams.iter().filter_map(|beam| lit(beam, foot, tall));
        lit.any(|(low, high)| shadow(camera, foot, (low, high), sun).into_iter().flatten().any(seen))
    })
}

/// Between which heights a beam meets a pole.
fn lit(beam: &Beam, foot: Vector<InRoom>, tall: Metres) -> Option<(f64, f64)> {
    let met = beam.cut(&[foot, foot + Vector::UP * tall.metres()]);
    let low = met.iter().map(|point| point.z).reduce(f64::min)?;
    let high = met.iter().map(|point| point.z).reduce(f64::max)?;
    beam.reaches(foot + Vector::UP * f64::midpoint(low, high)).then_some((low, high))
}

/// The shadow of what is between two heights over a foot: on the floor, and up the wall behind.
fn shadow(
    camera: &Vantage,
    foot: Vector<InRoom>,
    (low, high): (f64, f64),
    sun: Vector<InRoom>,
) -> [Option<Piece>; 2] {
    let ways = camera.room.walls().filter_map(|(_, wall)| {
        let along = -wall.outward.dot(sun);
        let way = -wall.outward.dot(foot - wall.from) / along;
        let end = wall.along.dot(foot - sun * way - wall.from);
        (along > 1e-9 && way > 0.0 && (-1e-6..=wall.length.metres() + 1e-6).contains(&end)).then_some(way)
    });
    let way = ways.fold(f64::INFINITY, f64::min);
    let turns = way * sun.z;
    let on_floor = |height: f64| {
        let top = foot + Vector::UP * height;
        top - sun * (height / sun.z)
    };
    let on_wall = |height: f64| foot + Vector::UP * height - sun * way;
    [
        (low < turns).then(|| (on_floor(low), on_floor(high.min(turns)))),
        (high > turns).then(|| (on_wall(low.max(turns)), on_wall(high))),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::relative::LensFrame;
    use crate::maths;
    use crate::place::opening::Opening;
    use crate::place::room::Room;
    use crate::place::seasons::Around;
    use crate::units::Height;
    use proptest::prelude::*;
    use std::sync::Arc;

    /// Eight by six metres, three high, a window in wall 0 and one in wall 1.
    fn camera(bearing: f64, subject: [f64; 2], away: f64, height: f64) -> Vantage {
        let metres = Metres::from_metres;
        let mut room = Room::rectangle("r", "r", [8.0, 6.0, 3.0].map(metres), Bearing::from_degrees(bearing));
        room.openings.push(Opening::rectangle("a", "a", 0, [1.0, 0.5, 5.0, 2.2].map(metres)));
        room.openings.push(Opening::rectangle("b", "b", 1, [1.5, 0.9, 3.0, 1.8].map(metres)));
        Vantage {
            room: Arc::new(room),
            subject: subject.map(metres),
            distance: metres(away),
            height: metres(height),
            far: Around::default(),
        }
    }

    /// Where a ray first meets the inside of the box.
    fn first_hit(from: Vector<InRoom>, ray: Vector<InRoom>) -> Vector<InRoom> {
        let way = |at: f64, along: f64, size: f64| {
            if along > 0.0 {
                (size - at) / along
            } else if along < 0.0 {
                at / -along
            } else {
                f64::INFINITY
            }
        };
        let ways = [way(from.x, ray.x, 8.0), way(from.y, ray.y, 6.0), way(from.z, ray.z, 3.0)];
        from + ray * ways.into_iter().fold(f64::INFINITY, f64::min)
    }

    /// Whether a point of the box is on one of the two windows; wall 1 leads on from wall 0's end.
    fn is_window(at: Vector<InRoom>) -> bool {
        let a = at.y.abs() < 1e-6 && (1.0..=6.0).contains(&at.x) && (0.5..=2.7).contains(&at.z);
        let b = (at.x - 8.0).abs() < 1e-6 && (1.5..=4.5).contains(&at.y) && (0.9..=2.7).contains(&at.z);
        a || b
    }

    #[test]
    fn with_the_window_behind_the_camera_the_shadow_goes_before_it() {
        // Wall 0 faces south; the sun stands there, 20° high, and comes over the shoulders of the crew.
        let camera = camera(180.0, [4.0, 4.0], 2.0, 1.4);
        let degrees = Degrees::from_degrees;
        let picture = Picture { across: degrees(60.0), up: degrees(45.0), tilt: degrees(-15.0) };
        let seen = |lens: f64, sun: f64| {
            let light = Vector::towards(Bearing::from_degrees(sun), Height::clamped(20.0));
            falls_in(&camera, &picture, Bearing::from_degrees(lens), (Metres::from_metres(1.9), light))
        };
        assert!(seen(0.0, 180.0));
        assert!(!seen(180.0, 180.0), "a lens that looks out has its shadow behind it");
        assert!(!seen(0.0, 0.0), "no window lets this sun in");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]
        #[test]
        fn points_of_each_pole_say_the_same(
            bearing in 0.0..360.0f64, lens in 0.0..360.0f64, tilt in -40.0..5.0f64, turn in -80.0..170.0f64, high in 4.0..50.0f64,
            subject in (2.0..6.0f64, 1.5..4.5f64), away in 0.5..2.0f64, height in 0.5..1.8f64,
        ) {
            let camera = camera(bearing, [subject.0, subject.1], away, height);
            let degrees = Degrees::from_degrees;
            let picture = Picture { across: degrees(60.0), up: degrees(45.0), tilt: degrees(tilt) };
            let lens = Bearing::from_degrees(lens);
            // Wall 1 faces a quarter turn anticlockwise of wall 0.
            let light = Vector::towards(Bearing::from_degrees(bearing - turn + 45.0), Height::clamped(high));
            let sun = camera.room.room_from_world(light);
            let frame = LensFrame::new(lens, picture.tilt);
            let half = |angle: Degrees| maths::tan(angle.radians() / 2.0);
            let eye = camera.lens_at(lens);
            let right = camera.room.room_from_world(lens.turned(degrees(90.0)).level());
            let (mut seen, mut nearest) = (false, f64::INFINITY);
            for aside in [-0.6, 0.0, 0.6] {
                let foot = eye + right * aside;
                if !((0.0..=8.0).contains(&foot.x) && (0.0..=6.0).contains(&foot.y)) { continue; }
                for n in 0..=1000 {
                    let point = Vector::new(foot.x, foot.y, 1.9 * f64::from(n) / 1000.0);
                    if !is_window(first_hit(point, sun)) { continue; }
                    let at = frame.sees(camera.room.world_from_room(first_hit(point, -sun) - eye));
                    let (x, y) = (at.x / at.y / half(picture.across), at.z / at.y / half(picture.up));
                    let out = x.abs().max(y.abs());
                    if at.y > 0.0 {
                        seen |= out <= 1.0;
                        nearest = nearest.min((out - 1.0).abs());
                    }
                }
            }
            // Shadows that only touch the picture or a beam are for nobody to tell.
            prop_assume!(seen && nearest > 0.0 || nearest > 0.05);
            prop_assert_eq!(falls_in(&camera, &picture, lens, (Metres::from_metres(1.9), light)), seen);
        }
    }
}
