//! Text to type: one line, or several.

use leptos::prelude::*;
use web_sys::HtmlInputElement;

use super::fresh_id;

/// One line of text; `on_change` is called when it is left or Enter is pressed.
#[component]
pub fn TextField(
    /// What is wanted.
    #[prop(into)]
    label: String,
    /// What stands there.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what was typed.
    #[prop(into)]
    on_change: Callback<String>,
    /// The sentence that says what is wrong; empty for nothing.
    #[prop(into, optional)]
    error: Signal<String>,
) -> impl IntoView {
    let id = fresh_id("text");
    let error_id = format!("{id}-error");
    let is_wrong = move || !error.get().is_empty();
    let described = error_id.clone();
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                type="text"
                id=id
                autocomplete="off"
                prop:value=move || value.get()
                aria-invalid=move || is_wrong().then_some("true")
                aria-describedby=move || is_wrong().then(|| described.clone())
                on:change=move |event| {
                    on_change.run(event_target_value(&event));
                    let input: HtmlInputElement = event_target(&event);
                    // What was refused does not stay in the field; a change is shown by the next frame.
                    request_animation_frame(move || input.set_value(&value.get_untracked()));
                }
            />
            <Show when=is_wrong>
                <p class="field-error" id=error_id.clone()>{error}</p>
            </Show>
        </div>
    }
}

/// Several lines of text; `on_input` is called at each change.
#[component]
pub fn Area(
    /// What is wanted.
    #[prop(into)]
    label: String,
    /// What stands there.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what stands there now.
    #[prop(into)]
    on_input: Callback<String>,
) -> impl IntoView {
    let id = fresh_id("area");
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <textarea
                id=id
                spellcheck="false"
                autocomplete="off"
                prop:value=move || value.get()
                on:input=move |event| on_input.run(event_target_value(&event))
            ></textarea>
        </div>
    }
}
