//! Schedules: all set-ups in the fewest days.
//!
//! # The problem
//!
//! Minutes are counted from local midnight of each day.
//!
//! * A day has an interval [open, close] in which work may happen and a longest span (from call to wrap).
//! * A set-up lasts some minutes, is at a location, has a weight, and lists the windows (day, from, to) that it must
//!   lie in whole.
//! * Between consecutive set-ups of a day the crew moves: `moves[a][b]` minutes (0 for the same location).
//! * Before the first set-up of a day the crew rigs for `leads[location]` minutes, from call on; after the last one it
//!   wraps for `tails[location]` minutes.
//! * If a day's span exceeds the meal limit it needs one meal, between two consecutive set-ups, wholly before or wholly
//!   after the move between them, that starts at most the limit after the first start and ends at most the limit before
//!   the last end. The first start is the first set-up's, or the call ([`problem::MealFrom`]).
//! * Set-ups whose light must match ([`matching::Match`]) lie no further apart in its measures than is allowed, on
//!   whichever days.
//! * From the wrap of a day to the call of the next there is so much rest ([`problem::Rest`]).
//!
//! Objectives, each fixed before the next is optimised: 1. the largest total weight of set-ups done; 2. the fewest days
//! with any work; 3. the least total travel; 4. the least total span; 5. on each day the largest least slack, which is
//! how late the set-up nearest to the end of its window could begin.
//!
//! Without leads, tails, matches and rests this is the problem of `tests/data/make/schedules.py`, and its first four objectives.
//!
//! # The way
//!
//! [`day`] finds for each set of set-ups of one day the least travel and span: a walk over (set, last location) with
//! labels ([`label`]). [`assign`] deals the sets out to the days by submasks. Both are exact, up to
//! [`problem::EXACT`] set-ups. [`timing`] gives the chosen sets their order, times and slack. More set-ups are packed by
//! improving a plan two days at a time ([`many`]), and matches and rests are branches of the search ([`matched`]).
//! What is not proved says so, with a bound ([`solution`]).
//!
//! Everything runs in slices ([`solver`]), so that a page stays alive; the same problem always gives the same plan.

mod assign;
mod day;
mod exact;
mod join;
mod label;
mod many;
mod matched;
pub mod matching;
pub mod problem;
pub mod say;
pub mod solution;
pub mod solver;
#[cfg(test)]
mod solver_tests;
mod timing;
mod walk;
