//! A pick-up: a set-up once more in the same light, as a set-up of its own that stands in a day like any other.

use super::document::{Project, SavedSlot, SetUp};
use super::edit::Edit;
use crate::place::zone::Zone;
use crate::plan::wish::{Arc, ClockRange, DateRange, Heights, Wish};
use crate::units::{Degrees, Duration, Height, Instant, Span};

/// A minute in milliseconds.
const MINUTE: i64 = 60_000;

/// The edit that plans a pick-up of a set-up in a span of the same light: its copy, wished for in that span alone, on the
/// span's date among the shoot days. It takes no longer than the span does. `None` without such a set-up, or for a span
/// of less than a minute.
pub fn pick_up(
    project: &Project,
    set_up: &str,
    (light, zone): (Span, &Zone),
    mut fresh: impl FnMut() -> String,
) -> Option<Edit> {
    let (scene, shot) = project.set_up(set_up)?;
    // Whole minutes inside the span.
    let from = Instant::from_unix_millis(light.start().unix_millis().div_euclid(MINUTE) * MINUTE + MINUTE);
    let to = Instant::from_unix_millis(light.end().unix_millis().div_euclid(MINUTE) * MINUTE);
    let holds = u32::try_from((to - from).millis() / MINUTE).ok().filter(|minutes| *minutes > 0)?;
    let minutes = shot.minutes.clamp(1, holds);
    let spare = Duration::from_minutes(i64::from((holds - minutes) / 2));
    let date = zone.date(from);
    let id = fresh();
    let copy = SetUp {
        id: id.clone(),
        name: name(scene.set_ups.iter().map(|one| one.name.as_str()).collect(), &shot.name),
        minutes,
        wish: Wish {
            arc: Arc { from: Degrees::default(), to: Degrees::from_degrees(360.0), either_side: false },
            heights: Heights { from: Height::clamped(-18.0), to: Height::clamped(90.0) },
            dates: vec![DateRange { from: date, to: date }],
            hours: Some(ClockRange { from: zone.local(from).time(), to: zone.local(to).time() }),
            ..shot.wish.clone()
        },
        saved: vec![SavedSlot { id: fresh(), start: from, end: to, lens: None }],
        shots: Vec::new(),
        ..shot.clone()
    };
    let mut shoot = project.shoot.moved(&id, from + spare);
    shoot.days.push(date);
    crate::order::by_key(&mut shoot.days, |day| *day);
    shoot.days.dedup();
    let put = Edit::PutSetUp { scene: scene.id.clone(), set_up: Box::new(copy) };
    let place = Edit::SetShoot { label: "plan a pick-up", shoot: Box::new(shoot) };
    Some(Edit::Together { label: "plan a pick-up", edits: vec![put, place] })
}

/// "A, pick-up", "A, pick-up 2".
fn name(taken: Vec<&str>, of: &str) -> String {
    let first = format!("{of}, pick-up");
    let others = (2..).map(|number| format!("{first} {number}"));
    core::iter::once(first.clone())
        .chain(others)
        .find(|name| !taken.contains(&name.as_str()))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use std::sync::Arc as Shared;

    use super::*;
    use crate::plan::calendar;
    use crate::plan::schedule::solver::Solver;
    use crate::plan::search::same_light::{SAME, again};
    use crate::project::edit::apply;
    use crate::project::shoot::problem::{brief, lit};
    use crate::project::{demo, stage};
    use crate::sky::sun::Sun;

    fn utc(name: &str) -> Shared<Zone> {
        Shared::new(Zone::fixed(name, Duration::ZERO))
    }

    /// Shot in March; the same sun comes back in autumn. The pick-up lands there, has light there, and planning anew keeps it.
    #[test]
    fn a_pick_up_lands_in_a_day_like_any_set_up() {
        let project = demo::project();
        let stage = stage::of_set_up(&project, "set-up-7a", Zone::clone(&utc("UTC"))).unwrap();
        let sun = Sun::new(stage.site);
        let shot = Instant::parse("2027-03-10T07:40:00Z").unwrap();
        let autumn = DateRange { from: "2027-09-01".parse().unwrap(), to: "2027-10-20".parse().unwrap() };
        let range = calendar::whole(&stage.zone, autumn).unwrap();
        let found = again(&sun, &stage, shot, SAME, range);
        let (best, mut number) = (found.first().unwrap(), 0);
        let ids = || {
            number += 1;
            format!("new-{number}")
        };
        let edit = pick_up(&project, "set-up-7a", (best.span, &stage.zone), ids).unwrap();
        let mut after = apply(&project, edit).unwrap();
        let placed = after.shoot.placed("new-1").unwrap().clone();
        assert!(best.span.contains(placed.start) && after.shoot.days == [best.date]);
        assert!(sun.apparent(placed.start).angle_to(sun.apparent(shot)).degrees() <= SAME.degrees());
        assert!(lit(&after, &utc).iter().any(|one| one.set_up == "new-1" && one.without.is_none()));
        after.shoot.plan.clear();
        let asked = brief(&after, &utc);
        let mut solver = Solver::new(asked.problem.clone());
        while !solver.step(100_000) {}
        let plan = asked.plan(&after.shoot, &solver.solution());
        let again = plan.iter().find(|one| one.set_up == "new-1").unwrap();
        assert!(best.span.contains(again.start));
        assert_eq!(after.set_up("new-1").unwrap().1.name, "A, pick-up");
    }
}
