//! The subject's levels with all that is brought: the two sides, back, background, ratio, how much is lit, how hard.

use super::bare::{Bare, index};
use super::hour::Hour;
use super::level::{Level, Origin, Part};
use super::subject::Subject;
use super::trust::Trust;
use crate::light::colour::Chromaticity;
use crate::light::form_factor::centred;
use crate::light::phase::{lit_share, phase};
use crate::light::ratio::Ratio;
use crate::light::relative::LensFrame;
use crate::plan::kit::{Board, Form, Frame, Gear, Lamp, Placed, Side, Thing};
use crate::units::{Lux, Metres, Share, Vector, World};

/// More of it than this, and a light is called hard; less than the other, and it is soft (our choice).
const HARD: f64 = 0.5;
const SOFT: f64 = 0.15;

/// How a light models.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hardness {
    /// Most of it throws sharp shadows.
    Hard,
    /// Some of it does.
    Mixed,
    /// Next to none of it does.
    Soft,
}

/// All of it at one instant.
#[derive(Clone, Debug, PartialEq)]
pub struct Levels {
    /// By [`Side::ALL`].
    pub sides: [Level; 5],
    /// Which cheek is the brighter one.
    pub bright: Side,
    /// The room's own light; `None` in the open.
    pub room: Option<Lux>,
    /// The way the sun comes onto the mark, and the name of the opening; `None` if it does not.
    pub sun: Option<(Vector<World>, String)>,
    /// Share of the subject's disc that the lens sees lit by the sun; `None` without sun on the mark.
    pub lit: Option<Share>,
    /// How sure it is.
    pub trust: Trust,
}

impl Levels {
    /// In an hour, with what stands at the set-up.
    pub fn of(subject: &Subject, hour: &Hour) -> Self {
        Self::with(subject, hour, &Bare::of(subject, hour), &subject.rig.placed)
    }

    /// With something else standing there; `bare` is that of the hour.
    pub fn with(subject: &Subject, hour: &Hour, bare: &Bare, placed: &[Placed]) -> Self {
        let mut sides = bare.levels.clone();
        let found = || placed.iter().filter_map(|one| Some((one, subject.gear(one)?)));
        // Frames first: they change the sun that all others leave alone; boards next, which hide what lamps do not.
        for (one, gear) in found() {
            if let Thing::Frame(frame) = &gear.is {
                soften(&mut sides, frame, one.distance, &gear.name);
            }
        }
        for (one, gear) in found() {
            if let Thing::Board(board) = &gear.is {
                Brought { subject, gear, one }.put_board(&mut sides, board, bare.on_boards[index(one.side)]);
            }
        }
        for (one, gear) in found() {
            if let Thing::Lamp(lamp) = &gear.is {
                Brought { subject, gear, one }.put_lamp(&mut sides, lamp);
            }
        }
        let [left, right] = [Side::Left, Side::Right].map(|side| sides[index(side)].total());
        let lens = LensFrame::new(subject.lens, subject.tilt);
        Self {
            bright: if left > right { Side::Left } else { Side::Right },
            room: bare.room,
            lit: bare.sun.as_ref().map(|(sun, _)| Share::clamped(lit_share(phase(*sun, lens.ahead())))),
            sun: bare.sun.clone(),
            trust: Trust::of(hour, subject.inside.is_some()),
            sides,
        }
    }

    /// The level of a side.
    pub fn level(&self, side: Side) -> &Level {
        &self.sides[index(side)]
    }

    /// The brighter cheek.
    pub fn bright(&self) -> &Level {
        self.level(self.bright)
    }

    /// The darker cheek.
    pub fn shadow(&self) -> &Level {
        self.level(self.bright.other())
    }

    /// Key and fill to fill; `None` where the two sides are alike, or it is dark.
    pub fn ratio(&self) -> Option<Ratio> {
        Ratio::of_sides(self.bright().total(), self.shadow().total())
    }

    /// How the light of the bright side models.
    pub fn hardness(&self) -> Hardness {
        match self.bright().hard() {
            share if share > HARD => Hardness::Hard,
            share if share > SOFT => Hardness::Mixed,
            _ => Hardness::Soft,
        }
    }
}

/// Hangs a frame into the sun: its cloth is the source then, of the size that the subject sees of it.
fn soften(sides: &mut [Level; 5], frame: &Frame, distance: Metres, name: &str) {
    let left = frame.transmittance().fraction() * centred(frame.width, frame.height, distance).fraction();
    for part in sides.iter_mut().take(4).flat_map(|side| &mut side.parts) {
        if part.origin == Origin::Sun {
            *part = Part {
                origin: Origin::Frame,
                name: name.to_owned(),
                lux: part.lux * left,
                hard: false,
                ..part.clone()
            };
        }
    }
}

/// A piece at its place.
struct Brought<'a> {
    subject: &'a Subject,
    gear: &'a Gear,
    one: &'a Placed,
}

impl Brought<'_> {
    /// How squarely a side of the subject faces the piece.
    fn facing(&self, side: Side) -> f64 {
        let background = [side, self.one.side].map(|one| one == Side::Background);
        match background {
            [true, true] => 1.0,
            [false, false] => self.subject.normal(side).dot(self.subject.normal(self.one.side)).max(0.0),
            _ => 0.0,
        }
    }

    /// A board hides its part of what is soft on the side it stands on, and gives back what falls on it: black cloth
    /// little, a white board more.
    fn put_board(&self, sides: &mut [Level; 5], board: &Board, (on_board, colour): (Lux, Chromaticity)) {
        let hidden = centred(board.width, board.height, self.one.distance).fraction();
        let back = board.as_light().returns(on_board, self.one.distance);
        for side in Side::ALL {
            let facing = self.facing(side);
            let level = &mut sides[index(side)];
            for part in &mut level.parts {
                if matches!(part.origin, Origin::Sky | Origin::Ground | Origin::Room) {
                    part.lux = part.lux * (1.0 - hidden * facing);
                }
            }
            level.add(self.part(Origin::Board, back * facing, colour, false));
        }
    }

    fn put_lamp(&self, sides: &mut [Level; 5], lamp: &Lamp) {
        let light = lamp.light(self.one.level, self.one.distance);
        let hard = lamp.form == Form::Point;
        for side in Side::ALL {
            let part = self.part(Origin::Lamp, light * self.facing(side), lamp.colour.chromaticity(), hard);
            sides[index(side)].add(part);
        }
    }

    fn part(&self, origin: Origin, lux: Lux, colour: Chromaticity, hard: bool) -> Part {
        Part { origin, name: self.gear.name.clone(), lux, colour, hard }
    }
}

#[cfg(test)]
#[path = "sides_tests.rs"]
mod tests;
