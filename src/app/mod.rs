//! The screens. The only room that knows the browser; it holds no formula.

/// Starts the app.
pub fn start() {}
