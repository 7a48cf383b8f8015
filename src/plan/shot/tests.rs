//! Face and picture in the search against every third minute, mirrored and turned; the head that is turned; the lens in a room.

use super::*;
use crate::light::face::{cheek, pattern};
use crate::light::picture::SunSeen;
use crate::plan::fixture::{field, loft, on, some_days, some_stage, span, wish};
use crate::plan::search::above::shows;
use crate::plan::search::met::met;
use crate::plan::search::slots;
use crate::plan::wish::face::InPicture;
use crate::plan::wish::{DateRange, SunOnMark};
use crate::units::{Duration, Instant, Span};
use proptest::prelude::*;

fn degrees(degrees: f64) -> Degrees {
    Degrees::from_degrees(degrees)
}

fn facing(bearing: f64, pitch: f64) -> Facing {
    Facing { bearing: Bearing::from_degrees(bearing), pitch: Height::clamped(pitch) }
}

fn fifty(tilt: f64) -> Picture {
    Picture { across: degrees(28.0), up: degrees(21.1), tilt: degrees(tilt) }
}

fn some_shot() -> impl Strategy<Value = Stage> {
    let pattern = prop_oneof![Just(None), (0usize..5).prop_map(|n| Some(Pattern::ALL[n]))];
    let cheek = prop_oneof![Just(None), Just(Some(Cheek::Short)), Just(Some(Cheek::Broad))];
    let eyes = prop_oneof![2 => Just(None), 1 => any::<bool>().prop_map(Some)];
    let picture = prop_oneof![
        Just(InPicture::Any),
        Just(InPicture::In),
        Just(InPicture::JustOut),
        Just(InPicture::Out)
    ];
    let head = (0.0..360.0f64, -30.0..30.0f64, -20.0..40.0f64);
    (some_stage(), head, pattern, cheek, eyes, picture).prop_map(
        |(mut stage, (nose, pitch, tilt), pattern, cheek, sun_in_eyes, in_picture)| {
            stage.shot =
                Shot { facing: Some(facing(nose, pitch)), picture: Some(fifty(tilt)), vantage: None };
            stage.wish.face = crate::plan::wish::face::FaceWish { pattern, cheek, sun_in_eyes };
            stage.wish.in_picture = in_picture;
            stage
        },
    )
}

/// The wish of face and picture put to the light of an instant in words, without a cone. A sun behind the skyline is
/// nowhere in the picture.
fn grants(stage: &Stage, at: Instant, light: Vector<World>) -> bool {
    let (head, picture) = (stage.shot.facing.unwrap(), stage.shot.picture.unwrap());
    let hidden = !shows(stage.skyline_at(at), light);
    let seen = if hidden { SunSeen::Clear } else { picture.sun(stage.lens, light) };
    let wish = stage.wish.face;
    wish.pattern.is_none_or(|wished| pattern(light, head) == Some(wished))
        && wish.cheek.is_none_or(|wished| cheek(light, head, stage.lens).is_none_or(|cheek| cheek == wished))
        && wish.sun_in_eyes.is_none_or(|wished| (light.angle_to(head.nose()) <= IN_THE_EYES) == wished)
        && match stage.wish.in_picture {
            InPicture::Any => true,
            InPicture::In => seen == SunSeen::In,
            InPicture::JustOut => seen == SunSeen::JustOut,
            InPicture::Out => seen > SunSeen::JustOut,
        }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn the_search_agrees_with_every_third_minute(stage in some_shot(), days in some_days()) {
        let sun = Sun::new(stage.site);
        let plain = Stage { shot: Shot::default(), ..stage.clone() };
        let (light, asked) = (met(&sun, &plain, days), met(&sun, &stage, days));
        prop_assert!(asked.without(&light).is_empty());
        let edges: Vec<Instant> =
            asked.iter().chain(light.iter()).flat_map(|span| [span.start(), span.end()]).collect();
        let minutes = (0..).map(|n| days.start() + Duration::from_minutes(3 * n)).take_while(|at| *at < days.end());
        for at in minutes.filter(|at| edges.iter().all(|edge| (*edge - *at).millis().abs() > 1000)) {
            prop_assert_eq!(asked.contains(at), light.contains(at) && grants(&stage, at, sun.apparent(at)), "{}", at);
        }
    }

    #[test]
    fn a_scene_mirrored_about_the_meridian_is_granted_alike(
        stage in some_shot(), sun in 0.0..360.0f64, height in -5.0..80.0f64,
    ) {
        let mut stage = stage;
        (stage.skyline, stage.seasons) = Default::default();
        let mut mirrored = stage.clone();
        mirrored.lens = Bearing::from_degrees(-stage.lens.degrees());
        let head = stage.shot.facing.unwrap();
        mirrored.shot.facing = Some(facing(-head.bearing.degrees(), head.pitch.degrees()));
        let lacks = |stage: &Stage, sun: f64| {
            let light = Vector::towards(Bearing::from_degrees(sun), Height::clamped(height));
            Asked::of(stage, stage.lens).lacks(stage, Instant::from_unix_millis(0), light)
        };
        prop_assert_eq!(lacks(&stage, sun), lacks(&mirrored, -sun));
        // And turned as a whole, in steps that move no edge by more than rounding.
        let mut turned = stage.clone();
        turned.lens = stage.lens.turned(degrees(90.0));
        turned.shot.facing = Some(facing(head.bearing.degrees() + 90.0, head.pitch.degrees()));
        prop_assert_eq!(lacks(&stage, sun), lacks(&turned, sun + 90.0));
    }
}

#[test]
fn turning_the_head_by_twenty_degrees_changes_the_slots() {
    let mut stage = field();
    stage.wish = wish((0.0, 360.0), (5.0, 60.0), SunOnMark::Yes);
    stage.wish.face.pattern = Some(Pattern::Triangle);
    let found = |nose: f64| {
        let stage =
            Stage { shot: Shot { facing: Some(facing(nose, 0.0)), ..Shot::default() }, ..stage.clone() };
        let june = [DateRange { from: on(2027, 6, 1), to: on(2027, 6, 7) }];
        let found = slots(&Sun::new(stage.site), &stage, &june);
        found.iter().map(|slot| slot.span).collect::<Vec<Span>>()
    };
    let (before, after) = (found(150.0), found(170.0));
    assert!(!before.is_empty() && !after.is_empty());
    assert!(
        before.iter().zip(&after).all(|(one, other)| (one.start() - other.start()).minutes().abs() > 5.0)
    );
}

#[test]
fn in_a_room_the_lens_must_see_the_sun_through_a_window() {
    use crate::place::opening::Opening;
    let metres = Metres::from_metres;
    let mut room = Room::rectangle("r", "r", [6.0, 5.0, 3.0].map(metres), Bearing::from_degrees(248.0));
    room.openings.push(Opening::rectangle("w", "w", 0, [2.6, 0.5, 0.8, 2.2].map(metres)));
    // Wall 0 faces 248°. The subject stands before the window, the camera behind it looks out.
    let vantage = |distance: f64| Vantage {
        room: Arc::new(room.clone()),
        subject: [3.0, 1.5].map(metres),
        distance: metres(distance),
        height: metres(1.4),
        far: Around::default(),
    };
    let stage = |distance: f64| {
        let mut stage = Stage { openings: None, lens: Bearing::from_degrees(248.0), ..loft() };
        stage.wish = wish((0.0, 360.0), (0.0, 60.0), SunOnMark::Any);
        stage.wish.in_picture = InPicture::In;
        stage.shot = Shot { facing: None, picture: Some(fifty(0.0)), vantage: Some(vantage(distance)) };
        stage
    };
    assert!(vantage(2.0).is_inside(Bearing::from_degrees(248.0)));
    assert!(!vantage(4.0).is_inside(Bearing::from_degrees(248.0)), "the camera stands outside the far wall");
    let day = span("2027-03-08T00:00:00Z", "2027-03-09T00:00:00Z");
    let total = |stage: &Stage| met(&Sun::new(stage.site), stage, day).total();
    let open = Stage { shot: Shot { vantage: None, ..stage(2.0).shot }, ..stage(2.0) };
    assert!(total(&stage(2.0)) > Duration::ZERO && total(&stage(2.0)) < total(&open));
    // By hand: 0.4 m to each side at 3.5 m, and half the picture from bottom to top.
    let sun = Sun::new(open.site);
    for span in met(&sun, &stage(2.0), day).iter() {
        for at in [span.start(), span.middle(), span.end()] {
            let light = sun.apparent(at);
            let aside = Bearing::from_degrees(248.0).turn_to(light.bearing()).degrees().abs();
            assert!(aside < 6.53 && light.height().degrees() < 10.83, "{at}");
        }
    }
}

/// Whether a ray from the lens leaves by an opening of a room of 6 × 5 × 3 m and passes over the screen, walked without
/// planes of the sky: to the wall or the ceiling first, then to the screen's own plane.
fn gets_out(camera: &Vantage, lens: Bearing, direction: Vector<World>) -> bool {
    let (room, from) = (&camera.room, camera.lens_at(lens));
    let ray = room.room_from_world(direction);
    let reach = |(gap, along): (f64, f64)| if along > 0.0 { gap / along } else { f64::INFINITY };
    let ways = [
        (6.0 - from.x, ray.x),
        (from.x, -ray.x),
        (5.0 - from.y, ray.y),
        (from.y, -ray.y),
        (3.0 - from.z, ray.z),
    ];
    let least = ways.map(reach).into_iter().fold(f64::INFINITY, f64::min);
    let hit = from + ray * least;
    let in_window = hit.y.abs() < 1e-9 && (2.0..=4.0).contains(&hit.x) && (0.8..=2.6).contains(&hit.z);
    let in_roof = (hit.z - 3.0).abs() < 1e-9 && (1.0..=2.5).contains(&hit.x) && (1.0..=3.0).contains(&hit.y);
    // The screen stands square before wall 0, 10 m from the middle, 7 m high, 10 m to either side.
    let to_screen = (from.y + 7.5) / -ray.y;
    let at_screen = from + ray * to_screen;
    let hidden = to_screen > 0.0 && (-7.0..=13.0).contains(&at_screen.x) && at_screen.z < 7.0;
    (in_window || in_roof) && !hidden
}

proptest! {
    #[test]
    fn a_lens_in_a_room_sees_what_a_walked_ray_sees(
        bearing in 0.0..360.0f64, turn in -40.0..40.0f64, high in 1.0..85.0f64, lens in 0.0..360.0f64, away in 0.3..2.0f64,
    ) {
        use crate::place::opening::Opening;
        use crate::place::outside::Screen;
        let metres = Metres::from_metres;
        let mut room = Room::rectangle("r", "r", [6.0, 5.0, 3.0].map(metres), Bearing::from_degrees(bearing));
        room.openings.push(Opening::rectangle("w", "w", 0, [2.0, 0.8, 2.0, 1.8].map(metres)));
        let roof = Opening::rectangle("l", "l", 0, [1.0, 1.0, 1.5, 2.0].map(metres));
        room.openings.push(Opening { in_ceiling: true, ..roof });
        room.screens.push(Screen {
            id: "s".into(),
            name: "house across".into(),
            distance: metres(10.0),
            from: Bearing::from_degrees(bearing - 45.0),
            to: Bearing::from_degrees(bearing + 45.0),
            height: metres(7.0),
        });
        let far = Around::default();
        let camera =
            Vantage { room: Arc::new(room), subject: [3.0, 2.5].map(metres), distance: metres(away), height: metres(1.4), far };
        let (lens, light) = (
            Bearing::from_degrees(lens),
            Vector::towards(Bearing::from_degrees(bearing + turn), Height::clamped(high)),
        );
        let mut stage = Stage { openings: None, lens, ..loft() };
        // A picture of nearly everything ahead, turned to the light, so that the room alone decides.
        stage.wish.in_picture = InPicture::In;
        let picture = Picture { across: degrees(170.0), up: degrees(170.0), tilt: degrees(0.0) };
        stage.shot = Shot { facing: None, picture: Some(picture), vantage: Some(camera.clone()) };
        let seen = |turn: f64| {
            let light = light.turned(degrees(turn));
            let ahead = picture.sun(lens, light) == SunSeen::In;
            let lacks = Asked::of(&stage, lens).lacks(&stage, Instant::from_unix_millis(0), light);
            (lacks.is_none(), ahead && gets_out(&camera, lens, light))
        };
        let (asked, walked) = seen(0.0);
        // A third of a degree from an edge the disc shows where its middle does not.
        let near = [-0.4, 0.4].iter().any(|turn| seen(*turn).1 != walked);
        let lift = |by: f64| gets_out(&camera, lens, Vector::towards(light.bearing(), Height::clamped(high + by)));
        let near = near || lift(0.4) != lift(-0.4);
        prop_assume!(!near);
        prop_assert_eq!(asked, walked);
    }
}
