//! The file of a project against what files go through: round trips, damage, hostile hands, other programs, time.

mod demo;
mod hostile;
mod mended;
mod mutated;
mod samples;
mod shot_list;
mod whole;
