//! What was seen of the sun: the numbers of the three ways, and the bearing they give.

use leptos::prelude::*;
use slantlight::light::wall_bearing::{Corner, FromSun, Graze, Taped, from_graze, from_patch, from_upright};
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Metres};

use super::shown::Shown;

/// A minute later the sun's way shows.
const LATER: Duration = Duration::from_minutes(1);

/// Everything that can be typed; cheap to copy.
#[derive(Clone, Copy)]
pub struct Seen {
    /// Graze, patch, shadow.
    pub way: RwSignal<usize>,
    /// Wall of a graze or a shadow, counted from 1.
    pub wall: RwSignal<f64>,
    /// Began or ceased.
    pub graze: RwSignal<usize>,
    /// Good to so many minutes.
    pub watch: RwSignal<f64>,
    /// Opening by its place.
    pub opening: RwSignal<usize>,
    /// Upper left, upper right, lower left, lower right, seen from inside.
    pub corner: RwSignal<usize>,
    /// Along the wall.
    pub along: RwSignal<Metres>,
    /// Into the room.
    pub into: RwSignal<Metres>,
    /// The tape is good to.
    pub tape: RwSignal<Metres>,
    /// Height of the upright; nought if unknown.
    pub height: RwSignal<Metres>,
}

impl Seen {
    /// Nothing typed yet.
    pub fn new() -> Self {
        let metres = |metres: f64| RwSignal::new(Metres::from_metres(metres));
        Self {
            way: RwSignal::new(0),
            wall: RwSignal::new(1.0),
            graze: RwSignal::new(0),
            watch: RwSignal::new(2.0),
            opening: RwSignal::new(0),
            corner: RwSignal::new(0),
            along: metres(0.0),
            into: metres(0.0),
            tape: metres(0.03),
            height: metres(0.0),
        }
    }

    /// The wall and its bearing at the shown instant; tracked. `None` where nothing follows from it.
    pub fn found(self, shown: Shown) -> Option<(usize, FromSun)> {
        let at = shown.store.moment.to_the_minute();
        let sun = Sun::new(shown.with_location(|location| location.site)?);
        let now = sun.apparent(at);
        let at_tape = Taped { along: self.along.get(), into: self.into.get(), tape: self.tape.get() };
        let wall = (self.wall.get() as usize).saturating_sub(1);
        match self.way.get() {
            0 => {
                let graze = if self.graze.get() == 0 { Graze::Began } else { Graze::Ceased };
                let watch = Duration::from_seconds(self.watch.get() * 60.0);
                (now.z > 0.0).then(|| (wall, from_graze(graze, [now, sun.apparent(at + LATER)], watch)))
            }
            1 => {
                let (opening, corner) = (self.opening.get(), self.corner.get());
                let corner = Corner { left: corner % 2 == 0, head: corner < 2 };
                shown.with(|room| {
                    let opening = room.openings.get(opening)?;
                    Some((opening.wall, from_patch(opening, corner, at_tape, now)?))
                })?
            }
            _ => {
                let height = Some(self.height.get()).filter(|height| height.metres() > 0.0);
                Some((wall, from_upright(at_tape, height, now)?))
            }
        }
    }
}
