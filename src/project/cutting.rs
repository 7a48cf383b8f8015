//! From the document to the cutting room: the set-ups of a scene that may share a match hold, each with its own light,
//! and the other marks on which a set-up and its reverse could stand.

use chrono::NaiveDate;

use super::document::{Project, SetUp};
use super::find::Standing;
use super::levels;
use super::stage;
use crate::maths;
use crate::place::mark::Mark;
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::cutting::gauge::ByLevels;
use crate::plan::cutting::reverse::{both, reverse_of};
use crate::plan::cutting::words as say;
use crate::plan::cutting::{Gauge, Match, Part, picture_width};
use crate::plan::levels::Subject;
use crate::plan::levels::subject::sky_of;
use crate::plan::search::met::met;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;
use crate::units::Span;
use crate::words::{Clock, Units};

/// A set-up of a scene on a day.
struct Lit<'a> {
    set_up: &'a SetUp,
    stage: Stage,
    subject: Subject,
}

/// How long takes of a set-up cut together on a date, how long those of its whole scene do and in which order, and how
/// it goes with its reverse. `None` while the set-up is not ready to be searched.
pub fn lines(
    project: &Project,
    set_up: &str,
    (zone, date): (&Zone, NaiveDate),
    (clock, units): (Clock, Units),
) -> Option<Vec<String>> {
    let (scene, _) = project.set_up(set_up)?;
    let day = calendar::whole(zone, DateRange { from: date, to: date })?;
    let all = lit(project, set_up, zone);
    let own = all.iter().position(|one| one.set_up.id == set_up)?;
    let stage = &all[own].stage;
    let sun = Sun::new(stage.site);
    let gauges: Vec<ByLevels<'_>> =
        all.iter().map(|one| ByLevels::new(&sun, &one.subject, sky_of(one.set_up.wish.sky))).collect();
    let gauges: Vec<&dyn Gauge> = gauges.iter().map(|one| one as &dyn Gauge).collect();
    let held = |gauges| Match { sun: &sun, gauges, limit: scene.match_limit };
    let parts: Vec<Part> = all.iter().map(|one| part(one, (&sun, day))).collect();
    let mut lines = vec![say::hold(&held(&gauges[own..=own]), &parts[own].met, stage, clock)];
    lines.extend(say::together(&held(&gauges), &parts, stage, clock));
    lines.extend(say::order(&held(&gauges), &parts, day, (stage, clock, units)));
    let (names, others): (Vec<_>, Vec<_>) = other_marks(project, set_up, zone).into_iter().unzip();
    let found = both(&sun, [&stage.looking(stage.lens), &reverse_of(stage)], &others, date);
    lines.extend(say::reverse(&found, &names, stage, clock));
    Some(lines)
}

/// The set-ups of the scene of one, at its place. Those elsewhere, or not ready to be searched, are left out.
fn lit<'a>(project: &'a Project, set_up: &str, zone: &Zone) -> Vec<Lit<'a>> {
    let Some((scene, own)) = project.set_up(set_up) else { return Vec::new() };
    let place = |one: &'a SetUp| one.at.as_ref().map(|at| &at.location);
    let here = scene.set_ups.iter().filter(|one| place(one) == place(own));
    let lit = |set_up: &'a SetUp| {
        let stage = stage::of_set_up(project, &set_up.id, zone.clone()).ok()?;
        Some(Lit { set_up, stage, subject: levels::of_set_up(project, &set_up.id, zone.clone()).ok()? })
    };
    here.filter_map(lit).collect()
}

/// What one of them wants of a match hold.
fn part(one: &Lit<'_>, (sun, day): (&Sun, Span)) -> Part {
    let across = one.stage.shot.picture.map(|picture| picture.across).unwrap_or_default();
    Part {
        name: format!("set-up {}", one.set_up.name),
        width: picture_width(across, one.set_up.lens.distance),
        takes: one.stage.takes,
        met: met(sun, &one.stage, day),
    }
}

/// The other marks of the same room, or of the same place in the open, the nearest first: their names, and the set-up
/// and its reverse on each.
pub fn other_marks(project: &Project, set_up: &str, zone: &Zone) -> Vec<(String, [Stage; 2])> {
    let standing =
        project.set_up(set_up).and_then(|(_, set_up)| Some((set_up, project.standing(set_up.at.as_ref()?)?)));
    let Some((set_up, standing @ Standing { mark: Some(own), .. })) = standing else { return Vec::new() };
    let mut others: Vec<&Mark> = standing
        .room
        .map_or(&standing.location.marks, |room| &room.marks)
        .iter()
        .filter(|mark| mark.id != own.id)
        .collect();
    crate::order::by(&mut others, |a, b| apart(own, a).total_cmp(&apart(own, b)));
    others
        .into_iter()
        .filter_map(|mark| {
            let there = Standing { mark: Some(mark), ..standing };
            let shot = stage::on(project, set_up, &there, zone.clone()).ok()?;
            Some((mark.name.clone(), [shot.clone(), reverse_of(&shot)]))
        })
        .collect()
}

fn apart(one: &Mark, other: &Mark) -> f64 {
    maths::hypot(one.x.metres() - other.x.metres(), one.y.metres() - other.y.metres())
}

#[cfg(test)]
#[path = "cutting_tests.rs"]
mod tests;
