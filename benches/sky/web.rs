//! The search in a browser: built for wasm32 with the app's own profile, timed by tests/journeys/bench.mjs.
//!
//! It gives the page one function, `work(name)`, which does one thing once. It is no part of the app and never shipped.
#![allow(dead_code, reason = "shares its scene and the crate's work with the native bench, which does more")]
#![allow(clippy::unwrap_used, reason = "a bench may stop at the first surprise")]

mod scenes;
mod theirs;

#[cfg(target_arch = "wasm32")]
fn main() {
    use wasm_bindgen::prelude::Closure;

    let scene = scenes::Scene::new();
    let work = Closure::<dyn Fn(String) -> f64>::new(move |name: String| work(&scene, &name));
    js_sys::Reflect::set(&js_sys::global(), &"work".into(), work.as_ref()).expect("a page can be written to");
    work.forget();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {}

/// Some number that depends on all of the work; not a number for a name that is not known.
fn work(scene: &scenes::Scene, name: &str) -> f64 {
    use slantlight::sky::sun::Sun;

    match name {
        "hours" => hours(scene),
        "spa" => theirs::spa_year(scene),
        "cold" => scenes::slots(scene, Sun::with(scenes::cold(), scene.site), scenes::SETUPS) as f64,
        "warm" => scenes::slots(scene, Sun::new(scene.site), scenes::SETUPS) as f64,
        _ => f64::NAN,
    }
}

/// Bearing and height of the sun at each hour of the year, nodes included; the sum of all.
fn hours(scene: &scenes::Scene) -> f64 {
    use slantlight::sky::sun::Sun;
    use slantlight::units::Duration;

    let sun = Sun::with(scenes::cold(), scene.site);
    let at = |hour: i64| sun.direction(scene.year.start() + Duration::from_minutes(60 * hour));
    (0..8760).map(at).map(|sun| sun.bearing().degrees() + sun.height().degrees()).sum()
}
