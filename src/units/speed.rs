//! Speed.

use super::quantity::quantity;

quantity! {
    /// A speed, metres a second.
    Speed, from_metres_per_second, metres_per_second, "metres a second"
}

impl Speed {
    /// From kilometres an hour.
    pub const fn from_km_per_hour(km: f64) -> Self {
        Self::from_metres_per_second(km / 3.6)
    }

    /// In kilometres an hour.
    pub const fn km_per_hour(self) -> f64 {
        self.metres_per_second() * 3.6
    }
}
