//! Face and picture in the search against every third minute, mirrored and turned; the head that is turned; the lens in a room.

use super::super::fixture::{field, loft, on, some_days, some_stage, span, wish};
use super::super::met::met;
use super::super::search::slots;
use super::super::wish::{DateRange, SunOnMark};
use super::*;
use crate::light::face::{cheek, pattern};
use crate::light::picture::SunSeen;
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
            stage.wish.face = super::super::face_wish::FaceWish { pattern, cheek, sun_in_eyes };
            stage.wish.in_picture = in_picture;
            stage
        },
    )
}

/// The wish of face and picture put to one light in words, without a cone.
fn grants(stage: &Stage, light: Vector<World>) -> bool {
    let (head, picture) = (stage.shot.facing.unwrap(), stage.shot.picture.unwrap());
    let seen = picture.sun(stage.lens, light);
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
            prop_assert_eq!(asked.contains(at), light.contains(at) && grants(&stage, sun.apparent(at)), "{}", at);
        }
    }

    #[test]
    fn a_scene_mirrored_about_the_meridian_is_granted_alike(
        stage in some_shot(), sun in 0.0..360.0f64, height in -5.0..80.0f64,
    ) {
        let mut mirrored = stage.clone();
        mirrored.lens = Bearing::from_degrees(-stage.lens.degrees());
        let head = stage.shot.facing.unwrap();
        mirrored.shot.facing = Some(facing(-head.bearing.degrees(), head.pitch.degrees()));
        let lacks = |stage: &Stage, sun: f64| {
            Asked::of(stage, stage.lens).lacks(Vector::towards(Bearing::from_degrees(sun), Height::clamped(height)))
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
