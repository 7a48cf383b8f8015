//! Scenes whose light must match: the limits of the shot as measures of the schedule, and what breaks them.
//!
//! Set-ups of a scene at one place are compared by the sun's place there and by the levels of the first of them.

use std::sync::Arc;

use chrono::NaiveDate;

use super::Shoot;
use super::conflicts::{Conflict, Reading};
use super::day::{Run, Stop};
use super::problem::Lit;
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::cutting::Match as Takes;
use crate::plan::cutting::gauge::ByLevels;
use crate::plan::cutting::steps::{MEASURES, apart, noon};
use crate::plan::levels::subject::sky_of;
use crate::plan::schedule::matching::{Match, Measure, NOTHING, Scale};
use crate::plan::schedule::problem::{Job, Minutes};
use crate::plan::wish::DateRange;
use crate::project::document::{Project, Scene, SetUp};
use crate::project::levels;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Duration, Instant, Span};

/// How often ratio and colour are worked out, and how finely a conflict is looked for. Our own choice.
const EVERY: Duration = Duration::from_minutes(5);

/// Minutes of the clock that bind nobody: all of a day.
pub const FREE: u16 = 1440;

/// Minutes of the clock that stand for the limits of the shot.
pub const AS_SHOT: u16 = 0;

/// What the set-ups of a scene must keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// Nothing.
    Free,
    /// The limits that the shot gives its takes.
    AsShot,
    /// So many minutes of the clock.
    Clock(u16),
}

impl Shoot {
    /// What a scene must keep to: as was said; else the limits of the shot, if somebody has set them.
    pub fn bound(&self, scene: &Scene) -> Bound {
        match self.matches.get(&scene.id) {
            Some(&AS_SHOT) => Bound::AsShot,
            Some(&minutes) if minutes < FREE => Bound::Clock(minutes),
            None if !scene.match_limit.is_usual() => Bound::AsShot,
            _ => Bound::Free,
        }
    }
}

/// What the plan of days makes of a scene's limits.
pub const fn words(bound: Bound) -> &'static str {
    match bound {
        Bound::AsShot => "The plan of days keeps all set-ups of this scene within these limits.",
        Bound::Free => "The plan of days does not look at these limits.",
        Bound::Clock(_) => "The plan of days keeps this scene within minutes of the clock instead, see Days.",
    }
}

/// Every scene that is bound, for the schedule.
pub(super) fn matches(
    project: &Project,
    (lit, jobs): (&[Lit], &[Job]),
    (days, zone): (&[NaiveDate], &Zone),
) -> Vec<Match> {
    let place = |set_up: &SetUp| lit.iter().position(|one| one.set_up == set_up.id);
    let mut all = Vec::new();
    for scene in &project.scenes {
        match project.shoot.bound(scene) {
            Bound::Free => {}
            Bound::Clock(minutes) => all.push(Match {
                jobs: scene.set_ups.iter().filter_map(place).collect(),
                measures: vec![Measure::clock(minutes as Minutes)],
            }),
            Bound::AsShot => {
                for group in groups(scene) {
                    let jobs_of: Vec<usize> = group.iter().filter_map(|set_up| place(set_up)).collect();
                    let measures = measured(project, scene, group[0], lit, |takes, noon| {
                        let span = |day| {
                            jobs_of.iter().flat_map(|job| &jobs[*job].windows).filter(move |w| w.day == day)
                        };
                        tables(takes, noon, (days, zone), |day| {
                            Some((span(day).map(|w| w.from).min()?, span(day).map(|w| w.to).max()?))
                        })
                    });
                    all.extend(measures.map(|measures| Match { jobs: jobs_of, measures }));
                }
            }
        }
    }
    for one in &mut all {
        one_pinned(project, lit, one);
    }
    all.retain(|one| one.jobs.len() > 1);
    all
}

/// What is pinned stays, whatever it does to the light: only one of them binds the others.
fn one_pinned(project: &Project, lit: &[Lit], one: &mut Match) {
    let pinned = |job: &usize| project.shoot.placed(&lit[*job].set_up).is_some_and(|placed| placed.pinned);
    let first = one.jobs.iter().copied().find(|job| pinned(job));
    one.jobs.retain(|job| Some(*job) == first || !pinned(job));
}

/// Set-ups of a scene that can be compared: those in one room, or at one place in the open.
fn groups(scene: &Scene) -> Vec<Vec<&SetUp>> {
    let mut groups: Vec<Vec<&SetUp>> = Vec::new();
    let place = |set_up: &SetUp| set_up.at.as_ref().map(|at| (at.location.clone(), at.room.clone()));
    for set_up in scene.set_ups.iter().filter(|set_up| set_up.at.is_some()) {
        match groups.iter_mut().find(|group| place(group[0]) == place(set_up)) {
            Some(group) => group.push(set_up),
            None => groups.push(vec![set_up]),
        }
    }
    groups.retain(|group| group.len() > 1);
    groups
}

/// Asks something of the takes of a scene, as seen at one of its set-ups; `None` while that is not ready.
fn measured<T>(
    project: &Project,
    scene: &Scene,
    first: &SetUp,
    lit: &[Lit],
    ask: impl FnOnce(&Takes<'_>, Bearing) -> T,
) -> Option<T> {
    let stage = lit.iter().find(|one| one.set_up == first.id)?.stage.as_ref()?;
    let subject = levels::of_set_up(project, &first.id, stage.zone.clone()).ok()?;
    let sun = Sun::new(stage.site);
    let gauge = ByLevels::new(&sun, &subject, sky_of(first.wish.sky)).every(EVERY);
    let date = *project.shoot.days.first()?;
    let day = calendar::whole(&stage.zone, DateRange { from: date, to: date })?;
    let takes = Takes { sun: &sun, gauges: &[&gauge], limit: scene.match_limit };
    Some(ask(&takes, noon(&sun, day)))
}

/// The numbers of every minute that lies in any window.
fn tables(
    takes: &Takes<'_>,
    noon: Bearing,
    (days, zone): (&[NaiveDate], &Zone),
    span: impl Fn(usize) -> Option<(Minutes, Minutes)>,
) -> Vec<Measure> {
    let mut values: [Vec<Vec<i32>>; MEASURES] = Default::default();
    for (day, date) in days.iter().enumerate() {
        let (from, to) = span(day).unwrap_or((0, -1));
        let of_day = (0..=to).map(|minute| match minute < from {
            true => [NOTHING; MEASURES],
            false => takes.steps(zone.at_clock(*date, Duration::from_minutes(i64::from(minute))), noon),
        });
        let of_day: Vec<[i32; MEASURES]> = of_day.collect();
        for (n, table) in values.iter_mut().enumerate() {
            table.push(of_day.iter().map(|steps| steps[n]).collect());
        }
    }
    let measure = |(most, days)| Measure { most, scale: Scale::Light(Arc::new(days)) };
    takes.most().into_iter().zip(values).map(measure).collect()
}

/// Set-ups whose light does not go with what the scene has before, each with the reason.
pub(super) fn unmatched(
    project: &Project,
    lit: &[Lit],
    runs: &[Run],
    read: &Reading,
    all: &mut [Vec<Conflict>],
) {
    for scene in &project.scenes {
        let mut say = |day: usize, stop: &Stop, why: String| {
            all[day].push(Conflict { set_up: Some(stop.set_up.clone()), why });
        };
        match project.shoot.bound(scene) {
            Bound::Free => {}
            Bound::Clock(minutes) => {
                let stops = stops_of(runs, &scene.set_ups.iter().collect::<Vec<_>>());
                let clock = |at| read.zone.clock(at).1;
                let begin = stops.iter().map(|(_, stop)| clock(stop.span.start())).min();
                for (day, stop) in stops {
                    if begin.is_some_and(|begin| {
                        clock(stop.span.end()) - begin > Duration::from_minutes(minutes.into())
                    }) {
                        say(
                            day,
                            stop,
                            format!(
                                "more than {minutes} min of the clock after the scene's first set-up: its light will not match"
                            ),
                        );
                    }
                }
            }
            Bound::AsShot => {
                for group in groups(scene) {
                    let stops = stops_of(runs, &group);
                    if stops.len() > 1 {
                        measured(project, scene, group[0], lit, |takes, noon| {
                            for (at, why) in too_far(takes, noon, &stops) {
                                let (day, stop) = stops[at];
                                say(day, stop, why);
                            }
                        });
                    }
                }
            }
        }
    }
}

/// The stops of some set-ups, in order of time, each with its day.
fn stops_of<'a>(runs: &'a [Run], set_ups: &[&SetUp]) -> Vec<(usize, &'a Stop)> {
    let of = |(day, run): (usize, &'a Run)| run.stops.iter().map(move |stop| (day, stop));
    let all = runs.iter().enumerate().flat_map(of);
    all.filter(|(_, stop)| set_ups.iter().any(|set_up| set_up.id == stop.set_up)).collect()
}

/// Which stops are too far from the light of those before them, and in what.
fn too_far(takes: &Takes<'_>, noon: Bearing, stops: &[(usize, &Stop)]) -> Vec<(usize, String)> {
    let (mut found, mut kept) = (Vec::new(), None::<[(i32, i32); MEASURES]>);
    for (at, (_, stop)) in stops.iter().enumerate() {
        let own = extents(takes, noon, stop.span);
        let Some(before) = kept else {
            kept = Some(own);
            continue;
        };
        let both: [(i32, i32); MEASURES] =
            core::array::from_fn(|n| (before[n].0.min(own[n].0), before[n].1.max(own[n].1)));
        let most = takes.most();
        match (0..MEASURES).find(|n| both[*n].1 - both[*n].0 > most[*n]) {
            Some(n) => {
                let why = apart(n, both[n].1 - both[n].0);
                found.push((at, format!("its light will not cut with the scene's others: {why}, which is more than the scene allows")));
            }
            None => kept = Some(both),
        }
    }
    found
}

/// Least and most of each number over a span.
fn extents(takes: &Takes<'_>, noon: Bearing, span: Span) -> [(i32, i32); MEASURES] {
    let looks = (0..).map(|n| span.start() + Duration::from_millis(EVERY.millis() * n));
    let looks = looks.take_while(|at: &Instant| *at < span.end()).chain([span.end()]);
    looks.map(|at| takes.steps(at, noon)).fold([(i32::MAX, i32::MIN); MEASURES], |all, steps| {
        core::array::from_fn(|n| (all[n].0.min(steps[n]), all[n].1.max(steps[n])))
    })
}
