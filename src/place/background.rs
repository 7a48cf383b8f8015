//! Backgrounds: what stands behind the subject, by the bearing the camera looks to.

use serde::{Deserialize, Serialize};

use crate::units::{Bearing, Degrees};

/// An arc of bearings, clockwise, and whether it is fit to be seen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Background {
    /// Where it begins.
    #[serde(rename = "from_deg")]
    pub from: Bearing,
    /// Where it ends, clockwise from `from`; the same bearing means all the way round.
    #[serde(rename = "to_deg")]
    pub to: Bearing,
    /// Whether it may be in the picture.
    pub good: bool,
    /// "the boats", "car park".
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub why: String,
}

impl Background {
    /// Whether the camera sees it when it looks to `lens`; both ends count.
    pub fn contains(&self, lens: Bearing) -> bool {
        let width = self.from.turn_to(self.to).positive();
        width == Degrees::default() || self.from.turn_to(lens).positive() <= width
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arc_may_run_over_north() {
        let arc = |from, to| Background {
            from: Bearing::from_degrees(from),
            to: Bearing::from_degrees(to),
            good: true,
            why: String::new(),
        };
        let north = arc(350.0, 20.0);
        assert!(north.contains(Bearing::from_degrees(0.0)) && north.contains(Bearing::from_degrees(20.0)));
        assert!(!north.contains(Bearing::from_degrees(180.0)));
        assert!(arc(10.0, 10.0).contains(Bearing::from_degrees(200.0)));
    }
}
