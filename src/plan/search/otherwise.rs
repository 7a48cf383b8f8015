//! When the span cannot give the wish: the nearest slots that do, and the smallest change of wish that would.

use super::free_lens;
use super::only_here;
use crate::place::background::Background;
use crate::plan::stage::Stage;
use crate::plan::wish::lens::LensChoice;
use crate::plan::wish::{Arc, Heights, Wish};
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Span};

/// How far before and after the nearest slots are looked for, in days, until there are some: a day, a month,
/// a year. Our own choice.
const REACHES: [i64; 3] = [1, 30, 366];

/// A wish that may go below the horizon is not let down further than the end of all twilight. Our own choice.
const DEEPEST: f64 = -18.0;

/// A set-up, the span that was given, and how free the lens is.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The set-up.
    pub stage: &'a Stage,
    /// From when to when.
    pub span: Span,
    /// Where the lens may look.
    pub choice: LensChoice,
    /// What stands behind the subject.
    pub backgrounds: &'a [Background],
}

/// A slot at another time, and the bearing of the lens that gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearby {
    /// From when to when.
    pub span: Span,
    /// Where the lens looks.
    pub lens: Bearing,
}

/// A change of one number of the wish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// The arc begins so much earlier.
    ArcFrom(Degrees),
    /// The arc ends so much later.
    ArcTo(Degrees),
    /// The sun may stand so much lower.
    Lowest(Degrees),
    /// The sun may stand so much higher.
    Highest(Degrees),
}

/// The nearest slots that begin before the span and that end after it; none further away than a year, or than a month where
/// levels turn with a lens that is free.
pub fn nearest(sun: &Sun, asked: &Asked<'_>) -> (Option<Nearby>, Option<Nearby>) {
    (
        beside(sun, asked, |days| within(asked.span, days, 0)),
        beside(sun, asked, |days| within(asked.span, 0, days)),
    )
}

/// The smallest change, in whole degrees, that makes the span give the wish long enough; of changes as small, the
/// arc before the heights.
///
/// `None` if no single change of arc or heights does: then the sun does not reach the mark, or the dates or hours
/// forbid it, or the span is shorter than the set-up takes.
pub fn smallest_change(sun: &Sun, asked: &Asked<'_>) -> Option<Change> {
    let kinds = [Change::ArcFrom, Change::ArcTo, Change::Lowest, Change::Highest];
    let works = |change: Change| {
        let stage = Stage { wish: change.apply(&asked.stage.wish), ..asked.stage.clone() };
        is_possible(sun, &Asked { stage: &stage, ..*asked })
    };
    kinds
        .iter()
        .filter_map(|kind| {
            least(360, |step| works(kind(Degrees::from_degrees(f64::from(step))))).map(|n| (n, kind))
        })
        .min_by_key(|(steps, _)| *steps)
        .map(|(steps, kind)| kind(Degrees::from_degrees(f64::from(steps))))
}

impl Change {
    /// The wish with this change; it goes no further than the circle, the zenith, and the horizon or the end
    /// of twilight allow.
    pub fn apply(self, wish: &Wish) -> Wish {
        let mut wish = wish.clone();
        match self {
            Self::ArcFrom(by) => wish.arc = widened(wish.arc, by, Degrees::default()),
            Self::ArcTo(by) => wish.arc = widened(wish.arc, Degrees::default(), by),
            Self::Lowest(by) => wish.heights = lowered(wish.heights, by),
            Self::Highest(by) => wish.heights.to = Height::clamped(wish.heights.to.degrees() + by.degrees()),
        }
        wish
    }
}

/// An arc that begins and ends further out, at most all the way round.
fn widened(arc: Arc, before: Degrees, after: Degrees) -> Arc {
    let (from, to) = (arc.from.degrees() - before.degrees(), arc.to.degrees() + after.degrees());
    let start = Degrees::from_degrees(from).positive().degrees();
    let width = (to - from).min(360.0);
    Arc { from: Degrees::from_degrees(start), to: Degrees::from_degrees(start + width), ..arc }
}

/// Heights that begin lower: not below the horizon for a wish that had stayed above it.
fn lowered(heights: Heights, by: Degrees) -> Heights {
    let low = heights.from.degrees();
    let floor = if low >= 0.0 { 0.0 } else { DEEPEST.min(low) };
    Heights { from: Height::clamped((low - by.degrees()).max(floor)), ..heights }
}

/// The least of 1 ..= `most` for which `works`, given that all larger ones work too.
fn least(most: u32, works: impl Fn(u32) -> bool) -> Option<u32> {
    if !works(most) {
        return None;
    }
    let (mut fails, mut does) = (0, most);
    while does - fails > 1 {
        let middle = fails.midpoint(does);
        if works(middle) {
            does = middle;
        } else {
            fails = middle;
        }
    }
    Some(does)
}

/// Whether any bearing allowed gives the wish long enough within the span.
fn is_possible(sun: &Sun, asked: &Asked<'_>) -> bool {
    let light = free_lens::any_lens(sun, asked.stage, asked.span);
    let allowed = asked.choice.bearings(asked.stage.lens, asked.backgrounds);
    let bearings = free_lens::tried(asked.stage, &allowed);
    let holds = |lens: Bearing| free_lens::longest(&free_lens::with_lens(sun, asked.stage, &light, lens));
    bearings.into_iter().any(|lens| holds(lens).is_some_and(|met| met.duration() >= asked.stage.takes))
}

/// The slot nearest to the span, looked for further and further away.
fn beside(sun: &Sun, asked: &Asked<'_>, window: impl Fn(i64) -> Option<Span>) -> Option<Nearby> {
    let is_dear = !asked.choice.is_fixed() && free_lens::step(asked.stage) > 1;
    let reaches = if is_dear { &REACHES[..2] } else { &REACHES[..] };
    reaches.iter().find_map(|days| nearest_within(sun, asked, window(*days)?))
}

/// The slot within `window` that is nearest to the span; of equals the longest.
fn nearest_within(sun: &Sun, asked: &Asked<'_>, window: Span) -> Option<Nearby> {
    let mut found: Option<Nearby> = None;
    for light in any_lens(sun, asked, window) {
        if found.is_some_and(|nearby| gap(nearby.span, asked.span) <= gap(light, asked.span)) {
            break;
        }
        let there = slots_within(sun, asked, light);
        let better = there.into_iter().chain(found);
        found = better.min_by_key(|nearby| (gap(nearby.span, asked.span), -nearby.span.duration()));
    }
    found
}

/// Spans long enough in which some lens might do, the nearest first.
fn any_lens(sun: &Sun, asked: &Asked<'_>, window: Span) -> Vec<Span> {
    let light = free_lens::any_lens(sun, asked.stage, window);
    let mut long: Vec<Span> = light.iter().filter(|span| span.duration() >= asked.stage.takes).collect();
    crate::order::by_key(&mut long, |span| gap(*span, asked.span));
    long
}

/// Every bearing's slots within `light`.
fn slots_within(sun: &Sun, asked: &Asked<'_>, light: Span) -> Vec<Nearby> {
    let tried = only_here::every_bearing(sun, asked.stage, light, asked.choice, asked.backgrounds);
    let long = |span: &Span| span.duration() >= asked.stage.takes;
    let slots = |hold: &only_here::LensHold| {
        hold.met.iter().filter(long).map(|span| Nearby { span, lens: hold.lens }).collect::<Vec<_>>()
    };
    tried.iter().flat_map(slots).collect()
}

/// Time between two spans; nothing where they touch.
fn gap(one: Span, other: Span) -> Duration {
    (one.start().max(other.start()) - one.end().min(other.end())).max(Duration::ZERO)
}

/// `span`, longer by so many days before and after.
fn within(span: Span, before: i64, after: i64) -> Option<Span> {
    let days = |days: i64| Duration::from_minutes(days * 1440);
    Span::new(span.start() - days(before), span.end() + days(after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, loft, of_a_ratio, on, span, wish};
    use crate::plan::search::met;
    use crate::plan::wish::{DateRange, SunOnMark};

    fn asked(stage: &Stage, span: Span, choice: LensChoice) -> Asked<'_> {
        Asked { stage, span, choice, backgrounds: &[] }
    }

    #[test]
    fn where_a_free_lens_asks_levels_a_month_is_looked_through() {
        let noon = span("2027-03-11T12:00:00Z", "2027-03-11T13:00:00Z");
        for (date, found) in [(on(2027, 4, 5), [true, true]), (on(2027, 6, 21), [true, false])] {
            let mut stage = of_a_ratio();
            stage.wish.dates = vec![DateRange { from: date, to: date }];
            let sun = Sun::new(stage.site);
            let good = LensChoice::AnyGoodBackground;
            let after = [LensChoice::Fixed, good]
                .map(|choice| nearest(&sun, &asked(&stage, noon, choice)).1.is_some());
            assert_eq!(after, found, "{date}");
        }
    }

    #[test]
    fn the_nearest_slots_stand_before_and_after() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        // Noon: the west windows are dark.
        let noon = span("2027-03-11T12:00:00Z", "2027-03-11T13:00:00Z");
        let asked = asked(&stage, noon, LensChoice::Fixed);
        assert!(!is_possible(&sun, &asked));
        let (before, after) = nearest(&sun, &asked);
        let (before, after) = (before.unwrap(), after.unwrap());
        assert!(before.span.end() <= noon.start() && after.span.start() >= noon.end());
        assert!((after.span.start() - noon.end()).minutes() < 6.0 * 60.0);
        let all = met::met(&sun, &stage, within(noon, 3, 3).unwrap());
        let brute = all.iter().filter(|span| span.duration() >= stage.takes && span.end() <= noon.start());
        assert_eq!(before.span, brute.max_by_key(|span| span.end()).unwrap());
    }

    #[test]
    fn a_free_lens_finds_a_nearer_slot() {
        let stage = field();
        let sun = Sun::new(stage.site);
        let night = span("2027-03-11T02:00:00Z", "2027-03-11T03:00:00Z");
        let free =
            LensChoice::Range { from_deg: Bearing::from_degrees(0.0), to_deg: Bearing::from_degrees(0.0) };
        let (_, free) = nearest(&sun, &asked(&stage, night, free));
        let (_, fixed) = nearest(&sun, &asked(&stage, night, LensChoice::Fixed));
        assert!(free.unwrap().span.start() < fixed.unwrap().span.start());
    }

    #[test]
    fn the_smallest_change_works_and_none_smaller_does() {
        let stage = loft();
        let sun = Sun::new(stage.site);
        let early = span("2027-03-11T15:30:00Z", "2027-03-11T16:30:00Z");
        let given = asked(&stage, early, LensChoice::Fixed);
        assert!(!is_possible(&sun, &given));
        let change = smallest_change(&sun, &given).unwrap();
        let works = |change: Change| {
            let changed = Stage { wish: change.apply(&stage.wish), ..stage.clone() };
            is_possible(&sun, &asked(&changed, early, LensChoice::Fixed))
        };
        assert!(works(change), "{change:?}");
        let (Change::ArcFrom(by) | Change::ArcTo(by) | Change::Lowest(by) | Change::Highest(by)) = change;
        for kind in [Change::ArcFrom, Change::ArcTo, Change::Lowest, Change::Highest] {
            for smaller in 1..by.degrees() as u32 {
                assert!(!works(kind(Degrees::from_degrees(f64::from(smaller)))), "{change:?}");
            }
        }
    }

    #[test]
    fn no_change_of_the_wish_moves_the_sun_into_a_window() {
        let stage = loft();
        let morning = span("2027-03-11T09:00:00Z", "2027-03-11T10:00:00Z");
        assert_eq!(smallest_change(&Sun::new(stage.site), &asked(&stage, morning, LensChoice::Fixed)), None);
    }

    #[test]
    fn changes_stay_within_what_a_wish_may_say() {
        let wish = wish((10.0, 60.0), (4.0, 80.0), SunOnMark::Any);
        let by = Degrees::from_degrees;
        let arc = Change::ArcFrom(by(30.0)).apply(&wish).arc;
        assert_eq!((arc.from.degrees(), arc.to.degrees()), (340.0, 420.0));
        let arc = Change::ArcTo(by(400.0)).apply(&wish).arc;
        assert_eq!((arc.from.degrees(), arc.to.degrees()), (10.0, 370.0));
        assert_eq!(Change::Lowest(by(9.0)).apply(&wish).heights.from, Height::clamped(0.0));
        assert_eq!(Change::Highest(by(30.0)).apply(&wish).heights.to, Height::clamped(90.0));
    }
}
