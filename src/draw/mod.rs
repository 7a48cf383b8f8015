//! Drawings as plain shapes: paths and labels, computed here, printed by the screens.

pub mod scale;
