//! What to shoot when: the wish, and the slots that grant it.
//!
//! | idea | what it answers |
//! |---|---|
//! | [`wish`] | what light is wanted, and the part of the sky it may come from |
//! | [`stage`] | a set-up with all that the search must know of it |
//! | [`search`] | when the wish is met: slots, runs, the year, what else would do |
//! | [`shot`] | the face, and what is in the picture |
//! | [`cutting`] | how long takes still match, shot and reverse |
//! | [`legs`] | a subject that moves |
//! | [`grip`] | frames, flags and mirrors over a hold |
//! | [`kit`], [`levels`] | what is brought, and how bright it all is |
//! | [`in_room`] | patches, haze and the best chair of a room |
//! | [`schedule`] | all set-ups in the fewest days |
//! | [`today`], [`calendar`] | the day that is shot, and its clock |

pub mod calendar;
pub mod cutting;
#[cfg(test)]
mod fixture;
pub mod grip;
pub mod in_room;
pub mod kit;
pub mod legs;
pub mod levels;
pub mod schedule;
pub mod search;
pub mod shot;
pub mod stage;
pub mod today;
pub mod told_words;
pub mod wish;
