//! A point on Earth, as the sky sees it.

use serde::{Deserialize, Serialize};

use crate::units::{Latitude, Longitude, Metres};

/// Geographic position (WGS 84) and elevation above the sea.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Degrees, north positive.
    #[serde(rename = "latitude_deg")]
    pub latitude: Latitude,
    /// Degrees, east positive.
    #[serde(rename = "longitude_deg")]
    pub longitude: Longitude,
    /// Metres above the sea; 0 when not known (it moves the sun by under 0.0001°).
    #[serde(rename = "elevation_m", default)]
    pub elevation: Metres,
}
