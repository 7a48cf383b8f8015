//! The shot: what a wish asks beyond the light's direction off the lens: the face, and the sun in the picture.
//!
//! All of it is again convex parts of the sky, so that the search stays exact. A face is lit by the sun whatever the
//! lens does; short and broad, and the sun in the picture, turn with the lens. In a room the lens sees the sun only
//! through an opening, and over what stands around the room, as seen from where the camera stands.

pub(in crate::plan) mod crew_in_room;
pub mod in_frame;
pub mod own_shadow;
pub(in crate::plan) mod pictured;
pub mod words;

use std::sync::Arc;

use crate::light::face::{Cheek, Facing, IN_THE_EYES, Pattern, has_cheeks};
use crate::light::picture::Picture;
use crate::maths;
use crate::place::cone::{Cone, HalfSpace};
use crate::place::room::Room;
use crate::place::seasons::Around;
use crate::plan::in_room;
use crate::plan::search::free_lens;
use crate::plan::stage::Stage;
use crate::plan::wish::region::BearingArc;
use crate::sky::search::Limb;
use crate::sky::sun::Sun;
use crate::units::{Bearing, Degrees, Height, InRoom, Instant, Metres, Spans, Vector, World};
use pictured::Pictured;

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
    /// What blocks the sky besides the room's own surroundings.
    pub far: Around,
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

    /// Whether something so many metres from the subject is inside the room.
    pub fn is_in_room(&self, from_subject: Vector<World>) -> bool {
        let at = self.room.room_from_world(from_subject);
        let [x, y] = self.subject.map(Metres::metres);
        self.room.holds(Metres::from_metres(x + at.x), Metres::from_metres(y + at.y))
    }

    /// Whether the lens sees a part of the sky, through an opening or from outside.
    pub fn sees_sky(&self, lens: Bearing, direction: Vector<World>) -> bool {
        self.sky(lens).is_none_or(|sky| sky.iter().any(|cone| cone.contains(direction)))
    }

    /// What blocks the sky from the lens.
    pub fn around(&self, lens: Bearing) -> Around {
        let at = self.lens_at(lens);
        self.far.map(|line| in_room::seen_from(&self.room, line, at))
    }

    /// The sky that the openings let onto the lens; `None` from outside, where it is all of it. Bars that never hide all of
    /// the sun's disc do not part it.
    pub(in crate::plan) fn sky(&self, lens: Bearing) -> Option<Vec<Cone>> {
        let seen = || in_room::measured(&self.room, self.lens_at(lens));
        self.is_inside(lens).then(|| seen().into_iter().flat_map(|opening| opening.cones).collect())
    }
}

/// What a wish asks of face and picture, for one bearing of the lens.
pub(in crate::plan) struct Asked {
    /// Each a union of convex parts of the sky, all of which must hold.
    face: Vec<Vec<Cone>>,
    /// The sun in the picture.
    picture: Option<Pictured>,
}

/// The part of it that does not hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::plan) enum Lacks {
    /// The light on the face.
    Face,
    /// The sun in the picture, or out of it.
    Picture,
}

impl Asked {
    /// Of `stage` if its lens looked to `lens`.
    pub(in crate::plan) fn of(stage: &Stage, lens: Bearing) -> Self {
        let wish = stage.wish.face;
        let face = stage.shot.facing.into_iter().flat_map(|facing| {
            [
                wish.pattern.map(|pattern| pattern_cones(pattern, facing)),
                wish.cheek.and_then(|cheek| cheek_cones(cheek, facing, lens)),
                wish.sun_in_eyes.map(|into| vec![eyes_cone(into, facing)]),
            ]
        });
        Self { face: face.flatten().collect(), picture: Pictured::of(stage, lens) }
    }

    /// Of `stage` as it is. A lens that is free may look wherever it does, so that only the face is asked then; the bearing
    /// of each slot is chosen by all of it ([`crate::plan::search::free_lens`]).
    pub(in crate::plan) fn of_stage(stage: &Stage) -> Self {
        match stage.free {
            None => Self::of(stage, stage.lens),
            Some(_) => Self::of(&free_lens::without_lens(stage.looking(stage.lens)), stage.lens),
        }
    }

    /// Whether the wish asks nothing of face and picture.
    pub(in crate::plan) fn is_nothing(&self) -> bool {
        self.face.is_empty() && self.picture.is_none()
    }

    /// What of `light` is left.
    pub(in crate::plan) fn leaves(&self, sun: &Sun, stage: &Stage, light: Spans) -> Spans {
        let mut left = light;
        for cones in &self.face {
            left = within(sun, &left, cones);
        }
        match &self.picture {
            Some(picture) => picture.leaves(sun, stage, left),
            None => left,
        }
    }

    /// What the light of an instant lacks.
    pub(in crate::plan) fn lacks(&self, stage: &Stage, at: Instant, light: Vector<World>) -> Option<Lacks> {
        if !self.face.iter().all(|cones| cones.iter().any(|cone| cone.contains(light))) {
            return Some(Lacks::Face);
        }
        let picture = self.picture.as_ref();
        picture.is_some_and(|picture| !picture.grants(stage, at, light)).then_some(Lacks::Picture)
    }
}

/// What of `light` has the sun in one of some parts of the sky.
pub(in crate::plan) fn within(sun: &Sun, light: &Spans, cones: &[Cone]) -> Spans {
    let found = light.iter().flat_map(|span| sun.spans_in(cones, Limb::Centre, span).as_slice().to_vec());
    Spans::gather(found.collect())
}

/// What is left of `light` for the stage's own lens, or for some bearing of one that is free.
pub(in crate::plan) fn kept(sun: &Sun, stage: &Stage, light: Spans) -> Spans {
    let asked = Asked::of_stage(stage);
    let left = if asked.is_nothing() { light } else { asked.leaves(sun, stage, light) };
    match &stage.free {
        Some(lenses) => free_lens::some_lens(sun, stage, left, lenses),
        None => left,
    }
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

#[cfg(test)]
mod tests;
