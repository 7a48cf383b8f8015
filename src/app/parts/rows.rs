//! A row of a list that leads somewhere: picture, title, second line, value.

use leptos::prelude::*;

/// A row as a link. Put it into `<ul class="rows"><li>`.
#[component]
pub fn ListRow(
    /// Where it leads.
    #[prop(into)]
    href: String,
    /// First line.
    #[prop(into)]
    title: Signal<String>,
    /// Second line.
    #[prop(into, optional)]
    sub: Signal<String>,
    /// Whether this is what the page shows now.
    #[prop(into, optional)]
    here: Signal<bool>,
    /// Picture before the words.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <a class="list-row" href=href aria-current=move || here.get().then_some("true")>
            {children.map(|picture| view! { <span class="row-picture">{picture()}</span> })}
            <span class="row-text">
                <span class="row-title">{title}</span>
                <span class="row-sub">{sub}</span>
            </span>
        </a>
    }
}
