//! What may be put in for a member that is missing or cannot be read. All of it is our own choice.
//!
//! A guess must not give a wrong answer that looks right: there is none for coordinates, and a bearing comes with
//! the whole circle as its uncertainty. What has no guess is left out with the thing it belongs to.

use serde_json::{Value, json};

use crate::place::mark::FACE_HEIGHT;

/// The guess for a member of this name.
pub(super) fn for_member(name: &str) -> Option<Value> {
    Some(match name {
        "title" | "name" => json!("Without a name"),
        "number" => json!("?"),
        // Coordinated time is right for every place, if not the clock on its wall.
        "zone" => json!("UTC"),
        "minutes" => json!(20),
        "face_height_m" => json!(FACE_HEIGHT.metres()),
        // Nothing is known about the bearing any more.
        "bearing_uncertainty_deg" => json!(180.0),
        "lens" => json!({
            "bearing_deg": 0.0, "bearing_uncertainty_deg": 180.0, "distance_m": 2.5, "height_m": 1.4,
            "tilt_deg": 0.0, "focal_mm": 50.0
        }),
        "ceiling_m" | "distance_m" => json!(2.5),
        "focal_mm" => json!(50.0),
        "wish" => json!({"arc": any_arc(), "heights": any_height()}),
        "arc" => any_arc(),
        "heights" => any_height(),
        "either_side" => json!(true),
        _ => return None,
    })
}

fn any_arc() -> Value {
    json!({"from_deg": 0.0, "to_deg": 360.0, "either_side": false})
}

fn any_height() -> Value {
    json!({"from_deg": 0.0, "to_deg": 90.0})
}
