//! A fold whose inside exists only while it is open, so that what it computes costs nothing before; and sentences.

use leptos::prelude::*;

/// A fold.
#[component]
pub fn Fold(label: &'static str, children: ChildrenFn) -> impl IntoView {
    let open = RwSignal::new(false);
    view! {
        <details class="fold">
            <summary on:click=move |_| open.update(|open| *open = !*open)>{label}</summary>
            <div class="fold-inside"><Show when=move || open.get()>{children()}</Show></div>
        </details>
    }
}

/// Sentences, one below the other, read out as they change.
#[component]
pub fn Lines(#[prop(into)] lines: Signal<Vec<String>>) -> impl IntoView {
    let line = |line: String| view! { <li>{line}</li> };
    view! { <ul class="lines" aria-live="polite">{move || lines.get().into_iter().map(line).collect_view()}</ul> }
}
