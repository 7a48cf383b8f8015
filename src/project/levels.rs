//! From the document to the levels: a set-up's ids looked up, its openings turned into what the mark sees through them.

use super::document::{Project, SetUp};
use super::find::Standing;
use super::stage::{self, NotReady};
use crate::light::exposure::field_of_view::field_of_view;
use crate::light::skylight;
use crate::light::view::View;
use crate::place::aperture::face;
use crate::place::mark::FACE_HEIGHT;
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::levels::Subject;
use crate::plan::levels::subject::{Inside, Pane, Sees};
use crate::plan::stage::StageOpening;
use crate::units::{Bearing, Degrees, InRoom, Metres, Vector, World};

/// How far off the wall a meter is held to read the background, metres (our choice).
const OFF_THE_WALL: f64 = 0.1;

/// The subject of a set-up; `zone` is that of its location.
///
/// # Errors
/// The set-up does not exist, stands nowhere, or its openings make no sense.
pub fn of_set_up(project: &Project, id: &str, zone: Zone) -> Result<Subject, NotReady> {
    let (_, set_up) = project.set_up(id).ok_or_else(|| NotReady::NoSetUp(id.to_owned()))?;
    at(project, set_up, &stage::standing_of(project, set_up)?, zone)
}

/// The subject of a set-up as it would be on another mark.
///
/// # Errors
/// In a room without a mark, or openings that make no sense.
pub fn at(
    project: &Project,
    set_up: &SetUp,
    standing: &Standing<'_>,
    zone: Zone,
) -> Result<Subject, NotReady> {
    let around = stage::around(standing);
    let openings = stage::openings(standing)?;
    let sees = |line: &Skyline| sees(standing, set_up, (openings.as_deref(), line));
    let location = standing.location;
    Ok(Subject {
        site: location.site,
        zone,
        lens: set_up.lens.bearing,
        tilt: set_up.lens.tilt,
        lens_height: set_up.lens.height,
        face_height: standing.mark.map_or(FACE_HEIGHT, |mark| mark.face_height),
        frame: frame(project, set_up),
        lens_distance: set_up.lens.distance,
        sees: sees(&around.in_leaf),
        seasons: around.seasons.map(|seasons| seasons.map(sees)),
        ground: location.ground.reflectance(),
        inside: openings.as_deref().map(|seen| inside(standing, seen)),
        there: location.lights.clone(),
        kit: project.kit.iter().map(|gear| gear.as_ref().clone()).collect(),
        rig: set_up.rig.clone(),
        readings: location.readings.clone(),
        camera: project.camera_of(set_up).map(|camera| camera.settings).unwrap_or_default(),
    })
}

/// What the lens takes in.
fn frame(project: &Project, set_up: &SetUp) -> (Degrees, Degrees) {
    let focal = Metres::from_metres(set_up.lens.focal_mm / 1000.0);
    let angle = |millimetres: f64| field_of_view(Metres::from_metres(millimetres / 1000.0), focal);
    // Without a camera the picture of 35 mm film, as a new project has it.
    let size =
        project.camera_of(set_up).map_or((24.89, 18.66), |one| (one.sensor_width_mm, one.sensor_height_mm));
    (angle(size.0), angle(size.1))
}

/// What the mark, the wall behind and a spot outside see of the sky by the openings under a skyline.
fn sees(
    standing: &Standing<'_>,
    set_up: &SetUp,
    (openings, line): (Option<&[StageOpening]>, &Skyline),
) -> Sees {
    let (outside, skyline) = (View::open(line), line.clone());
    let Some(seen) = openings else {
        return Sees { skyline, view: outside.clone(), behind: outside.clone(), outside };
    };
    let spot = standing.room.zip(standing.mark);
    let through = |room: &Room, at| View::through(&skylight::Inside { room, line }, at);
    let mut view = spot.map(|(room, mark)| through(room, face(mark))).unwrap_or_default();
    let only_sighted =
        |one: &&StageOpening| standing.room.is_none_or(|room| measured(room, &one.id).is_none());
    for cone in seen.iter().filter(only_sighted).flat_map(|one| &one.cones) {
        view.add_sighted(cone, line);
    }
    let behind = spot.map(|(room, mark)| through(room, background(room, face(mark), set_up.lens.bearing)));
    Sees { skyline, behind: behind.unwrap_or_else(|| view.clone()), view, outside }
}

/// The room and its openings by name, as the mark sees them.
fn inside(standing: &Standing<'_>, seen: &[StageOpening]) -> Inside {
    let pane = |one: &StageOpening| {
        let opening = standing.room.and_then(|room| measured(room, &one.id));
        (one.name.clone(), Pane { cones: one.cones.clone(), opening })
    };
    let room = standing.room.cloned().zip(standing.mark.map(face));
    Inside { panes: seen.iter().map(pane).collect(), room }
}

/// An opening of a room, and the outward normal of its wall.
fn measured(room: &Room, id: &str) -> Option<(Opening, Vector<World>)> {
    let opening = room.openings.iter().find(|opening| opening.id == id)?;
    Some((opening.clone(), room.world_from_room(room.face_of(opening)?.outward)))
}

/// The spot on the wall behind a face that the lens looks at, a little off the wall.
fn background(room: &Room, face: Vector<InRoom>, lens: Bearing) -> Vector<InRoom> {
    let ahead = room.room_from_world(lens.level());
    let far = room.walls().filter_map(|(_, wall)| {
        let along = ahead.dot(wall.outward);
        let way = (wall.from - face).dot(wall.outward) / along;
        let hit = face + ahead * way;
        let across = (hit - wall.from).dot(wall.along);
        (along > 1e-9 && way > 0.0 && (-1e-6..=wall.length.metres() + 1e-6).contains(&across)).then_some(way)
    });
    let way = far.fold(f64::INFINITY, f64::min);
    if way.is_finite() { face + ahead * (way - OFF_THE_WALL).max(0.0) } else { face }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::daylight::Sky;
    use crate::plan::kit::Side;
    use crate::plan::levels::Levels;
    use crate::project::demo;
    use crate::sky::sun::Sun;
    use crate::units::{Duration, Instant};

    fn loft() -> Subject {
        of_set_up(&demo::project(), "set-up-4a", Zone::fixed("UTC", Duration::ZERO)).unwrap()
    }

    #[test]
    fn the_loft_of_the_demo_is_a_room_with_two_windows() {
        let subject = loft();
        let inside = subject.inside.as_ref().unwrap();
        assert_eq!(inside.panes.len(), 2);
        assert!(inside.room.is_some() && inside.panes.iter().all(|(_, pane)| pane.opening.is_some()));
        // The sky that the mark sees is the one that the room's page tells of.
        assert!(subject.sees.view.pieces.len() > 20, "{}", subject.sees.view.pieces.len());
    }

    #[test]
    fn the_afternoon_sun_comes_from_behind_into_the_loft() {
        let (subject, at) = (loft(), Instant::parse("2027-03-11T18:15:00Z").unwrap());
        let sun = Sun::new(subject.site);
        let levels = Levels::of(&subject, &subject.hour(&sun, at, Sky::Clear));
        assert!(levels.sun.as_ref().is_some_and(|(_, name)| name.contains("Loft window")));
        let back = levels.level(Side::Back).total();
        assert!(back.stops_over(levels.bright().total()).stops() > 1.0, "{:?}", levels.sides);
    }

    #[test]
    fn the_wall_behind_is_where_the_lens_looks() {
        let project = demo::project();
        let room = &project.locations[0].rooms[0];
        // From the middle, out of wall 0: y is the way in, so the spot has the smallest y.
        let spot = background(room, Vector::new(4.0, 3.0, 1.5), room.wall_bearing);
        assert!((spot.x - 4.0).abs() < 1e-9 && (spot.y - OFF_THE_WALL).abs() < 1e-9);
    }
}
