//! What is at hand at a location: its set-ups, ready to be asked for their light, and which location is the nearest.

use super::document::{Location, Project, SavedSlot};
use super::stage;
use super::taken::Taken;
use crate::maths;
use crate::place::site::Site;
use crate::place::zone::Zone;
use crate::plan::stage::Stage;
use crate::units::{Degrees, Metres};

/// Mean radius of the Earth, metres. Fact (IUGG).
const EARTH: f64 = 6_371_009.0;

/// Somebody further from every location than this is not at one of them. Our own choice: a large estate.
const AT_IT: f64 = 3000.0;

/// A set-up whose place and openings are known.
#[derive(Clone, Debug, PartialEq)]
pub struct AtHand {
    /// Id of the set-up.
    pub id: String,
    /// "4 A".
    pub name: String,
    /// Ready to be searched.
    pub stage: Stage,
    /// Slots that were kept.
    pub saved: Vec<SavedSlot>,
    /// What was shot.
    pub shots: Vec<Taken>,
    /// Where the subject is: "by the bench"; empty without a mark.
    pub mark: String,
}

/// Set-ups at a location, in the order of the script; those that are not complete are left out.
pub fn set_ups_at(project: &Project, location: &Location, zone: &Zone) -> Vec<AtHand> {
    let here = project
        .set_ups()
        .filter(|(_, set_up)| set_up.at.as_ref().is_some_and(|at| at.location == location.id));
    here.filter_map(|(scene, set_up)| {
        let mark = set_up.at.as_ref().and_then(|at| project.standing(at)?.mark).map(|mark| mark.name.clone());
        Some(AtHand {
            id: set_up.id.clone(),
            name: format!("{} {}", scene.number, set_up.name).trim().to_owned(),
            stage: stage::of_set_up(project, &set_up.id, zone.clone()).ok()?,
            saved: set_up.saved.clone(),
            shots: set_up.shots.clone(),
            mark: mark.unwrap_or_default(),
        })
    })
    .collect()
}

/// The location that somebody at `site` is at: the nearest one, unless it is kilometres off.
pub fn nearest<'a>(project: &'a Project, site: &Site) -> Option<&'a Location> {
    let far = |location: &&'a Location| distance(&location.site, site).metres();
    let all = project.locations.iter().map(|location| &**location);
    all.min_by(|one, two| far(one).total_cmp(&far(two))).filter(|location| far(location) <= AT_IT)
}

/// Along the surface of a sphere, by haversines (R. W. Sinnott, *Virtues of the haversine*, 1984); good to 0.5 %.
fn distance(one: &Site, two: &Site) -> Metres {
    let radians = |degrees: f64| Degrees::from_degrees(degrees).radians();
    let (a, b) = (one.latitude.radians(), two.latitude.radians());
    let hav = |angle: f64| {
        let half = maths::sin(0.5 * angle);
        half * half
    };
    let apart = radians(two.longitude.degrees() - one.longitude.degrees());
    let h = hav(b - a) + maths::cos(a) * maths::cos(b) * hav(apart);
    Metres::from_metres(2.0 * EARTH * maths::asin(h.sqrt().min(1.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::{Duration, Latitude, Longitude};

    fn site(latitude: f64, longitude: f64) -> Site {
        let (latitude, longitude) = (Latitude::from_degrees(latitude), Longitude::from_degrees(longitude));
        Site { latitude: latitude.unwrap(), longitude: longitude.unwrap(), ..Site::default() }
    }

    #[test]
    fn a_degree_of_latitude_is_sixty_sea_miles() {
        // A nautical mile was made to be a minute of latitude: 1,852 m, within the sphere's half per cent.
        let degree = distance(&site(40.0, 10.0), &site(41.0, 10.0)).metres();
        assert!((degree / (60.0 * 1852.0) - 1.0).abs() < 0.005, "{degree}");
        let over_the_date_line = distance(&site(0.0, 179.5), &site(0.0, -179.5)).metres();
        assert!((over_the_date_line - degree).abs() < 1.0);
    }

    #[test]
    fn the_nearest_location_is_the_one_people_stand_at() {
        let project = demo::project();
        for location in &project.locations {
            assert_eq!(nearest(&project, &location.site).unwrap().id, location.id);
        }
        assert_eq!(nearest(&project, &site(48.0, 11.0)), None);
        assert_eq!(nearest(&Project::empty("p", ""), &site(48.0, 11.0)), None);
    }

    #[test]
    fn the_set_ups_of_the_loft_are_at_hand_there() {
        let project = demo::project();
        let zone = Zone::fixed("UTC", Duration::ZERO);
        let loft = project.location("sail-loft").unwrap();
        let names: Vec<String> = set_ups_at(&project, loft, &zone).into_iter().map(|one| one.name).collect();
        assert!(names.contains(&"4 A".to_owned()) && !names.contains(&"1 A".to_owned()), "{names:?}");
    }
}
