//! What is said over every page: kept or not, another tab, a newer version, an instant that is not now.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::words;

use super::devices::bridge;
use super::router::Router;
use super::second::Second;
use super::store::{Kept, Store};

/// A word in the corner: Saving, Saved. What cannot be saved before the app's second part has come is not called saving.
#[component]
pub fn KeptMark() -> impl IntoView {
    let (kept, second) = (Store::here().desk.keeper.kept, Second::here());
    let word = move || match kept.get() {
        Kept::Saving if second.is_missing() => "Not saved yet",
        Kept::Saving => "Saving",
        Kept::Saved => "Saved",
        Kept::Nothing | Kept::OnlyQuick | Kept::Nowhere(_) => "",
    };
    view! { <p class="kept" role="status">{word}</p> }
}

/// What needs the person, above the page.
#[component]
pub fn Banners() -> impl IntoView {
    let (kept, second) = (Store::here().desk.keeper.kept, Second::here());
    view! {
        <div class="banners">
            <Show when=move || kept.get().is_trouble()>
                <p class="caution" role="alert">
                    {move || kept.get().sentence()} " " <a href=Route::Projects.href()>"To the projects"</a>
                </p>
            </Show>
            {move || second.there().map(|table| (table.banners)())}
        </div>
    }
}

/// Other tabs and other versions. In the second part.
pub fn of_others() -> AnyView {
    let desk = Store::here().desk;
    view! {
        <Show when=move || !desk.may_write.get()>
            <div class="banner" role="status">
                <span>"Slantlight is open in another tab. This one shows what is changed there."</span>
                <button type="button" class="button small" on:click=move |_| desk.take_over()>
                    "Write here"
                </button>
            </div>
        </Show>
        <Show when=move || desk.is_newer()>
            <p class="caution" role="alert">
                "A newer version of Slantlight has changed this project. This one shows it and changes nothing; let the newer one in to go on."
            </p>
        </Show>
        <NewVersion />
    }
    .into_any()
}

/// Offers a newer version; never over Now, where a reload could cost the shot.
#[component]
fn NewVersion() -> impl IntoView {
    let (waiting, router, desk) = (bridge::waiting(), Router::here(), Store::here().desk);
    let let_in = move |_| {
        desk.flush();
        bridge::let_in();
    };
    view! {
        <Show when=move || waiting.get() && router.route() != Route::Now>
            <div class="banner" role="status">
                <span>"A newer version is ready. Your project stays as it is."</span>
                <button type="button" class="button small" on:click=let_in>"Use it"</button>
            </div>
        </Show>
    }
}

/// Says at which instant all rooms stand when that is not now, and leads back. In the second part.
pub fn elsewhen() -> AnyView {
    let store = Store::here();
    let words = move || {
        let local = store.current_zone().local(store.moment.to_the_minute());
        let time = words::clock(local.time(), store.settings.get().clock);
        format!("{}, {time}", words::date(local.date()))
    };
    view! {
        <Show when=move || !store.moment.is_now()>
            <div class="elsewhen" role="status">
                <span>{words}</span>
                <button type="button" class="button small" on:click=move |_| store.moment.back_to_now()>
                    "Back to now"
                </button>
            </div>
        </Show>
    }
    .into_any()
}
