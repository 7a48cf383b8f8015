//! The file of a project against what files go through: round trips, damage, hostile hands, other programs, time.

mod demo;
mod fuzzed;
mod hostile;
mod mended;
mod mutated;
mod mutations;
mod samples;
mod schema;
mod shot_list;
mod whole;
