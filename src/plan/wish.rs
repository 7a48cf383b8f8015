//! The wish: the light wanted at a set-up.

pub mod face;
pub mod lens;
pub mod presets;
pub mod region;
pub mod still;

use chrono::{NaiveDate, NaiveTime};
use serde::{Deserialize, Serialize};

use crate::plan::levels::wished::LevelWish;
use crate::units::{Degrees, Height};
use face::{FaceWish, InPicture};

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
    /// The light on the face.
    #[serde(default, skip_serializing_if = "FaceWish::is_any")]
    pub face: FaceWish,
    /// The sun in the picture.
    #[serde(default, skip_serializing_if = "InPicture::is_any")]
    pub in_picture: InPicture,
    /// How bright and how contrasty it shall be; empty means however it is.
    #[serde(default, skip_serializing_if = "LevelWish::is_empty")]
    pub levels: LevelWish,
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

impl Wish {
    /// Whether light may come so nearly from before the lens that the sun stands in or near the picture: within
    /// 30° of straight back, our own choice of caution.
    pub fn may_face_the_sun(&self) -> bool {
        const NEAR: f64 = 30.0;
        let below = self.heights.to.degrees() <= 0.0;
        let (from, width) = (self.arc.from.degrees(), self.arc.to.degrees() - self.arc.from.degrees());
        // The arc holds an angle near the back if the first such angle after its begin is no further than its width.
        let reaches = |from: f64| {
            let ahead = (180.0 - NEAR - from).rem_euclid(360.0);
            ahead <= width || ahead >= 360.0 - 2.0 * NEAR
        };
        !below && (reaches(from) || self.arc.either_side && reaches(-from - width))
    }
}

impl Heights {
    /// With another lowest height; the highest gives way.
    pub fn with_lowest(self, from: Height) -> Self {
        Self { from, to: if self.to < from { from } else { self.to } }
    }

    /// With another highest height; the lowest gives way.
    pub fn with_highest(self, to: Height) -> Self {
        Self { from: if self.from > to { to } else { self.from }, to }
    }
}

impl DateRange {
    /// A range of which one end was typed anew; the other end follows where it would be passed. An end that was
    /// emptied, or is no date, ends the range.
    pub fn typed(now: Option<Self>, from: Option<&str>, to: Option<&str>) -> Option<Self> {
        let (from, to): (Option<NaiveDate>, Option<NaiveDate>) = match (from, to) {
            (Some(from), _) => (from.parse().ok(), now.map(|range| range.to)),
            (_, Some(to)) => (now.map(|range| range.from), to.parse().ok()),
            _ => return now,
        };
        match (from, to) {
            (Some(from), Some(to)) if from <= to => Some(Self { from, to }),
            (Some(one), None) | (None, Some(one)) if now.is_none() => Some(Self { from: one, to: one }),
            (Some(from), Some(to)) => {
                let typed = if now.is_some_and(|range| range.from == from) { to } else { from };
                Some(Self { from: typed, to: typed })
            }
            _ => None,
        }
    }
}

impl ClockRange {
    /// Whether a time of the clock is among them; the end is not. Both ends the same is the whole day.
    pub fn contains(self, time: NaiveTime) -> bool {
        if self.from < self.to {
            (self.from..self.to).contains(&time)
        } else {
            time >= self.from || time < self.to
        }
    }

    /// Hours of which one end was typed anew; the other end starts at midnight. An end that was emptied, or is no
    /// time, ends the range.
    pub fn typed(now: Option<Self>, from: Option<&str>, to: Option<&str>) -> Option<Self> {
        let whole = Self { from: NaiveTime::MIN, to: NaiveTime::MIN };
        let kept = now.unwrap_or(whole);
        let time = |text: &str| text.parse::<NaiveTime>().ok();
        match (from, to) {
            (Some(from), _) => Some(Self { from: time(from)?, ..kept }),
            (_, Some(to)) => Some(Self { to: time(to)?, ..kept }),
            _ => now,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wish(from: f64, to: f64, either_side: bool) -> Wish {
        Wish {
            arc: Arc { from: Degrees::from_degrees(from), to: Degrees::from_degrees(to), either_side },
            heights: Heights { from: Height::clamped(4.0), to: Height::clamped(16.0) },
            sun_on_mark: SunOnMark::Any,
            sky: Sky::Any,
            dates: Vec::new(),
            hours: None,
            face: FaceWish::default(),
            in_picture: InPicture::Any,
            levels: LevelWish::default(),
        }
    }

    #[test]
    fn the_caution_stands_where_the_sun_can_face_the_lens() {
        assert!(wish(112.0, 165.0, true).may_face_the_sun());
        assert!(wish(195.0, 248.0, false).may_face_the_sun());
        assert!(wish(300.0, 520.0, false).may_face_the_sun(), "an arc through the front to the back");
        assert!(!wish(60.0, 149.0, true).may_face_the_sun());
        assert!(!wish(337.5, 382.5, true).may_face_the_sun());
        let mut blue_hour = wish(0.0, 360.0, true);
        assert!(blue_hour.may_face_the_sun());
        blue_hour.heights = Heights { from: Height::clamped(-6.0), to: Height::clamped(-4.0) };
        assert!(!blue_hour.may_face_the_sun());
    }

    #[test]
    fn dates_are_typed_one_end_at_a_time() {
        let range = |from: &str, to: &str| DateRange { from: from.parse().unwrap(), to: to.parse().unwrap() };
        let march = range("2027-03-04", "2027-03-21");
        assert_eq!(DateRange::typed(None, Some("2027-03-04"), None), Some(range("2027-03-04", "2027-03-04")));
        assert_eq!(
            DateRange::typed(Some(march), None, Some("2027-03-30")),
            Some(range("2027-03-04", "2027-03-30"))
        );
        assert_eq!(
            DateRange::typed(Some(march), Some("2027-04-01"), None),
            Some(range("2027-04-01", "2027-04-01"))
        );
        assert_eq!(
            DateRange::typed(Some(march), None, Some("2027-03-01")),
            Some(range("2027-03-01", "2027-03-01"))
        );
        assert_eq!(DateRange::typed(Some(march), Some(""), None), None);
    }

    #[test]
    fn hours_are_typed_one_end_at_a_time() {
        let hours = ClockRange::typed(None, Some("15:30"), None).unwrap();
        let hours = ClockRange::typed(Some(hours), None, Some("18:00")).unwrap();
        assert_eq!((hours.from.to_string(), hours.to.to_string()), ("15:30:00".into(), "18:00:00".into()));
        assert_eq!(ClockRange::typed(Some(hours), None, Some("")), None);
    }

    #[test]
    fn heights_give_way_to_each_other() {
        let heights = Heights { from: Height::clamped(4.0), to: Height::clamped(16.0) };
        assert_eq!(heights.with_lowest(Height::clamped(20.0)).to, Height::clamped(20.0));
        assert_eq!(heights.with_highest(Height::clamped(2.0)).from, Height::clamped(2.0));
    }
}
