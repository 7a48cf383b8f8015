//! The rest of a day, planned anew: a cloud came over, or we are late.
//!
//! From now to wrap, what is not shot is solved again under the sky there is, with the moves and the meal of the project's
//! days. What was planned (it stands in the plan, or its slot is saved) weighs most; what was not may come in as cover.
//! Nothing is written into the project: the change is an answer, and the plan stands again when the sun is back.

use super::at_hand::{AtHand, set_ups_at};
use super::document::Project;
use super::shoot::problem::{moves, short};
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::schedule::problem::{Day, EXACT, Job, Meal, MealFrom, Minutes, Problem, Window};
use crate::plan::schedule::solution::Solution;
use crate::plan::schedule::solver::Solver;
use crate::plan::search;
use crate::plan::today::under_sky::{self, Light};
use crate::plan::wish::{DateRange, Sky};
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span};

/// The longest work without a meal that is still to come. Our own choice: half of a six-hour rule.
const UNTIL_MEAL: Minutes = 180;

/// A planned set-up weighs more than all that could come in as cover.
const PLANNED: u32 = 100;
const COVER: u32 = 1;

/// A set-up that begins within this of what was planned is kept, not moved. Our own choice.
const SAME: Duration = Duration::from_minutes(5);

/// Next dates told of a set-up that is dropped.
const DATES: usize = 3;

/// Work of the solver between two looks at whether it is done.
const SLICE: usize = 100_000;

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// From when on.
    pub now: Instant,
    /// Until when.
    pub wrap: Instant,
    /// The sky, by somebody's word.
    pub sky: Sky,
    /// Whether the meal is over.
    pub meal_had: bool,
    /// Id of the location where the crew is.
    pub at: Option<String>,
}

/// What becomes of a set-up.
#[derive(Clone, Debug, PartialEq)]
pub enum Fate {
    /// As it was planned.
    Kept(Span),
    /// At another time.
    Moved(Span),
    /// Not planned for today, but it fits.
    Added(Span),
    /// Not today: why, and its next slots on other dates.
    Dropped(&'static str, Vec<Span>),
}

/// A set-up of the rest of the day.
#[derive(Clone, Debug, PartialEq)]
pub struct One {
    /// Id of the set-up.
    pub id: String,
    /// "4 A".
    pub name: String,
    /// Where: "Sail loft".
    pub place: String,
    /// What becomes of it.
    pub fate: Fate,
}

/// The rest of the day.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rest {
    /// What is shot, in order of time; then what is dropped.
    pub ones: Vec<One>,
    /// The meal, if one is needed.
    pub meal: Option<Span>,
}

/// A set-up with what it needs of the day.
struct Item {
    at_hand: AtHand,
    location: usize,
    /// Its slot of today, if it was planned.
    planned: Option<Span>,
    takes: Minutes,
    spans: Vec<Span>,
}

impl Project {
    /// The rest of the day; `zone` gives the zone of a location by its name.
    pub fn rest_of_day(&self, ask: &Ask, zone: &dyn Fn(&str) -> Zone) -> Rest {
        let mut items = self.items(ask, zone);
        if items.iter().all(|item| item.planned.is_none()) {
            // Nothing was planned for today: whatever fits as the sky was counts as the plan.
            let mut before = self.items(&Ask { sky: Sky::Any, ..ask.clone() }, zone);
            shorten(&mut before);
            let solution = self.solved(ask, &before);
            for done in solution.iter().flat_map(|solution| &solution.days).flat_map(|day| &day.set_ups) {
                let id = &before[done.job].at_hand.id;
                let planned = Span::new(at(ask, done.start), at(ask, done.end));
                items
                    .iter_mut()
                    .filter(|item| item.at_hand.id == *id)
                    .for_each(|item| item.planned = planned);
            }
        }
        shorten(&mut items);
        let solution = self.solved(ask, &items);
        solution.map_or_else(Rest::default, |solution| told(self, ask, &items, &solution))
    }

    /// The best plan, if there is anything to plan.
    fn solved(&self, ask: &Ask, items: &[Item]) -> Option<Solution> {
        let mut solver = Solver::new(self.problem(ask, items)?);
        while !solver.step(SLICE) {}
        Some(solver.solution())
    }

    /// What is not shot, with the slots that were saved for today.
    fn items(&self, ask: &Ask, zone: &dyn Fn(&str) -> Zone) -> Vec<Item> {
        let Some(within) = Span::new(ask.now, ask.wrap) else { return Vec::new() };
        let mut items = Vec::new();
        for (location, place) in self.locations.iter().enumerate() {
            let (zone, sun) = (zone(&place.zone), Sun::new(place.site));
            let today = zone.date(ask.now);
            for at_hand in set_ups_at(self, place, &zone).into_iter().filter(|one| one.shots.is_empty()) {
                let placed = self.shoot.placed(&at_hand.id).map(|one| one.start);
                let placed = placed.and_then(|start| Span::new(start, start + at_hand.stage.takes));
                let saved = at_hand.saved.iter().filter_map(|kept| Span::new(kept.start, kept.end));
                let mut to_come = placed.into_iter().chain(saved).filter(|span| span.end() > ask.now);
                let planned = to_come.find(|span| zone.date(span.start()) == today);
                let spans = under_sky::windows(&sun, &at_hand.stage, ask.sky, within).iter().collect();
                let takes = at_hand.stage.takes.minutes().ceil() as Minutes;
                items.push(Item { at_hand, location, planned, takes, spans });
            }
        }
        items
    }

    /// One day, from now to wrap.
    fn problem(&self, ask: &Ask, items: &[Item]) -> Option<Problem> {
        let close = minutes(ask.now, ask.wrap);
        let job = |item: &Item| Job {
            location: item.location,
            minutes: item.takes,
            weight: if item.planned.is_some() { PLANNED } else { COVER },
            windows: windows(item, ask),
        };
        let moves = moves(self);
        let here = ask.at.as_ref().and_then(|id| self.locations.iter().position(|place| place.id == *id));
        let leads = here.map_or_else(|| vec![0; moves.len()], |here| moves[here].clone());
        let meal = Meal {
            minutes: short(self.shoot.meal.minutes),
            within: if ask.meal_had { close } else { UNTIL_MEAL.min(close) },
            from: MealFrom::Call,
        };
        (close > 0 && !items.is_empty()).then(|| Problem {
            days: vec![Day { open: 0, close, longest: close }],
            tails: vec![0; moves.len()],
            moves,
            leads,
            meal,
            jobs: items.iter().map(job).collect(),
            matches: Vec::new(),
            rests: Vec::new(),
        })
    }
}

/// The planned ones, and as many others as can be planned exactly.
fn shorten(items: &mut Vec<Item>) {
    items.retain(|item| item.planned.is_some() || item.fits());
    crate::order::by_key(items, |item| item.planned.is_none());
    let planned = items.iter().filter(|item| item.planned.is_some()).count();
    items.truncate(planned.max(EXACT));
}

impl Item {
    /// Whether any of its light is long enough.
    fn fits(&self) -> bool {
        self.spans.iter().any(|span| span.duration() >= self.at_hand.stage.takes)
    }
}

/// So many minutes from now.
fn at(ask: &Ask, minute: Minutes) -> Instant {
    ask.now + Duration::from_minutes(i64::from(minute))
}

/// The solver's answer, set-up by set-up.
fn told(project: &Project, ask: &Ask, items: &[Item], solution: &Solution) -> Rest {
    let day = solution.days.first();
    let mut ones: Vec<(Instant, One)> = Vec::new();
    for (place, item) in items.iter().enumerate() {
        let done = day.and_then(|day| day.set_ups.iter().find(|one| one.job == place));
        let span = done.and_then(|done| Span::new(at(ask, done.start), at(ask, done.end)));
        let fate = match (span, item.planned) {
            (Some(span), Some(planned)) if is_same(span, planned) => Fate::Kept(span),
            (Some(span), Some(_)) => Fate::Moved(span),
            (Some(span), None) => Fate::Added(span),
            (None, Some(_)) => Fate::Dropped(why(item, ask), next(item, ask)),
            (None, None) => continue,
        };
        let one = One {
            id: item.at_hand.id.clone(),
            name: item.at_hand.name.clone(),
            place: project.locations[item.location].name.clone(),
            fate,
        };
        ones.push((span.map_or(ask.wrap, Span::start), one));
    }
    crate::order::by_key(&mut ones, |(at, one)| (matches!(one.fate, Fate::Dropped(..)), *at));
    let meal =
        day.and_then(|day| day.meal).and_then(|meal| Span::new(at(ask, meal.start), at(ask, meal.end)));
    Rest { ones: ones.into_iter().map(|(_, one)| one).collect(), meal }
}

/// Whether it lies in what was planned, or begins about then.
fn is_same(span: Span, planned: Span) -> bool {
    let inside = planned.start() <= span.start() && span.end() <= planned.end();
    inside || (span.start() - planned.start()).millis().abs() <= SAME.millis()
}

fn why(item: &Item, ask: &Ask) -> &'static str {
    let light = Light::of(&item.at_hand.stage, ask.sky).trouble();
    light.unwrap_or(if item.fits() { "no time for it before wrap" } else { "its light is over for today" })
}

/// The first slots on the next dates that have any; the project's own dates where it has some.
fn next(item: &Item, ask: &Ask) -> Vec<Span> {
    let stage = &item.at_hand.stage;
    let tomorrow = calendar::later(stage.zone.date(ask.now), 1);
    let year = DateRange { from: tomorrow, to: calendar::later(tomorrow, 365) };
    let mut dates: Vec<(chrono::NaiveDate, Span)> = Vec::new();
    for slot in search::one_by_one(&Sun::new(stage.site), stage, year) {
        if dates.last().is_none_or(|(date, _)| *date != slot.date) {
            dates.push((slot.date, slot.span));
        }
        if dates.len() == DATES {
            break;
        }
    }
    dates.into_iter().map(|(_, span)| span).collect()
}

/// In whole minutes from now; those that are too short are no windows.
fn windows(item: &Item, ask: &Ask) -> Vec<Window> {
    let whole = |span: &Span| (minutes_up(ask.now, span.start()), minutes(ask.now, span.end()));
    let long = item.spans.iter().map(whole).filter(|(from, to)| to - from >= item.takes);
    long.map(|(from, to)| Window { day: 0, from, to }).collect()
}

/// Whole minutes from `now`, cut off: an end may not be promised later than it is.
fn minutes(now: Instant, at: Instant) -> Minutes {
    ((at - now).minutes().floor()).clamp(-2000.0, 2000.0) as Minutes
}

/// The same for a begin, rounded up.
fn minutes_up(now: Instant, at: Instant) -> Minutes {
    ((at - now).minutes().ceil()).clamp(-2000.0, 2000.0) as Minutes
}

#[cfg(test)]
#[path = "replan_tests.rs"]
mod tests;
