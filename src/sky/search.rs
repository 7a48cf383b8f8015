//! When the sun is in a part of the sky: the one interval search.
//!
//! Day by day, in windows from one mean midnight of the site to the next: every half-space of a cone gives its arc
//! of time in closed form ([`super::plane`]), horizon first; the arcs, widened by what they may be off, are intersected;
//! only edges inside what is left are refined, and every stretch between edges is asked once. Where the sun grazes
//! a plane or circles it, a search that can miss nothing takes over. There may be any number of spans a day.
//!
//! Directions are those in which the sun is *seen*, through standard air. Edges are right to a millisecond of the day
//! track's own answer.

use super::noon::{self, Noon};
use super::plane::{Plane, Track};
use super::refraction;
use super::sun::Sun;
use super::turn;
use crate::maths;
use crate::place::cone::{Cone, HalfSpace};
use crate::solve::{self, Bracket};
use crate::units::{Degrees, Height, Instant, Span, Spans, Vector};

/// Milliseconds in a day.
const DAY_MILLIS: f64 = 86_400_000.0;

/// A last step of this, days, ends the search for an edge: under a millisecond, and what is left after it is a
/// thousandth of that. At a grazing sun, half a millisecond between two edges.
const EDGE: f64 = 1e-8;
pub(super) const GRAZE: f64 = 5e-9;

/// Radius of the sun's disc at its mean distance, degrees: 959.63″ (Auwers 1891, the almanacs' value).
pub const SUN_RADIUS: Degrees = Degrees::from_degrees(959.63 / 3600.0);

/// Which point of the sun's disc is asked about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Limb {
    /// The one that goes in first: some of the disc is in. For a height, the upper limb.
    Upper,
    /// The middle.
    #[default]
    Centre,
    /// The one that goes in last: the whole disc is in. For a height, the lower limb.
    Lower,
}

impl Sun {
    /// When the centre of the sun is seen in a convex part of the sky.
    pub fn spans(&self, region: &Cone, within: Span) -> Spans {
        self.spans_in(core::slice::from_ref(region), Limb::Centre, within)
    }

    /// When the sun is seen in any of several convex parts of the sky.
    ///
    /// Each half-space is asked for the point of the disc by itself: at a corner between two planes `Upper` may be
    /// early by the time the disc takes round it.
    pub fn spans_in(&self, regions: &[Cone], limb: Limb, within: Span) -> Spans {
        let mut found = Vec::new();
        for region in regions {
            let sides: Vec<HalfSpace> = region.sides.iter().map(|side| shifted(*side, limb)).collect();
            self.seen_spans(&sides, within, &mut found);
        }
        Spans::gather(found)
    }

    /// When the centre of the sun, without air, is in all half-spaces.
    pub fn airless_spans(&self, region: &Cone, within: Span) -> Spans {
        let mut found = Vec::new();
        let planes = region.sides.iter().map(|side| Plane::airless(*side, &self.site)).collect();
        Search::new(self, planes).run(within, &mut found);
        Spans::gather(found)
    }

    /// The lifted sky above the last glimpse of the sun and the airless sky below it meet at an edge, and are searched
    /// one by one, so that each search has smooth functions.
    fn seen_spans(&self, sides: &[HalfSpace], within: Span, found: &mut Vec<Span>) {
        let glimpse = Height::clamped(refraction::SEEN_FROM);
        let lowest = sides.iter().filter_map(lower_limit).fold(glimpse, |a, b| if b > a { b } else { a });
        let mut planes: Vec<Plane> =
            sides.iter().map(|side| Plane::seen(*side, lowest, &self.site)).collect();
        let bent = planes.iter().any(Plane::is_lifted);
        if !bent {
            return Search::new(self, planes).run(within, found);
        }
        let above = HalfSpace { normal: Vector::UP, least: glimpse.sin() };
        if lowest <= glimpse {
            planes.insert(0, Plane::airless(above, &self.site));
            let below = HalfSpace { normal: -Vector::UP, least: -above.least };
            let planes =
                core::iter::once(&below).chain(sides).map(|side| Plane::airless(*side, &self.site)).collect();
            Search::new(self, planes).run(within, found);
        }
        Search::new(self, planes).run(within, found);
    }
}

/// A half-space moved so that the centre is in it when the asked point of the disc is in the given one.
fn shifted(side: HalfSpace, limb: Limb) -> HalfSpace {
    let by = match limb {
        Limb::Upper => -SUN_RADIUS.radians(),
        Limb::Centre => return side,
        Limb::Lower => SUN_RADIUS.radians(),
    };
    let angle = maths::asin(side.least.clamp(-1.0, 1.0)) + by;
    let quarter = core::f64::consts::FRAC_PI_2;
    let least = if angle.abs() <= quarter { maths::sin(angle) } else { 2.0 * angle.signum() };
    HalfSpace { least, ..side }
}

/// The airless height below which a half-space lets no sun through, if it is a lower limit of heights.
fn lower_limit(side: &HalfSpace) -> Option<Height> {
    let limit = side.normal.x == 0.0 && side.normal.y == 0.0 && side.normal.z > 0.0;
    limit.then(|| {
        let sine = (side.least / side.normal.z).clamp(-1.0, 1.0);
        let seen = Height::clamped(Degrees::from_radians(maths::asin(sine)).degrees());
        refraction::airless(seen, refraction::Air::STANDARD)
    })
}

/// A search for the times at which all planes hold.
struct Search<'a> {
    sun: &'a Sun,
    planes: Vec<Plane>,
    /// Whether any plane asks for the lifted sun.
    lifted: bool,
}

/// From a time to another, days since 1970-01-01.
type Stretch = (f64, f64);

impl<'a> Search<'a> {
    fn new(sun: &'a Sun, mut planes: Vec<Plane>) -> Self {
        // Limits of height go first: they drop most days at once.
        crate::order::by_key(&mut planes, |plane| !plane.is_level());
        let lifted = planes.iter().any(Plane::is_lifted);
        Self { sun, planes, lifted }
    }

    fn run(self, within: Span, found: &mut Vec<Span>) {
        let site = &self.sun.site;
        let (from, to) = (days(within.start()), days(within.end()));
        let mut tracks = Vec::with_capacity(self.planes.len());
        let (mut open, mut next) = (Vec::new(), Vec::new());
        for window in noon::window_of(site, from)..=noon::window_of(site, to) {
            let (start, end) = (noon::start_of(site, window), noon::start_of(site, window + 1));
            open.clear();
            open.push((start.max(from), end.min(to)));
            open.retain(|stretch| stretch.0 < stretch.1);
            tracks.clear();
            let noon = Noon::of(self.sun, window);
            for plane in &self.planes {
                let track = plane.track(&noon);
                narrow(&mut open, &mut next, &track);
                if open.is_empty() {
                    break;
                }
                tracks.push(track);
            }
            for stretch in &open {
                self.refine(*stretch, &tracks, found);
            }
        }
    }

    /// Cuts a stretch at every edge in it and keeps the pieces that are inside.
    fn refine(&self, (from, to): Stretch, tracks: &[Track], found: &mut Vec<Span>) {
        let mut cuts = vec![from];
        for (plane, track) in self.planes.iter().zip(tracks) {
            match *track {
                Track::Always | Track::Never => {}
                Track::Arc { middle, half, pad, slope } => {
                    let mut edge = |at: f64, slope: f64| {
                        images(at, (from - pad, to + pad), |at| {
                            let bracket = Bracket { from: at - pad, to: at + pad, rising: slope > 0.0 };
                            let value = |time| plane.value_at(self.sun, time);
                            cuts.push(solve::root(value, bracket, (at, slope), EDGE));
                        });
                    };
                    edge(middle - half, slope);
                    edge(middle + half, -slope);
                }
                Track::Perhaps { .. } => {
                    let value = |time| plane.value_at(self.sun, time);
                    cuts.extend(solve::sign_changes(value, (from, to), plane.bend(), GRAZE));
                }
            }
        }
        cuts.retain(|cut| (from..to).contains(cut));
        cuts.push(to);
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.windows(2) {
            if self.holds(0.5 * (pair[0] + pair[1]), tracks) {
                found.extend(Span::new(instant(pair[0]), instant(pair[1])));
            }
        }
    }

    fn holds(&self, time: f64, tracks: &[Track]) -> bool {
        let airless = self.sun.at(time);
        // Refraction is the dear part: once for all planes.
        let seen = if self.lifted { refraction::extended(airless) } else { airless };
        let asked = self.planes.iter().zip(tracks).filter(|(_, track)| !matches!(track, Track::Always));
        asked.map(|(plane, _)| plane.side.value_of(airless, seen)).all(|value| value >= 0.0)
    }
}

/// Leaves of `open` what an arc allows.
fn narrow(open: &mut Vec<Stretch>, next: &mut Vec<Stretch>, track: &Track) {
    let (middle, half) = match *track {
        Track::Always => return,
        Track::Never => return open.clear(),
        Track::Arc { middle, half, pad, .. } => (middle, half + pad),
        Track::Perhaps { middle, half } => (middle, half),
    };
    if half >= 0.5 {
        return;
    }
    next.clear();
    for (from, to) in open.iter().copied() {
        images(middle, (from - half, to + half), |at| {
            let (from, to) = (from.max(at - half), to.min(at + half));
            if from < to {
                next.push((from, to));
            }
        });
    }
    core::mem::swap(open, next);
}

/// Calls `each` with every time a whole number of days from `at` between two others.
fn images(at: f64, (from, to): Stretch, mut each: impl FnMut(f64)) {
    let mut image = at - turn::floor(at - from) as f64;
    while image <= to {
        each(image);
        image += 1.0;
    }
}

pub(super) fn days(at: Instant) -> f64 {
    at.unix_millis() as f64 / DAY_MILLIS
}

pub(super) fn instant(days: f64) -> Instant {
    Instant::from_unix_millis((days * DAY_MILLIS).round() as i64)
}
