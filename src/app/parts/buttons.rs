//! Presets as a row of chips, and the button that keeps a slot.

use leptos::prelude::*;

/// A row of presets; the chosen one is pressed.
#[component]
pub fn Chips(
    /// Name of the row, read out.
    #[prop(into)]
    label: String,
    /// The words on the chips.
    #[prop(into)]
    names: Signal<Vec<String>>,
    /// Which of them is chosen.
    #[prop(into)]
    chosen: Signal<Option<usize>>,
    /// Called with the place of the chip that was tapped.
    #[prop(into)]
    on_choose: Callback<usize>,
) -> impl IntoView {
    let chip = move |(index, name): (usize, String)| {
        let pressed = move || if chosen.get() == Some(index) { "true" } else { "false" };
        view! {
            <button type="button" class="button" aria-pressed=pressed on:click=move |_| on_choose.run(index)>
                {name}
            </button>
        }
    };
    view! {
        <div class="chips" role="group" aria-label=label>
            {move || names.get().into_iter().enumerate().map(chip).collect_view()}
        </div>
    }
}

/// Save, or Saved; a second tap lets go again.
#[component]
pub fn SaveButton(
    /// Whether it is kept.
    #[prop(into)]
    saved: Signal<bool>,
    /// What is saved, read out: "4 to 21 March, 17:38".
    #[prop(into)]
    what: Signal<String>,
    /// Called with whether it shall be kept.
    #[prop(into)]
    on_toggle: Callback<bool>,
) -> impl IntoView {
    let word = move || if saved.get() { "Saved" } else { "Save" };
    view! {
        <button
            type="button"
            class="button"
            class:chosen=move || saved.get()
            aria-label=move || format!("{}: {}", word(), what.get())
            on:click=move |_| on_toggle.run(!saved.get_untracked())
        >
            {word}
        </button>
    }
}
