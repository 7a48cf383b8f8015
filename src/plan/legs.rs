//! The light of a moving subject: which leg, which way, from when to when.
//!
//! On a leg the lens keeps one bearing, its heading and the mount's angle, so that each leg is searched like a set-up of
//! its own. A run goes through all legs one after the other; where it bends, its light is another. The sun is that of
//! the location, all along the way.

pub mod travel;
pub mod words;

use chrono::NaiveDate;

use crate::plan::calendar;
use crate::plan::search::met::met;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Instant, Span, Spans, Vector, World};
use travel::{Travel, Way};

/// Sun this near to a heading, and this low, blinds who drives there. Source: handbook J, from 10° to 20°.
const BLINDS_WITHIN: Degrees = Degrees::from_degrees(25.0);
const BLINDS_BELOW: Height = Height::clamped(20.0);

/// The light of one leg, gone one way.
#[derive(Clone, Debug, PartialEq)]
pub struct LegLight {
    /// Its place in the way.
    pub leg: usize,
    /// Which way.
    pub way: Way,
    /// Where the lens looks then.
    pub lens: Bearing,
    /// When the wish is met for as long as the leg takes, the leg being begun at the start of a span at the earliest
    /// and ended at its end at the latest.
    pub spans: Spans,
}

/// Every leg in both ways on a date, in order; those without light have no spans.
pub fn legs(sun: &Sun, stage: &Stage, travel: &Travel, date: NaiveDate) -> Vec<LegLight> {
    let both = (0..travel.legs.len()).flat_map(|leg| [(leg, Way::Out), (leg, Way::Back)]);
    both.map(|(leg, way)| light(sun, stage, (travel, leg, way), date)).collect()
}

/// When a run through all legs may start, so that the wish is met from its first metre to its last.
pub fn starts(sun: &Sun, stage: &Stage, travel: &Travel, way: Way, date: NaiveDate) -> Spans {
    let mut gone = Duration::ZERO;
    let mut left: Option<Spans> = None;
    for leg in in_order(travel, way) {
        let takes = travel.legs[leg].takes();
        let light = light(sun, stage, (travel, leg, way), date);
        let may_start =
            light.spans.iter().filter_map(|span| Span::new(span.start() - gone, span.end() - gone - takes));
        let may_start = Spans::gather(may_start.collect());
        left = Some(left.map_or_else(|| may_start.clone(), |left| left.and(&may_start)));
        gone = gone + takes;
    }
    left.unwrap_or_default()
}

/// What of a run that starts at an instant has its light: each leg with the part of its time.
pub fn run(sun: &Sun, stage: &Stage, travel: &Travel, way: Way, start: Instant) -> Vec<(usize, Span)> {
    let mut from = start;
    let mut lit = Vec::new();
    for leg in in_order(travel, way) {
        let to = from + travel.legs[leg].takes();
        if let Some(gone) = Span::new(from, to) {
            let looking = stage.looking(lens(travel, leg, way));
            lit.extend(met(sun, &looking, gone).iter().map(|span| (leg, span)));
        }
        from = to;
    }
    lit
}

/// Whether the sun blinds who drives to `heading`.
pub fn blinds(light: Vector<World>, heading: Bearing) -> bool {
    let height = light.height();
    height.degrees() > 0.0 && height < BLINDS_BELOW && heading.turn_to(light.bearing()).abs() < BLINDS_WITHIN
}

/// Where the lens looks on a leg.
pub fn lens(travel: &Travel, leg: usize, way: Way) -> Bearing {
    let heading = travel.legs.get(leg).map_or(Bearing::default(), |leg| leg.heading(way));
    heading.turned(travel.mount)
}

fn light(sun: &Sun, stage: &Stage, (travel, leg, way): (&Travel, usize, Way), date: NaiveDate) -> LegLight {
    let lens = lens(travel, leg, way);
    let looking = stage.looking(lens);
    let takes = travel.legs[leg].takes();
    let day = calendar::whole(&stage.zone, DateRange { from: date, to: date });
    let met = day.map_or_else(Spans::none, |day| met(sun, &looking, day));
    let long = met.iter().filter(|span| span.duration() >= takes).collect();
    LegLight { leg, way, lens, spans: Spans::gather(long) }
}

/// The legs as they come when the way is gone out or back.
fn in_order(travel: &Travel, way: Way) -> Vec<usize> {
    let all = 0..travel.legs.len();
    match way {
        Way::Out => all.collect(),
        Way::Back => all.rev().collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{at, field, on, some_stage};
    use crate::plan::search::reason::Question;
    use crate::units::{Metres, Speed};
    use proptest::prelude::*;
    use travel::Leg;

    fn leg(heading: f64, length: f64, speed: f64) -> Leg {
        Leg {
            heading: Bearing::from_degrees(heading),
            length: Metres::from_metres(length),
            speed: Speed::from_km_per_hour(speed),
        }
    }

    fn some_travel() -> impl Strategy<Value = Travel> {
        let one = (0.0..360.0f64, 100.0..8000.0f64, 5.0..60.0f64).prop_map(|(h, l, s)| leg(h, l, s));
        (0.0..360.0f64, proptest::collection::vec(one, 1..4))
            .prop_map(|(mount, legs)| Travel { mount: Degrees::from_degrees(mount), legs })
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]
        #[test]
        fn runs_agree_with_asking_all_along_the_way(stage in some_stage(), travel in some_travel(), day in 0i64..365, back in any::<bool>()) {
            let (sun, date) = (Sun::new(stage.site), calendar::moved(on(2027, 1, 1), day));
            let way = if back { Way::Back } else { Way::Out };
            let starts = starts(&sun, &stage, &travel, way, date);
            let whole = calendar::whole(&stage.zone, DateRange { from: date, to: date }).unwrap();
            // Where one is all along the way, found by walking it second by second rather than by shifting spans.
            let asked = |start: Instant, late: i64| {
                let mut order: Vec<&Leg> = travel.legs.iter().collect();
                if back { order.reverse(); }
                let mut now = start;
                order.iter().all(|leg| {
                    let heading = if back { leg.heading.degrees() + 180.0 } else { leg.heading.degrees() };
                    let lens = Bearing::from_degrees(heading + travel.mount.degrees());
                    let looking = Stage { lens, ..stage.clone() };
                    let question = Question::new(&looking);
                    let seconds = (leg.length.metres() / leg.speed.metres_per_second()) as i64;
                    let (from, to) = (now + Duration::from_millis(late), now + Duration::from_millis(1000 * seconds - late));
                    now = now + leg.takes();
                    let stops = (0..=20).map(|n| from + Duration::from_millis((to - from).millis() * n / 20));
                    stops.filter(|at| whole.contains(*at)).all(|at| question.holds(&sun, at))
                })
            };
            for start in (0..96).map(|n| whole.start() + Duration::from_minutes(15 * n)) {
                let all: Duration = travel.legs.iter().fold(Duration::ZERO, |sum, leg| sum + leg.takes());
                let near = starts.iter().any(|span| [span.start(), span.end()].iter().any(|edge| (*edge - start).minutes().abs() < 1.0));
                if !near && whole.contains(start + all) {
                    if starts.contains(start) { prop_assert!(asked(start, 2000), "{start}"); }
                    // Sampled at twenty stops: what holds at all of them and at the neighbours' edges may still break
                    // between two, so that the other way round only whole light is asked.
                    let lit: Duration = run(&sun, &stage, &travel, way, start).iter().fold(Duration::ZERO, |sum, (_, span)| sum + span.duration());
                    prop_assert_eq!((all - lit).millis().abs() < 5, starts.contains(start), "{}", start);
                }
            }
        }

        #[test]
        fn a_way_turned_about_is_the_way_back(stage in some_stage(), travel in some_travel(), day in 0i64..365) {
            let (sun, date) = (Sun::new(stage.site), calendar::moved(on(2027, 1, 1), day));
            let about = Travel {
                legs: travel.legs.iter().rev().map(|leg| Leg { heading: leg.heading.reversed(), ..*leg }).collect(),
                ..travel.clone()
            };
            prop_assert_eq!(starts(&sun, &stage, &travel, Way::Back, date), starts(&sun, &stage, &about, Way::Out, date));
        }
    }

    #[test]
    fn a_bend_splits_the_light() {
        // A drive west into the evening sun with the lens on the driver from ahead, then a bend to the north.
        let stage = Stage { takes: Duration::ZERO, ..field() };
        let travel = Travel {
            mount: Degrees::from_degrees(0.0),
            legs: vec![leg(250.0, 4000.0, 30.0), leg(340.0, 4000.0, 30.0)],
        };
        let sun = Sun::new(stage.site);
        let lights = legs(&sun, &stage, &travel, on(2027, 3, 20));
        assert!(!lights[0].spans.is_empty() && lights[2].spans.is_empty());
        assert!(starts(&sun, &stage, &travel, Way::Out, on(2027, 3, 20)).is_empty());
        let lit = run(&sun, &stage, &travel, Way::Out, at("2027-03-20T17:40:00Z"));
        assert_eq!(lit.len(), 1);
        assert_eq!(lit[0], (0, Span::new(at("2027-03-20T17:40:00Z"), at("2027-03-20T17:48:00Z")).unwrap()));
    }

    #[test]
    fn who_drives_into_a_low_sun_is_blinded() {
        let sun = |height: f64| Vector::towards(Bearing::from_degrees(250.0), Height::clamped(height));
        assert!(blinds(sun(8.0), Bearing::from_degrees(270.0)));
        assert!(
            !blinds(sun(8.0), Bearing::from_degrees(280.0))
                && !blinds(sun(25.0), Bearing::from_degrees(250.0))
        );
        assert!(!blinds(sun(-2.0), Bearing::from_degrees(250.0)));
    }
}
