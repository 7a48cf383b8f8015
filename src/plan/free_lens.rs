//! Bearing and time together: slots of a set-up whose lens is free, each with the bearing that holds longest.
//!
//! Everything but the arc is the same for every lens, so it is searched once, exactly. Within each of those spans the
//! sun's bearing is noted every few minutes, which tells how long each whole degree of the lens holds; those that
//! come near the best are then searched exactly: the answer of a scan of every degree, at a hundredth of its price.

use super::calendar;
use super::face_wish::InPicture;
use super::met;
use super::region::{self, BearingArc};
use super::shot::Asked;
use super::slot::Slot;
use super::stage::Stage;
use super::wish::{Arc, DateRange};
use crate::place::cone::Cone;
use crate::sky::search::Limb;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Instant, Span, Spans};

/// Distance of the notes on the sun's bearing. Our own choice: shorter means more notes, longer more exact searches.
const NOTE: Duration = Duration::from_minutes(4);

/// The best slot of every stretch of light on local `dates`, in order of time, for a lens that may look to any of
/// `lenses`.
///
/// Best is the longest hold; where several bearings keep the light from its begin to its end, the middle one.
pub(super) fn slots(sun: &Sun, stage: &Stage, dates: &[DateRange], lenses: &[Bearing]) -> Vec<Slot> {
    let all = Spans::gather(dates.iter().filter_map(|range| calendar::whole(&stage.zone, *range)).collect());
    let light = all.iter().flat_map(|within| any_lens(sun, stage, within).iter().collect::<Vec<_>>());
    light
        .flat_map(|light| calendar::by_days(&stage.zone, light))
        .filter(|light| light.duration() >= stage.takes)
        .filter_map(|light| best_within(sun, stage, light, lenses))
        .collect()
}

/// When everything but the arc is granted: all the time in which some lens might do.
pub fn any_lens(sun: &Sun, stage: &Stage, within: Span) -> Spans {
    let mut open = stage.looking(stage.lens);
    let from = open.wish.arc.from;
    open.wish.arc = Arc { to: Degrees::from_degrees(from.degrees() + 360.0), ..open.wish.arc };
    open.wish.face.cheek = None;
    open.wish.in_picture = InPicture::Any;
    met::met(sun, &open, within)
}

/// What is left of `light`, in which everything but the arc is granted, when the lens looks to `lens`.
pub fn with_lens(sun: &Sun, stage: &Stage, light: &Spans, lens: Bearing) -> Spans {
    let arcs: Vec<Cone> = region::bearings(stage.wish.arc, lens).iter().flat_map(BearingArc::cones).collect();
    let found = light.iter().flat_map(|span| sun.spans_in(&arcs, Limb::Centre, span).as_slice().to_vec());
    let asked = Asked::of(stage, lens);
    let found = Spans::gather(found.collect());
    if asked.is_nothing() { found } else { asked.leaves(sun, found) }
}

/// The slot of the bearing that holds longest within `light`.
fn best_within(sun: &Sun, stage: &Stage, light: Span, bearings: &[Bearing]) -> Option<Slot> {
    let (lens, span) = longest_holding(sun, stage, light, bearings)?;
    (span.duration() >= stage.takes).then(|| Slot::new(sun, &stage.looking(lens), span))
}

/// The bearing that holds longest, and the span for which it does.
fn longest_holding(sun: &Sun, stage: &Stage, light: Span, bearings: &[Bearing]) -> Option<(Bearing, Span)> {
    let holds = holds_by_notes(sun, stage, light, bearings);
    let most = holds.iter().copied().max()?;
    let exact = |lens: Bearing| longest(&with_lens(sun, stage, &light.into(), lens)).map(|span| (lens, span));
    let first = holds.iter().position(|hold| *hold == most)?;
    let equals = holds[first..].iter().take_while(|hold| **hold == most).count();
    let middle = exact(bearings[first + equals / 2]);
    if middle.is_some_and(|(_, span)| span == light) {
        return middle;
    }
    // A hold lies within one note's distance of its notes, so that the longest has at most one note less than the most.
    let near = bearings.iter().zip(&holds).filter(|(_, hold)| **hold + 1 >= most);
    let found: Vec<_> = near.filter_map(|(lens, _)| exact(*lens)).collect();
    found.into_iter().rev().max_by_key(|(_, span)| span.duration())
}

/// The longest of some spans; the earliest of equals.
pub fn longest(spans: &Spans) -> Option<Span> {
    spans.iter().rev().max_by_key(|span| span.duration())
}

/// For how many notes of the sun's bearing in a row each bearing of the lens holds.
fn holds_by_notes(sun: &Sun, stage: &Stage, light: Span, bearings: &[Bearing]) -> Vec<usize> {
    let arcs: Vec<(f64, f64)> = region::bearings(stage.wish.arc, Bearing::default())
        .iter()
        .map(|arc| (arc.from.degrees(), arc.width.degrees()))
        .collect();
    let notes: Vec<f64> = times(light).map(|at| sun.apparent(at).bearing().degrees()).collect();
    if stage.wish.face.cheek.is_none() && stage.wish.in_picture.is_any() {
        return bearings.iter().map(|lens| hold(&notes, &arcs, lens.degrees(), |_| true)).collect();
    }
    let lights: Vec<_> = times(light).map(|at| sun.apparent(at)).collect();
    bearings
        .iter()
        .map(|lens| {
            let asked = Asked::of(stage, *lens);
            hold(&notes, &arcs, lens.degrees(), |note| asked.lacks(lights[note]).is_none())
        })
        .collect()
}

/// When the sun's bearing is noted.
fn times(light: Span) -> impl Iterator<Item = Instant> {
    core::iter::successors(Some(light.start()), |at| Some(*at + NOTE)).take_while(move |at| *at < light.end())
}

/// Most notes in a row that lie in the arcs (from, width) of a wish, given for a lens to the north and turned with
/// the lens. All in degrees, 0 to 360, so that no more than two turns are ever missing.
fn hold(notes: &[f64], north: &[(f64, f64)], lens: f64, too: impl Fn(usize) -> bool) -> usize {
    let (mut row, mut most) = (0, 0);
    for (note, light) in notes.iter().enumerate() {
        let within = |(from, width): &(f64, f64)| {
            let past = light - lens - from;
            let past = if past < -360.0 { past + 720.0 } else { past };
            (if past < 0.0 { past + 360.0 } else { past }) <= *width
        };
        row = if north.iter().any(within) && too(note) { row + 1 } else { 0 };
        most = most.max(row);
    }
    most
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{field, loft, on, wish};
    use super::super::lens::LensChoice;
    use super::super::only_here::every_bearing;
    use super::super::reason::Question;
    use super::super::search;
    use super::super::wish::SunOnMark;
    use super::*;
    use crate::place::background::Background;

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
        for (wished, stage) in [((112.0, 165.0), loft()), ((170.0, 175.0), field()), ((20.0, 60.0), field())]
        {
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

    #[test]
    fn equals_a_brute_scan_of_every_degree_and_minute() {
        let tall = Stage { wish: wish((112.0, 165.0), (4.0, 40.0), SunOnMark::Yes), ..loft() };
        for (stage, date) in [(tall, on(2027, 3, 11)), (field(), on(2027, 6, 21)), (field(), on(2027, 11, 2))]
        {
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
                met.iter().any(|span| {
                    [span.start(), span.end()].iter().any(|edge| (*edge - at).millis().abs() < 1000)
                })
            };
            for (minute, any) in (0..).zip(any) {
                let at = day.start() + Duration::from_minutes(minute);
                assert!(near(at) || met.contains(at) == any, "{at}");
            }
        }
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
}
