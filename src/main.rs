//! Mounts the app in the browser.

#[cfg(target_arch = "wasm32")]
mod app;

#[cfg(target_arch = "wasm32")]
fn main() {
    app::start();
}

#[cfg(not(target_arch = "wasm32"))]
#[allow(clippy::print_stderr, reason = "the only word this program ever says outside a browser")]
fn main() {
    eprintln!("Slantlight runs in a browser: start it with ./dev serve");
}
