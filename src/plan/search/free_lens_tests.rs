//! The free lens against every degree tried, and against every degree and minute put as single questions.

use super::*;
use crate::light::face::{Cheek, Facing};
use crate::light::picture::Picture;
use crate::place::background::Background;
use crate::plan::fixture::{field, loft, of_a_ratio, on, wish};
use crate::plan::search;
use crate::plan::search::only_here::every_bearing;
use crate::plan::search::reason::{Question, Reason};
use crate::plan::wish::DateRange;
use crate::plan::wish::SunOnMark;
use crate::plan::wish::lens::LensChoice;

fn all_round() -> LensChoice {
    LensChoice::Range { from_deg: Bearing::default(), to_deg: Bearing::default() }
}

/// `stage` with its lens as free as `choice`.
fn free(stage: Stage, choice: LensChoice, backgrounds: &[Background]) -> Stage {
    Stage { free: Some(choice.bearings(stage.lens, backgrounds)), ..stage }
}

fn week() -> [DateRange; 1] {
    [DateRange { from: on(2027, 3, 8), to: on(2027, 3, 14) }]
}

#[test]
fn equals_a_scan_of_every_degree() {
    for (wished, stage) in [((112.0, 165.0), loft()), ((170.0, 175.0), field()), ((20.0, 60.0), field())] {
        let stage = Stage { wish: wish(wished, (4.0, 25.0), SunOnMark::Yes), ..stage };
        let sun = Sun::new(stage.site);
        let found = search::slots(&sun, &free(stage.clone(), all_round(), &[]), &week());
        let within = calendar::whole(&stage.zone, week()[0]).unwrap();
        let mut expected = 0;
        for light in any_lens(&sun, &stage, within).iter() {
            let tried = every_bearing(&sun, &stage, light, all_round(), &[]);
            let most = tried.iter().map(|hold| hold.hold()).max().unwrap();
            let here = found.iter().find(|slot| slot.span.and(light).is_some());
            if most >= stage.takes {
                let short = most - here.unwrap().hold();
                assert!(short.millis().abs() < 10, "{} min short of {}", short.minutes(), most.minutes());
                expected += 1;
            }
        }
        assert!(expected > 3 && found.len() >= expected);
    }
}

/// Every whole degree at every minute of a day, put as single questions: minutes in a row at most, for each degree,
/// and the minutes at which any degree does.
fn brute(sun: &Sun, stage: &Stage, day: Span) -> (Vec<i64>, Vec<bool>) {
    let mut any = vec![false; 1440];
    let longest = |lens: u32| {
        let looking = stage.looking(Bearing::from_degrees(f64::from(lens)));
        let question = Question::new(&looking);
        let (mut row, mut most) = (0, 0);
        for (minute, any) in (0..).zip(any.iter_mut()) {
            let met = question.holds(sun, day.start() + Duration::from_minutes(minute));
            row = if met { row + 1 } else { 0 };
            *any |= met;
            most = most.max(row);
        }
        most
    };
    ((0..360).map(longest).collect(), any)
}

/// A face that looks south-west in an open field, and a lens of 28° across, tilted up a little.
fn shot(in_picture: InPicture, cheek: Option<Cheek>) -> Stage {
    let degrees = Degrees::from_degrees;
    let mut stage = Stage { wish: wish((120.0, 230.0), (2.0, 60.0), SunOnMark::Any), ..field() };
    stage.wish.in_picture = in_picture;
    stage.wish.face.cheek = cheek;
    stage.shot.facing =
        Some(Facing { bearing: Bearing::from_degrees(221.0), pitch: crate::units::Height::default() });
    stage.shot.picture = Some(Picture { across: degrees(28.0), up: degrees(21.1), tilt: degrees(8.0) });
    stage
}

#[test]
fn equals_a_brute_scan_of_every_degree_and_minute() {
    let tall = Stage { wish: wish((112.0, 165.0), (4.0, 40.0), SunOnMark::Yes), ..loft() };
    for (stage, date) in [
        (tall, on(2027, 3, 11)),
        (field(), on(2027, 6, 21)),
        (field(), on(2027, 11, 2)),
        (shot(InPicture::In, None), on(2027, 6, 21)),
        (shot(InPicture::JustOut, Some(Cheek::Short)), on(2027, 3, 11)),
        (shot(InPicture::Out, Some(Cheek::Broad)), on(2027, 11, 2)),
    ] {
        let (sun, dates) = (Sun::new(stage.site), [DateRange { from: date, to: date }]);
        let free = free(stage, all_round(), &[]);
        let day = calendar::whole(&free.zone, dates[0]).unwrap();
        let (brute, any) = brute(&sun, &free, day);
        let found = search::slots(&sun, &free, &dates);
        let best = found.iter().max_by_key(|slot| slot.hold()).unwrap();
        let most = brute.iter().max().unwrap();
        assert!((best.hold().minutes() - *most as f64).abs() <= 1.0, "{} {most}", best.hold().minutes());
        assert!(brute[best.lens.degrees() as usize] >= most - 1, "{}", best.lens.degrees());
        let met = met::met(&sun, &free, day);
        let near = |at: crate::units::Instant| {
            met.iter()
                .any(|span| [span.start(), span.end()].iter().any(|edge| (*edge - at).millis().abs() < 1000))
        };
        for (minute, any) in (0..).zip(any) {
            let at = day.start() + Duration::from_minutes(minute);
            assert!(near(at) || met.contains(at) == any, "{at}");
        }
    }
}

#[test]
fn levels_turn_with_the_lens() {
    let free = free(of_a_ratio(), all_round(), &[]);
    let sun = Sun::new(free.site);
    let dates = [DateRange { from: on(2027, 3, 20), to: on(2027, 3, 20) }];
    let day = calendar::whole(&free.zone, dates[0]).unwrap();
    let bearings: Vec<Bearing> = (0..36).map(|ten| Bearing::from_degrees(f64::from(ten) * 10.0)).collect();
    let alone: Vec<Spans> = bearings.iter().map(|lens| met::met(&sun, &free.looking(*lens), day)).collect();

    let found = search::slots(&sun, &free, &dates);
    let best = found.iter().max_by_key(|slot| slot.hold()).unwrap();
    let most = alone.iter().filter_map(longest).max_by_key(|span| span.duration()).unwrap();
    let own = longest(&met::met(&sun, &free.looking(free.lens), day)).unwrap();
    assert!((best.hold() - most.duration()).millis().abs() < 2000, "{best:?} {most:?}");
    assert!(best.hold() - own.duration() > Duration::from_minutes(15), "a lens that turns finds more");
    let wished = free.levels.as_ref().unwrap();
    let [early, late] = [best.span.start(), best.span.end()];
    for at in [early + Duration::from_minutes(1), best.span.middle(), late - Duration::from_minutes(1)] {
        assert!(wished.seen_by(best.lens).holds(&sun, &free, at), "{at}");
    }
    assert!([best.starts, best.ends].contains(&Reason::Levels), "{best:?}");

    // Some lens does whenever one of them does alone.
    let some = met::met(&sun, &free, day);
    let any = alone.iter().fold(Spans::none(), |all, one| all.or(one));
    let apart = any.without(&some).total() + some.without(&any).total();
    assert!(apart < Duration::from_minutes(1), "{} min of {}", apart.minutes(), any.total().minutes());
}

#[test]
fn a_fixed_lens_gives_the_plain_slots() {
    let stage = loft();
    let sun = Sun::new(stage.site);
    let fixed = search::slots(&sun, &free(stage.clone(), LensChoice::Fixed, &[]), &week());
    let plain = search::slots(&sun, &stage, &week());
    let longest = |free: &Slot| plain.iter().any(|slot| slot.span == free.span);
    assert!(!fixed.is_empty() && fixed.iter().all(longest));
    assert!(fixed.iter().all(|free| free.lens == stage.lens));
}

#[test]
fn a_bad_background_is_never_chosen() {
    let stage = field();
    let bad = [Background {
        from: Bearing::from_degrees(180.0),
        to: Bearing::from_degrees(255.0),
        good: false,
        why: "car park".into(),
    }];
    let sun = Sun::new(stage.site);
    let found = search::slots(&sun, &free(stage, LensChoice::AnyGoodBackground, &bad), &week());
    assert!(!found.is_empty() && found.iter().all(|free| !bad[0].contains(free.lens)));
}
