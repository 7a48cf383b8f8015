//! What the light does there.
