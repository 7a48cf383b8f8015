//! Cutting together: how long takes still match, and in which order a scene's set-ups go into that time.
//!
//! Any two takes of a *match hold* keep the scene's limit: shadows, the light's bearing, the ratio of lit to shadow
//! side, colour (handbook I2). Sun's place is computed here; ratio and colour come from the [`Gauge`] of each set-up, so
//! that takes of several are held against each other as each lens and its lamps have them. Starts are looked for every
//! minute, ends are found to a second.

pub mod gauge;
pub mod match_limit;
mod range;
pub mod reverse;
pub mod steps;
pub mod words;

use crate::maths;
use crate::plan::search::scan;
use crate::sky::sun::Sun;
use crate::units::{Degrees, Duration, Instant, Metres, Mired, Span, Spans, Stops, Vector, World};
use match_limit::MatchLimit;
use range::{Look, Range};

/// Time between two looks at the light. Our own choice.
const LOOK: Duration = Duration::from_minutes(1);

/// What else must match. A light without a ratio, or without a colour temperature, only matches another without.
pub trait Gauge {
    /// How far the shadow side is under the lit side.
    fn ratio(&self, light: Vector<World>, at: Instant) -> Option<Stops>;
    /// The colour of the key.
    fn colour(&self, light: Vector<World>, at: Instant) -> Option<Mired>;
}

/// A sun, a limit and the gauges of some set-ups: everything that says whether takes of theirs cut together.
#[derive(Clone, Copy)]
pub struct Match<'a> {
    /// The sun.
    pub sun: &'a Sun,
    /// Ratio and colour at each set-up.
    pub gauges: &'a [&'a dyn Gauge],
    /// How far they may differ.
    pub limit: MatchLimit,
}

impl Match<'_> {
    /// The light of a take of the set-up numbered `number`.
    fn look(&self, number: usize, at: Instant) -> Look {
        self.look_in(self.sun.apparent(at), number, at)
    }

    fn look_in(&self, light: Vector<World>, number: usize, at: Instant) -> Look {
        let gauge = self.gauges.get(number);
        Look::of(
            light,
            gauge.and_then(|one| one.ratio(light, at)),
            gauge.and_then(|one| one.colour(light, at)),
        )
    }

    /// The light of takes of all set-ups at an instant.
    fn looks(&self, at: Instant) -> Range {
        let light = self.sun.apparent(at);
        let first = Range::of(self.look_in(light, 0, at));
        (1..self.gauges.len()).fold(first, |range, n| range.and(Range::of(self.look_in(light, n, at))))
    }

    /// Whether takes of all set-ups at two instants cut together.
    pub fn cuts(&self, one: Instant, other: Instant) -> bool {
        self.looks(one).and(self.looks(other)).keeps(&self.limit)
    }

    /// What is too far apart between takes of all set-ups at one instant: which measure, and how far.
    fn too_far(&self, at: Instant) -> Option<(usize, f64)> {
        self.looks(at).too_far(&self.limit)
    }

    /// The longest span of `within` in which any two takes of any of the set-ups cut together; the earliest of equals.
    pub fn hold(&self, within: Span) -> Option<Span> {
        let looks: Vec<Range> = minutes(within).map(|at| self.looks(at)).collect();
        let mut longest: Option<Span> = None;
        let mut last = 0;
        for first in 0..looks.len() {
            last = last.max(first);
            let mut range = looks[first + 1..=last].iter().fold(looks[first], |range, look| range.and(*look));
            if !range.keeps(&self.limit) {
                continue;
            }
            while let Some(next) =
                looks.get(last + 1).map(|look| range.and(*look)).filter(|next| next.keeps(&self.limit))
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
        let breaks = |at: Instant| !range.and(self.looks(at)).keeps(&self.limit);
        if breaks(to) { scan::edge(from, to, breaks) } else { to }
    }

    /// Puts set-ups one after the other, so that all their takes cut together: wide before close, or the other way
    /// round where only that does. The earliest that ends within `within`; `parts` stand as the gauges do.
    ///
    /// Wide first is common practice: a close-up can be matched later with a frame or a lamp (handbook I2). Of three or
    /// more, each takes the first place that goes with those before it.
    pub fn order(&self, parts: &[Part], within: Span) -> Option<Vec<(usize, Span)>> {
        let mut wide_first: Vec<usize> = (0..parts.len()).collect();
        crate::order::by(&mut wide_first, |a, b| {
            parts[*b].width.metres().total_cmp(&parts[*a].width.metres())
        });
        let close_first: Vec<usize> = wide_first.iter().rev().copied().collect();
        [wide_first, close_first].iter().find_map(|order| {
            let (first, rest) = order.split_first()?;
            self.places((*first, &parts[*first]), within, None).find_map(|(span, range)| {
                let begun = (vec![(*first, span)], range, span.end());
                let all = rest.iter().try_fold(begun, |(mut placed, range, free), number| {
                    let left = Span::new(free, within.end())?;
                    let (span, range) = self.places((*number, &parts[*number]), left, Some(range)).next()?;
                    placed.push((*number, span));
                    Some((placed, range, span.end()))
                });
                all.map(|(placed, ..)| placed)
            })
        })
    }

    /// Where a part could stand in its own light so that its takes cut with those before, and the light of them all.
    fn places(
        &self,
        (number, part): (usize, &Part),
        within: Span,
        before: Option<Range>,
    ) -> impl Iterator<Item = (Span, Range)> {
        let takes = part.takes;
        let light = part.met.iter().filter_map(move |span| span.and(within));
        let starts =
            light.flat_map(move |span| minutes(span).take_while(move |at| *at + takes <= span.end()));
        starts.filter_map(move |start| {
            let span = Span::new(start, start + takes)?;
            Some((span, self.with(before, number, span)?))
        })
    }

    /// The light of takes all through a span with that of those before; `None` if they do not cut together.
    fn with(&self, before: Option<Range>, number: usize, span: Span) -> Option<Range> {
        let mut looks = minutes(span).chain([span.end()]).map(|at| Range::of(self.look(number, at)));
        looks.try_fold(before, |all, look| {
            let all = all.map_or(look, |all| all.and(look));
            all.keeps(&self.limit).then_some(Some(all))
        })?
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
