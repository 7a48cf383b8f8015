//! Entries of a list that unfold into their fields, and the list with its ways to add one.

use leptos::prelude::*;

use super::{Chips, EmptyState, SectionHead};

/// An entry: a line or two, and its fields beneath them, which exist only while it is unfolded.
#[component]
pub fn Entry(
    /// First line.
    #[prop(into)]
    title: Signal<String>,
    /// Second line, if it has one.
    #[prop(optional, into)]
    sub: Option<Signal<String>>,
    children: ChildrenFn,
) -> impl IntoView {
    let open = RwSignal::new(false);
    view! {
        <details class="fold">
            <summary on:click=move |_| open.update(|open| *open = !*open)>
                <span class="row-text">
                    <span class="row-title">{title}</span>
                    {sub.map(|sub| view! { <span class="row-sub">{sub}</span> })}
                </span>
            </summary>
            <div class="fields"><Show when=move || open.get()>{children()}</Show></div>
        </details>
    }
}

/// The words of a list.
#[derive(Clone, Copy, Debug)]
pub struct Listed {
    /// Its title.
    pub title: &'static str,
    /// What stands there while it is empty.
    pub empty: &'static str,
    /// What stands above the chips.
    pub add: &'static str,
}

/// A list of entries by their ids, with a chip for each kind that can be added.
#[component]
pub fn Entries(
    /// Its words.
    words: Listed,
    /// The softer word beside the title.
    #[prop(into)]
    beside: Signal<String>,
    /// What there is.
    ids: Memo<Vec<String>>,
    /// An entry.
    #[prop(into)]
    entry: Callback<String, AnyView>,
    /// The chips.
    kinds: Vec<String>,
    /// Called with the place of a chip.
    #[prop(into)]
    on_add: Callback<usize>,
) -> impl IntoView {
    view! {
        <section>
            <SectionHead title=words.title beside=beside ruled=true />
            <Show when=move || ids.with(Vec::is_empty)>
                <EmptyState says=words.empty>""</EmptyState>
            </Show>
            <For each=move || ids.get() key=String::clone let:id>{entry.run(id)}</For>
            <p class="soft spaced-small">{words.add}</p>
            <Chips label=words.add names=Signal::stored(kinds) chosen=Signal::stored(None) on_choose=on_add />
        </section>
    }
}
