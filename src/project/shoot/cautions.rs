//! Cautions that arise from a day's plan. They remind, they are no procedure, and they never say that something is safe.
//!
//! Wording after the handbook (public guidance on smoke, edges, water, vehicles and heat is named there).

use super::Hazard;
use super::day::Run;
use super::problem::Lit;
use crate::project::document::Project;
use crate::sky::sun::Sun;
use crate::units::Duration;

/// What stands below every list of cautions.
pub const DEFERS: &str =
    "Local law, the site owner and qualified people decide. This is a reminder, not a procedure.";

const HAZE: &str = "Haze: tell everyone the product, keep air moving, tell the building, never silence a detector without the owner.";
const LENS: &str = "Sun in the lens: never look at it through an optical finder; frame on the monitor and cap the lens between takes.";
const WET: &str = "Wet floor or water near power: protected circuits, connectors raised and covered, no live equipment on wet ground.";
const EDGE: &str =
    "Unprotected edge: keep cast and crew back, one person watches; a competent person's plan first.";
const ROAD: &str =
    "Road or moving vehicle: permit, traffic control, nobody drives and acts. Low sun blinds drivers.";
const HEAT: &str = "High sun: shade, water, rest; watch for confusion or fainting and call for help.";
const NIGHT: &str = "Long day or late wrap: plan the drive home; offer a room or a lift.";

/// Above this height of the sun a set-up in the open asks for shade. Our own choice; no weather is known offline.
const HIGH_SUN: f64 = 50.0;

/// From this length on, a day is long (handbook I1: warn above twelve hours).
const LONG: Duration = Duration::from_minutes(12 * 60);

/// The cautions of a day, each once.
pub fn cautions(project: &Project, lit: &[Lit], run: &Run) -> Vec<&'static str> {
    let places = || run.stops.iter().map(|stop| project.shoot.place(&stop.location));
    let hazard = |hazard: Hazard| places().any(|place| place.hazards.contains(&hazard));
    let set_ups = || run.stops.iter().filter_map(|stop| Some((stop, project.set_up(&stop.set_up)?.1)));
    let faces = set_ups().any(|(_, set_up)| set_up.wish.may_face_the_sun());
    let hot = set_ups().any(|(stop, set_up)| {
        let outside = set_up.at.as_ref().is_some_and(|at| at.room.is_none());
        let stage = lit.iter().find(|one| one.set_up == stop.set_up).and_then(|one| one.stage.as_ref());
        let high = |site| Sun::new(site).apparent(stop.span.middle()).height().degrees() > HIGH_SUN;
        outside && stage.is_some_and(|stage| high(stage.site))
    });
    let long = run.wrap - run.morning.call > LONG;
    let all = [
        (places().any(|place| place.times.haze > 0), HAZE),
        (faces, LENS),
        (hazard(Hazard::Wet), WET),
        (hazard(Hazard::Edge), EDGE),
        (hazard(Hazard::Road), ROAD),
        (hot, HEAT),
        (long, NIGHT),
    ];
    all.into_iter().filter(|(arises, _)| *arises).map(|(_, words)| words).collect()
}
