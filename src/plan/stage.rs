//! A set-up, resolved: everything the search needs and nothing it has to look up.
//!
//! Openings are already cones of directions seen from the mark, the skyline is already the one seen from there, and the
//! lens is a bearing. Built from the project's document by `project::stage`.

use std::sync::Arc;

use crate::place::cone::{Cone, HalfSpace};
use crate::place::seasons::Seasons;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::levels::wished::Wished;
use crate::plan::shot::Shot;
use crate::plan::wish::Wish;
use crate::plan::wish::region::{self, BearingArc};
use crate::units::{Bearing, Degrees, Duration, Instant, Span, Vector, World};

/// Where, with which lens, in which light, for how long.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// Where on Earth.
    pub site: Site,
    /// The place's clock.
    pub zone: Zone,
    /// Where the camera looks.
    pub lens: Bearing,
    /// How far off that bearing may be.
    pub lens_uncertainty: Degrees,
    /// Where it may look instead, when it is free; `None` for a lens that is fixed.
    pub free: Option<Vec<Bearing>>,
    /// The light wanted.
    pub wish: Wish,
    /// How long the set-up takes.
    pub takes: Duration,
    /// Openings that can let the sun onto the mark, covered ones left out; `None` in the open.
    pub openings: Option<Vec<StageOpening>>,
    /// What blocks the sky, seen from the mark, trees in leaf; without points the level horizon.
    pub skyline: Skyline,
    /// What blocks it by the date, where trees near by lose their leaves; `None` for the same all year.
    pub seasons: Option<Seasons>,
    /// The face, and what the lens takes in.
    pub shot: Shot,
    /// How bright and how contrasty it shall be, and who is in it; `None` for however it is.
    pub levels: Option<Arc<Wished>>,
}

/// The part of the sky that one opening lets onto the mark.
#[derive(Clone, Debug, PartialEq)]
pub struct StageOpening {
    /// The opening's or sighting's id.
    pub id: String,
    /// "Loft window, left".
    pub name: String,
    /// Convex cones whose union it is.
    pub cones: Vec<Cone>,
    /// How far off its bearing may be.
    pub uncertainty: Degrees,
}

impl StageOpening {
    /// Whether light from `direction` comes through it onto the mark.
    pub fn contains(&self, direction: Vector<World>) -> bool {
        self.cones.iter().any(|cone| cone.contains(direction))
    }

    /// The same opening with every bearing turned clockwise by `angle`.
    pub fn turned(&self, angle: Degrees) -> Self {
        Self { cones: self.cones.iter().map(|cone| turned(cone, angle)).collect(), ..self.clone() }
    }
}

impl Stage {
    /// With the lens fixed to a bearing.
    pub fn looking(&self, lens: Bearing) -> Self {
        Self { lens, free: None, ..self.clone() }
    }

    /// Where the light may come from, whichever way a free lens looks.
    pub fn light_from(&self) -> Vec<BearingArc> {
        match &self.free {
            None => region::bearings(self.wish.arc, self.lens),
            Some(lenses) => region::bearings_of_any(self.wish.arc, lenses),
        }
    }

    /// What blocks the sky at an instant.
    pub fn skyline_at(&self, at: Instant) -> &Skyline {
        self.seasons.as_ref().map_or(&self.skyline, |seasons| seasons.on(self.zone.date(at)))
    }

    /// `within`, cut at the midnights at which trees gain or lose their leaves, each part with what blocks the sky.
    pub fn by_season(&self, within: Span) -> Vec<(Span, &Skyline)> {
        parts_of(&self.zone, (&self.skyline, self.seasons.as_ref()), within)
    }

    /// As it would be if the lens' bearing and the openings' were off by these shares of what is stated
    /// (−1 to 1). One compass measured all openings, so they turn together.
    pub fn off_by(&self, lens: f64, openings: f64) -> Self {
        let share = |of: Degrees, share: f64| Degrees::from_degrees(of.degrees() * share);
        Self {
            lens: self.lens.turned(share(self.lens_uncertainty, lens)),
            openings: self
                .openings
                .as_ref()
                .map(|all| all.iter().map(|one| one.turned(share(one.uncertainty, openings))).collect()),
            ..self.clone()
        }
    }
}

/// `within`, cut at the midnights at which something else begins to block the sky.
pub(super) fn parts_of<'a>(
    zone: &Zone,
    (in_leaf, seasons): (&'a Skyline, Option<&'a Seasons>),
    within: Span,
) -> Vec<(Span, &'a Skyline)> {
    let Some(seasons) = seasons else { return vec![(within, in_leaf)] };
    let changes = seasons.changes(zone.date(within.start()), zone.date(within.end()));
    let midnights = changes.into_iter().filter_map(|date| zone.day(date)).map(Span::start);
    let (mut parts, mut from) = (Vec::new(), within.start());
    for until in midnights.chain([within.end()]) {
        parts.extend(Span::new(from, until).map(|part| (part, seasons.on(zone.date(from)))));
        from = until;
    }
    parts
}

/// A cone turned clockwise about the vertical.
fn turned(cone: &Cone, angle: Degrees) -> Cone {
    let sides =
        cone.sides.iter().map(|side| HalfSpace { normal: side.normal.turned(angle), least: side.least });
    Cone { sides: sides.collect() }
}
