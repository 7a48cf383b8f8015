//! The shadow of camera and crew: from when to when it lies in the picture. Here on level ground in the open; in a room
//! by [`super::crew_in_room`].
//!
//! People stand beside and behind the camera as upright poles; a pole's shadow is a straight piece of ground from its
//! foot, and is in the picture when some of it is inside the four planes of the lens. A subject that stands in the way
//! hides no shadow here: better a caution too many. The sun must reach the ground, so the skyline counts.

use super::crew_in_room;
use crate::light::picture::Picture;
use crate::light::shadow::shadow_length;
use crate::plan::search::above::shown;
use crate::plan::search::met;
use crate::plan::search::scan;
use crate::plan::stage::Stage;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Metres, Span, Spans, Vector, World};

/// Height of those who stand at a camera. Our own choice: a tall person.
pub const TALL: Metres = Metres::from_metres(1.9);

/// How far they stand to either side of the lens. Our own choice.
pub(in crate::plan) const BESIDE: f64 = 0.6;

/// Time between two looks. Our own choice: a shadow crosses a picture in more.
const LOOK: Duration = Duration::from_minutes(2);

/// When the crew's shadow is in the picture of a lens at a height above the ground; nothing behind openings that were only
/// sighted.
pub fn in_picture(sun: &Sun, stage: &Stage, height: Metres, within: Span) -> Spans {
    let Some(picture) = stage.shot.picture else { return Spans::none() };
    let tall = if height > TALL { height } else { TALL };
    let (lit, camera) = match (&stage.shot.vantage, &stage.openings) {
        (Some(camera), _) => {
            let around = camera.around(stage.lens);
            (shown(sun, around.on(stage.zone.date(within.middle())), &within.into()), Some(camera))
        }
        (None, None) => (met::sun_on_mark(sun, stage, within), None),
        (None, Some(_)) => return Spans::none(),
    };
    let falls = |light: Vector<World>| match camera {
        Some(camera) => crew_in_room::falls_in(camera, &picture, stage.lens, (tall, light)),
        None => falls_in(&picture, stage.lens, (height, tall), light),
    };
    let seen = lit.iter().flat_map(|span| {
        let found = scan::spans(span, LOOK, |at| falls(sun.apparent(at)));
        found.iter().collect::<Vec<_>>()
    });
    Spans::gather(seen.collect())
}

/// Whether some shadow of those at the camera is in its picture.
fn falls_in(
    picture: &Picture,
    lens: Bearing,
    (height, tall): (Metres, Metres),
    light: Vector<World>,
) -> bool {
    let Some(long) = shadow_length(light.height()) else { return false };
    let along = light.bearing().reversed().level() * (long * tall.metres());
    let right = lens.turned(Degrees::from_degrees(90.0)).level();
    let eye = Vector::UP * height.metres();
    [-BESIDE, 0.0, BESIDE].into_iter().any(|aside| {
        let foot = right * aside - eye;
        is_cut(picture, lens, foot, foot + along)
    })
}

/// Whether a piece of a line, from the lens, is somewhere inside the picture's four planes.
pub(in crate::plan) fn is_cut(
    picture: &Picture,
    lens: Bearing,
    from: Vector<World>,
    to: Vector<World>,
) -> bool {
    let mut inside = (0.0_f64, 1.0_f64);
    for side in picture.sides(lens, Degrees::default()) {
        let (start, end) = (side.normal.dot(from), side.normal.dot(to));
        if start < 0.0 && end < 0.0 {
            return false;
        }
        let cut = start / (start - end);
        if start < 0.0 {
            inside.0 = inside.0.max(cut);
        } else if end < 0.0 {
            inside.1 = inside.1.min(cut);
        }
    }
    inside.0 <= inside.1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::relative::LensFrame;
    use crate::maths;
    use crate::plan::fixture::{field, span};
    use crate::units::Height;
    use proptest::prelude::*;

    fn picture(tilt: f64) -> Picture {
        let degrees = Degrees::from_degrees;
        Picture { across: degrees(53.0), up: degrees(41.0), tilt: degrees(tilt) }
    }

    proptest! {
        #[test]
        fn points_along_the_shadow_say_the_same(
            lens in 0.0..360.0f64, tilt in -30.0..10.0f64, height in 0.3..3.0f64, sun in 0.0..360.0f64, high in 2.0..70.0f64,
        ) {
            let light = Vector::towards(Bearing::from_degrees(sun), Height::clamped(high));
            let (picture, lens) = (picture(tilt), Bearing::from_degrees(lens));
            let tall = height.max(1.9);
            // A thousand points of each pole, each thrown on the ground by itself and put on the sensor.
            let frame = LensFrame::new(lens, picture.tilt);
            let half = |angle: Degrees| maths::tan(angle.radians() / 2.0);
            let mut nearest = f64::INFINITY;
            let mut seen = false;
            for aside in [-0.6, 0.0, 0.6] {
                for n in 0..=1000 {
                    let z = tall * f64::from(n) / 1000.0;
                    let foot = lens.turned(Degrees::from_degrees(90.0)).level() * aside;
                    let ground = foot + Vector::UP * z - light * (z / light.z);
                    let at = frame.sees(ground - Vector::UP * height);
                    let (x, y) = (at.x / at.y / half(picture.across), at.z / at.y / half(picture.up));
                    let out = x.abs().max(y.abs());
                    if at.y > 0.0 {
                        seen |= out <= 1.0;
                        nearest = nearest.min((out - 1.0).abs());
                    }
                }
            }
            prop_assume!(seen || nearest > 0.02);
            prop_assert_eq!(falls_in(&picture, lens, (Metres::from_metres(height), Metres::from_metres(tall)), light), seen);
            let by = 13.0;
            let turned = light.turned(Degrees::from_degrees(by));
            let lens = lens.turned(Degrees::from_degrees(by));
            prop_assert_eq!(falls_in(&picture, lens, (Metres::from_metres(height), Metres::from_metres(tall)), turned), seen);
        }
    }

    #[test]
    fn the_shadow_comes_with_the_sun_behind_the_camera() {
        let mut stage = field();
        stage.lens = Bearing::from_degrees(60.0);
        stage.shot.picture = Some(picture(-5.0));
        let day = span("2027-03-21T00:00:00Z", "2027-03-22T00:00:00Z");
        let found = in_picture(&Sun::new(stage.site), &stage, Metres::from_metres(1.5), day);
        let evening = found.iter().next_back().unwrap();
        assert!(
            evening.start() > span("2027-03-21T15:00:00Z", "2027-03-22T00:00:00Z").start(),
            "{}",
            evening.start()
        );
        stage.lens = Bearing::from_degrees(240.0);
        assert!(in_picture(&Sun::new(stage.site), &stage, Metres::from_metres(1.5), evening).is_empty());
    }
}
