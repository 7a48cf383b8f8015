//! From the document to the levels: a set-up's ids looked up, its openings turned into what the mark sees through them.

use super::document::{Project, SetUp};
use super::find::Standing;
use super::stage::{self, NotReady};
use crate::light::exposure::field_of_view::field_of_view;
use crate::place::aperture::{self, face};
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::levels::Subject;
use crate::plan::levels::subject::{Inside, ROOM_REFLECTANCE, Sees};
use crate::plan::levels::view::{Pane, View};
use crate::plan::stage::StageOpening;
use crate::units::{Bearing, Degrees, InRoom, Metres, Share, Vector, World};

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
        frame: frame(project, set_up),
        lens_distance: set_up.lens.distance,
        sees: sees(&around.in_leaf),
        seasons: around.seasons.map(|seasons| seasons.map(sees)),
        ground: location.ground.reflectance(),
        inside: openings.as_deref().map(|seen| inside(panes(standing, seen), standing.room)),
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
    let only: Vec<Pane> = panes(standing, seen).into_iter().map(|(_, pane)| pane).collect();
    let view = View::through(&only, line);
    let behind = match (standing.room, standing.mark) {
        (Some(room), Some(mark)) => {
            let spot = background(room, face(mark), set_up.lens.bearing);
            View::through(&panes_from(room, spot), line)
        }
        _ => view.clone(),
    };
    Sees { skyline, view, behind, outside }
}

/// Openings by name, as the mark sees them.
fn panes(standing: &Standing<'_>, seen: &[StageOpening]) -> Vec<(String, Pane)> {
    let measured = |id: &str| standing.room.and_then(|room| Some((room, opening(room, id)?)));
    let pane = |one: &StageOpening| {
        let cones = one.cones.clone();
        match measured(&one.id) {
            Some((room, opening)) => pane(room, opening, cones),
            None => Pane { cones, through: Share::WHOLE, outward: None, glass: false },
        }
    };
    seen.iter().map(|one| (one.name.clone(), pane(one))).collect()
}

/// The room, as far as it is known.
fn inside(panes: Vec<(String, Pane)>, room: Option<&Room>) -> Inside {
    let Some(room) = room else {
        return Inside { panes, windows: Vec::new(), surfaces_m2: 1.0, reflectance: Share::NONE };
    };
    let windows = room.openings.iter().filter(|opening| !opening.covered).filter_map(|opening| {
        let outward = room.world_from_room(room.face_of(opening)?.outward);
        let area = opening.width.metres() * opening.height.metres();
        Some((outward, area * through(opening).fraction()))
    });
    Inside { panes, windows: by_wall(windows), surfaces_m2: surfaces(room), reflectance: ROOM_REFLECTANCE }
}

/// Openings that face one way as one.
fn by_wall(windows: impl Iterator<Item = (Vector<World>, f64)>) -> Vec<(Vector<World>, f64)> {
    let mut walls: Vec<(Vector<World>, f64)> = Vec::new();
    for (outward, area) in windows {
        match walls.iter_mut().find(|(other, _)| other.dot(outward) > 1.0 - 1e-12) {
            Some((_, sum)) => *sum += area,
            None => walls.push((outward, area)),
        }
    }
    walls
}

/// Floor, ceiling and walls, square metres.
fn surfaces(room: &Room) -> f64 {
    let walls: f64 = room.walls().map(|(_, wall)| wall.length.metres() * room.ceiling.metres()).sum();
    2.0 * room.floor_area_m2() + walls
}

/// Every opening as a spot of the room sees it.
fn panes_from(room: &Room, spot: Vector<InRoom>) -> Vec<Pane> {
    let seen = |opening: &Opening| {
        let cones = aperture::cones(room, opening, spot, Degrees::default());
        (!cones.is_empty()).then(|| pane(room, opening, cones))
    };
    room.openings.iter().filter_map(seen).collect()
}

fn pane(room: &Room, opening: &Opening, cones: Vec<crate::place::cone::Cone>) -> Pane {
    let outward = room.face_of(opening).map(|face| room.world_from_room(face.outward));
    // Where bars part the sky into panes they take their share there already.
    let parted = opening.bars.is_some() && cones.len() > 1;
    let through = if parted { Share::clamped(opening.transmittance) } else { through(opening) };
    Pane { cones, through, outward, glass: opening.transmittance < 1.0 }
}

fn opening<'a>(room: &'a Room, id: &str) -> Option<&'a Opening> {
    room.openings.iter().find(|opening| opening.id == id)
}

/// What glass and bars let through of light that comes straight.
fn through(opening: &Opening) -> Share {
    Share::clamped(opening.transmittance * opening.clear_of_bars().fraction())
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
        assert_eq!((inside.panes.len(), inside.windows.len()), (2, 1));
        // Floor and ceiling 8 × 6 m, walls 28 m of 3.4 m.
        assert!((inside.surfaces_m2 - (96.0 + 95.2)).abs() < 1e-9);
        assert!(subject.sees.view.pieces.len() > 100, "{}", subject.sees.view.pieces.len());
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
