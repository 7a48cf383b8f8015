//! What is wrong with a room: every fault with its place and its numbers, none repaired silently.

use core::fmt;

use super::floor;
use super::mark::Mark;
use super::opening::Opening;
use super::room::Room;
use crate::units::Metres;

/// Corners a floor may have.
pub const CORNERS: core::ops::RangeInclusive<usize> = 3..=12;

/// Sizes that fit within this fit, metres. Our choice: below any tape.
const FIT: f64 = 1e-6;

/// Something wrong with a room. Walls and corners are counted from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// Too few or too many corners.
    Corners {
        /// How many there are.
        count: usize,
    },
    /// A number is missing or without bounds.
    NotANumber,
    /// Two corners fall together.
    NoLength {
        /// Wall without length.
        wall: usize,
    },
    /// Two walls cross or touch.
    Crossing {
        /// One wall.
        wall: usize,
        /// The other.
        other: usize,
    },
    /// Corners run clockwise.
    Clockwise,
    /// Corner 0 is not the origin, or corner 1 not on the x axis.
    Axes,
    /// The ceiling is not above the floor.
    Ceiling {
        /// Its height.
        ceiling: Metres,
    },
    /// An opening in a wall that the room does not have.
    NoSuchWall {
        /// Name of the opening.
        opening: String,
        /// The wall it names.
        wall: usize,
    },
    /// An opening without width or height, or with a size below nought.
    Size {
        /// Name of the opening.
        opening: String,
    },
    /// An opening that runs out of its wall.
    PastWall {
        /// Name of the opening.
        opening: String,
        /// Where along the wall it ends.
        end: Metres,
        /// Length of the wall.
        length: Metres,
    },
    /// An opening that runs into the ceiling.
    PastCeiling {
        /// Name of the opening.
        opening: String,
        /// Its upper edge.
        head: Metres,
        /// The ceiling.
        ceiling: Metres,
    },
    /// A roof light that is not over the floor.
    PastRoof {
        /// Name of the opening.
        opening: String,
    },
    /// A share of light that is not 0 to 1.
    Transmittance {
        /// Name of the opening.
        opening: String,
        /// The share given.
        given: f64,
    },
    /// A mark that is not on the floor.
    MarkOutside {
        /// Name of the mark.
        mark: String,
    },
    /// A face below the floor or above the ceiling.
    FaceOutside {
        /// Name of the mark.
        mark: String,
        /// Height of the face.
        height: Metres,
    },
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Corners { count } => write!(f, "the floor has {count} corners; 3 to 12 are possible"),
            Self::NotANumber => write!(f, "a size is not a number"),
            Self::NoLength { wall } => write!(f, "wall {} has no length", wall + 1),
            Self::Crossing { wall, other } => write!(f, "walls {} and {} cross", wall + 1, other + 1),
            Self::Clockwise => write!(f, "the corners run clockwise seen from above"),
            Self::Axes => write!(f, "wall 1 does not run from the origin along x"),
            Self::Ceiling { ceiling } => write!(f, "the ceiling is at {} m", ceiling.metres()),
            Self::NoSuchWall { opening, wall } => write!(f, "{opening}: there is no wall {}", wall + 1),
            Self::Size { opening } => write!(f, "{opening}: width and height must be more than nought"),
            Self::PastWall { opening, end, length } => {
                write!(f, "{opening}: ends at {} m in a wall of {} m", end.metres(), length.metres())
            }
            Self::PastCeiling { opening, head, ceiling } => {
                write!(f, "{opening}: reaches {} m under a ceiling of {} m", head.metres(), ceiling.metres())
            }
            Self::PastRoof { opening } => write!(f, "{opening}: part of it lies beyond the floor"),
            Self::Transmittance { opening, given } => {
                write!(f, "{opening}: lets {given} of the light through; 0 to 1 is possible")
            }
            Self::MarkOutside { mark } => write!(f, "{mark}: stands outside of the floor"),
            Self::FaceOutside { mark, height } => {
                write!(f, "{mark}: a face at {} m is not in the room", height.metres())
            }
        }
    }
}

impl core::error::Error for Fault {}

impl Room {
    /// Everything wrong with it; empty for a sound room.
    pub fn check(&self) -> Vec<Fault> {
        let mut faults: Vec<Fault> = self.floor_fault().into_iter().collect();
        if !(self.ceiling.metres() > 0.0 && self.ceiling.metres().is_finite()) {
            faults.push(Fault::Ceiling { ceiling: self.ceiling });
        }
        faults.extend(self.openings.iter().flat_map(|opening| self.opening_faults(opening)));
        faults.extend(self.marks.iter().filter_map(|mark| self.mark_fault(mark)));
        faults
    }

    /// The first fault of the floor: what comes after it would only repeat it.
    fn floor_fault(&self) -> Option<Fault> {
        let count = self.floor.len();
        if !CORNERS.contains(&count) {
            return Some(Fault::Corners { count });
        }
        if self.floor.iter().flatten().any(|size| !size.metres().is_finite()) {
            return Some(Fault::NotANumber);
        }
        if let Some(wall) = (0..count).find(|wall| self.wall(*wall).is_none_or(|w| w.length.metres() < FIT)) {
            return Some(Fault::NoLength { wall });
        }
        if let Some((wall, other)) = floor::crossing(&self.floor) {
            return Some(Fault::Crossing { wall, other });
        }
        if floor::twice_area(&self.floor) <= 0.0 {
            return Some(Fault::Clockwise);
        }
        let [[x, y], [right, up]] = [self.floor[0], self.floor[1]].map(|corner| corner.map(Metres::metres));
        let astray = x.abs() > FIT || y.abs() > FIT || up.abs() > FIT || right < 0.0;
        astray.then_some(Fault::Axes)
    }

    fn opening_faults(&self, opening: &Opening) -> Vec<Fault> {
        let name = || opening.name.clone();
        let Some(wall) = self.face_of(opening) else {
            return vec![Fault::NoSuchWall { opening: name(), wall: opening.wall }];
        };
        if has_bad_size(opening) {
            return vec![Fault::Size { opening: name() }];
        }
        let mut faults: Vec<Fault> = bad_share(opening).into_iter().collect();
        if opening.in_ceiling {
            faults.extend((!self.is_over_floor(opening)).then(|| Fault::PastRoof { opening: name() }));
            return faults;
        }
        let (end, length) = (opening.offset.metres() + opening.width.metres(), wall.length);
        if opening.offset.metres() < -FIT || end > length.metres() + FIT {
            faults.push(Fault::PastWall { opening: name(), end: Metres::from_metres(end), length });
        }
        let head = opening.sill.metres() + opening.height.metres();
        if head > self.ceiling.metres() + FIT {
            let head = Metres::from_metres(head);
            faults.push(Fault::PastCeiling { opening: name(), head, ceiling: self.ceiling });
        }
        faults
    }

    /// Whether all corners of a roof light are.
    fn is_over_floor(&self, opening: &Opening) -> bool {
        self.frame(opening).is_some_and(|frame| {
            frame
                .inner
                .iter()
                .all(|corner| self.holds(Metres::from_metres(corner.x), Metres::from_metres(corner.y)))
        })
    }

    fn mark_fault(&self, mark: &Mark) -> Option<Fault> {
        if !self.holds(mark.x, mark.y) {
            return Some(Fault::MarkOutside { mark: mark.name.clone() });
        }
        let inside = (0.0..=self.ceiling.metres()).contains(&mark.face_height.metres());
        (!inside).then(|| Fault::FaceOutside { mark: mark.name.clone(), height: mark.face_height })
    }
}

fn bad_share(opening: &Opening) -> Option<Fault> {
    let given = opening.transmittance;
    (!(0.0..=1.0).contains(&given)).then(|| Fault::Transmittance { opening: opening.name.clone(), given })
}

/// Whether a size of an opening is not a number, below nought, or nought where it must not be.
fn has_bad_size(opening: &Opening) -> bool {
    let over = opening.overhang.map_or([Metres::default(); 2], |slab| [slab.depth, slab.above]);
    let least_nought = [opening.sill, opening.reveal, over[0], over[1]];
    let positive = |size: &Metres| size.metres() > 0.0 && size.metres().is_finite();
    let not_below = |size: &Metres| size.metres() >= 0.0 && size.metres().is_finite();
    !([opening.width, opening.height].iter().all(positive)
        && least_nought.iter().all(not_below)
        && opening.offset.metres().is_finite())
}

#[cfg(test)]
#[path = "fault_tests.rs"]
mod tests;
