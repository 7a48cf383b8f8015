//! Slots: spans of time in which a wish is met, and why they begin and end.

use chrono::NaiveDate;

use super::reason::{Question, Reason};
use crate::plan::stage::Stage;

use crate::light::class::{Class, Side, class, off_lens, side};
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, Height, Instant, Span, Vector, World};

/// How far beyond an edge the sky is asked why it is one. Edges are exact to a few milliseconds.
const BESIDE: Duration = Duration::from_millis(200);

/// A span in which the whole wish holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// From when to when; its length is the hold.
    pub span: Span,
    /// Local date on which it begins.
    pub date: NaiveDate,
    /// Where the lens looks.
    pub lens: Bearing,
    /// The light half-way through.
    pub light: Light,
    /// Height of the sun at the start and at the end.
    pub heights: (Height, Height),
    /// Openings that the sun comes through in its course, as places in the stage's list.
    pub openings: Vec<usize>,
    /// Why it does not begin earlier.
    pub starts: Reason,
    /// Why it ends.
    pub ends: Reason,
}

/// The light at an instant, as the lens sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light {
    /// Direction class.
    pub class: Class,
    /// Side of the lens.
    pub side: Side,
    /// Off the lens, signed, positive to camera right.
    pub off_lens: Degrees,
    /// Apparent direction to the sun.
    pub direction: Vector<World>,
}

impl Light {
    /// The light that comes from `direction`.
    pub fn from(direction: Vector<World>, stage: &Stage) -> Self {
        let off_lens = off_lens(direction.bearing(), stage.lens);
        Self { class: class(off_lens, direction.height()), side: side(off_lens), off_lens, direction }
    }
}

impl Slot {
    /// The slot that fills `span`, with its reasons.
    pub(in crate::plan) fn new(sun: &Sun, stage: &Stage, span: Span) -> Self {
        let question = Question::new(stage);
        let at = |when: Instant| sun.apparent(when);
        Self {
            span,
            date: stage.zone.date(span.start()),
            lens: stage.lens,
            light: Light::from(at(span.middle()), stage),
            heights: (at(span.start()).height(), at(span.end()).height()),
            openings: openings(stage, &[span.start() + BESIDE, span.middle(), span.end() - BESIDE].map(at)),
            starts: question.reason(sun, span.start() - BESIDE, span.start() + BESIDE),
            ends: question.reason(sun, span.end() + BESIDE, span.end() - BESIDE),
        }
    }

    /// How long the light holds.
    pub fn hold(&self) -> Duration {
        self.span.duration()
    }

    /// What is left of the hold beyond the time that the set-up takes.
    pub fn slack(&self, stage: &Stage) -> Duration {
        self.hold() - stage.takes
    }
}

/// Places in the stage's list of the openings that let one of `directions` onto the mark.
fn openings(stage: &Stage, directions: &[Vector<World>]) -> Vec<usize> {
    let lit = |n: &usize| {
        stage.openings.as_ref().is_some_and(|all| directions.iter().any(|at| all[*n].contains(*at)))
    };
    (0..stage.openings.as_ref().map_or(0, Vec::len)).filter(lit).collect()
}
