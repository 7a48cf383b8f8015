//! In place of a page whose part of the app has not arrived: says so, and tries again.

use leptos::prelude::*;

use crate::app::parts::Frame;
use crate::app::router;
use crate::app::second::{COMING, MISSING, Second};

/// The page. Where the one it stands for comes at last, that one takes the focus.
#[component]
pub fn Awaited() -> impl IntoView {
    let second = Second::here();
    on_cleanup(move || {
        if untrack(move || second.there()).is_some() {
            router::arrive_again();
        }
    });
    let again = move |_| {
        second.try_again();
        router::arrive_again();
    };
    view! {
        <Frame title="Not here yet">
            <div class="stack">
                <p role="status">{move || if second.is_missing() { MISSING } else { COMING }}</p>
                <Show when=move || second.is_missing()>
                    <button type="button" class="button wide primary" on:click=again>"Try again"</button>
                    <p class="soft">"If that does not help, reload the page."</p>
                </Show>
            </div>
        </Frame>
    }
}
