//! From the document to the shot: the face of a set-up and the picture its lens takes in.

use std::sync::Arc;

use super::document::{Camera, Lens, Project, SetUp};
use super::find::Standing;
use super::{stage, start};
use crate::light::exposure::field_of_view::field_of_view;
use crate::light::picture::Picture;
use crate::plan::shot::{Shot, Vantage};
use crate::units::Metres;

impl Lens {
    /// What it takes in on a camera.
    pub fn picture(&self, camera: &Camera) -> Picture {
        let angle = |size_mm: f64| field_of_view(millimetres(size_mm), millimetres(self.focal_mm));
        Picture { across: angle(camera.sensor_width_mm), up: angle(camera.sensor_height_mm), tilt: self.tilt }
    }
}

/// What the set-up knows of face and picture. Without a camera it is the one that a new project starts with.
pub(super) fn shot(project: &Project, set_up: &SetUp, standing: &Standing<'_>) -> Shot {
    let lens = &set_up.lens;
    let vantage = standing.room.zip(standing.mark).map(|(room, mark)| Vantage {
        room: Arc::new(room.clone()),
        subject: [mark.x, mark.y],
        distance: lens.distance,
        height: lens.height,
        far: stage::far(standing),
    });
    let usual = start::camera("");
    let camera = project.camera_of(set_up).unwrap_or(&usual);
    Shot { facing: set_up.facing, picture: Some(lens.picture(camera)), vantage }
}

fn millimetres(millimetres: f64) -> Metres {
    Metres::from_metres(millimetres / 1000.0)
}
