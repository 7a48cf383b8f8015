//! The sun minute by minute: a few products and sums a step.
//!
//! A day's parabolas are turned to the site's longitude and tilted to its latitude once; from minute to minute they
//! go on by their differences, and the shared table turns them. No trigonometry, no division, no root. Internal
//! iteration (`for_each`, `fold`, `sum`) is three times as fast as `next`.

use super::ephemeris::{DAY_MILLIS, Day};
use super::sun::Sun;
use super::turn::{self, MINUTES};
use crate::units::{Instant, Span, Vector, World};

/// Milliseconds in a minute.
const MINUTE_MILLIS: i64 = 60_000;

impl Sun {
    /// Airless directions of the centre at the start of `span` and every minute after it, up to its end.
    ///
    /// Their length is 1 within 4e-5: the parallax is left in it. Bearing and height do not depend on it; a plane that
    /// does not go through the eye asks for [`Vector::unit`].
    pub fn minutes(&self, span: Span) -> Minutes {
        let (start, end) = (span.start().unix_millis(), span.end().unix_millis());
        Minutes {
            sun: *self,
            next: start,
            left: (end - start + MINUTE_MILLIS - 1) / MINUTE_MILLIS,
            run: &[],
            steps: None,
        }
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
    /// What is left of one UTC day.
    run: &'static [(f64, f64)],
    steps: Option<Steps>,
}

/// A value that goes on by its differences.
#[derive(Clone, Copy, Debug)]
struct Going([f64; 3]);

/// One UTC day at one site, on its way.
#[derive(Clone, Copy, Debug)]
struct Steps {
    a: Going,
    b: Going,
    north: Going,
    up: Going,
    sin_latitude: f64,
    cos_latitude: f64,
}

impl Minutes {
    /// The next UTC day, or nothing at the end.
    #[cold]
    fn refill(&mut self) -> Option<Steps> {
        if self.left <= 0 {
            return None;
        }
        let (number, millis) = (self.next.div_euclid(DAY_MILLIS), self.next.rem_euclid(DAY_MILLIS));
        let (minute, over) = (millis / MINUTE_MILLIS, millis % MINUTE_MILLIS);
        let count = self.left.min(MINUTES as i64 - minute);
        self.next += count * MINUTE_MILLIS;
        self.left -= count;
        self.run = &turn::TABLE[minute as usize..(minute + count) as usize];
        self.steps = Some(Steps::new(&self.sun, number, millis, over));
        self.steps
    }
}

impl Iterator for Minutes {
    type Item = Vector<World>;

    fn next(&mut self) -> Option<Vector<World>> {
        if self.run.is_empty() {
            self.refill()?;
        }
        let (turn, rest) = self.run.split_first()?;
        self.run = rest;
        self.steps.as_mut().map(|steps| steps.step(*turn))
    }

    fn fold<B, F: FnMut(B, Vector<World>) -> B>(mut self, first: B, mut each: F) -> B {
        let mut sum = first;
        let mut steps = if self.run.is_empty() { self.refill() } else { self.steps };
        while let Some(mut going) = steps {
            for turn in self.run {
                sum = each(sum, going.step(*turn));
            }
            steps = self.refill();
        }
        sum
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let count = self.run.len() + usize::try_from(self.left).unwrap_or(0);
        (count, Some(count))
    }
}

impl ExactSizeIterator for Minutes {}

impl Steps {
    fn new(sun: &Sun, number: i64, millis: i64, over: i64) -> Self {
        let day: Day = sun.day(number);
        let site = &sun.site;
        // The table stands for whole minutes: the odd seconds are turned in together with the longitude.
        let (cos, sin) = turn::cos_sin(over as f64 / DAY_MILLIS as f64);
        let cos_turn = cos * site.cos_longitude - sin * site.sin_longitude;
        let sin_turn = sin * site.cos_longitude + cos * site.sin_longitude;
        let of = |terms: [f64; 3]| Going::new(terms, millis);
        let north = day.parallax * site.centre_north;
        let up = day.parallax * site.centre_up;
        Self {
            a: of(mix(day.a, cos_turn, day.b, -sin_turn)),
            b: of(mix(day.a, -sin_turn, day.b, -cos_turn)),
            north: of(mix(day.s, site.cos_latitude, [north, 0.0, 0.0], -1.0)),
            up: of(mix(day.s, site.sin_latitude, [up, 0.0, 0.0], -1.0)),
            sin_latitude: site.sin_latitude,
            cos_latitude: site.cos_latitude,
        }
    }

    #[inline]
    fn step(&mut self, (cos, sin): (f64, f64)) -> Vector<World> {
        let (a, b) = (self.a.step(), self.b.step());
        let (meridian, east) = (a * cos + b * sin, b * cos - a * sin);
        let (north, up) = (self.north.step(), self.up.step());
        Vector::new(east, north - meridian * self.sin_latitude, up + meridian * self.cos_latitude)
    }
}

impl Going {
    /// A parabola in the part of a day, from `millis` on by the minute.
    fn new([c0, c1, c2]: [f64; 3], millis: i64) -> Self {
        let (at, step) = (millis as f64 / DAY_MILLIS as f64, 1.0 / MINUTES as f64);
        Self([c0 + at * (c1 + at * c2), step * (c1 + c2 * (2.0 * at + step)), 2.0 * c2 * step * step])
    }

    #[inline]
    fn step(&mut self) -> f64 {
        let Self([value, first, second]) = self;
        let now = *value;
        *value += *first;
        *first += *second;
        now
    }
}

/// `one · by + two · with`, term by term.
fn mix(one: [f64; 3], by: f64, two: [f64; 3], with: f64) -> [f64; 3] {
    core::array::from_fn(|term| one[term] * by + two[term] * with)
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
                prop_assert!((one.unit().unwrap() - sun.direction(at)).norm() < 1e-11, "{}", at);
            }
        }
    }
}
