//! Scenes: every set-up with the ball of its light, and what can be added.

use leptos::prelude::*;
use slantlight::draw::ball;
use slantlight::project::document::{Scene, SetUp};
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::start;
use slantlight::words;

use crate::app::parts::{EmptyState, Frame, ListRow, Picture};
use crate::app::router;
use crate::app::store::Store;

/// The room of the scenes.
#[component]
pub fn Scenes() -> impl IntoView {
    let store = Store::here();
    let count = move || store.desk.with(|project| (project.locations.len(), project.set_ups().count()));
    let subtitle = Signal::derive(move || {
        let (locations, set_ups) = count();
        let title = store.desk.with(|project| project.title.clone());
        let places = words::count(locations, "location");
        let title = if title.is_empty() { "a project without a name yet".to_owned() } else { title };
        format!("{title} · {places} · {}", words::count(set_ups, "set-up"))
    });
    view! {
        <Frame title="Scenes" subtitle=subtitle>
            <SceneList />
            <Show when=move || count().1 == 0>
                <EmptyState says="No scene yet. Add the first one, then say which light it wants.">""</EmptyState>
            </Show>
            <p><button type="button" class="button wide primary" on:click=move |_| add_scene(store)>"Add a scene"</button></p>
            <p><a class="button wide" href=Route::ShotList.href()>"Take in a shot list"</a></p>
        </Frame>
    }
}

/// Every set-up in the order of the script; also the list beside a set-up on wide screens.
#[component]
pub fn SceneList() -> impl IntoView {
    let store = Store::here();
    let scenes = Memo::new(move |_| store.desk.with(|project| project.scenes.clone()));
    let rows = move || {
        scenes
            .get()
            .into_iter()
            .flat_map(|scene| {
                let head = Scene { set_ups: Vec::new(), ..Scene::clone(&scene) };
                let rows: Vec<_> = scene.set_ups.iter().map(|set_up| row(store, &head, set_up)).collect();
                rows
            })
            .collect_view()
    };
    view! { <ul class="rows">{rows}</ul> }
}

fn row(store: Store, scene: &Scene, set_up: &SetUp) -> impl IntoView + use<> {
    let id = set_up.id.clone();
    let here = Signal::derive(move || store.current_set_up().as_ref() == Some(&id));
    let place = store.desk.with(|project| {
        let at = set_up.at.as_ref()?;
        project.standing(at).map(|standing| standing.words())
    });
    let sub = format!("set-up {} · {}", set_up.name, place.unwrap_or_else(|| "no place yet".to_owned()));
    let ball = ball::ball(set_up.wished_light());
    view! {
        <li>
            <ListRow href=Route::SetUp(set_up.id.clone()).href() title=scene.heading() sub=sub here=here>
                <Picture drawing=Signal::stored(ball) decoration=true />
            </ListRow>
        </li>
    }
}

/// Adds a scene with one set-up at the first place, and goes there.
fn add_scene(store: Store) {
    let project = store.desk.latest();
    let scene = start::scene(&project, &store.fresh_id(), &store.fresh_id());
    let route = scene.set_ups.first().map(|set_up| Route::SetUp(set_up.id.clone()));
    if store.edit(Edit::PutScene(Box::new(scene)))
        && let Some(route) = route
    {
        router::go(&route);
    }
}
