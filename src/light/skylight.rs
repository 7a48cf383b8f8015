//! What sky and sun bring to a spot of a room: the light that other screens ask for.
//!
//! | ask | for |
//! |---|---|
//! | [`Inside::sky`] | the sky's light on a plane of any facing: each cheek, the crown, the floor; per opening |
//! | [`Inside::sun`] | whether the sun is on the spot, through which openings, and what their glass lets through |
//! | [`super::interreflected`] | light that has been on a wall before, by a stated simple method |
//!
//! Shares are of the light on level ground outdoors from the whole of the same sky ([`super::sky_model`]); times that
//! light they are lux. Counted: reveals, overhangs, bars, inner walls, roof lights, everything above the skyline that is
//! given (see it from the spot itself: `place::outside`). Exact for overcast and uniform skies, to 0.1 % for the others.
//! Not here: the ground seen through an opening ([`super::view`]), people and furniture.

use super::above_line;
use super::glazing::Glazing;
use super::sky_model::SkyModel;
use crate::place::aperture::{for_each_outline, lets_in};
use crate::place::inside::Spot;
use crate::place::opening::Opening;
use crate::place::polygon::Few;
use crate::place::room::Room;
use crate::place::skyline::Skyline;
use crate::units::{Degrees, InRoom, Lux, Share, Vector, World};

/// Of an even sky, what glass lets through over what it lets straight through: 0.91 for one pane (handbook C7, from memory).
const DIFFUSE: f64 = 0.91;

/// A room under what stands around it.
#[derive(Clone, Copy, Debug)]
pub struct Inside<'a> {
    /// The room.
    pub room: &'a Room,
    /// What blocks the sky, seen from the spot that is asked about.
    pub line: &'a Skyline,
}

/// A small plane: where it is, and the unit vector it faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facing {
    /// Where, in room axes.
    pub at: Vector<InRoom>,
    /// The way it faces.
    pub normal: Vector<World>,
}

/// The light of a part of the sky over that on level ground outdoors; above 1 where a plane faces a bright part.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct SkyShare(f64);

impl SkyShare {
    /// As a plain number: 0.02 for a daylight factor of 2 %.
    pub const fn ratio(self) -> f64 {
        self.0
    }

    /// In lux, under a sky that gives so much on level ground.
    pub fn of(self, level: Lux) -> Lux {
        level * self.0
    }

    /// Past something that lets a share through.
    pub fn past(self, share: Share) -> Self {
        Self(self.0 * share.fraction())
    }
}

impl core::iter::Sum for SkyShare {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        Self(all.map(|one| one.0).sum())
    }
}

/// What comes through one opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Through<T> {
    /// The opening, by its place in the room's list.
    pub opening: usize,
    /// What comes through.
    pub light: T,
}

impl Inside<'_> {
    /// The sky's light on a plane through each opening that lets any in, glass and bars counted.
    pub fn sky(&self, facing: Facing, sky: &SkyModel) -> Vec<Through<SkyShare>> {
        let glazed = |(opening, bare): (usize, SkyShare)| {
            let one = &self.room.openings[opening];
            Through { opening, light: bare.past(of_the_sky(one)).past(one.unseen_bars()) }
        };
        let all = self.each(facing, sky).map(glazed);
        all.filter(|through| through.light.0 > 0.0).collect()
    }

    /// The same through openings without glass: the sky component of daylighting.
    pub fn sky_bare(&self, facing: Facing, sky: &SkyModel) -> SkyShare {
        self.each(facing, sky).map(|(_, bare)| bare).sum()
    }

    /// The openings through which the sun, seen towards a unit vector, shines onto a spot, and how much of its light their
    /// glass lets through at that angle. None while the skyline hides it; whether it is up is in the skyline too.
    pub fn sun(&self, at: Vector<InRoom>, sun: Vector<World>) -> Vec<Through<Share>> {
        let there = self.line.clears(sun, Degrees::default());
        let openings = self.room.openings.iter().enumerate().filter(|_| there);
        openings
            .filter(|(_, opening)| lets_in(self.room, opening, at, sun))
            .filter_map(|(index, opening)| {
                let outward = self.room.world_from_room(self.room.face_of(opening)?.outward);
                Some(Through { opening: index, light: of_the_beam(opening, outward.angle_to(sun)) })
            })
            .collect()
    }

    /// The sky's light on a plane before the room, where nothing but the skyline is in the way.
    pub fn open_sky(&self, normal: Vector<World>, sky: &SkyModel) -> SkyShare {
        let (east, north) = (Vector::new(1.0, 0.0, 0.0), Vector::new(0.0, 1.0, 0.0));
        let rim = [east, north, -east, -north];
        let quarter = |at: usize| {
            let mut outline = Few::new([rim[at], rim[(at + 1) % 4], Vector::UP]);
            outline.cut(normal);
            self.above_the_line(&outline, normal, sky)
        };
        SkyShare((0..4).map(quarter).sum())
    }

    /// Through each opening as if there were no glass, by its place in the room's list.
    fn each(&self, facing: Facing, sky: &SkyModel) -> impl Iterator<Item = (usize, SkyShare)> {
        let normals = (facing.normal, self.room.room_from_world(facing.normal));
        let spot = Spot::new(self.room, facing.at);
        let light = move |opening| Some(self.sky_component((spot.as_ref()?, opening), normals, sky));
        self.room.openings.iter().enumerate().filter_map(move |(at, one)| Some((at, light(one)?)))
    }

    /// Through one opening; the plane's normal comes in both spaces, so that it is turned once for all openings.
    fn sky_component(
        &self,
        (spot, opening): (&Spot<'_>, &Opening),
        normals: (Vector<World>, Vector<InRoom>),
        sky: &SkyModel,
    ) -> SkyShare {
        let mut sum = 0.0;
        for_each_outline(spot, opening, Degrees::default(), |outline| {
            outline.cut(normals.1);
            outline.cut(Vector::UP);
            let plain =
                if self.line.is_level() { sky.in_closed_form(outline.corners(), normals.1) } else { None };
            sum += plain.unwrap_or_else(|| {
                let outline = outline.map(|corner| self.room.world_from_room(corner));
                self.above_the_line(&outline, normals.0, sky)
            });
        });
        SkyShare(sum)
    }

    /// Of an outline in front of the plane, what is above the skyline.
    fn above_the_line(&self, outline: &Few<World>, normal: Vector<World>, sky: &SkyModel) -> f64 {
        let mut sum = 0.0;
        above_line::sky(self.line, outline, |part| sum += sky.through(part, normal));
        sum
    }
}

/// What an opening's glass lets through of a sky that is seen all over it.
pub fn of_the_sky(opening: &Opening) -> Share {
    let diffuse = if glazing(opening) == Glazing::Open { 1.0 } else { DIFFUSE };
    Share::clamped(opening.transmittance * diffuse)
}

/// What an opening's glass lets through of a beam at an angle to the straight way through. Bars are not in it.
pub fn of_the_beam(opening: &Opening, incidence: Degrees) -> Share {
    Share::clamped(opening.transmittance * glazing(opening).aslant(incidence).fraction())
}

/// The glazing that its transmittance speaks for: below a clear double pane it counts as double. Our choice.
fn glazing(opening: &Opening) -> Glazing {
    match opening.transmittance {
        whole if whole >= 0.995 => Glazing::Open,
        single if single > 0.82 => Glazing::Single,
        _ => Glazing::Double,
    }
}

#[cfg(test)]
#[path = "skylight_tests.rs"]
mod tests;
