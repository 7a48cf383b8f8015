//! What to shoot when: the wish, and the slots that grant it.

pub mod lens;
pub mod presets;
pub mod region;
pub mod wish;
