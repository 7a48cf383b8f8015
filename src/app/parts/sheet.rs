//! A sheet over the page: the browser's own dialog, which keeps the focus inside and closes at Escape.

use leptos::children::ChildrenFn;
use leptos::html;
use leptos::prelude::*;

use super::fresh_id;

/// A sheet that is there while `open` says so. What is inside is made anew each time.
#[component]
pub fn Sheet(
    /// Whether it is there.
    open: RwSignal<bool>,
    /// Its title.
    #[prop(into)]
    title: String,
    children: ChildrenFn,
) -> impl IntoView {
    let dialog = NodeRef::<html::Dialog>::new();
    let id = fresh_id("sheet");
    let title_id = id.clone();
    let children = StoredValue::new(children);
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        match (open.get(), dialog.open()) {
            // Refused only for a dialog that has left the page.
            (true, false) => drop(dialog.show_modal()),
            (false, true) => dialog.close(),
            _ => {}
        }
    });
    view! {
        <dialog class="sheet" node_ref=dialog aria-labelledby=id on:close=move |_| open.set(false)>
            <div class="sheet-head">
                <h2 id=title_id>{title}</h2>
                <button type="button" class="button small" on:click=move |_| open.set(false)>"Close"</button>
            </div>
            <Show when=move || open.get()>{children.with_value(|inside| inside())}</Show>
        </dialog>
    }
}
