//! Locations and the bearings of their lenses and walls for a map (RFC 7946): longitude first, WGS 84, true bearings.

use serde_json::{Value, json};

use super::file;
use crate::project::document::{Location, Project};
use crate::project::send::Candidate;

/// The file.
pub fn geojson(project: &Project) -> Candidate {
    file(project, ".geojson", "application/geo+json", tree(project).to_string())
}

fn tree(project: &Project) -> Value {
    let places = project.locations.iter().map(|location| place(location));
    let lenses = project.set_ups().filter_map(|(scene, set_up)| {
        let location = project.location(&set_up.at.as_ref()?.location)?;
        let properties = json!({
            "kind": "set-up",
            "name": scene.heading(),
            "set_up": set_up.name,
            "lens_bearing_true_deg": set_up.lens.bearing.degrees(),
            "lens_bearing_uncertainty_deg": set_up.lens.bearing_uncertainty.degrees(),
        });
        Some(feature(&set_up.id, location, properties))
    });
    let features: Vec<Value> = places.chain(lenses).collect();
    json!({ "type": "FeatureCollection", "features": features })
}

fn place(location: &Location) -> Value {
    let rooms = location.rooms.iter().map(|room| {
        let walls = (0..room.floor.len()).filter_map(|wall| Some(round(room.bearing_of(wall)?.degrees())));
        json!({ "name": room.name, "wall_bearings_true_deg": walls.collect::<Vec<_>>() })
    });
    let properties = json!({
        "kind": "location",
        "name": location.name,
        "zone": location.zone,
        "rooms": rooms.collect::<Vec<_>>(),
    });
    feature(&location.id, location, properties)
}

fn feature(id: &str, at: &Location, properties: Value) -> Value {
    let (longitude, latitude) = (at.site.longitude.degrees(), at.site.latitude.degrees());
    let point = json!([round(longitude), round(latitude), at.site.elevation.metres()]);
    json!({
        "type": "Feature",
        "id": id,
        "geometry": { "type": "Point", "coordinates": point },
        "properties": properties,
    })
}

/// Six decimals, a tenth of a metre.
fn round(degrees: f64) -> f64 {
    (degrees * 1e6).round() / 1e6
}
