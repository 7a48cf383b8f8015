//! The file's schema (JSON Schema, 2020-12), found by asking the reader: every member of the samples of the present
//! version, the kind of its value, and whether a file without it is mended, which is what 'required' means here.
//!
//! It is kept as `tests/data/schema/project-v1.schema.json`; `SLANTLIGHT_WRITE=1 cargo test --test project schema`
//! writes it anew after a member was added to the samples. Members that a schema does not name are allowed: they survive.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Map, Value, json};
use slantlight::project::document::{FORMAT, VERSION};
use slantlight::project::restore::restore;

use super::samples;

fn kept() -> PathBuf {
    let name = format!("tests/data/schema/project-v{VERSION}.schema.json");
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

fn samples_of_this_version() -> Vec<Value> {
    let names = [format!("v{VERSION}-every-member.json"), format!("v{VERSION}-demo.json")];
    names
        .map(|name| {
            serde_json::from_slice(&fs::read(samples::path(&name)).expect("samples are files of ours"))
                .expect("samples are files of ours")
        })
        .into()
}

fn schema() -> Value {
    let found = samples_of_this_version().into_iter().map(|tree| describe(&tree, &mut Vec::new()));
    let mut schema = found.reduce(both).expect("samples are files of ours");
    schema["$schema"] = json!("https://json-schema.org/draft/2020-12/schema");
    schema["title"] = json!(format!("A Slantlight project, version {VERSION}"));
    schema["properties"]["format"] = json!({"const": FORMAT});
    schema["properties"]["version"] = json!({"const": VERSION});
    schema
}

/// A step into a tree.
#[derive(Clone)]
enum Step {
    Member(String),
    Entry(usize),
}

/// What stands at `at`, member by member.
fn describe(whole: &Value, at: &mut Vec<Step>) -> Value {
    match inside(whole, at).clone() {
        Value::Object(members) => {
            let (mut properties, mut required) = (Map::new(), Vec::new());
            for name in members.keys() {
                at.push(Step::Member(name.clone()));
                properties.insert(name.clone(), describe(whole, at));
                if is_required(whole, at) {
                    required.push(name.clone());
                }
                at.pop();
            }
            json!({"type": "object", "properties": properties, "required": required})
        }
        Value::Array(entries) => {
            let each = (0..entries.len()).map(|index| {
                at.push(Step::Entry(index));
                let entry = describe(whole, at);
                at.pop();
                entry
            });
            let each: Vec<Value> = each.collect();
            match each.into_iter().reduce(both) {
                Some(items) => json!({"type": "array", "items": items}),
                None => json!({"type": "array"}),
            }
        }
        Value::String(_) => json!({"type": "string"}),
        Value::Bool(_) => json!({"type": "boolean"}),
        Value::Number(number) if number.is_f64() => json!({"type": "number"}),
        Value::Number(_) => json!({"type": "integer"}),
        Value::Null => json!({"type": "null"}),
    }
}

fn inside<'a>(whole: &'a Value, at: &[Step]) -> &'a Value {
    at.iter().fold(whole, |tree, step| match step {
        Step::Member(name) => &tree[name],
        Step::Entry(index) => &tree[index],
    })
}

/// Whether the reader repairs something at this place, or refuses the file, when the member is missing.
fn is_required(whole: &Value, at: &[Step]) -> bool {
    let mut tree = whole.clone();
    let Some((Step::Member(name), outer)) = at.split_last() else { return false };
    let parent = outer.iter().fold(&mut tree, |tree, step| match step {
        Step::Member(name) => &mut tree[name],
        Step::Entry(index) => &mut tree[*index],
    });
    parent.as_object_mut().expect("samples are files of ours").remove(name);
    let Ok(restored) = restore(tree.to_string().as_bytes()) else { return true };
    let here = path(at);
    // What refers to something that is gone is repaired elsewhere.
    restored.repairs.iter().any(|repair| here.starts_with(&repair.path) || repair.path.starts_with(&here))
}

/// As repairs name it: `scenes[3].set_ups[0].minutes`.
fn path(at: &[Step]) -> String {
    let path = at.iter().fold(String::new(), |path, step| match step {
        Step::Member(name) => format!("{path}.{name}"),
        Step::Entry(index) => format!("{path}[{index}]"),
    });
    path.trim_start_matches('.').to_owned()
}

/// What holds for both of two descriptions.
fn both(one: Value, other: Value) -> Value {
    let (Value::Object(mut one), Value::Object(other)) = (one, other) else {
        panic!("descriptions are objects")
    };
    if one["type"] != other["type"] {
        return json!({"type": [one["type"], other["type"]]});
    }
    if one["type"] == "object" {
        let names = |one: &Map<String, Value>| -> BTreeSet<String> {
            one["required"]
                .as_array()
                .expect("samples are files of ours")
                .iter()
                .map(|name| name.as_str().expect("samples are files of ours").to_owned())
                .collect()
        };
        let required: Vec<String> = names(&one).intersection(&names(&other)).cloned().collect();
        one["required"] = json!(required);
    }
    for (list, value) in other {
        match (one.get_mut(&list), list.as_str()) {
            (None, _) => drop(one.insert(list, value)),
            (Some(Value::Object(properties)), "properties") => {
                let Value::Object(more) = value else { panic!("properties are members") };
                for (name, value) in more {
                    let known = properties.remove(&name);
                    properties.insert(name, known.map_or(value.clone(), |known| both(known, value)));
                }
            }
            (Some(items), "items") => *items = both(items.take(), value),
            _ => {}
        }
    }
    Value::Object(one)
}

/// Faults of `value`, by their paths.
fn faults(schema: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let kinds =
        schema.get("type").map_or(vec![], |kind| kind.as_array().cloned().unwrap_or(vec![kind.clone()]));
    let is_right =
        if kinds.is_empty() { *value == schema["const"] } else { kinds.iter().any(|kind| is(kind, value)) };
    if !is_right {
        found.push(place.to_owned());
    }
    for name in schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str) {
        if value.get(name).is_none() {
            found.push(format!("{place}.{name}"));
        }
    }
    for (name, member) in value.as_object().into_iter().flatten() {
        if let Some(schema) = schema["properties"].get(name) {
            faults(schema, member, &format!("{place}.{name}"), found);
        }
    }
    for entry in value.as_array().into_iter().flatten() {
        if let Some(items) = schema.get("items") {
            faults(items, entry, &format!("{place}[]"), found);
        }
    }
}

/// Whether a value is of a kind.
fn is(kind: &Value, value: &Value) -> bool {
    match kind.as_str() {
        Some("object") => value.is_object(),
        Some("array") => value.is_array(),
        Some("string") => value.is_string(),
        Some("boolean") => value.is_boolean(),
        Some("number") => value.is_number(),
        Some("integer") => value.is_i64() || value.is_u64(),
        _ => value.is_null(),
    }
}

#[test]
fn the_schema_is_the_one_that_is_kept() {
    let text = serde_json::to_string_pretty(&schema()).unwrap() + "\n";
    if std::env::var_os("SLANTLIGHT_WRITE").is_some() {
        fs::write(kept(), &text).unwrap();
    }
    let kept = fs::read_to_string(kept()).unwrap_or_default();
    assert!(kept == text, "the schema has changed: SLANTLIGHT_WRITE=1 cargo test --test project schema");
}

#[test]
fn samples_are_as_the_schema_says_and_damage_is_not() {
    let schema: Value = serde_json::from_str(&fs::read_to_string(kept()).unwrap()).unwrap();
    for mut sample in samples_of_this_version() {
        let said = |sample: &Value| {
            let mut found = Vec::new();
            faults(&schema, sample, "", &mut found);
            found
        };
        assert_eq!(said(&sample), [""; 0]);
        sample["of_later"] = json!([1]);
        sample["scenes"][0]["set_ups"][0]["minutes"] = json!("20");
        sample["locations"][0].as_object_mut().unwrap().remove("zone");
        assert_eq!(said(&sample), [".locations[].zone", ".scenes[].set_ups[].minutes"]);
    }
}
