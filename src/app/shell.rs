//! The shell: rooms, page, notes.

use leptos::prelude::*;

use super::parts::{Notes, Toasts};
use super::router::Router;
use super::store::Store;
use super::store::cabinet::Found;
use super::tabs::Tabs;
use super::{pages, router};

/// All that is seen.
pub fn shell(found: Found) -> impl IntoView {
    Store::provide(found, Notes::provide());
    let router = Router::provide();
    view! {
        <a class="skip" href="#page" on:click=router::skip_to_page>"To the page"</a>
        <div class="shell">
            <Tabs />
            <main id="page" tabindex="-1">{move || pages::page(router.route())}</main>
        </div>
        <Toasts />
    }
}
