//! From the document to the cutting room: the set-ups of a scene that may share a match hold, and the other marks on
//! which a set-up and its reverse could stand.

use chrono::NaiveDate;

use super::document::{At, Project};
use super::find::Standing;
use super::stage;
use crate::maths;
use crate::place::mark::Mark;
use crate::place::zone::Zone;
use crate::plan::calendar;
use crate::plan::cutting::reverse::reverse_of;
use crate::plan::cutting::{Part, picture_width};
use crate::plan::search::met::met;
use crate::plan::stage::Stage;
use crate::plan::wish::DateRange;
use crate::sky::sun::Sun;

/// The set-ups of a scene at the place of `at`, each with its light on a date. Those elsewhere, or not ready to be
/// searched, are left out.
pub fn parts(project: &Project, scene: &str, (at, zone): (&At, &Zone), date: NaiveDate) -> Vec<Part> {
    let Some(scene) = project.scene(scene) else { return Vec::new() };
    let here = scene
        .set_ups
        .iter()
        .filter(|set_up| set_up.at.as_ref().is_some_and(|other| other.location == at.location));
    here.filter_map(|set_up| {
        let stage = stage::of_set_up(project, &set_up.id, zone.clone()).ok()?;
        let day = calendar::whole(zone, DateRange { from: date, to: date })?;
        let across = stage.shot.picture?.across;
        Some(Part {
            name: format!("set-up {}", set_up.name),
            width: picture_width(across, set_up.lens.distance),
            takes: stage.takes,
            met: met(&Sun::new(stage.site), &stage, day),
        })
    })
    .collect()
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
mod tests {
    use super::*;
    use crate::place::zone::Zone;
    use crate::project::demo;
    use crate::units::{Duration, Instant, Span};

    fn utc() -> Zone {
        let parse = |text: &str| Instant::parse(text).unwrap();
        let years = Span::new(parse("2026-01-01T00:00:00Z"), parse("2029-01-01T00:00:00Z")).unwrap();
        Zone::by_asking("UTC", years, |_| Some(Duration::ZERO)).unwrap()
    }

    #[test]
    fn a_scene_of_the_demo() {
        let project = demo::project();
        let (scene, set_up) = project.set_ups().find(|(_, set_up)| set_up.at.is_some()).unwrap();
        let at = set_up.at.clone().unwrap();
        let date = NaiveDate::from_ymd_opt(2027, 3, 11).unwrap();
        let found = parts(&project, &scene.id, (&at, &utc()), date);
        assert_eq!(found.len(), scene.set_ups.len());
        assert!(found.iter().all(|part| part.width.metres() > 0.1));
        let elsewhere = At { location: "nowhere".into(), ..at };
        assert!(parts(&project, &scene.id, (&elsewhere, &utc()), date).is_empty());
    }

    #[test]
    fn the_other_marks_come_by_distance() {
        let project = demo::project();
        for (_, set_up) in project.set_ups() {
            let marks = other_marks(&project, &set_up.id, &utc());
            let at = set_up.at.as_ref().unwrap();
            let standing = project.standing(at).unwrap();
            let all = standing.room.map_or(&standing.location.marks, |room| &room.marks);
            assert_eq!(marks.len(), all.len() - 1);
            assert!(marks.iter().all(|(name, _)| *name != standing.mark.unwrap().name));
        }
    }
}
