//! The wish: the light wanted at a set-up.

use chrono::{NaiveDate, NaiveTime};
use serde::{Deserialize, Serialize};

use crate::units::{Degrees, Height};

/// The light wanted at a set-up. Every part must hold at once.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wish {
    /// Where the light may come from, off the lens.
    pub arc: Arc,
    /// How high the sun may stand.
    pub heights: Heights,
    /// Whether the sun itself shall reach the mark.
    #[serde(default)]
    pub sun_on_mark: SunOnMark,
    /// The sky the wish is meant for; the user's word, no weather is known offline.
    #[serde(default)]
    pub sky: Sky,
    /// Dates that are possible; empty means any.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dates: Vec<DateRange>,
    /// Hours of the local clock that are possible; `None` means any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<ClockRange>,
}

/// An arc of light directions off the lens, seen from above.
///
/// 0° is from the camera, 90° from camera right, 180° into the lens, 270° from camera left. It runs from `from`
/// upwards to `to`; `150 → 210` is the arc through the back. `from` is 0 to 360, `to` is at most `from + 360`.
/// With `either_side` the mirror image counts as well.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Arc {
    /// Where it begins.
    #[serde(rename = "from_deg")]
    pub from: Degrees,
    /// Where it ends, not less than `from`.
    #[serde(rename = "to_deg")]
    pub to: Degrees,
    /// Whether the mirrored arc counts as well.
    pub either_side: bool,
}

/// A range of heights above the horizon.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Heights {
    /// Lowest.
    #[serde(rename = "from_deg")]
    pub from: Height,
    /// Highest.
    #[serde(rename = "to_deg")]
    pub to: Height,
}

/// Whether direct sun shall reach the mark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SunOnMark {
    /// Either way.
    #[default]
    Any,
    /// It must.
    Yes,
    /// It must not.
    No,
}

/// Condition of the sky.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sky {
    /// Whatever it is.
    #[default]
    Any,
    /// Clear.
    Clear,
    /// Sun through haze or thin cloud.
    Hazy,
    /// Sun and cloud in turn.
    Broken,
    /// No sun.
    Overcast,
}

/// Dates from the first to the last, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DateRange {
    /// First date.
    pub from: NaiveDate,
    /// Last date.
    pub to: NaiveDate,
}

/// Hours of the local clock; `to` before `from` runs over midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClockRange {
    /// First.
    pub from: NaiveTime,
    /// Last.
    pub to: NaiveTime,
}
