//! What a set-up gives on: its plan for the crew, a copy of this one in one tap, or this one lit and framed like another.

use leptos::prelude::*;
use slantlight::project::document::SetUp;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::start;

use super::shown::Shown;
use crate::app::router;

/// All of it.
#[component]
pub fn Alike(shown: Shown) -> impl IntoView {
    let store = shown.store;
    // Known by what they are called: the list changes with the project, and this page is not where it changes.
    let others = move || {
        let here = shown.with(|set_up| set_up.id.clone()).unwrap_or_default();
        let of_project = store.desk.with(|project| {
            let named = project.set_ups().filter(|(_, set_up)| set_up.id != here);
            named
                .map(|(scene, s)| (s.id.clone(), format!("{} · {}", scene.heading(), s.name)))
                .collect::<Vec<_>>()
        });
        let option = |(id, words)| view! { <option value=id>{words}</option> }.into_any();
        of_project.into_iter().map(option).collect::<Vec<AnyView>>()
    };
    let plan = move || shown.with(|set_up| Route::LightingPlan(set_up.id.clone()).href()).unwrap_or_default();
    let take = move |event| {
        let project = store.desk.latest();
        if let Some((_, other)) = project.set_up(&event_target_value(&event)) {
            shown.change(|set_up| like(set_up, other));
        }
    };
    view! {
        <section>
            <div class="fields">
                <a class="button wide" href=plan>"Lighting plan for the crew"</a>
                <button type="button" class="button wide" on:click=move |_| copy(shown)>"Copy this set-up"</button>
                <div class="field">
                    <label for="alike">"Light and lens as in"</label>
                    <select id="alike" on:change=take>
                        <option value="">"choose a set-up"</option>
                        {others}
                    </select>
                </div>
            </div>
        </section>
    }
}

/// What is wished and seen like in another; name, place, minutes and what was kept stay.
fn like(set_up: &mut SetUp, other: &SetUp) {
    set_up.wish = other.wish.clone();
    set_up.lens = other.lens.clone();
}

/// Puts a copy behind this set-up, under the next free letter, and goes there.
fn copy(shown: Shown) {
    let store = shown.store;
    let (Some(set_up), Some(scene)) =
        (shown.with(|s| s.id.clone()), shown.with_scene(|scene| scene.id.clone()))
    else {
        return;
    };
    let project = store.desk.latest();
    let Some(scene) = project.scene(&scene) else { return };
    let is_taken = |name: &String| scene.set_ups.iter().any(|other| other.name == *name);
    let Some(name) = start::letters().find(|name| !is_taken(name)) else { return };
    let id = store.fresh_id();
    if store.edit(Edit::CopySetUp { set_up, id: id.clone(), name }) {
        router::go(&Route::SetUp(id));
    }
}
