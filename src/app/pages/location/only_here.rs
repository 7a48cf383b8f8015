//! The question "only here from–to", for what is shot at this location.

use leptos::prelude::*;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::start;

use super::shown::Shown;
use crate::app::parts::SectionHead;
use crate::app::router;

/// A way to the question for each set-up here; without one, a new scene asks it.
#[component]
pub fn OnlyHere(shown: Shown) -> impl IntoView {
    let rows = move || {
        let here = shown.with(|place| place.id.clone()).unwrap_or_default();
        let asked = shown.store.desk.with(|project| {
            let stands_here = |at: &slantlight::project::document::At| at.location == here;
            let all = project.set_ups().filter(|(_, set_up)| set_up.at.as_ref().is_some_and(stands_here));
            all.map(|(scene, set_up)| {
                (
                    Route::OnlyHere(set_up.id.clone()).href(),
                    scene.heading(),
                    format!("set-up {}", set_up.name),
                )
            })
            .collect::<Vec<_>>()
        });
        let row = |(href, title, sub): (String, String, String)| {
            view! {
                <li>
                    <a class="list-row" href=href>
                        <span class="row-text">
                            <span class="row-title">{title}</span>
                            <span class="row-sub">{sub}</span>
                        </span>
                    </a>
                </li>
            }
            .into_any()
        };
        asked.into_iter().map(row).collect::<Vec<AnyView>>()
    };
    view! {
        <section>
            <SectionHead title="Only here from–to" beside=Signal::stored("where does the camera go?".to_owned()) ruled=true />
            <ul class="rows">{rows}</ul>
            <p class="spaced"><button type="button" class="button wide" on:click=move |_| ask(shown)>"For a new scene"</button></p>
        </section>
    }
}

/// Adds a scene here, and asks for its set-up.
fn ask(shown: Shown) {
    let project = shown.store.desk.latest();
    let Some(id) = shown.with(|place| place.id.clone()) else { return };
    let Some(location) = project.location(&id) else { return };
    let mut scene = start::scene(&project, &shown.store.fresh_id(), &shown.store.fresh_id());
    let Some(set_up) = scene.set_ups.first_mut() else { return };
    set_up.at = Some(start::first_spot(location));
    let route = Route::OnlyHere(set_up.id.clone());
    if shown.store.edit(Edit::PutScene(Box::new(scene))) {
        router::go(&route);
    }
}
