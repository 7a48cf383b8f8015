//! What to shoot when: the wish, and the slots that grant it.

pub mod above;
pub mod answers;
pub mod calendar;
pub mod face_wish;
#[cfg(test)]
mod fixture;
pub mod free_lens;
pub mod kit;
pub mod lens;
pub mod levels;
pub mod match_limit;
pub mod met;
pub mod on_mark;
pub mod only_here;
pub mod otherwise;
pub mod presets;
pub mod reason;
pub mod region;
pub mod runs;
pub mod same_light;
pub mod schedule;
pub mod search;
pub mod shot;
pub mod slot;
pub mod stage;
pub mod through_window;
pub mod today;
pub mod travel;
pub mod uncertainty;
pub mod wish;
pub mod words;
pub mod year;
