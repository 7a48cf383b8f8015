//! What is damaged in parts is mended in parts, and each repair says where.

use serde_json::{Value, json};
use slantlight::project::restore::{Restored, restore};
use slantlight::project::{canonical, demo};

/// The demo with some damage, restored.
fn damaged(damage: impl Fn(&mut Value)) -> Restored {
    let mut tree =
        serde_json::from_str(&canonical::to_text(&demo::project())).expect("what is written is JSON");
    damage(&mut tree);
    let restored = restore(tree.to_string().as_bytes()).expect("damaged in parts only");
    let again = restore(canonical::to_text(&restored.project).as_bytes()).expect("what is written is read");
    assert_eq!(again, Restored { project: restored.project.clone(), repairs: vec![] }, "sound once mended");
    restored
}

fn paths(restored: &Restored) -> Vec<&str> {
    restored.repairs.iter().map(|repair| repair.path.as_str()).collect()
}

#[test]
fn one_bad_set_up_costs_no_other() {
    let restored = damaged(|tree| tree["scenes"][3]["set_ups"][0] = json!("gone"));
    assert_eq!(paths(&restored), ["scenes[3].set_ups[0]"]);
    assert_eq!(restored.project.set_ups().count(), demo::project().set_ups().count() - 1);
}

#[test]
fn what_can_be_guessed_is_put_in() {
    let restored = damaged(|tree| {
        tree["scenes"][0]["set_ups"][0]["minutes"] = json!(-5);
        tree["scenes"][1]["set_ups"][0]["lens"]["focal_mm"] = json!("wide");
        tree["scenes"][2]["set_ups"][0]["wish"]["heights"] = json!({"from_deg": 30.0, "to_deg": 10.0});
        tree["locations"][0].as_object_mut().unwrap().remove("zone");
    });
    assert_eq!(
        paths(&restored),
        [
            "locations[0].zone",
            "scenes[0].set_ups[0].minutes",
            "scenes[1].set_ups[0].lens.focal_mm",
            "scenes[2].set_ups[0].wish.heights",
        ]
    );
    assert_eq!(restored.project.scenes[0].set_ups[0].minutes, 20);
    assert!(restored.repairs.iter().all(|repair| repair.sentence.ends_with("please check it.")));
}

#[test]
fn a_frame_that_cannot_be_is_as_usual() {
    let restored = damaged(|tree| {
        tree["scenes"][0]["set_ups"][0]["grip"] = json!({"frame_width_m": -2.0});
        tree["scenes"][1]["set_ups"][0]["grip"] = json!({"mirror_m": 0.5});
    });
    assert_eq!(paths(&restored), ["scenes[0].set_ups[0].grip"]);
    assert!(restored.project.scenes[0].set_ups[0].grip.is_usual());
    assert_eq!(restored.project.scenes[1].set_ups[0].grip.mirror.metres(), 0.5);
}

#[test]
fn a_lens_without_a_bearing_is_uncertain_all_round() {
    let restored = damaged(|tree| {
        tree["scenes"][0]["set_ups"][0]["lens"].as_object_mut().unwrap().remove("bearing_deg");
    });
    let lens = &restored.project.scenes[0].set_ups[0].lens;
    assert_eq!(lens.bearing_uncertainty.degrees(), 180.0);
}

#[test]
fn a_place_without_coordinates_is_left_out_and_forgotten() {
    let restored = damaged(|tree| tree["locations"][1]["latitude_deg"] = json!(91.0));
    assert_eq!(restored.project.locations.len(), 2);
    assert_eq!(paths(&restored)[0], "locations[1].latitude_deg");
    assert!(restored.repairs[0].sentence.contains("91"), "{}", restored.repairs[0].sentence);
    let lost = restored.project.set_ups().filter(|(_, set_up)| set_up.at.is_none()).count();
    assert!(lost > 0 && paths(&restored).iter().filter(|path| path.ends_with(".at")).count() == lost);
}

#[test]
fn references_that_lead_nowhere_are_cleared() {
    let restored = damaged(|tree| {
        tree["scenes"][3]["set_ups"][0]["at"]["mark"] = json!("nowhere");
        tree["scenes"][3]["set_ups"][1]["at"]["room"] = json!("nowhere");
        tree["scenes"][4]["set_ups"][0]["lens"]["camera"] = json!("nowhere");
    });
    assert_eq!(
        paths(&restored),
        [
            "scenes[3].set_ups[0].at.mark",
            "scenes[3].set_ups[1].at.room",
            "scenes[3].set_ups[1].at.mark",
            "scenes[4].set_ups[0].lens.camera",
        ]
    );
    assert_eq!(restored.project.scenes[3].set_ups[0].at.as_ref().unwrap().room.as_deref(), Some("loft"));
}

#[test]
fn doubled_ids_are_made_anew() {
    let restored = damaged(|tree| {
        let twin = tree["scenes"][3]["set_ups"][0].clone();
        tree["scenes"][5]["set_ups"].as_array_mut().unwrap().push(twin);
        tree["scenes"][0]["id"] = json!("");
    });
    assert_eq!(paths(&restored), ["scenes[0]", "scenes[5].set_ups[1]"]);
    let mut ids: Vec<_> = restored.project.set_ups().map(|(_, set_up)| &set_up.id).collect();
    let all = ids.len();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), all);
}

#[test]
fn a_floor_missing_a_corner_is_no_other_floor() {
    let restored = damaged(|tree| tree["locations"][0]["rooms"][0]["floor_m"][2] = json!([8.0, "six"]));
    assert!(restored.project.locations[0].rooms.is_empty());
    assert!(paths(&restored).iter().any(|path| path.starts_with("locations[0].rooms[0]")));
    let restored = damaged(|tree| tree["locations"][0]["rooms"][0]["openings"][1]["wall"] = json!(9));
    assert_eq!(restored.project.locations[0].rooms[0].openings.len(), 1);
}

#[test]
fn lists_that_are_none_are_left_out() {
    let restored = damaged(|tree| {
        tree["cameras"] = json!({"a": 1});
        tree["dates"] = json!([{"from": "2027-03-01", "to": "2027-02-01"}, 7]);
        tree["title"] = json!(null);
    });
    assert!(restored.project.cameras.is_empty() && restored.project.dates.is_empty());
    assert_eq!(restored.project.title, "Without a name");
    assert!(paths(&restored).contains(&"cameras") && paths(&restored).contains(&"title"));
}

#[test]
fn a_bad_point_of_a_skyline_costs_that_point_alone() {
    let points = demo::project().locations[2].skyline.points().len();
    let restored = damaged(|tree| tree["locations"][2]["skyline"][1]["height_deg"] = json!(95.0));
    assert_eq!(restored.project.locations[2].skyline.points().len(), points - 1);
    assert!(paths(&restored).iter().all(|path| path.starts_with("locations[2].skyline[1]")));
}
