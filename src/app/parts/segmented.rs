//! One of few, side by side: any, yes, no.

use leptos::prelude::*;

use super::fresh_id;

/// A set of radio buttons that looks like one split button.
#[component]
pub fn Segmented(
    /// What is chosen, shown above.
    #[prop(into)]
    label: String,
    /// The words.
    names: Vec<String>,
    /// Which of them is chosen.
    #[prop(into)]
    chosen: Signal<usize>,
    /// Called with the place of the one that was tapped.
    #[prop(into)]
    on_choose: Callback<usize>,
) -> impl IntoView {
    let group = fresh_id("choice");
    let option = move |(index, name): (usize, String)| {
        view! {
            <label>
                <input
                    type="radio"
                    name=group.clone()
                    prop:checked=move || chosen.get() == index
                    on:change=move |_| on_choose.run(index)
                />
                {name}
            </label>
        }
    };
    view! {
        <fieldset class="segmented">
            <legend>{label}</legend>
            <div>{names.into_iter().enumerate().map(option).collect_view()}</div>
        </fieldset>
    }
}
