//! The frame of a page: back link, title, subtitle, and up to three columns.
//!
//! On a phone the columns stand below each other and the list of siblings is left to the page before.

use leptos::children::ViewFn;
use leptos::prelude::*;

/// A page. Its title takes the focus when the page arrives.
#[component]
pub fn Frame(
    /// Title.
    #[prop(into)]
    title: Signal<String>,
    /// What stands softly beneath the title.
    #[prop(into, optional)]
    subtitle: Signal<String>,
    /// Words and address of the way back; none on the rooms themselves.
    #[prop(optional, into)]
    back: Option<(String, String)>,
    /// The list this page is one of; from 900 px on, at the left.
    #[prop(optional, into)]
    list: Option<ViewFn>,
    /// What goes with the page; from 1200 px on, at the right, else beneath.
    #[prop(optional, into)]
    more: Option<ViewFn>,
    children: Children,
) -> impl IntoView {
    let (has_list, has_more) = (list.is_some(), more.is_some());
    view! {
        <div class="page" class:has-list=has_list class:has-more=has_more>
            {list.map(|list| view! { <nav class="page-list" aria-label="List">{list.run()}</nav> })}
            <div class="page-main">
                <header class="page-head">
                    {back.map(|(word, address)| view! { <a class="page-back" href=address>{word}</a> })}
                    <h1 tabindex="-1">{title}</h1>
                    <Show when=move || subtitle.with(|text| !text.is_empty())>
                        <p>{subtitle}</p>
                    </Show>
                </header>
                {children()}
            </div>
            {more.map(|more| view! { <div class="page-more">{more.run()}</div> })}
        </div>
    }
}

/// Title of a section with a softer word beside it.
#[component]
pub fn SectionHead(
    /// Title.
    #[prop(into)]
    title: Signal<String>,
    /// The softer word.
    #[prop(into, optional)]
    beside: Signal<String>,
    /// Whether a hairline follows, as above a list.
    #[prop(optional)]
    ruled: bool,
) -> impl IntoView {
    view! {
        <div class="section-head" class:ruled=ruled>
            <h2>{title}</h2>
            <span>{beside}</span>
        </div>
    }
}
