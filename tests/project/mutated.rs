//! Random damage: restoring never panics, and what it gives is sound.
//!
//! Half of the mutations are made on the parsed tree, so that they get past the reader of JSON; the share that
//! reaches the mending of parts is counted, because damage that is refused at the door tests only the door.

use std::cell::Cell;

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Value, json};
use slantlight::project::restore::restore;
use slantlight::project::{canonical, demo};

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

/// Bytes changed, dropped or doubled.
fn spoil_bytes(text: &str, mutations: &[(u32, u8)]) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for (place, what) in mutations {
        let at = *place as usize % bytes.len();
        match what % 3 {
            0 => bytes[at] = *what,
            1 => drop(bytes.remove(at)),
            _ => bytes.insert(at, bytes[at]),
        }
    }
    bytes
}

/// Values of the tree replaced, dropped, doubled or renamed.
fn spoil_tree(tree: &Value, mutations: &[(u32, u8)]) -> Vec<u8> {
    let mut tree = tree.clone();
    for (place, what) in mutations {
        let mut left = *place as usize % count(&tree);
        spoil(&mut tree, &mut left, *what);
    }
    tree.to_string().into_bytes()
}

fn children(value: &Value) -> usize {
    match value {
        Value::Array(entries) => entries.len(),
        Value::Object(members) => members.len(),
        _ => 0,
    }
}

/// Values below and including this one.
fn count(value: &Value) -> usize {
    1 + match value {
        Value::Array(entries) => entries.iter().map(count).sum::<usize>(),
        Value::Object(members) => members.values().map(count).sum(),
        _ => 0,
    }
}

/// Walks to the value with number `left` and spoils it.
fn spoil(value: &mut Value, left: &mut usize, what: u8) -> bool {
    if *left == 0 {
        change(value, what);
        return true;
    }
    *left -= 1;
    match value {
        Value::Array(entries) => entries.iter_mut().any(|entry| spoil(entry, left, what)),
        Value::Object(members) => members.values_mut().any(|member| spoil(member, left, what)),
        _ => false,
    }
}

fn change(value: &mut Value, what: u8) {
    let inner = usize::from(what / 16) % children(value).max(1);
    match (what % 16, value) {
        (0..=3, Value::Object(members)) => {
            if let Some(name) = members.keys().nth(inner).cloned() {
                members.remove(&name);
            }
        }
        (4..=5, Value::Object(members)) => {
            members.insert("x".repeat(inner), json!({"deep": [null, {"id": 3}]}));
        }
        (0..=2, Value::Array(entries)) if !entries.is_empty() => drop(entries.remove(inner)),
        (3..=6, Value::Array(entries)) if !entries.is_empty() => entries.push(entries[inner].clone()),
        (7, Value::Array(entries)) => entries.reverse(),
        (number, value) => {
            *value = match number % 10 {
                0 => json!(null),
                1 => json!(-1),
                2 => json!(1e300),
                3 => json!(""),
                4 => json!("camera-a"),
                5 => json!([]),
                6 => json!({}),
                7 => json!(359.999),
                8 => json!(true),
                _ => json!([value.clone(), value.clone()]),
            }
        }
    }
}
