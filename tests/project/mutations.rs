//! Damage: what happens to a file's bytes, and what a file says that was parsed, altered and written again.

use serde_json::{Value, json};

/// Bytes changed, dropped or doubled.
pub fn spoil_bytes(text: &str, mutations: &[(u32, u8)]) -> Vec<u8> {
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
pub fn spoil_tree(tree: &Value, mutations: &[(u32, u8)]) -> Vec<u8> {
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
