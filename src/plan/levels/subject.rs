//! A set-up, resolved for its levels: what its mark sees, the room around it, what is brought and what is there.
//!
//! Built from the document by `project::levels`.

use chrono::Datelike;

use super::hour::{Hour, is_clear};
use crate::light::daylight::{Correction, Sky};
use crate::light::skylight::of_the_beam;
use crate::light::view::View;
use crate::place::cone::Cone;
use crate::place::opening::Opening;
use crate::place::room::Room;
use crate::place::seasons::Seasons;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::kit::{CameraSettings, Facing, Gear, Placed, Reading, Rig, Side, There};
use crate::plan::wish;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Duration, InRoom, Instant, Lux, Metres, Share, Vector, World};

/// How long before and after it a reading still speaks for the sky (our choice: half a day of shooting).
const READING_HOLDS: Duration = Duration::from_minutes(180);

/// Everything the levels of a set-up need.
#[derive(Clone, Debug, PartialEq)]
pub struct Subject {
    /// Where on Earth.
    pub site: Site,
    /// The place's clock.
    pub zone: Zone,
    /// Where the lens looks.
    pub lens: Bearing,
    /// How far up it looks.
    pub tilt: Degrees,
    /// Lens above the floor.
    pub lens_height: Metres,
    /// The face above the floor.
    pub face_height: Metres,
    /// What the lens takes in, across and up.
    pub frame: (Degrees, Degrees),
    /// Lens to subject.
    pub lens_distance: Metres,
    /// What it sees of the sky, trees in leaf.
    pub sees: Sees,
    /// The same by the date, where trees near by lose their leaves; `None` for the same all year.
    pub seasons: Option<Seasons<Sees>>,
    /// What the ground gives back.
    pub ground: Share,
    /// The room; `None` in the open.
    pub inside: Option<Inside>,
    /// Lights that are there already.
    pub there: Vec<There>,
    /// The kit.
    pub kit: Vec<Gear>,
    /// What is brought, and the ratio wanted.
    pub rig: Rig,
    /// Readings at the place.
    pub readings: Vec<Reading>,
    /// The camera.
    pub camera: CameraSettings,
}

/// What can be seen of the sky.
#[derive(Clone, Debug, PartialEq)]
pub struct Sees {
    /// What blocks it.
    pub skyline: Skyline,
    /// What the mark sees.
    pub view: View,
    /// What stands behind the subject sees.
    pub behind: View,
    /// What a spot outside sees.
    pub outside: View,
}

/// A room as light sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Inside {
    /// Openings by name, as the mark sees them.
    pub panes: Vec<(String, Pane)>,
    /// Its measures, and where in it the face is; `None` where its openings are only sighted.
    pub room: Option<(Room, Vector<InRoom>)>,
}

/// An opening as a spot sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pane {
    /// Cones whose union it is.
    pub cones: Vec<Cone>,
    /// What it is, and the outward normal of its wall; `None` for one that was only sighted.
    pub opening: Option<(Opening, Vector<World>)>,
}

impl Pane {
    /// Whether a direction is seen through it.
    pub fn contains(&self, towards: Vector<World>) -> bool {
        self.cones.iter().any(|cone| cone.contains(towards))
    }

    /// What comes through of a beam from a direction.
    pub fn passes(&self, towards: Vector<World>) -> Share {
        let Some((opening, outward)) = &self.opening else { return Share::WHOLE };
        // Where bars part the sky into panes they take their share there already.
        let parted = opening.bars.is_some() && self.cones.len() > 1;
        let bars = if parted { Share::WHOLE } else { opening.clear_of_bars() };
        Share::clamped(of_the_beam(opening, outward.angle_to(towards)).fraction() * bars.fraction())
    }
}

impl Subject {
    /// The light of an instant under a sky, corrected by the nearest reading that still speaks for it.
    pub fn hour(&self, sun: &Sun, at: Instant, sky: Sky) -> Hour {
        let hour = self.modelled(sun, at, sky).with_moon(self.site);
        match self.correction(sun, at) {
            Some(correction) => hour.corrected(correction),
            None => hour,
        }
    }

    /// What the reading nearest to an instant says of the model there and then.
    pub fn correction(&self, sun: &Sun, at: Instant) -> Option<Correction> {
        let apart = |reading: &&Reading| (reading.at - at).max(at - reading.at);
        let near =
            self.readings.iter().filter(|reading| apart(reading) <= READING_HOLDS).min_by_key(apart)?;
        let hour = self.modelled(sun, near.at, sky_of(near.sky));
        Correction::from_reading(near.says.light(), self.facing(&hour, near.facing))
    }

    /// What it sees of the sky at an instant.
    pub fn sees_at(&self, at: Instant) -> &Sees {
        self.seasons.as_ref().map_or(&self.sees, |seasons| seasons.on(self.zone.date(at)))
    }

    /// Where a light of an instant gets in onto the mark: the name of the opening (empty in the open) and what it lets through; `None` if
    /// it does not.
    pub fn sun_through(&self, at: Instant, light: Vector<World>) -> Option<(&str, Share)> {
        if !is_clear(&self.sees_at(at).skyline, light) {
            return None;
        }
        match &self.inside {
            None => Some(("", Share::WHOLE)),
            Some(room) => {
                let (name, pane) = room.panes.iter().find(|(_, pane)| pane.contains(light))?;
                Some((name, pane.passes(light)))
            }
        }
    }

    /// The way a side of the subject faces, which is also the way to what works on that side.
    pub fn normal(&self, side: Side) -> Vector<World> {
        self.lens.reversed().turned(side.off_the_camera()).level()
    }

    /// A piece of the kit.
    pub fn gear(&self, placed: &Placed) -> Option<&Gear> {
        self.kit.iter().find(|gear| gear.id == placed.gear)
    }

    /// Light on a meter in the open.
    fn facing(&self, hour: &Hour, facing: Facing) -> Lux {
        let plane = match facing {
            Facing::Sun => hour.sun,
            Facing::Up => Vector::UP,
            Facing::Bearing(bearing) => bearing.level(),
        };
        let sees = self.sees_at(hour.at);
        let [(sky, ground)] = hour.on_planes(&sees.outside, [plane]);
        let sun = if is_clear(&sees.skyline, hour.sun) { hour.sun.dot(plane).max(0.0) } else { 0.0 };
        hour.light.beam * sun + sky + ground
    }

    fn modelled(&self, sun: &Sun, at: Instant, sky: Sky) -> Hour {
        Hour::of(sun, at, sky, self.ground, self.zone.date(at).ordinal())
    }
}

/// The model's sky for the one that a wish or a reading names; without a word, a clear one.
pub const fn sky_of(sky: wish::Sky) -> Sky {
    match sky {
        wish::Sky::Any | wish::Sky::Clear => Sky::Clear,
        wish::Sky::Hazy => Sky::Hazy,
        wish::Sky::Broken => Sky::Broken,
        wish::Sky::Overcast => Sky::Overcast,
    }
}
