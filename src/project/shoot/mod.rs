//! The shoot: which days, by which rules, and what stands when.
//!
//! All of it is one member of the document, `shoot`, with defaults for everything. Set-ups, scenes and locations are
//! named by their ids; what is not in the project any more is passed over. The plan itself is a start for each set-up:
//! calls, moves, meals and wraps follow from it ([`day`]) and are not kept.
//!
//! | path | holds |
//! |---|---|
//! | `days[]` | dates on which work is possible |
//! | `limits` | earliest call, latest wrap, longest day |
//! | `meal`, `rest` | the rules that somebody has chosen, with the name they go by |
//! | `places{}` | by location: rig times, hours, crowds, cost, hazards |
//! | `drives[]` | minutes between two locations, where they were typed |
//! | `free[]` | people and things that are there at certain hours only |
//! | `matches{}` | by scene: minutes on the clock within which its light matches; 0 for the limits of the shot, 1440 for none |
//! | `weights{}` | by set-up: how much it matters, 1 unless said |
//! | `plan[]` | what stands when, and what is pinned |

pub mod cautions;
pub mod conflicts;
pub mod day;
pub mod hand;
pub mod matching;
#[cfg(test)]
mod matching_tests;
pub mod out;
pub mod people;
pub mod problem;
pub mod sheet;
pub mod suggest;
pub mod typing;
#[cfg(test)]
mod typing_tests;

use std::collections::BTreeMap;

use chrono::{NaiveDate, NaiveTime};
use serde::{Deserialize, Serialize};

use crate::plan::schedule::problem::MealFrom;
use crate::plan::today::backwards::RigTimes;
use crate::plan::wish::ClockRange;
use crate::units::Instant;

/// The shoot.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Shoot {
    /// Dates on which work is possible.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub days: Vec<NaiveDate>,
    /// Limits of a day.
    pub limits: Limits,
    /// The meal rule.
    pub meal: MealRule,
    /// The rest rule.
    pub rest: RestRule,
    /// What locations take, by their id.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub places: BTreeMap<String, PlaceWork>,
    /// Drives that were typed.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub drives: Vec<Drive>,
    /// Who and what is there at certain hours only.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub free: Vec<Free>,
    /// Minutes on the clock within which a scene's light matches, by its id; see [`matching::Bound`].
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub matches: BTreeMap<String, u16>,
    /// How much a set-up matters, by its id.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub weights: BTreeMap<String, u16>,
    /// What stands when.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub plan: Vec<Placed>,
}

/// Limits of every day, on the local clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Limits {
    /// No call before.
    pub call: NaiveTime,
    /// No wrap after; at or before the call it is the next morning's.
    pub wrap: NaiveTime,
    /// From call to wrap, minutes.
    pub longest_minutes: u16,
}

impl Default for Limits {
    /// A day of ten hours and a meal (handbook I1, common practice).
    fn default() -> Self {
        let clock = |hour| NaiveTime::from_hms_opt(hour, 0, 0).unwrap_or_default();
        Self { call: clock(5), wrap: clock(23), longest_minutes: 660 }
    }
}

/// What the meal is counted from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CountedFrom {
    /// From call.
    #[default]
    Call,
    /// From the first set-up.
    FirstSetUp,
}

impl From<CountedFrom> for MealFrom {
    fn from(from: CountedFrom) -> Self {
        match from {
            CountedFrom::Call => Self::Call,
            CountedFrom::FirstSetUp => Self::FirstSetUp,
        }
    }
}

/// A meal rule, by the name it goes by where it was agreed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MealRule {
    /// "Six hours".
    pub name: String,
    /// Longest work without a meal, minutes.
    pub within_minutes: u16,
    /// Length of the meal, minutes.
    pub minutes: u16,
    /// What it is counted from.
    #[serde(default)]
    pub from: CountedFrom,
}

impl Default for MealRule {
    /// Common practice, no source.
    fn default() -> Self {
        Self { name: "six hours".to_owned(), within_minutes: 360, minutes: 60, from: CountedFrom::Call }
    }
}

/// A rest rule, by the name it goes by where it was agreed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RestRule {
    /// "Eleven hours".
    pub name: String,
    /// From wrap to the next call, minutes.
    pub minutes: u16,
}

impl Default for RestRule {
    /// Eleven hours (European directive 2003/88/EC, art. 3); a setting, and never a claim to comply.
    fn default() -> Self {
        Self { name: "eleven hours".to_owned(), minutes: 660 }
    }
}

/// What work at a location takes and allows.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PlaceWork {
    /// Before the first set-up and after the last.
    pub times: RigTimes,
    /// Hours for which there is permission; `None` for any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hours: Option<ClockRange>,
    /// Who passes when.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub crowd: String,
    /// What a day there costs, in the production's own money.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub day_cost: Option<u32>,
    /// What there is to beware of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Hazard>,
}

/// What there is to beware of at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Wet floor, or water near power.
    Wet,
    /// An edge nobody has fenced.
    Edge,
    /// A road, or a vehicle that moves.
    Road,
}

/// A drive, the same in both directions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Drive {
    /// One location.
    pub from: String,
    /// The other.
    pub to: String,
    /// Minutes on the road.
    pub minutes: u16,
}

/// Somebody or something that is there at certain hours only.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Free {
    /// "Rosa", "the boat".
    pub name: String,
    /// Hours of the local clock.
    pub hours: ClockRange,
    /// Set-ups that need them, by id; none listed means all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_ups: Vec<String>,
}

/// A set-up in its place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Placed {
    /// Set-up.
    pub set_up: String,
    /// When it begins.
    pub start: Instant,
    /// Whether the solver must leave it there.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub pinned: bool,
}

impl Shoot {
    /// Whether nobody has said anything.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// What work at a location takes.
    pub fn place(&self, location: &str) -> PlaceWork {
        self.places.get(location).cloned().unwrap_or_default()
    }

    /// Where a set-up stands.
    pub fn placed(&self, set_up: &str) -> Option<&Placed> {
        self.plan.iter().find(|placed| placed.set_up == set_up)
    }
}
