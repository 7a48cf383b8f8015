//! Radiation as meteorologists measure it; it becomes light by an efficacy.

use super::quantity::quantity;

quantity! {
    /// Irradiance: all radiation of sun or sky that arrives on a surface.
    WattsPerSquareMetre, from_watts_per_square_metre, watts_per_square_metre, "W/m²"
}
