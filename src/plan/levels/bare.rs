//! What daylight, a room and the lights that are there give on each side of a subject, before anything is brought.
//!
//! A room's own light is [`crate::light::interreflected`]'s. It is the least certain part: walls near the subject may give
//! twice as much.

use super::hour::Hour;
use super::level::{Level, Origin, Part};
use super::subject::Subject;
use super::tints::Tints;
use crate::light::colour::{Chromaticity, mix};
use crate::light::interreflected::Bounced;
use crate::light::skylight::Inside;
use crate::place::room::Room;
use crate::plan::kit::{Side, There};
use crate::plan::wish::ClockRange;
use crate::units::{Lux, Vector, World};

/// Place of the background in [`Side::ALL`].
const BEHIND: usize = 4;

/// Levels of the five sides, and what would fall on a board that faces the subject from each.
#[derive(Clone, Debug, PartialEq)]
pub struct Bare {
    /// By [`Side::ALL`].
    pub levels: [Level; 5],
    /// On boards, by [`Side::ALL`].
    pub on_boards: [(Lux, Chromaticity); 5],
    /// The way the sun comes onto the mark, and the name of its opening; `None` if it does not.
    pub sun: Option<(Vector<World>, String)>,
    /// The room's own light.
    pub room: Option<Lux>,
}

impl Bare {
    /// In an hour.
    pub fn of(subject: &Subject, hour: &Hour) -> Self {
        let tints = Tints::of(hour);
        let normals = Side::ALL.map(|side| subject.normal(side));
        let own = |(room, _): &(Room, _)| own_light(subject, room, hour, &tints);
        let none = (Lux::default(), tints.sky);
        let room = subject.inside.as_ref().map(|inside| inside.room.as_ref().map_or(none, own));
        let sun = subject.sun_through(hour.at, hour.sun).map(|(name, _)| (hour.sun, name.to_owned()));
        let light = Light { subject, hour, tints, room };
        let [levels, boards] = light.levels(normals);
        let on_boards = boards.map(|level| (level.total(), level.colour().unwrap_or(tints.sky)));
        Self { levels, on_boards, sun, room: room.map(|(lux, _)| lux) }
    }

    /// The level of a side.
    pub fn level(&self, side: Side) -> &Level {
        &self.levels[index(side)]
    }
}

/// Place of a side in [`Side::ALL`].
pub(super) fn index(side: Side) -> usize {
    Side::ALL.iter().position(|one| *one == side).expect("all sides are in the list")
}

struct Light<'a> {
    subject: &'a Subject,
    hour: &'a Hour,
    tints: Tints,
    room: Option<(Lux, Chromaticity)>,
}

impl Light<'_> {
    /// On the sides, and on boards that face the subject from there. What stands behind the subject is a spot of its own.
    fn levels(&self, sides: [Vector<World>; 5]) -> [[Level; 5]; 2] {
        let planes: [_; 10] = core::array::from_fn(|at| if at < 5 { sides[at] } else { -sides[at - 5] });
        let sees = self.subject.sees_at(self.hour.at);
        let mut around = self.hour.on_planes(&sees.view, planes);
        [around[BEHIND]] = self.hour.on_planes(&sees.behind, [planes[BEHIND]]);
        let on = |there: &There| self.is_on(there.hours);
        let there: Vec<&There> = self.subject.there.iter().filter(|there| on(there)).collect();
        let level = |at: usize| self.level(planes[at], around[at], &there);
        [core::array::from_fn(level), core::array::from_fn(|at| level(at + 5))]
    }

    fn level(&self, plane: Vector<World>, (sky, ground): (Lux, Lux), there: &[&There]) -> Level {
        let mut level = Level::default();
        self.add_discs(&mut level, plane);
        level.add(part(Origin::Sky, sky, self.tints.sky));
        level.add(part(Origin::Ground, ground, self.tints.ground));
        if let Some((lux, colour)) = self.room {
            level.add(part(Origin::Room, lux, colour));
        }
        for there in there {
            let facing = there.bearing.map_or(1.0, |bearing| bearing.level().dot(plane).max(0.0));
            let (lux, colour) = (there.lux * facing, there.colour.chromaticity());
            let hard = there.bearing.is_some();
            level.add(Part { origin: Origin::There, name: there.name.clone(), lux, colour, hard });
        }
        level
    }

    /// Sun and moon, where they reach the mark.
    fn add_discs(&self, level: &mut Level, plane: Vector<World>) {
        let moon = self.hour.moon.map(|(towards, light)| (towards, light, Origin::Moon, self.tints.moon));
        let sun = (self.hour.sun, self.hour.light.beam, Origin::Sun, self.tints.sun);
        for (towards, beam, origin, colour) in [Some(sun), moon].into_iter().flatten() {
            if let Some((name, through)) = self.subject.sun_through(self.hour.at, towards) {
                let lux = beam.share(through) * towards.dot(plane).max(0.0);
                level.add(Part { origin, name: name.to_owned(), lux, colour, hard: true });
            }
        }
    }

    fn is_on(&self, hours: Option<ClockRange>) -> bool {
        let time = self.subject.zone.local(self.hour.at).time();
        hours.is_none_or(|hours| hours.contains(time))
    }
}

fn part(origin: Origin, lux: Lux, colour: Chromaticity) -> Part {
    Part { origin, name: String::new(), lux, colour, hard: false }
}

/// The light that a room's own surfaces give.
fn own_light(subject: &Subject, room: &Room, hour: &Hour, tints: &Tints) -> (Lux, Chromaticity) {
    let sees = subject.sees_at(hour.at);
    let inside = Inside { room, line: &sees.skyline };
    let before = |outward| {
        let [light] = hour.on_planes(&sees.outside, [outward]);
        light
    };
    let Bounced { sun, sky, ground } = Bounced::of(&inside, (hour.sun, hour.light.beam), before);
    let parts = [(sun, tints.sun), (sky, tints.sky), (ground, tints.ground)];
    mix::mix(&parts).unwrap_or((Lux::default(), tints.sky))
}
