//! Answers: each one, taken, makes what it says; the least work comes first.

use super::*;
use crate::light::daylight::Sky;
use crate::plan::levels::fixture;
use crate::sky::sun::Sun;
use crate::units::Instant;

fn side_lit() -> (Subject, Hour) {
    let subject = fixture::open(330.0);
    let at = Instant::parse("2026-06-21T15:00:00Z").unwrap();
    let hour = subject.hour(&Sun::new(subject.site), at, Sky::Clear);
    (subject, hour)
}

fn ratio(number: f64) -> Ratio {
    Ratio::from_number(number).unwrap()
}

#[test]
fn each_answer_taken_makes_the_ratio_it_names() {
    let (subject, hour) = side_lit();
    for wished in [1.5, 2.0, 8.0] {
        let all = answers(&subject, &hour, ratio(wished));
        assert!(all.iter().any(|answer| answer.reaches && answer.placed.is_some()), "{wished}: {all:?}");
        for answer in &all {
            let Some(placed) = &answer.placed else { continue };
            let mut taken = subject.clone();
            taken.rig.placed = placed.clone();
            let got = Levels::of(&taken, &hour).ratio();
            assert_eq!(got, answer.ratio, "{answer:?}");
            if answer.reaches {
                assert!((got.unwrap().stops() - ratio(wished).stops()).stops().abs() <= REACHED);
            }
        }
    }
}

#[test]
fn what_stands_there_is_moved_before_anything_is_brought() {
    let (mut subject, hour) = side_lit();
    let first = answers(&subject, &hour, ratio(2.0)).remove(0);
    assert_eq!(first.means, Means::Bring);
    subject.rig.placed = first.placed.unwrap();
    assert!(answers(&subject, &hour, ratio(2.0)).is_empty(), "it is reached");
    let next = answers(&subject, &hour, ratio(2.6)).remove(0);
    assert!(matches!(next.means, Means::Move { .. }), "{next:?}");
    let moved = next.piece.unwrap();
    assert!(moved.distance > subject.rig.placed[0].distance, "less fill from farther off");
}

#[test]
fn more_contrast_takes_black_cloth_and_less_takes_a_board() {
    let (subject, hour) = side_lit();
    let names = |wished: f64| -> Vec<String> {
        let all = answers(&subject, &hour, ratio(wished));
        all.iter().filter(|answer| answer.means == Means::Bring).map(|answer| answer.name.clone()).collect()
    };
    assert!(
        names(1.5).iter().any(|name| name.contains("White"))
            && !names(1.5).iter().any(|name| name.contains("Black"))
    );
    assert!(
        names(12.0).iter().any(|name| name.contains("Black"))
            && !names(12.0).iter().any(|name| name.contains("White"))
    );
}

#[test]
fn without_a_kit_the_fill_is_a_number_of_lux() {
    let (mut subject, hour) = side_lit();
    subject.kit.clear();
    let now = Levels::of(&subject, &hour);
    let all = answers(&subject, &hour, ratio(2.0));
    let [Answer { means: Means::Borrow { fill }, placed: None, .. }] = all.as_slice() else {
        panic!("{all:?}")
    };
    // G2: (K + A + F)/(A + F).
    let (bright, shadow) = (now.bright().total() + *fill, now.shadow().total() + *fill);
    assert!((bright.lux() / shadow.lux() - 2.0).abs() < 1e-9);
    let down = answers(&subject, &hour, ratio(30.0));
    assert!(matches!(down[0].means, Means::TakeAway { by } if by.stops() > 0.0), "{down:?}");
}

#[test]
fn what_cannot_reach_says_how_far_it_comes_and_stands_last() {
    let (subject, hour) = side_lit();
    let all = answers(&subject, &hour, ratio(1.2));
    let reached: Vec<bool> = all.iter().map(|answer| answer.reaches).collect();
    let mut sorted = reached.clone();
    sorted.sort_by_key(|reaches| !reaches);
    assert_eq!(reached, sorted);
}

#[test]
fn a_root_is_found_from_either_side() {
    assert!((nearest_root(|x| x - 3.0, (0.0, 10.0)) - 3.0).abs() < 1e-9);
    assert!((nearest_root(|x| 3.0 - x, (0.0, 10.0)) - 3.0).abs() < 1e-9);
    assert_eq!(nearest_root(|x| x + 1.0, (0.0, 10.0)), 0.0);
    assert_eq!(nearest_root(|x| x - 11.0, (0.0, 10.0)), 10.0);
}
