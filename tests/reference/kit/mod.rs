//! What the checks share: one strict loader, one way to compare, one form of failure.

mod failure;
mod row;
mod table;
pub mod tables;
mod worst;

pub use failure::Failure;
pub use row::Row;
pub use table::Table;
pub use worst::Worst;

use std::path::{Path, PathBuf};

/// Compares one table (or several that belong together) in a folder.
pub type Check = fn(&Path) -> Result<Worst, Failure>;

/// Runs a check on the folder in use and prints its worst errors.
pub fn verify(check: Check) {
    match check(&folder()) {
        Ok(worst) => println!("{worst}"),
        Err(failure) => panic!("{failure}"),
    }
}

/// Where the tables are: `SLANTLIGHT_REFERENCE`, or else what the repository holds.
pub fn folder() -> PathBuf {
    std::env::var_os("SLANTLIGHT_REFERENCE").map_or_else(committed, PathBuf::from)
}

/// The tables of the repository; published files are always read from here.
pub fn committed() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data")
}
