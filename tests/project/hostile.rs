//! Files by other programs, of other times, and by people who mean ill.

use serde_json::{Value, json};
use slantlight::project::restore::{RestoreError, restore};
use slantlight::project::{canonical, demo, send};

fn fault(text: &str) -> RestoreError {
    restore(text.as_bytes()).expect_err("refused")
}

fn demo_tree() -> Value {
    serde_json::from_str(&canonical::to_text(&demo::project())).expect("what is written is JSON")
}

#[test]
fn other_programs_files_are_refused() {
    for text in ["null", "[]", "7", "\"slantlight-project\"", "{}", r#"{"type":"FeatureCollection"}"#] {
        assert_eq!(fault(text), RestoreError::Foreign, "{text}");
    }
    assert_eq!(fault("<html>"), RestoreError::NotJson { line: 1, column: 1 });
    assert_eq!(restore(b"\x89PNG\r\n\x1a\n"), Err(RestoreError::NotText { byte: 0 }));
}

#[test]
fn versions_of_the_future_keep_their_text() {
    let mut tree = demo_tree();
    tree["version"] = json!(2);
    let text = tree.to_string();
    assert_eq!(fault(&text), RestoreError::Newer { version: 2, known: 1, text: text.clone() });
    tree["version"] = json!(u64::MAX);
    assert!(matches!(fault(&tree.to_string()), RestoreError::Newer { version: u64::MAX, .. }));
    for odd in [json!(0), json!(-1), json!(1.5), json!("1"), json!(null)] {
        tree["version"] = odd;
        assert_eq!(fault(&tree.to_string()), RestoreError::NoVersion);
    }
}

#[test]
fn a_file_cut_off_anywhere_is_refused() {
    let text = canonical::to_line(&demo::project());
    for end in (1..text.len()).step_by(97) {
        assert!(
            matches!(fault(&text[..text.floor_char_boundary(end)]), RestoreError::CutOff { .. }),
            "cut at {end}"
        );
    }
}

#[test]
fn hostile_names_stay_text() {
    for name in ["<img src=x onerror=alert(1)>", "../../x", "\u{202e}gpj.exe", "a\nb\0c", "__proto__"] {
        let mut tree = demo_tree();
        tree["title"] = json!(name);
        tree["locations"][0]["name"] = json!(name);
        let restored = restore(tree.to_string().as_bytes()).unwrap();
        assert_eq!(restored.repairs, [], "{name}");
        assert_eq!(restored.project.title, name);
        let file = &send::candidates(&restored.project)[0].name;
        assert!(!file.contains(['/', '\\', '<', '\0', '\n', '\u{202e}']), "{file}");
    }
}

#[test]
fn a_megabyte_of_name_is_cut_and_a_megabyte_of_notes_kept() {
    let long = "é".repeat(1 << 19);
    let mut tree = demo_tree();
    tree["title"] = json!(long);
    tree["locations"][0]["notes"] = json!(long);
    let restored = restore(tree.to_string().as_bytes()).unwrap();
    assert_eq!(restored.repairs.iter().map(|r| r.path.as_str()).collect::<Vec<_>>(), ["title"]);
    assert_eq!(restored.project.title.chars().count(), 200);
    assert_eq!(restored.project.locations[0].notes, long);
}

#[test]
fn many_doubles_take_no_time_to_speak_of() {
    let mut tree = demo_tree();
    let camera = tree["cameras"][0].clone();
    tree["cameras"] = Value::Array(vec![camera; 20_000]);
    let restored = restore(tree.to_string().as_bytes()).unwrap();
    assert_eq!(restored.project.cameras.len(), 20_000);
    assert_eq!(restored.repairs.len(), 19_999);
}

#[test]
fn nesting_has_a_floor() {
    let deep = format!("{{\"format\":\"slantlight-project\",\"x\":{}", "[".repeat(100_000));
    assert!(matches!(fault(&deep), RestoreError::TooDeep { .. }));
}
