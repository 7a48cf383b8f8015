//! The shell: rooms, page, notes.

use leptos::prelude::*;

use super::parts::{Notes, Toasts};
use super::router::Router;
use super::store::Store;
use super::tabs::Tabs;
use super::{pages, router};

/// All that is seen.
#[component]
pub fn Shell() -> impl IntoView {
    Store::provide();
    Notes::provide();
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
