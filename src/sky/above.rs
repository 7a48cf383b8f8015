//! When the sun stands above a skyline.
//!
//! Time is halved until a stretch is surely clear, surely hidden, or short: for a short one every edge and every
//! corner in reach is solved for, and each piece between is asked once. What the sun can do between two instants is
//! bounded by how fast its direction can turn, so that nothing is missed. No trigonometry but in refraction, near the
//! edges.

use super::noon::{self, Noon};
use super::plane::{Plane, Track};
use super::refraction::{self, Air};
use super::ridge::{ROUND, Ridge, Sweep};
use super::search::{GRAZE, Limb, days, instant};
use super::side::Side;
use super::sun::Sun;
use crate::place::cone::{Cone, HalfSpace};
use crate::place::skyline::{Edge, Skyline, monotone};
use crate::solve;
use crate::units::{Height, Span, Spans, Vector, World};

/// First steps, days: an hour.
const HOUR: f64 = 1.0 / 24.0;

/// Stretches no longer than this are solved, days: eight minutes. Our choice: four or twelve cost more.
const SHORT: f64 = HOUR / 7.5;

/// By how much, times the square of a stretch in days, the sun may leave the chord between its ends: an eighth of
/// the largest second derivative, (2π)² and what the declination adds.
const SAG: f64 = 5.05;

/// Rounding and the length of the day track's directions.
const SLOP: f64 = 6e-5;

impl Sun {
    /// When the sun is seen above a skyline.
    pub fn spans_above(&self, skyline: &Skyline, limb: Limb, within: Span) -> Spans {
        self.above(skyline, limb, &within.into())
    }

    /// The part of `light` in which the sun is seen above a skyline.
    pub fn above(&self, skyline: &Skyline, limb: Limb, light: &Spans) -> Spans {
        let Some(ridge) = Ridge::of(skyline, limb) else {
            let level = [Cone { sides: vec![HalfSpace::beside(Vector::UP)] }];
            let found = light.iter().flat_map(|span| self.spans_in(&level, limb, span).as_slice().to_vec());
            return Spans::gather(found.collect());
        };
        let glimpse = Height::clamped(refraction::SEEN_FROM).sin();
        let lowest = ridge.bounds((0.0, ROUND)).low.clamp(-1.0, 1.0);
        let limit = HalfSpace { normal: Vector::UP, least: lowest - SLOP };
        let lowest = Plane::airless(limit, &self.site);
        let mut search = Search { sun: self, ridge, lowest, glimpse, found: Vec::new() };
        for span in light.iter() {
            search.run(days(span.start()), days(span.end()));
        }
        Spans::gather(search.found)
    }
}

struct Search<'a> {
    sun: &'a Sun,
    ridge: Ridge<'a>,
    /// Below this the sun is hidden everywhere.
    lowest: Plane,
    /// Sine of the airless height below which nothing is lifted.
    glimpse: f64,
    found: Vec<Span>,
}

/// The sun at one end of a stretch.
#[derive(Clone, Copy)]
struct End {
    time: f64,
    direction: Vector<World>,
}

impl Search<'_> {
    fn run(&mut self, from: f64, to: f64) {
        let site = &self.sun.site;
        for window in noon::window_of(site, from)..=noon::window_of(site, to) {
            let whole = (noon::start_of(site, window).max(from), noon::start_of(site, window + 1).min(to));
            let (middle, half) = match self.lowest.track(&Noon::of(self.sun, window)) {
                Track::Never => continue,
                Track::Always => (0.5 * (whole.0 + whole.1), 1.0),
                Track::Arc { middle, half, pad, .. } => (middle, half + pad),
                Track::Perhaps { middle, half } => (middle, half),
            };
            if half >= 0.5 {
                self.by_the_hour(whole);
                continue;
            }
            for image in [middle - 1.0, middle, middle + 1.0] {
                self.by_the_hour((whole.0.max(image - half), whole.1.min(image + half)));
            }
        }
    }

    fn by_the_hour(&mut self, (from, to): (f64, f64)) {
        if from >= to {
            return;
        }
        let steps = ((to - from) / HOUR).ceil();
        let mut last = self.end(from);
        for step in 1..=steps as usize {
            let next =
                self.end(if step as f64 == steps { to } else { from + (to - from) * step as f64 / steps });
            self.judge(last, next);
            last = next;
        }
    }

    fn end(&self, time: f64) -> End {
        End { time, direction: self.sun.at(time) }
    }

    /// Clear, hidden, too long or short enough to be solved.
    fn judge(&mut self, one: End, two: End) {
        let width = two.time - one.time;
        let sag = SAG * width * width + SLOP;
        let sweep = sweep(one.direction, two.direction, sag);
        let bounds = self.ridge.bounds(sweep);
        let (low, high) =
            (one.direction.z.min(two.direction.z) - sag, one.direction.z.max(two.direction.z) + sag);
        if high < bounds.low {
            return;
        }
        if low >= bounds.high {
            self.found.extend(Span::new(instant(one.time), instant(two.time)));
        } else if width > SHORT {
            let middle = self.end(0.5 * (one.time + two.time));
            self.judge(one, middle);
            self.judge(middle, two);
        } else {
            self.solve(one, two, sweep, (low, high));
        }
    }

    fn solve(&mut self, one: End, two: End, sweep: Sweep, (low, high): (f64, f64)) {
        let (from, to) = (one.time, two.time);
        let airless = [one.direction, two.direction];
        let seen = airless.map(refraction::extended);
        if low >= self.glimpse
            && let Some(clear) = self.told(seen, sweep, to - from)
        {
            self.found.extend(Span::new(instant(from), instant(to)).filter(|_| clear));
            return;
        }
        let mut cuts = vec![from];
        let mut cut = |limit: HalfSpace, lifted: bool| {
            let side = Side { limit, lifted };
            let (bend, ends) = (side.bend(1.0), if lifted { seen } else { airless });
            if side_of(limit, ends, 0.125 * bend * (to - from) * (to - from)).is_none() {
                let value = |time| side.value(self.sun.at(time));
                cuts.extend(solve::sign_changes(value, (from, to), bend, GRAZE));
            }
        };
        if low < self.glimpse && self.glimpse <= high {
            cut(HalfSpace { normal: Vector::UP, least: self.glimpse }, false);
        }
        for edge in self.ridge.touched(sweep) {
            cut(corner(edge), false);
            for limit in limits(edge, self.ridge.reach).into_iter().flatten() {
                if high >= self.glimpse {
                    cut(limit, true);
                }
                if low < self.glimpse {
                    cut(limit, false);
                }
            }
        }
        cuts.push(to);
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.windows(2) {
            let direction = self.sun.at(0.5 * (pair[0] + pair[1]));
            let seen = direction.unit().map(|direction| refraction::lifted(direction, Air::STANDARD));
            if seen.is_some_and(|seen| self.ridge.clears(seen)) {
                self.found.extend(Span::new(instant(pair[0]), instant(pair[1])));
            }
        }
    }

    /// The answer for a stretch over which every edge in reach gives the same one; nothing where they differ.
    fn told(&self, seen: [Vector<World>; 2], sweep: Sweep, width: f64) -> Option<bool> {
        let mut told = None;
        for edge in self.ridge.touched(sweep) {
            let [line, end] = limits(edge, self.ridge.reach).map(|limit| {
                let limit = limit?;
                side_of(limit, seen, 0.125 * Side { limit, lifted: true }.bend(1.0) * width * width)
            });
            let reach = self.ridge.reach;
            // One limit alone decides: for some of the disc by leaving it out, for all of it by letting it in.
            let clear = if reach == 0.0 {
                line?
            } else if [line, end].contains(&Some(reach < 0.0)) {
                reach < 0.0
            } else {
                // Both of them are known, or it is not told.
                line.and(end)?
            };
            if told.is_some_and(|told| told != clear) {
                return None;
            }
            told = Some(clear);
        }
        told
    }
}

/// Where the answer of [`Edge::clears`] may change: at its line, and at the height where the line ends.
fn limits(edge: &Edge, reach: f64) -> [Option<HalfSpace>; 2] {
    let (lowest, highest) = edge.heights();
    let end = if reach > 0.0 { lowest } else { highest };
    let level = HalfSpace { normal: Vector::UP, least: end - reach };
    [Some(HalfSpace { least: -reach, ..edge.above }), (reach != 0.0).then_some(level)]
}

/// The clockwise side of the upright plane through the corner at which an edge begins.
fn corner(edge: &Edge) -> HalfSpace {
    let Vector { x, y, .. } = edge.start;
    HalfSpace::beside(Vector::new(y, -x, 0.0) * (1.0 / (x * x + y * y).sqrt()))
}

/// Whether a sun that goes from one end to the other, off the chord by at most `sag`, is inside all the way or
/// outside; nothing where it can cross.
fn side_of(limit: HalfSpace, ends: [Vector<World>; 2], sag: f64) -> Option<bool> {
    let [one, two] = ends.map(|direction| limit.normal.dot(direction) - limit.least);
    match (one.min(two) > sag + SLOP, one.max(two) < -sag - SLOP) {
        (false, false) => None,
        (inside, _) => Some(inside),
    }
}

/// Monotone angles that the sun may pass between two directions, off their chord by at most `sag`.
fn sweep(one: Vector<World>, two: Vector<World>, sag: f64) -> Sweep {
    let flat = |v: Vector<World>| (v.x * v.x + v.y * v.y).sqrt();
    let nearest = flat(one).min(flat(two)) - 0.5 * flat(two - one) - sag;
    if nearest <= sag {
        return (0.0, ROUND);
    }
    // The monotone angle grows by no more than the angle itself, and an arc by no more than 1.6 times its sine here.
    let beside = 1.6 * sag / nearest;
    let (from, to) = (monotone(one), monotone(two));
    // The shorter way round, upwards.
    let (low, high) = (from.min(to), from.max(to));
    let (low, high) = if high - low > 0.5 * ROUND { (high - ROUND, low) } else { (low, high) };
    (low - beside, high + beside)
}
