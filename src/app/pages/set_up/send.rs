//! Sends a set-up in words: what, where, and the best slot with its reason. Called in the tap itself.

use leptos::prelude::*;
use slantlight::project::send;

use super::looking::Looking;
use super::shown::Shown;
use super::slots;
use crate::app::parts::Notes;
use crate::app::sending;

/// The button.
#[component]
pub fn SendSetUp(shown: Shown, looking: Looking) -> impl IntoView {
    let notes = Notes::here();
    let tell = move |_| {
        let best = untrack(|| slots::best(shown, looking));
        let (slot, reason) = best.unzip();
        let project = shown.store.desk.latest();
        let text =
            shown.with(|set_up| send::set_up_text(&project, set_up, slot.as_deref(), reason.as_deref()));
        sending::words(notes, &shown.title(), text.unwrap_or_default());
    };
    view! { <p><button type="button" class="button wide" on:click=tell>"Send this set-up"</button></p> }
}
