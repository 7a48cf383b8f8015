//! The sun minute by minute: a few products and sums a step.
//!
//! A day's parabolas are turned to the site's longitude and tilted to its latitude once; for an hour they are as good
//! as straight (1.5e-6°), and the shared table turns them. No trigonometry, no division, no root. Internal iteration
//! (`for_each`, `fold`, `sum`) is three times as fast as `next`.

use super::ephemeris::{DAY_MILLIS, Day};
use super::sun::Sun;
use super::turn::{self, MINUTES};
use crate::units::{Instant, Span, Vector, World};

/// Milliseconds in a minute.
const MINUTE_MILLIS: i64 = 60_000;

/// Minutes for which a parabola is taken as straight.
const STRAIGHT: i64 = 60;

impl Sun {
    /// Airless directions of the centre at the start of `span` and every minute after it, up to its end.
    ///
    /// Their length is 1 within 4e-5: the parallax is left in it. Bearing and height do not depend on it; a plane that
    /// does not go through the eye asks for [`Vector::unit`].
    pub fn minutes(&self, span: Span) -> Minutes {
        let (start, end) = (span.start().unix_millis(), span.end().unix_millis());
        let left = (end - start + MINUTE_MILLIS - 1) / MINUTE_MILLIS;
        let day = SiteDay::new(self, start.div_euclid(DAY_MILLIS), start.rem_euclid(MINUTE_MILLIS));
        let line = day.line(0, 1);
        Minutes { sun: *self, next: start, left, day, run: &[], line }
    }
}

/// See [`Sun::minutes`].
#[derive(Clone, Debug)]
pub struct Minutes {
    sun: Sun,
    /// Milliseconds since 1970 of the first minute after `run`.
    next: i64,
    /// Minutes after `run`.
    left: i64,
    day: SiteDay,
    /// What is left of an hour.
    run: &'static [(f64, f64)],
    line: Line,
}

/// One UTC day at one site: parabolas in the part of the day.
#[derive(Clone, Copy, Debug)]
struct SiteDay {
    number: i64,
    /// In the equator's plane: cos δ cos and −cos δ sin of the hour angle at the table's start.
    meridian: [f64; 3],
    east: [f64; 3],
    /// North and up, as far as the declination goes.
    north: [f64; 3],
    up: [f64; 3],
    /// What the meridian part adds to north and up: −sin φ and cos φ.
    tilt: (f64, f64),
}

/// A stretch of it, straight.
#[derive(Clone, Copy, Debug)]
struct Line {
    meridian: Going,
    east: Going,
    north: Going,
    up: Going,
    tilt: (f64, f64),
}

/// Where a value was a minute ago, and what a minute adds.
#[derive(Clone, Copy, Debug)]
struct Going(f64, f64);

impl Minutes {
    /// The next stretch; `false` at the end.
    fn refill(&mut self) -> bool {
        if self.left <= 0 {
            return false;
        }
        let (number, millis) = (self.next.div_euclid(DAY_MILLIS), self.next.rem_euclid(DAY_MILLIS));
        let minute = millis / MINUTE_MILLIS;
        let count = self.left.min(STRAIGHT).min(MINUTES as i64 - minute);
        self.next += count * MINUTE_MILLIS;
        self.left -= count;
        self.run = &turn::TABLE[minute as usize..(minute + count) as usize];
        if number != self.day.number {
            self.day = SiteDay::new(&self.sun, number, millis % MINUTE_MILLIS);
        }
        self.line = self.day.line(millis, count);
        true
    }
}

impl Iterator for Minutes {
    type Item = Vector<World>;

    fn next(&mut self) -> Option<Vector<World>> {
        if self.run.is_empty() && !self.refill() {
            return None;
        }
        let (turn, rest) = self.run.split_first()?;
        self.run = rest;
        Some(self.line.step(*turn))
    }

    fn fold<B, F: FnMut(B, Vector<World>) -> B>(mut self, first: B, mut each: F) -> B {
        let mut sum = first;
        loop {
            let mut line = self.line;
            for turn in self.run {
                sum = each(sum, line.step(*turn));
            }
            if !self.refill() {
                return sum;
            }
        }
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let count = self.run.len() + usize::try_from(self.left).unwrap_or(0);
        (count, Some(count))
    }
}

impl ExactSizeIterator for Minutes {}

impl SiteDay {
    /// The UTC day of a number; the table stands for whole minutes, what is `over` is turned in with the longitude.
    fn new(sun: &Sun, number: i64, over: i64) -> Self {
        let day: Day = sun.day(number);
        let site = &sun.site;
        let (cos, sin) = turn::cos_sin(over as f64 / DAY_MILLIS as f64);
        let cos_turn = cos * site.cos_longitude - sin * site.sin_longitude;
        let sin_turn = sin * site.cos_longitude + cos * site.sin_longitude;
        let mix = |by_a: f64, by_b: f64| core::array::from_fn(|term| day.a[term] * by_a + day.b[term] * by_b);
        let tilted = |by: f64, parallax: f64| [day.s[0] * by - parallax, day.s[1] * by, day.s[2] * by];
        Self {
            number,
            meridian: mix(cos_turn, -sin_turn),
            east: mix(-sin_turn, -cos_turn),
            north: tilted(site.cos_latitude, day.parallax * site.centre_north),
            up: tilted(site.sin_latitude, day.parallax * site.centre_up),
            tilt: (-site.sin_latitude, site.cos_latitude),
        }
    }

    /// Straight from a time of the day for so many minutes.
    fn line(&self, millis: i64, minutes: i64) -> Line {
        let from = millis as f64 / DAY_MILLIS as f64;
        let to = from + minutes as f64 / MINUTES as f64;
        let straight = |[c0, c1, c2]: [f64; 3]| {
            let at = |x: f64| c0 + x * (c1 + x * c2);
            let step = (at(to) - at(from)) / minutes as f64;
            Going(at(from) - step, step)
        };
        Line {
            meridian: straight(self.meridian),
            east: straight(self.east),
            north: straight(self.north),
            up: straight(self.up),
            tilt: self.tilt,
        }
    }
}

impl Line {
    #[inline(always)]
    fn step(&mut self, (cos, sin): (f64, f64)) -> Vector<World> {
        let (a, b) = (self.meridian.step(), self.east.step());
        let (meridian, east) = (a * cos + b * sin, b * cos - a * sin);
        let (north, up) = (self.north.step(), self.up.step());
        Vector::new(east, north + meridian * self.tilt.0, up + meridian * self.tilt.1)
    }
}

impl Going {
    #[inline(always)]
    fn step(&mut self) -> f64 {
        self.0 += self.1;
        self.0
    }
}

impl Sun {
    /// Instants that belong to [`Sun::minutes`].
    pub fn minute_marks(span: Span) -> impl Iterator<Item = Instant> {
        (span.start().unix_millis()..span.end().unix_millis())
            .step_by(MINUTE_MILLIS as usize)
            .map(Instant::from_unix_millis)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::site::Site;
    use crate::units::{Latitude, Longitude};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn every_minute_is_the_direction_then(
            latitude in -90.0..=90.0f64, longitude in -180.0..=180.0f64,
            start in -300_000_000_000i64..4_000_000_000_000, long in 1i64..400_000_000,
        ) {
            let sun = Sun::new(Site {
                latitude: Latitude::from_degrees(latitude).unwrap(),
                longitude: Longitude::from_degrees(longitude).unwrap(),
                ..Site::default()
            });
            let start = Instant::from_unix_millis(start);
            let span = Span::new(start, Instant::from_unix_millis(start.unix_millis() + long)).unwrap();
            let marks: Vec<Instant> = Sun::minute_marks(span).collect();
            prop_assert_eq!(sun.minutes(span).len(), marks.len());
            let folded = sun.minutes(span).fold(Vec::new(), |mut all, direction| { all.push(direction); all });
            prop_assert_eq!(folded.len(), marks.len());
            for ((one, other), at) in sun.minutes(span).zip(&folded).zip(marks) {
                prop_assert_eq!(one, *other);
                prop_assert!((one.unit().unwrap() - sun.direction(at)).norm() < 3e-8, "{}", at);
            }
        }
    }
}
