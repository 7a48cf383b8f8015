//! Start: what it does, the ways in, and what [the sun does today](super::today). Works with no project.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::draw::ball::emblem;
use slantlight::project::demo;
use slantlight::project::route::Route;

use super::called::{contents, title};
use super::here::UseHere;
use super::incoming::Incoming;
use super::sight;
use crate::app::devices::install;
use crate::app::parts::{Frame, Picture};
use crate::app::router;
use crate::app::second::Second;
use crate::app::store::Store;

/// The first screen. Its ways in bear a name: `index.html` shows the same ones before the app is there, and a tap on one
/// of those is passed on to its namesake here.
#[component]
pub fn Start() -> impl IntoView {
    let store = Store::here();
    let (incoming, second) = (Incoming::here(), Second::here());
    let subtitle = Signal::derive(move || {
        if store.desk.is_filed() { title(&store.desk.project()) } else { "no project yet".to_owned() }
    });
    view! {
        <Frame title="Slantlight" subtitle=subtitle>
            <Greeting />
            <section class="stack">
                <button type="button" class="button primary wide" data-way="sight" on:click=|_| sight::go()>"Sun through this window"</button>
                <Show when=move || store.desk.is_filed()>
                    <a class="button wide" href=Route::Scenes.href()>{move || contents(&store.desk.project())}</a>
                </Show>
                <UseHere on_added=|_| router::go(&Route::Now) />
                <a class="button wide" data-way="places" href=Route::Places.href()>"Paste a place"</a>
                <button type="button" class="button wide" data-way="open" on:click=move |_| incoming.choose_file()>"Open a project file"</button>
                <button type="button" class="button wide" data-way="demo" on:click=move |_| open_demo(store)>"Look at the demo"</button>
            </section>
            {move || second.there().map(|table| (table.today)())}
            <p class="row quiet-links">
                <a href=Route::Projects.href()>"Projects"</a>
                <a href=Route::About.href()>"Settings and privacy"</a>
            </p>
            <Show when=move || !store.desk.is_filed()><HomeScreen /></Show>
        </Frame>
    }
}

/// Before anything is kept: on some phones the home-screen app keeps its own, so it is put there first, or carried over.
#[component]
fn HomeScreen() -> impl IntoView {
    let offer = expect_context::<install::Offer>();
    let words = if install::is_app() {
        "Began in the browser? On some phones its projects are not here: send them to yourself from there, then open the file here, or paste the link or text under Projects."
    } else {
        "On some phones the app on the home screen keeps projects of its own: put it there before you begin."
    };
    view! {
        <section class="stack">
            <Show when=move || offer.is_there()>
                <button type="button" class="button wide" on:click=move |_| offer.take()>"Put it on the home screen"</button>
            </Show>
            <p class="soft">{words}</p>
        </section>
    }
}

/// The address that opens the demo: it does, and the back button does not find it again.
#[component]
pub fn Demo() -> impl IntoView {
    let store = Store::here();
    Effect::new(move |_| {
        lay_demo(store);
        router::go_instead(&Route::Scenes);
    });
    view! { <Frame title="Slantlight"><p>"The demo is coming."</p></Frame> }
}

/// The ball and what it is all about.
#[component]
fn Greeting() -> impl IntoView {
    view! {
        <div class="greeting">
            <Picture drawing=Signal::stored(emblem()) decoration=true />
            <p>"Where the sun will be, what it does to your shot, and how long it holds."</p>
            <p><strong>"All on this phone. No network needed."</strong></p>
        </div>
    }
}

/// Opens the demo and leads to its scenes.
fn open_demo(store: Store) {
    lay_demo(store);
    router::go(&Route::Scenes);
}

/// Lays the demo on the desk: as it was left, or as it comes.
fn lay_demo(store: Store) {
    let filed = store.desk.filed.with_untracked(|filed| {
        filed.iter().find(|one| one.project.id == demo::ID).map(|one| one.project.clone())
    });
    match filed {
        Some(project) => store.desk.lay(project),
        None => store.desk.lay_and_keep(Arc::new(demo::project())),
    }
}
