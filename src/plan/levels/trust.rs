//! How far off a level may be, and how finely it may be said (handbook L).
//!
//! Clear skies: a quarter, a third of a stop. Cloud: a factor of two to five between thin and thick. Twilight below −6°: moon
//! and town decide; nearest stop. A meter's word takes the model's error away, not the kit's.

use super::hour::Hour;
use crate::light::daylight::{Correction, Sky};
use crate::units::{Height, Lux, Stops};

/// Below this the twilight is worth a factor of two.
const DARK: Height = Height::clamped(-6.0);

/// A third of a stop.
const THIRD: Stops = Stops::from_stops(1.0 / 3.0);

/// How sure a level is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trust {
    /// Up and down.
    pub either_way: Stops,
    /// Whether only a range is worth showing.
    pub is_range: bool,
    /// Whether whole stops are all it is worth.
    pub whole_stops: bool,
}

impl Trust {
    /// Of levels in an hour, in a room or in the open.
    pub fn of(hour: &Hour, in_room: bool) -> Self {
        if hour.height() < DARK {
            return Self { either_way: Stops::from_stops(1.0), is_range: false, whole_stops: true };
        }
        let metered = hour.correction != Correction::default();
        let model = match hour.sky {
            _ if metered => THIRD,
            Sky::Clear => THIRD,
            Sky::Hazy => Stops::from_stops(2.0 / 3.0),
            // A factor of four between the ends: within the two to five of the handbook.
            Sky::Broken | Sky::Overcast => Stops::from_stops(1.0),
        };
        // The light thrown about in a room is worth a third more (handbook C8: 20 to 60 %).
        let either_way = if in_room { model + THIRD } else { model };
        Self {
            either_way,
            is_range: !metered && matches!(hour.sky, Sky::Broken | Sky::Overcast),
            whole_stops: false,
        }
    }

    /// Of a ratio: what lies over both sides alike falls out of it, but for a third of a stop.
    pub fn of_ratio(self) -> Stops {
        if self.whole_stops { self.either_way } else { THIRD }
    }

    /// To the step that is worth showing.
    pub fn rounded(self, stops: Stops) -> Stops {
        if self.whole_stops { Stops::from_stops(stops.stops().round()) } else { stops.to_third() }
    }

    /// The ends of a level.
    pub fn range(self, level: Lux) -> [Lux; 2] {
        [level.raised_by(-self.either_way), level.raised_by(self.either_way)]
    }
}
