//! Slantlight's answers beside tables and printed examples of others.
//!
//! Each table has a module with a check, `fn(&Path) -> Result<Worst, Failure>`: it reads the table from a folder,
//! compares every row and reports the worst errors (shown with `--nocapture`). `spoiled` proves that no check is
//! blind: one wrong value must fail it, with file and line. `kit` is the strict loader that all share.
//!
//! To add a table: put it into `tests/data`, its row count into `kit::tables::ROWS`, write the module, call
//! `kit::verify` in its test, and add a line to `spoiled`.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::print_stdout, reason = "worst errors are shown with --nocapture")]
#![allow(clippy::disallowed_methods, reason = "checks compute on their own, not through the library")]

mod colour;
mod daylight;
mod declination;
#[allow(dead_code, reason = "one kit for all tables; not every table reads every kind of cell")]
mod kit;
mod moon;
mod plus_code;
mod schedule_checker;
mod schedules;
mod spa_example;
mod spoiled;
mod sun_events;
mod sun_positions;
mod window_light;
mod window_sky;
mod zones;
