//! Lights that are there already: street lamps, shop windows, a room's own.
//!
//! Known by one reading at the mark, facing them.

use serde::{Deserialize, Serialize};

use super::LampColour;
use crate::light::exposure::flicker::Mains;
use crate::plan::wish::ClockRange;
use crate::units::{Bearing, Lux};

/// A light of a location.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct There {
    /// Stable within the project.
    pub id: String,
    /// "Lamp at the slip".
    pub name: String,
    /// What a meter said at the mark, facing it.
    pub lux: Lux,
    /// Where it stands from there; `None` for light from all around.
    #[serde(rename = "bearing_deg", default, skip_serializing_if = "Option::is_none")]
    pub bearing: Option<Bearing>,
    /// Its colour.
    #[serde(default)]
    pub colour: LampColour,
    /// Frequency of its mains; `None` where nobody has asked, or for lamps that do not pulse.
    #[serde(rename = "mains_hz", default, with = "hertz", skip_serializing_if = "Option::is_none")]
    pub mains: Option<Mains>,
    /// Hours of the local clock at which it is on; `None` for always.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<ClockRange>,
}

impl There {
    /// A lamp to begin with, to be measured: warm, all around, always on.
    pub fn usual(id: &str) -> Self {
        Self {
            id: id.to_owned(),
            name: "Lamp".to_owned(),
            lux: Lux::from_lux(20.0),
            bearing: None,
            colour: LampColour::white(2700.0),
            mains: None,
            hours: None,
        }
    }
}

/// Mains as a number of hertz: 50 or 60.
mod hertz {
    use serde::{Deserialize, Deserializer, Serializer};

    use crate::light::exposure::flicker::Mains;

    pub(super) fn serialize<S: Serializer>(mains: &Option<Mains>, to: S) -> Result<S::Ok, S::Error> {
        match mains {
            None => to.serialize_none(),
            Some(Mains::Hertz50) => to.serialize_u8(50),
            Some(Mains::Hertz60) => to.serialize_u8(60),
        }
    }

    pub(super) fn deserialize<'a, D: Deserializer<'a>>(from: D) -> Result<Option<Mains>, D::Error> {
        match Option::<u8>::deserialize(from)? {
            None => Ok(None),
            Some(50) => Ok(Some(Mains::Hertz50)),
            Some(60) => Ok(Some(Mains::Hertz60)),
            Some(_) => Err(serde::de::Error::custom("mains have 50 or 60 hertz")),
        }
    }
}
