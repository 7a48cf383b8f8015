//! In place of a page whose part of the app did not arrive: says so, and tries again.

use leptos::prelude::*;

use crate::app::parts::Frame;
use crate::app::router::Router;
use crate::app::second::{MISSING, Second};

/// The page.
#[component]
pub fn Missing() -> impl IntoView {
    let (second, router) = (Second::here(), Router::here());
    let again = move |_| second.ask(move |_| router.arrive_again());
    view! {
        <Frame title="Not here yet">
            <p>{MISSING}</p>
            <p><button type="button" class="button wide primary" disabled=move || second.awaited.get() on:click=again>"Try again"</button></p>
        </Frame>
    }
}
