//! What is written is read back: same project, same bytes, with everything this build does not know.

use std::sync::Arc;

use serde_json::{Value, json};
use slantlight::project::document::Project;
use slantlight::project::edit::{Edit, apply};
use slantlight::project::restore::{Restored, reopen, restore};
use slantlight::project::{canonical, demo};

fn tree(project: &Project) -> Value {
    serde_json::from_str(&canonical::to_text(project)).expect("what is written is JSON")
}

/// The demo as a later build might write it: a photograph, new members at every level.
fn from_later() -> Value {
    let mut tree = tree(&demo::project());
    tree["photographs"] = json!([{"id": "p1", "jpeg": "/9j/4AAQSkZJRg==", "of": "sail-loft"}]);
    tree["locations"][0]["rooms"][0]["paint"] = json!({"walls": "white", "reflectance": 0.71});
    tree["locations"][0]["rooms"][0]["openings"][1]["curtain"] = json!(null);
    tree["locations"][1]["skyline_of_later"] = json!([[0.0, 0.125], [90.5, 1e-7]]);
    tree["scenes"][3]["set_ups"][1]["wish"]["arc"]["soft"] = json!(true);
    tree["scenes"][3]["set_ups"][1]["at"]["chair"] = json!("left");
    tree["scenes"][3]["colour"] = json!(-12);
    tree
}

#[test]
fn export_wipe_import_gives_equal_bytes() {
    let text = canonical::to_text(&demo::project());
    let Restored { project, repairs } = restore(text.as_bytes()).unwrap();
    assert_eq!(repairs, []);
    assert_eq!(canonical::to_text(&project), text);
    assert_eq!(project, demo::project());
}

#[test]
fn unknown_members_and_photographs_survive() {
    let file = serde_json::to_string(&from_later()).unwrap();
    let first = restore(file.as_bytes()).unwrap();
    assert_eq!(first.repairs, []);
    let text = canonical::to_text(&first.project);
    assert_eq!(serde_json::from_str::<Value>(&text).unwrap(), from_later());
    let second = restore(text.as_bytes()).unwrap();
    assert_eq!(second.project, first.project);
    assert_eq!(canonical::to_text(&second.project), text);
}

#[test]
fn edits_leave_unknown_members_where_they_belong() {
    let project = restore(from_later().to_string().as_bytes()).unwrap().project;
    let set_up = project.scenes[3].set_ups[1].id.clone();
    let moved = Edit::MoveSetUp { set_up, scene: project.scenes[3].id.clone(), place: 0 };
    let project = apply(&project, moved).unwrap();
    let project = apply(&project, Edit::RemoveScene(project.scenes[0].id.clone())).unwrap();
    let tree = tree(&project);
    assert_eq!(tree["scenes"][2]["set_ups"][0]["wish"]["arc"]["soft"], json!(true));
    assert_eq!(tree["scenes"][2]["set_ups"][1]["wish"]["arc"].get("soft"), None);
    let project = apply(&project, Edit::RemoveLocation("sail-loft".to_owned())).unwrap();
    assert!(!canonical::to_text(&project).contains("\"paint\""), "it went with its room");
    assert!(canonical::to_text(&project).contains("4AAQSkZJRg"));
}

#[test]
fn numbers_come_back_to_the_last_bit() {
    let mut project = demo::project();
    for bits in [0x3fb9_9999_9999_999a_u64, 0x4044_51eb_851e_b852, 0x3ff0_0000_0000_0001] {
        let exact = f64::from_bits(bits);
        Arc::make_mut(&mut project.locations[0]).site.elevation =
            slantlight::units::Metres::from_metres(exact);
        let read = restore(canonical::to_text(&project).as_bytes()).unwrap().project;
        assert_eq!(read.locations[0].site.elevation.metres().to_bits(), bits);
    }
}

#[test]
fn what_was_kept_is_taken_as_it_stands() {
    let mut tree = from_later();
    tree["scenes"][0]["set_ups"][0]["minutes"] = json!(0);
    let kept = reopen(&tree.to_string()).unwrap();
    assert_eq!(self::tree(&kept), tree, "nothing mended, nothing lost");
    tree["scenes"][0]["set_ups"][0]["minutes"] = json!("none");
    assert_eq!(reopen(&tree.to_string()).unwrap().scenes[0].set_ups[0].minutes, 20);
    tree["version"] = json!(2);
    assert!(reopen(&tree.to_string()).is_err());
}
