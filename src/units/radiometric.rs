//! Power: radiation as meteorologists measure it, which becomes light by an efficacy, and what lamps draw.

use super::quantity::{linear, quantity};

quantity! {
    /// Irradiance: all radiation of sun or sky that arrives on a surface.
    WattsPerSquareMetre, from_watts_per_square_metre, watts_per_square_metre, "W/m²"
}

quantity! {
    /// What a lamp draws from the mains, a battery or a generator.
    Watts, from_watts, watts, "W"
}
linear!(Watts);
