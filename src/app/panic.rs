//! A fault of ours ends in the start script's page: it says so, hands out the project and offers a reload.

use super::devices::bridge;

/// From here on a panic shows that page; a page that has panicked does nothing more.
pub fn install() {
    std::panic::set_hook(Box::new(|fault| bridge::fail(&fault.to_string())));
}
