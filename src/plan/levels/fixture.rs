//! Subjects for the tests of this room: a face in the open at a site of the handbook, and what can be put there.

use super::subject::{Sees, Subject};
use crate::light::view::View;
use crate::place::site::Site;
use crate::place::skyline::Skyline;
use crate::place::zone::Zone;
use crate::plan::kit::{CameraSettings, Gear, Rig, generic};
use crate::units::{Bearing, Degrees, Duration, Latitude, Longitude, Metres, Share};

/// The handbook's site T: 48° N, 11° E, at the sea.
pub(super) fn site() -> Site {
    Site {
        latitude: Latitude::from_degrees(48.0).unwrap(),
        longitude: Longitude::from_degrees(11.0).unwrap(),
        elevation: Metres::default(),
    }
}

/// A face in the open, the lens looking to a bearing, the generic kit in the van.
pub(in crate::plan) fn open(lens: f64) -> Subject {
    let skyline = Skyline::default();
    let outside = View::open(&skyline);
    Subject {
        site: site(),
        zone: Zone::fixed("UTC", Duration::ZERO),
        lens: Bearing::from_degrees(lens),
        tilt: Degrees::default(),
        lens_height: Metres::from_metres(1.5),
        face_height: Metres::from_metres(1.5),
        frame: (Degrees::from_degrees(39.6), Degrees::from_degrees(27.0)),
        lens_distance: Metres::from_metres(2.5),
        sees: Sees { skyline, view: outside.clone(), behind: outside.clone(), outside },
        seasons: None,
        ground: Share::clamped(0.2),
        inside: None,
        there: Vec::new(),
        kit: kit(),
        rig: Rig::default(),
        readings: Vec::new(),
        camera: CameraSettings::default(),
    }
}

/// The generic kit, each piece by its name.
pub(super) fn kit() -> Vec<Gear> {
    generic::examples().into_iter().map(|one| generic::gear(one.0, one)).collect()
}
