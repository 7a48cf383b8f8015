//! Levels: how bright each side of a subject is at an instant, what makes it so, and what to change.
//!
//! | file | holds |
//! |---|---|
//! | `hour` | the light of an hour: sun, sky, moon, corrected by a meter |
//! | `subject` | a set-up, resolved: views, room, kit, lights there |
//! | `bare` | daylight and lights there on each side, before anything is brought |
//! | `level` | one side's light in its parts |
//! | `sides` | the subject's levels with what is brought, ratio, lit part, hardness |
//! | `trust` | how far off all that may be |
//! | `answer` | what to change for a wished ratio, best first |
//! | `exposure` | a camera in this light: any one setting from the others, tones, window against room |
//! | `dusk` | the light through an evening: a stop every so many minutes, and when a lens runs out |
//! | `ramp` | the T-stops of a camera through it |
//! | `day` | the curves of a day |
//! | `colours` | rows of colour: temperature, mireds, filters, contrast, swatches |
//! | `towards` | what haze and a wet floor do towards the lens |
//! | `level_wish`, `wished` | conditions on levels, and when they hold |
//! | `say`, `rows`, `notes`, `sheet` | all of it in words, and as the screen prints it |
//! | `brief` | what the people who rig read of it on paper |
//!
//! The four sides of a subject are the lens': its two cheeks, half-way between the lens and the side; its back, away from the
//! lens; and what stands behind it, facing the lens. The brighter cheek is the bright side. A ratio is bright side to shadow
//! side as a meter reads them there: key and fill to fill. Models are those of `light::daylight`; no weather is known.

pub mod answer;
pub mod bare;
pub mod brief;
pub mod colours;
pub mod day;
pub mod dusk;
pub mod exposure;
pub mod hour;
pub mod level;
mod level_wish;
mod notes;
pub mod ramp;
pub mod rows;
pub mod say;
pub mod sheet;
pub mod sides;
pub mod subject;
mod tints;
pub mod towards;
pub mod trust;
pub mod wished;

#[cfg(test)]
pub(super) mod fixture;

pub use hour::Hour;
pub use level::{Level, Origin, Part};
pub use sides::Levels;
pub use subject::Subject;
