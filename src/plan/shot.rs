//! The shot: what a wish asks beyond the light's direction off the lens: the face, and the sun in the picture.
//!
//! All of it is again convex parts of the sky, so that the search stays exact. A face is lit by the sun whatever the
//! lens does; short and broad, and the sun in the picture, turn with the lens. In a room the lens sees the sun only
//! through an opening as seen from where the camera stands.

use std::sync::Arc;

use super::face_wish::InPicture;
use super::region::BearingArc;
use super::stage::Stage;
use crate::light::face::{Cheek, Facing, IN_THE_EYES, Pattern, has_cheeks};
use crate::light::picture::Picture;
use crate::maths;
use crate::place::aperture;
use crate::place::cone::{Cone, HalfSpace};
use crate::place::room::Room;
use crate::sky::search::Limb;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Height, InRoom, Metres, Spans, Vector, World};

/// What a stage knows of face and picture.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shot {
    /// Where the nose points; `None` if nobody has said.
    pub facing: Option<Facing>,
    /// What the lens takes in; `None` if there is no camera.
    pub picture: Option<Picture>,
    /// The room about the camera; `None` in the open.
    pub vantage: Option<Vantage>,
}

/// A camera in a room, at a distance from its subject.
#[derive(Clone, Debug, PartialEq)]
pub struct Vantage {
    /// The room.
    pub room: Arc<Room>,
    /// The subject's place in the room.
    pub subject: [Metres; 2],
    /// Camera to subject.
    pub distance: Metres,
    /// Lens above the floor.
    pub height: Metres,
}

impl Vantage {
    /// Where a lens that looks to `lens` stands, in room axes.
    pub fn lens_at(&self, lens: Bearing) -> Vector<InRoom> {
        let back = self.room.room_from_world(lens.reversed().level()) * self.distance.metres();
        let [x, y] = self.subject.map(Metres::metres);
        Vector::new(x + back.x, y + back.y, self.height.metres())
    }

    /// Whether that is inside the room.
    pub fn is_inside(&self, lens: Bearing) -> bool {
        let at = self.lens_at(lens);
        self.room.holds(Metres::from_metres(at.x), Metres::from_metres(at.y))
    }

    /// Whether the lens sees a part of the sky, through an opening or from outside.
    pub fn sees_sky(&self, lens: Bearing, direction: Vector<World>) -> bool {
        self.sky(lens).iter().any(|cone| cone.contains(direction))
    }

    /// The sky that the openings let onto the lens; from outside, all of it.
    fn sky(&self, lens: Bearing) -> Vec<Cone> {
        if !self.is_inside(lens) {
            return vec![Cone::default()];
        }
        let at = self.lens_at(lens);
        let cones = |opening| aperture::cones(&self.room, opening, at, Degrees::default());
        self.room.openings.iter().flat_map(cones).collect()
    }
}

/// What a wish asks of face and picture, for one bearing of the lens.
pub(super) struct Asked {
    /// Each a union of convex parts of the sky, all of which must hold.
    face: Vec<Vec<Cone>>,
    /// The union in which the sun must be, and the one in which it must not.
    picture: (Option<Vec<Cone>>, Option<Vec<Cone>>),
}

/// The part of it that does not hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lacks {
    /// The light on the face.
    Face,
    /// The sun in the picture, or out of it.
    Picture,
}

impl Asked {
    /// Of `stage` if its lens looked to `lens`.
    pub(super) fn of(stage: &Stage, lens: Bearing) -> Self {
        let wish = stage.wish.face;
        let face = stage.shot.facing.into_iter().flat_map(|facing| {
            [
                wish.pattern.map(|pattern| pattern_cones(pattern, facing)),
                wish.cheek.and_then(|cheek| cheek_cones(cheek, facing, lens)),
                wish.sun_in_eyes.map(|into| vec![eyes_cone(into, facing)]),
            ]
        });
        Self { face: face.flatten().collect(), picture: picture_cones(stage, lens) }
    }

    /// Of `stage` as it is. A lens that is free may look wherever it does, so that only the face is asked then; the bearing
    /// of each slot is chosen by all of it ([`super::free_lens`]).
    pub(super) fn of_stage(stage: &Stage) -> Self {
        match stage.free {
            None => Self::of(stage, stage.lens),
            Some(_) => {
                let mut open = stage.looking(stage.lens);
                open.wish.face.cheek = None;
                open.wish.in_picture = InPicture::Any;
                Self::of(&open, stage.lens)
            }
        }
    }

    /// Whether the wish asks nothing of face and picture.
    pub(super) fn is_nothing(&self) -> bool {
        self.face.is_empty() && self.picture == (None, None)
    }

    /// What of `light` is left.
    pub(super) fn leaves(&self, sun: &Sun, light: Spans) -> Spans {
        let within = |light: &Spans, cones: &[Cone]| {
            let found =
                light.iter().flat_map(|span| sun.spans_in(cones, Limb::Centre, span).as_slice().to_vec());
            Spans::gather(found.collect())
        };
        let mut left = light;
        for cones in self.face.iter().chain(&self.picture.0) {
            left = within(&left, cones);
        }
        match &self.picture.1 {
            Some(barred) => left.without(&within(&left, barred)),
            None => left,
        }
    }

    /// What the light from a direction lacks.
    pub(super) fn lacks(&self, light: Vector<World>) -> Option<Lacks> {
        let within = |cones: &Vec<Cone>| cones.iter().any(|cone| cone.contains(light));
        let (asked, barred) = &self.picture;
        if !self.face.iter().all(within) {
            Some(Lacks::Face)
        } else if asked.as_ref().is_some_and(|asked| !within(asked)) || barred.as_ref().is_some_and(within) {
            Some(Lacks::Picture)
        } else {
            None
        }
    }
}

/// What is left of `light` for the stage's own lens.
pub(super) fn kept(sun: &Sun, stage: &Stage, light: Spans) -> Spans {
    let asked = Asked::of_stage(stage);
    if asked.is_nothing() { light } else { asked.leaves(sun, light) }
}

/// Where a light makes a pattern: an arc to either side of the nose, between two heights.
fn pattern_cones(pattern: Pattern, facing: Facing) -> Vec<Cone> {
    let bounds = pattern.bounds();
    let (least, most) = bounds.off;
    let width = Degrees::from_degrees(most.degrees() - least.degrees());
    let beside = |by: f64| facing.bearing.turned(Degrees::from_degrees(by));
    let arcs = if least == Degrees::default() {
        vec![BearingArc { from: beside(-most.degrees()), width: Degrees::from_degrees(2.0 * most.degrees()) }]
    } else {
        [least.degrees(), -most.degrees()].map(|from| BearingArc { from: beside(from), width }).to_vec()
    };
    let height = |over: Degrees| Height::clamped(over.degrees() + facing.pitch.degrees());
    let low = bounds.over.0.map(|over| HalfSpace { normal: Vector::UP, least: height(over).sin() });
    let high = bounds.over.1.map(|over| HalfSpace { normal: -Vector::UP, least: -height(over).sin() });
    let mut cones: Vec<Cone> = arcs.iter().flat_map(BearingArc::cones).collect();
    for cone in &mut cones {
        cone.sides.extend(low.into_iter().chain(high));
    }
    cones
}

/// The side of the nose's plane from which a cheek is lit; `None` while neither cheek is nearer to the lens.
fn cheek_cones(cheek: Cheek, facing: Facing, lens: Bearing) -> Option<Vec<Cone>> {
    has_cheeks(facing, lens).then(|| {
        let clockwise = (facing.yaw(lens).degrees() > 0.0) == (cheek == Cheek::Short);
        let aside = facing.bearing.turned(Degrees::from_degrees(if clockwise { 90.0 } else { -90.0 }));
        vec![Cone { sides: vec![HalfSpace::beside(aside.level())] }]
    })
}

/// The round part of the sky about the nose from which the sun shines into the eyes, or the rest.
fn eyes_cone(into: bool, facing: Facing) -> Cone {
    let (nose, least) = (facing.nose(), maths::cos(IN_THE_EYES.radians()));
    let side =
        if into { HalfSpace { normal: nose, least } } else { HalfSpace { normal: -nose, least: -least } };
    Cone { sides: vec![side] }
}

/// Where the sun must be for the lens, and where it must not.
fn picture_cones(stage: &Stage, lens: Bearing) -> (Option<Vec<Cone>>, Option<Vec<Cone>>) {
    let Some(picture) = &stage.shot.picture else { return (None, None) };
    let sky = || stage.shot.vantage.as_ref().map_or_else(|| vec![Cone::default()], |camera| camera.sky(lens));
    let seen = |part: Cone| -> Vec<Cone> {
        let both = |opening: Cone| Cone { sides: [part.sides.as_slice(), &opening.sides].concat() };
        sky().into_iter().map(both).collect()
    };
    let (inside, near) = (|| seen(picture.holds_sun(lens)), || seen(picture.nears_sun(lens)));
    match stage.wish.in_picture {
        InPicture::Any => (None, None),
        InPicture::In => (Some(inside()), None),
        InPicture::JustOut => (Some(near()), Some(inside())),
        InPicture::Out => (None, Some(near())),
    }
}

#[cfg(test)]
#[path = "shot_tests.rs"]
mod tests;
