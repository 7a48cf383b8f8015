//! The shell: rooms, page, banners, notes, and the sheets that any page may open.

use leptos::prelude::*;

use super::banners::{Banners, KeptMark};
use super::devices::install;
use super::pages::as_link::AsLink;
use super::pages::incoming::Incoming;
use super::parts::{Notes, Toasts};
use super::router::Router;
use super::second::Second;
use super::store::Store;
use super::store::cabinet::Found;
use super::tabs::Tabs;
use super::undoing::Undoing;
use super::{pages, pasting, router};

/// All that is seen. `found` is what this browser keeps.
pub fn shell(found: Found) -> impl IntoView {
    let notes = Notes::provide();
    let second = Second::provide(notes);
    let store = Store::provide(found, notes);
    pasting::listen(store, Incoming::provide(notes), notes);
    AsLink::provide(notes);
    provide_context(install::Offer::listen());
    let router = Router::provide();
    view! {
        <a class="skip" href="#page" on:click=router::skip_to_page>"To the page"</a>
        <div class="shell">
            <Tabs />
            <main id="page" tabindex="-1">
                <KeptMark />
                <Undoing />
                <Banners />
                {move || pages::page(router.route())}
                {move || second.there().map(|table| (table.elsewhen)())}
            </main>
        </div>
        {move || second.there().map(|table| (table.sheets)())}
        <Toasts />
    }
}
