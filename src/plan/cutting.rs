//! Cutting together: how long takes still match, and in which order a scene's set-ups go into that time.
//!
//! Any two takes of a *match hold* keep the scene's limit: shadows, the light's bearing, the ratio of lit to shadow
//! side, colour (handbook I2). Sun's place is computed here; ratio and colour come from a [`Gauge`], so that whoever
//! models levels can plug theirs in. Starts are looked for every minute, ends are found to a second.

pub mod gauge;
pub mod match_limit;
pub mod reverse;
pub mod steps;
pub mod words;

use crate::light::shadow::shadow_length;
use crate::maths;
use crate::plan::search::scan;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Instant, Metres, Mired, Span, Spans, Stops, Vector, World};
use match_limit::MatchLimit;

/// Time between two looks at the light. Our own choice.
const LOOK: Duration = Duration::from_minutes(1);

/// What else must match. A light without a ratio, or without a colour temperature, only matches another without.
pub trait Gauge {
    /// How far the shadow side is under the lit side.
    fn ratio(&self, light: Vector<World>, at: Instant) -> Option<Stops>;
    /// The colour of the key.
    fn colour(&self, light: Vector<World>, at: Instant) -> Option<Mired>;
}

/// The light of a take, as far as it must match.
#[derive(Clone, Copy, Debug)]
pub(in crate::plan) struct Look {
    pub(in crate::plan) bearing: Bearing,
    /// Logarithm of the shadow's length, so that a change in proportion is a difference.
    pub(in crate::plan) shadow: Option<f64>,
    pub(in crate::plan) ratio: Option<f64>,
    pub(in crate::plan) colour: Option<f64>,
}

impl Look {
    fn has(&self) -> [bool; 3] {
        [self.shadow, self.ratio, self.colour].map(|value| value.is_some())
    }
}

/// From the least to the most that some takes have.
#[derive(Clone, Copy, Debug)]
struct Range {
    first: Look,
    turn: (f64, f64),
    shadow: Option<(f64, f64)>,
    ratio: Option<(f64, f64)>,
    colour: Option<(f64, f64)>,
    /// Whether all of them have a shadow, a ratio, a colour, or none has.
    alike: bool,
}

impl Range {
    fn of(look: Look) -> Self {
        let point = |value: Option<f64>| value.map(|value| (value, value));
        Self {
            first: look,
            turn: (0.0, 0.0),
            shadow: point(look.shadow),
            ratio: point(look.ratio),
            colour: point(look.colour),
            alike: true,
        }
    }

    fn with(self, look: Look) -> Self {
        let wider = |range: (f64, f64), value: f64| (range.0.min(value), range.1.max(value));
        let both = |range: Option<(f64, f64)>, value: Option<f64>| match (range, value) {
            (Some(range), Some(value)) => Some(wider(range, value)),
            (range, value) => range.or(value.map(|value| (value, value))),
        };
        Self {
            turn: wider(self.turn, self.first.bearing.turn_to(look.bearing).degrees()),
            shadow: both(self.shadow, look.shadow),
            ratio: both(self.ratio, look.ratio),
            colour: both(self.colour, look.colour),
            alike: self.alike && self.first.has() == look.has(),
            ..self
        }
    }

    fn keeps(&self, limit: &MatchLimit) -> bool {
        let within =
            |range: Option<(f64, f64)>, most: f64| range.is_none_or(|(low, high)| high - low <= most);
        self.alike
            && within(Some(self.turn), limit.class_angle.degrees())
            && within(self.shadow, maths::log2(1.0 + limit.shadow.fraction()))
            && within(self.ratio, limit.ratio.stops())
            && within(self.colour, limit.colour.mired())
    }
}

/// A sun, a gauge and a limit: everything that says whether two takes cut together.
#[derive(Clone, Copy)]
pub struct Match<'a> {
    /// The sun.
    pub sun: &'a Sun,
    /// Ratio and colour.
    pub gauge: &'a dyn Gauge,
    /// How far they may differ.
    pub limit: MatchLimit,
}

impl Match<'_> {
    pub(in crate::plan) fn look(&self, at: Instant) -> Look {
        let light = self.sun.apparent(at);
        Look {
            bearing: light.bearing(),
            shadow: shadow_length(light.height()).map(maths::log2),
            ratio: self.gauge.ratio(light, at).map(Stops::stops),
            colour: self.gauge.colour(light, at).map(Mired::mired),
        }
    }

    /// Whether two takes cut together.
    pub fn cuts(&self, one: Instant, other: Instant) -> bool {
        Range::of(self.look(one)).with(self.look(other)).keeps(&self.limit)
    }

    /// Around a take: as long, without a break, as others cut with it.
    pub fn around(&self, take: Instant, within: Span) -> Option<Span> {
        let keeps = |at: Instant| self.cuts(take, at);
        let ahead = scan::spans(Span::new(take, within.end())?, LOOK, keeps);
        let end = ahead.iter().next().map_or(take, Span::end);
        let back = scan::spans(
            Span::new(within.start(), take).unwrap_or(Span::new(take, within.end())?),
            LOOK,
            keeps,
        );
        let start = back.iter().next_back().filter(|span| span.end() >= take).map_or(take, Span::start);
        Span::new(start.min(take), end)
    }

    /// The longest span of `within` in which any two takes cut together; the earliest of equals.
    pub fn hold(&self, within: Span) -> Option<Span> {
        let looks: Vec<Look> = minutes(within).map(|at| self.look(at)).collect();
        let mut longest: Option<Span> = None;
        let mut last = 0;
        for first in 0..looks.len() {
            last = last.max(first);
            let mut range =
                looks[first + 1..=last].iter().fold(Range::of(looks[first]), |range, look| range.with(*look));
            while let Some(next) =
                looks.get(last + 1).map(|look| range.with(*look)).filter(|next| next.keeps(&self.limit))
            {
                (range, last) = (next, last + 1);
            }
            let end = self.end(range, within, last);
            let span = Span::new(minute(within, first), end);
            longest = longer(longest, span);
            if last + 1 >= looks.len() && end >= within.end() {
                break;
            }
        }
        longest
    }

    /// Where takes after the look numbered `last` cease to cut with those of `range`.
    fn end(&self, range: Range, within: Span, last: usize) -> Instant {
        let (from, to) = (minute(within, last), minute(within, last + 1).min(within.end()));
        let breaks = |at: Instant| !range.with(self.look(at)).keeps(&self.limit);
        if breaks(to) { scan::edge(from, to, breaks) } else { to }
    }

    /// Whether any two takes of a span cut together.
    pub fn keeps(&self, span: Span) -> bool {
        let looks = minutes(span).chain([span.end()]).map(|at| self.look(at));
        let range = looks.map(Range::of).reduce(|all, one| all.with(one.first));
        range.is_some_and(|range| range.keeps(&self.limit))
    }

    /// Puts set-ups one after the other, so that all their takes cut together: wide before close, or the other way
    /// round where only that does. The earliest that ends within `within`.
    ///
    /// Wide first is common practice: a close-up can be matched later with a frame or a lamp (handbook I2).
    pub fn order(&self, parts: &[Part], within: Span) -> Option<Vec<(usize, Span)>> {
        let mut wide_first: Vec<usize> = (0..parts.len()).collect();
        crate::order::by(&mut wide_first, |a, b| {
            parts[*b].width.metres().total_cmp(&parts[*a].width.metres())
        });
        let close_first: Vec<usize> = wide_first.iter().rev().copied().collect();
        [wide_first, close_first].iter().find_map(|order| {
            let first = &parts[*order.first()?];
            let light = first.met.iter().filter_map(|span| span.and(within));
            let starts =
                light.flat_map(|span| minutes(span).take_while(move |at| *at + first.takes <= span.end()));
            let placed = starts.filter_map(|start| in_turn(parts, order, start, within.end()));
            let mut whole = placed.filter_map(|placed| {
                let (first, last) = (placed.first()?.1, placed.last()?.1);
                Some((Span::new(first.start(), last.end())?, placed))
            });
            whole.find(|(span, _)| self.keeps(*span)).map(|(_, placed)| placed)
        })
    }
}

/// A set-up that wants its place in a match hold.
#[derive(Clone, Debug)]
pub struct Part {
    /// What it is called.
    pub name: String,
    /// How wide a stretch the picture shows where the subject is.
    pub width: Metres,
    /// How long it takes.
    pub takes: Duration,
    /// When its own wish is met.
    pub met: Spans,
}

/// Each part as early as its own light allows after the one before it.
fn in_turn(parts: &[Part], order: &[usize], start: Instant, end: Instant) -> Option<Vec<(usize, Span)>> {
    let mut free = start;
    order
        .iter()
        .map(|number| {
            let part = &parts[*number];
            let from = part.met.iter().find_map(|span| {
                let from = span.start().max(free);
                (from + part.takes <= span.end().min(end)).then_some(from)
            })?;
            free = from + part.takes;
            Some((*number, Span::new(from, free)?))
        })
        .collect()
}

/// The longer of two; the first of equals.
fn longer(one: Option<Span>, other: Option<Span>) -> Option<Span> {
    match (one, other) {
        (Some(a), Some(b)) => Some(if b.duration() > a.duration() { b } else { a }),
        (one, other) => one.or(other),
    }
}

/// Every minute of a span from its start.
fn minutes(within: Span) -> impl Iterator<Item = Instant> {
    (0..).map(move |n| minute(within, n)).take_while(move |at| *at < within.end())
}

fn minute(within: Span, number: usize) -> Instant {
    within.start() + Duration::from_millis(LOOK.millis() * number as i64)
}

/// How wide a stretch a picture of an angle across shows at a distance.
pub fn picture_width(across: Degrees, distance: Metres) -> Metres {
    Metres::from_metres(2.0 * distance.metres() * maths::tan(across.radians() / 2.0))
}

#[cfg(test)]
mod tests;
