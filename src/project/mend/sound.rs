//! What the types allow but no project may say: sizes below nothing, corners too few, an end before its begin.
//!
//! The bounds only keep out what cannot be meant and what would make later arithmetic meaningless; they are our
//! own choice. What is merely unlikely is for the screens to ask about.

use serde::Deserialize;

use super::path::Step;
use super::sound_light::{camera, levels, rig};
use crate::place::blocker::Blocker;
use crate::place::mark::Mark;
use crate::place::opening::Opening;
use crate::place::outside::Screen;
use crate::place::room::Room;
use crate::place::site::Site;
use crate::plan::grip::kit::GripKit;
use crate::plan::legs::travel::{Leg, Travel};
use crate::plan::wish::{DateRange, Wish};
use crate::project::document::{Camera, Lens, Location, Scene, SetUp};
use crate::project::photograph::{LONGEST, Photograph, is_jpeg};
use crate::units::{Degrees, Metres};

/// Where a fault is, and what it is.
pub(super) type Unsound = Option<(Vec<Step>, String)>;

/// Something that can say whether it can be meant.
pub(super) trait Sound {
    /// Its first fault.
    fn unsound(&self) -> Unsound;
}

/// What a project says besides its entities.
#[derive(Deserialize)]
pub(super) struct Head {
    pub title: String,
    #[serde(default)]
    pub invented: bool,
    #[serde(default)]
    pub dates: Vec<DateRange>,
}

impl Sound for Head {
    fn unsound(&self) -> Unsound {
        first(&["dates"], &self.dates, |range| range.from > range.to)
    }
}

impl Sound for Site {
    fn unsound(&self) -> Unsound {
        length("elevation_m", self.elevation, (-1000.0, 20_000.0))
    }
}

impl Sound for Camera {
    fn unsound(&self) -> Unsound {
        number(&["sensor_width_mm"], self.sensor_width_mm, (0.1, 1000.0))
            .or_else(|| number(&["sensor_height_mm"], self.sensor_height_mm, (0.1, 1000.0)))
            .or_else(|| camera(&self.settings))
    }
}

impl Sound for Location {
    fn unsound(&self) -> Unsound {
        let letters = |letter: char| letter.is_ascii_alphanumeric() || "_+-/".contains(letter);
        let is_zone = !self.zone.is_empty() && self.zone.len() <= 64 && self.zone.chars().all(letters);
        let zone = (!is_zone).then(|| fault(&["zone"], "this is no name of a time zone"));
        zone.or_else(|| self.accuracy.and_then(|metres| length("accuracy_m", metres, (0.0, 1e7))))
    }
}

impl Sound for Photograph {
    fn unsound(&self) -> Unsound {
        let bad = self.picture.as_ref().is_some_and(|picture| picture.len() > LONGEST || !is_jpeg(picture));
        bad.then(|| fault(&["jpeg_base64"], "this is no picture of ours"))
    }
}

impl Sound for Room {
    fn unsound(&self) -> Unsound {
        let corners = self.floor.len();
        if !(3..=12).contains(&corners) {
            return Some(fault(&[], &format!("a floor needs 3 to 12 corners, not {corners}")));
        }
        let far = self.floor.iter().flatten().any(|metres| metres.metres().abs() > 1000.0);
        let far = far.then(|| fault(&[], "a corner of the floor is over 1000 m away"));
        far.or_else(|| length("ceiling_m", self.ceiling, (0.1, 1000.0)))
            .or_else(|| uncertainty(&["bearing_uncertainty_deg"], self.bearing_uncertainty))
            .or_else(|| {
                first(&["openings"], &self.openings, |opening| !opening.in_ceiling && opening.wall >= corners)
            })
    }
}

impl Sound for Opening {
    fn unsound(&self) -> Unsound {
        let bars = self.bars.is_some_and(|bars| {
            bars.rows == 0 || bars.columns == 0 || !(0.0..=10.0).contains(&bars.thickness.metres())
        });
        let overhang = self.overhang.is_some_and(|slab| {
            [slab.depth, slab.above].iter().any(|metres| !(0.0..=1000.0).contains(&metres.metres()))
        });
        length("offset_m", self.offset, (-1000.0, 1000.0))
            .or_else(|| length("sill_m", self.sill, (-1000.0, 1000.0)))
            .or_else(|| length("width_m", self.width, (0.0, 1000.0)))
            .or_else(|| length("height_m", self.height, (0.0, 1000.0)))
            .or_else(|| length("reveal_m", self.reveal, (0.0, 100.0)))
            .or_else(|| number(&["transmittance"], self.transmittance, (0.0, 1.0)))
            .or_else(|| bars.then(|| fault(&["bars"], "such bars cannot be")))
            .or_else(|| overhang.then(|| fault(&["overhang"], "such an overhang cannot be")))
    }
}

impl Sound for Screen {
    fn unsound(&self) -> Unsound {
        length("distance_m", self.distance, (0.01, 1e5))
            .or_else(|| length("height_m", self.height, (-1000.0, 1e4)))
    }
}

impl Sound for Mark {
    fn unsound(&self) -> Unsound {
        length("x_m", self.x, (-1e5, 1e5))
            .or_else(|| length("y_m", self.y, (-1e5, 1e5)))
            .or_else(|| length("face_height_m", self.face_height, (-100.0, 1000.0)))
            .or_else(|| first(&["sighted"], &self.sighted, |sighting| sighting.corners.len() < 2))
    }
}

impl Sound for Blocker {
    fn unsound(&self) -> Unsound {
        length("distance_m", self.distance, (0.0, 1e5))
            .or_else(|| length("width_m", self.width, (0.0, 1e5)))
            .or_else(|| length("depth_m", self.depth, (0.0, 1e5)))
            .or_else(|| length("height_m", self.height, (-1e4, 1e4)))
            .or_else(|| number(&["turned_deg"], self.turned.degrees(), (-360.0, 360.0)))
    }
}

impl Sound for Scene {
    fn unsound(&self) -> Unsound {
        let limit = &self.match_limit;
        number(&["match", "class_angle_deg"], limit.class_angle.degrees(), (0.0, 360.0))
            .or_else(|| number(&["match", "ratio_stops"], limit.ratio.stops(), (0.0, 100.0)))
            .or_else(|| number(&["match", "colour_mired"], limit.colour.mired(), (0.0, 10_000.0)))
    }
}

impl Sound for SetUp {
    fn unsound(&self) -> Unsound {
        let minutes = number(&["minutes"], f64::from(self.minutes), (1.0, 1440.0));
        minutes
            .or_else(|| lens(&self.lens))
            .or_else(|| wish(&self.wish))
            .or_else(|| levels(&self.wish.levels))
            .or_else(|| rig(&self.rig))
            .or_else(|| grip(&self.grip))
            .or_else(|| self.travel.as_ref().and_then(travel))
            .or_else(|| first(&["saved"], &self.saved, |slot| slot.start > slot.end))
            .or_else(|| first(&["shots"], &self.shots, |shot| !shot.is_sound()))
    }
}

fn lens(lens: &Lens) -> Unsound {
    uncertainty(&["lens", "bearing_uncertainty_deg"], lens.bearing_uncertainty)
        .or_else(|| number(&["lens", "distance_m"], lens.distance.metres(), (0.0, 1e5)))
        .or_else(|| number(&["lens", "height_m"], lens.height.metres(), (-100.0, 1000.0)))
        .or_else(|| number(&["lens", "tilt_deg"], lens.tilt.degrees(), (-90.0, 90.0)))
        .or_else(|| number(&["lens", "focal_mm"], lens.focal_mm, (0.1, 10_000.0)))
}

fn grip(kit: &GripKit) -> Unsound {
    let sizes = [kit.frame_width, kit.frame_height, kit.flag, kit.mirror, kit.distance];
    let far = |metres: &Metres| !(0.0..=1000.0).contains(&metres.metres());
    let high = [kit.frame_above, kit.above].iter().any(|metres| metres.metres().abs() > 1000.0);
    (high || sizes.iter().any(far)).then(|| fault(&["grip"], "no frame, flag or mirror stands like this"))
}

fn travel(travel: &Travel) -> Unsound {
    let wrong = |leg: &Leg| {
        !(0.0..=1e6).contains(&leg.length.metres())
            || !(0.0..=1000.0).contains(&leg.speed.metres_per_second())
    };
    number(&["travel", "mount_deg"], travel.mount.degrees(), (-360.0, 360.0))
        .or_else(|| first(&["travel", "legs"], &travel.legs, wrong))
}

fn wish(wish: &Wish) -> Unsound {
    let (from, to) = (wish.arc.from.degrees(), wish.arc.to.degrees());
    let is_arc = (0.0..=360.0).contains(&from) && (from..=from + 360.0).contains(&to);
    let arc = || (!is_arc).then(|| fault(&["wish", "arc"], &format!("{from}° to {to}° is no arc")));
    let (low, high) = (wish.heights.from.degrees(), wish.heights.to.degrees());
    let heights = || {
        let why = || format!("the lowest height {low}° is above the highest {high}°");
        (low > high).then(|| fault(&["wish", "heights"], &why()))
    };
    arc().or_else(heights).or_else(|| first(&["wish", "dates"], &wish.dates, |range| range.from > range.to))
}

pub(super) fn fault(path: &[&str], why: &str) -> (Vec<Step>, String) {
    let path = path.iter().map(|name| Step::Member((*name).to_owned())).collect();
    let mut letters = why.chars();
    (path, letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect())
}

/// The first entry of a list that is `wrong`.
pub(super) fn first<T>(path: &[&str], list: &[T], wrong: impl Fn(&T) -> bool) -> Unsound {
    let index = list.iter().position(wrong)?;
    let (mut path, why) = fault(path, "this entry does not fit");
    path.push(Step::Entry(index));
    Some((path, why))
}

pub(super) fn number(path: &[&str], given: f64, (least, most): (f64, f64)) -> Unsound {
    let fits = (least..=most).contains(&given);
    (!fits).then(|| fault(path, &format!("{given} is outside {least} to {most}")))
}

fn length(name: &str, given: Metres, bounds: (f64, f64)) -> Unsound {
    number(&[name], given.metres(), bounds)
}

fn uncertainty(path: &[&str], given: Degrees) -> Unsound {
    number(path, given.degrees(), (0.0, 180.0))
}
