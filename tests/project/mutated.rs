//! Random damage: restoring never panics, and what it gives is sound.
//!
//! Half of the mutations are made on the parsed tree, so that they get past the reader of JSON; the share that
//! reaches the mending of parts is counted, because damage that is refused at the door tests only the door.

use std::cell::Cell;

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use serde_json::Value;
use slantlight::project::restore::restore;
use slantlight::project::{canonical, demo};

use super::mutations::{spoil_bytes, spoil_tree};

/// Files tried.
const FILES: u32 = 3000;

/// Least share of them that must reach the mending of parts.
const LEAST_SHARE: f64 = 0.4;

#[test]
fn mutated_files_never_panic_and_come_out_sound() {
    let text = canonical::to_line(&demo::project());
    let tree: Value = serde_json::from_str(&text).unwrap();
    let (tried, reached, repaired) = (Cell::new(0u32), Cell::new(0u32), Cell::new(0u32));
    let mutations = prop::collection::vec((any::<u32>(), any::<u8>()), 1..6);
    let mut runner = TestRunner::new(Config { failure_persistence: None, ..Config::with_cases(FILES) });
    let outcome = runner.run(&(any::<bool>(), mutations), |(on_tree, mutations)| {
        let bytes = if on_tree { spoil_tree(&tree, &mutations) } else { spoil_bytes(&text, &mutations) };
        tried.set(tried.get() + 1);
        if let Ok(restored) = restore(&bytes) {
            reached.set(reached.get() + 1);
            repaired.set(repaired.get() + u32::from(!restored.repairs.is_empty()));
            let written = canonical::to_text(&restored.project);
            let again = restore(written.as_bytes()).expect("what we write, we read");
            prop_assert!(again.repairs.is_empty(), "{:?}", again.repairs);
            prop_assert_eq!(canonical::to_text(&again.project), written);
        }
        Ok(())
    });
    outcome.unwrap();
    let share = f64::from(reached.get()) / f64::from(tried.get());
    println!(
        "{} mutated files, {:.1} % reached validation, {} repaired",
        tried.get(),
        100.0 * share,
        repaired.get()
    );
    assert!(tried.get() >= 2000 && share >= LEAST_SHARE, "only {share} reached validation");
}
