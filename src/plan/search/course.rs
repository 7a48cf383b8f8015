//! The sun's course over a stretch of light, noted every few minutes: when its bearing lies in arcs, in closed form.
//!
//! Between two notes the sun is taken to go straight. Where its bearing runs one way, the time at which it passes an
//! edge is then looked up, not searched; a course that turns back (near the zenith) is one run after another. How far
//! such a time may be off follows from how much the notes bend, and is told with the course.

use crate::plan::wish::region::BearingArc;
use crate::sky::sun::Sun;
use crate::units::{Duration, Instant, Span, Spans, Vector, World};

/// Largest distance of the notes. Our own choice: shorter means more notes, longer more exact searches.
const NOTE: Duration = Duration::from_minutes(4);

/// The least that an edge is taken to be off: clocks show minutes.
const LEAST_OFF: Duration = Duration::from_millis(1000);

/// The sun's way through a stretch of light.
pub(in crate::plan) struct Course {
    light: Span,
    lights: Vec<Vector<World>>,
    /// Bearings of the notes without a jump at north, degrees.
    bearings: Vec<f64>,
    /// First and last note of each run in which the bearing goes one way.
    runs: Vec<(usize, usize)>,
    off: Duration,
}

impl Course {
    /// Through `light`; its begin and its end are noted.
    pub(in crate::plan) fn of(sun: &Sun, light: Span) -> Self {
        let steps = steps(light);
        let lights: Vec<Vector<World>> =
            (0..=steps).map(|note| sun.apparent(time(light, note, steps))).collect();
        let mut bearings: Vec<f64> = Vec::with_capacity(lights.len());
        for light in &lights {
            let bearing = light.bearing().degrees();
            let last = bearings.last().copied().unwrap_or(bearing);
            bearings.push(last + (bearing - last + 540.0).rem_euclid(360.0) - 180.0);
        }
        let (runs, off) = (runs(&bearings), off(&bearings, light));
        Self { light, lights, bearings, runs, off }
    }

    /// How far an edge may be off.
    pub(in crate::plan) const fn off(&self) -> Duration {
        self.off
    }

    /// When the sun's bearing lies in one of some arcs that keep apart.
    pub(in crate::plan) fn within(&self, arcs: impl Iterator<Item = BearingArc>) -> Spans {
        let mut found = Vec::new();
        for arc in arcs {
            let (from, width) = (arc.from.degrees(), arc.width.degrees());
            for run in &self.runs {
                let (one, other) = (self.bearings[run.0], self.bearings[run.1]);
                let (low, high) = (one.min(other), one.max(other));
                let mut begins = from + 360.0 * ((low - from - width) / 360.0).ceil();
                while begins <= high {
                    let ends = [begins.max(low), (begins + width).min(high)].map(|to| self.passes(*run, to));
                    found.extend(Span::new(ends[0].min(ends[1]), ends[0].max(ends[1])));
                    begins += 360.0;
                }
            }
        }
        Spans::gather(found)
    }

    /// Where the sun stands.
    pub(in crate::plan) fn light(&self, at: Instant) -> Vector<World> {
        let steps = self.lights.len() - 1;
        let past = (at - self.light.start()).millis() as f64 / self.light.duration().millis() as f64;
        let past = past.clamp(0.0, 1.0) * steps as f64;
        let note = (past as usize).min(steps - 1);
        self.lights[note] + (self.lights[note + 1] - self.lights[note]) * (past - note as f64)
    }

    /// When the bearing, somewhere in a run, is passed.
    fn passes(&self, (first, last): (usize, usize), bearing: f64) -> Instant {
        let run = &self.bearings[first..=last];
        let rises = run[0] <= run[run.len() - 1];
        let before = run.partition_point(|note| if rises { *note < bearing } else { *note > bearing });
        let Some(note) = (first + before).checked_sub(1).filter(|note| *note >= first) else {
            return self.time(first);
        };
        let (one, other) = (self.bearings[note], self.bearings[(note + 1).min(last)]);
        let share = if other == one { 0.0 } else { ((bearing - one) / (other - one)).clamp(0.0, 1.0) };
        let from = self.time(note);
        from + Duration::from_millis(((self.time(note + 1) - from).millis() as f64 * share) as i64)
    }

    fn time(&self, note: usize) -> Instant {
        time(self.light, note, self.lights.len() - 1)
    }
}

/// Into how many equal steps a stretch is parted.
fn steps(light: Span) -> usize {
    (light.duration().millis() / NOTE.millis()) as usize + 1
}

/// When a note is taken.
fn time(light: Span, note: usize, steps: usize) -> Instant {
    light.start() + Duration::from_millis(light.duration().millis() * note as i64 / steps as i64)
}

/// Parts in which bearings go one way, each but the first beginning where the one before ends.
fn runs(bearings: &[f64]) -> Vec<(usize, usize)> {
    let mut runs = Vec::new();
    let mut first = 0;
    for turn in 1..bearings.len().saturating_sub(1) {
        let (before, after) = (bearings[turn] - bearings[turn - 1], bearings[turn + 1] - bearings[turn]);
        if before * after < 0.0 {
            runs.push((first, turn));
            first = turn;
        }
    }
    runs.push((first, bearings.len() - 1));
    runs
}

/// How far the time of an edge may be off: twice what a parabola through three notes strays from the straight line,
/// at most a note, since the bearing is right at its ends.
fn off(bearings: &[f64], light: Span) -> Duration {
    let stray = bearings.windows(3).map(|notes| {
        let (one, other) = (notes[1] - notes[0], notes[2] - notes[1]);
        (other - one).abs() / (4.0 * one.abs().min(other.abs()))
    });
    let most = stray.fold(0.0, |most: f64, stray| if stray > most { stray } else { most }).min(1.0);
    let step = light.duration().millis() as f64 / (bearings.len() - 1) as f64;
    LEAST_OFF.max(Duration::from_millis((step * most) as i64))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::fixture::{field, site, span};
    use crate::units::{Bearing, Degrees};

    /// Every 30 s of a day against the bearing itself.
    fn agrees(sun: &Sun, light: Span, arc: BearingArc) {
        let course = Course::of(sun, light);
        let found = course.within([arc].into_iter());
        let near = |at: Instant| {
            let edges = found.iter().flat_map(|span| [span.start(), span.end()]);
            edges.into_iter().any(|edge| (edge - at).millis().abs() <= course.off().millis())
        };
        let mut at = light.start();
        while at < light.end() {
            let here = arc.contains(sun.apparent(at).bearing());
            assert!(near(at) || found.contains(at) == here, "{at}, off {} s", course.off().millis() / 1000);
            at = at + Duration::from_millis(30_000);
        }
    }

    #[test]
    fn arcs_are_passed_when_the_sun_passes_them() {
        let arc = |from: f64, width: f64| BearingArc {
            from: Bearing::from_degrees(from),
            width: Degrees::from_degrees(width),
        };
        let day = span("2027-06-21T05:00:00Z", "2027-06-21T20:30:00Z");
        for (latitude, longitude) in [(40.64, -8.65), (-34.0, 18.0), (69.0, 18.0), (10.0, 0.0), (21.0, 5.0)] {
            let sun = Sun::new(site(latitude, longitude));
            for from in [0.0, 45.0, 100.0, 181.5, 300.0] {
                agrees(&sun, day, arc(from, 50.0));
                agrees(&sun, day, arc(from, 360.0));
                agrees(&sun, day, arc(from, 3.0));
            }
        }
    }

    #[test]
    fn the_sun_goes_as_good_as_straight_between_two_notes() {
        let sun = Sun::new(field().site);
        let light = span("2027-03-21T07:00:00Z", "2027-03-21T18:02:00Z");
        let course = Course::of(&sun, light);
        assert!(course.off().millis() < 5000, "{}", course.off().millis());
        for seconds in (0..39_600).step_by(61) {
            let at = light.start() + Duration::from_millis(seconds * 1000);
            let off = course.light(at).unit().unwrap().angle_to(sun.apparent(at)).degrees();
            assert!(off < 0.01, "{at}: {off}");
        }
    }
}
