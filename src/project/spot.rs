//! The quick question on the spot: an opening sighted from where one stands, before anything is saved.

use super::document::Location;
use super::find::Standing;
use super::stage::{self, NotReady};
use super::start;
use crate::place::mark::Mark;
use crate::place::opening::{Corner, Sighting};
use crate::place::site::Site;
use crate::place::wall::COMPASS;
use crate::place::zone::Zone;
use crate::plan::stage::Stage;
use crate::units::{Bearing, Metres};

/// What was sighted, and from where.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Where one stands.
    pub site: Site,
    /// How exact the phone says that is.
    pub accuracy: Option<Metres>,
    /// Two opposite corners of the opening, then perhaps a third.
    pub corners: Vec<Corner>,
    /// Outward normal of the wall, where it is known.
    pub wall: Option<Bearing>,
}

impl Spot {
    /// What the search needs.
    ///
    /// # Errors
    /// The corners make no opening.
    pub fn stage(&self, zone: Zone) -> Result<Stage, NotReady> {
        let location = start::location("here", "Here", self.site, zone.name());
        let mark = self.mark("mark", "sighting", &location);
        stage::at_mark(&Standing { location: &location, room: None, mark: Some(&mark) }, zone)
    }

    /// The mark to save at a location, with the sighting under it.
    pub fn mark(&self, id: &str, sighting_id: &str, location: &Location) -> Mark {
        let zero = Metres::default();
        let sighted = Sighting {
            id: sighting_id.to_owned(),
            name: "window".to_owned(),
            corners: self.corners.clone(),
            wall_bearing: self.wall,
            bearing_uncertainty: COMPASS,
        };
        Mark { sighted: vec![sighted], ..start::mark(id, &location.marks, [zero, zero]) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::search::through_window::{Through, through};
    use crate::project::demo;
    use crate::sky::sun::Sun;
    use crate::units::{Duration, Height};

    #[test]
    fn a_sighted_west_window_gives_an_afternoon() {
        let corner = |bearing, height| Corner {
            bearing: Bearing::from_degrees(bearing),
            height: Height::clamped(height),
        };
        let site = demo::project().locations[0].site;
        let spot = Spot {
            site,
            accuracy: None,
            corners: vec![corner(225.0, -4.0), corner(268.0, 35.0)],
            wall: Some(Bearing::from_degrees(248.0)),
        };
        let stage = spot.stage(Zone::fixed("UTC", Duration::ZERO)).unwrap();
        let answer = through(&Sun::new(site), &stage, "2027-03-11".parse().unwrap());
        let Through::ThatDay(day) = answer else { panic!("{answer:?}") };
        let (span, edges) = day.spans[0];
        let hours = |at| stage.zone.local(at).time().to_string();
        assert!(hours(span.start()).starts_with("15:") && hours(span.end()).starts_with("18:"), "{span:?}");
        assert!(edges.larger() > Duration::from_minutes(5), "a compass good to 5° moves the edges");
        let unknown = Spot { wall: None, ..spot };
        let wider = unknown.stage(Zone::fixed("UTC", Duration::ZERO)).unwrap();
        let uncertainty = |stage: &Stage| stage.openings.as_ref().unwrap()[0].uncertainty.degrees();
        assert!(uncertainty(&wider) > uncertainty(&stage) + 1.0, "without the wall the ± is larger");
    }
}
