//! Caution where a hazard arises, and the sentence of a page that has nothing to show yet.

use leptos::prelude::*;

/// A caution; read out as a note.
#[component]
pub fn Caution(children: Children) -> impl IntoView {
    view! { <p class="caution" role="note">{children()}</p> }
}

/// One honest sentence where a list will be, and the way out of the emptiness.
#[component]
pub fn EmptyState(#[prop(into)] says: String, children: Children) -> impl IntoView {
    view! {
        <div class="empty">
            <p>{says}</p>
            {children()}
        </div>
    }
}
