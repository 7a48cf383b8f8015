//! A length to type, in metres or in feet and inches as the phone is set; a unit that is written out counts.

use leptos::prelude::*;
use slantlight::units::Metres;
use slantlight::words::{self, Units};
use web_sys::HtmlInputElement;

use super::fresh_id;

/// A length with its limits. `on_change` is called only with a length that is allowed.
#[component]
pub fn LengthField(
    /// What is wanted.
    #[prop(into)]
    label: String,
    /// What stands there.
    #[prop(into)]
    value: Signal<Metres>,
    /// Metres, or feet and inches.
    #[prop(into)]
    units: Signal<Units>,
    /// Called with what was typed, if it is another length.
    #[prop(into)]
    on_change: Callback<Metres>,
    /// Smallest and largest length allowed, metres.
    limits: (f64, f64),
) -> impl IntoView {
    let id = fresh_id("length");
    let error = RwSignal::new(String::new());
    // Written only when it says something else: what a page shows may change at each move of a finger.
    let shown = Memo::new(move |_| words::measure(value.get(), units.get()));
    let take = move |input: HtmlInputElement| match read(&input.value(), limits, units.get_untracked()) {
        Ok(length) => {
            error.set(String::new());
            // Another way to write what stood there changes nothing, and is shown as it is understood all the same.
            input.set_value(&words::measure(length, units.get_untracked()));
            if length != value.get_untracked() {
                on_change.run(length);
            }
        }
        Err(sentence) => error.set(sentence),
    };
    let (described, is_wrong) = (format!("{id}-error"), move || error.with(|sentence| !sentence.is_empty()));
    let error_id = described.clone();
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                type="text"
                autocomplete="off"
                id=id
                prop:value=shown
                aria-invalid=move || is_wrong().then_some("true")
                aria-describedby=move || is_wrong().then(|| described.clone())
                on:change=move |event| take(event_target(&event))
            />
            <Show when=is_wrong>
                <p class="field-error" id=error_id.clone()>{error}</p>
            </Show>
        </div>
    }
}

/// The length typed, or the sentence that says what is wrong and what to do.
fn read(text: &str, (least, most): (f64, f64), units: Units) -> Result<Metres, String> {
    let example = match units {
        Units::Metric => "like 1.20 or 120 cm",
        Units::FeetInches => "like 5′ 6″ or 5.5",
    };
    let length = words::read_length(text, units)
        .map_err(|_| format!("“{text}” is not one length. Type it {example}."))?;
    if (least..=most).contains(&length.metres()) {
        return Ok(length);
    }
    let say = |metres| words::measure(Metres::from_metres(metres), units);
    Err(format!("{text} is outside {} to {}.", say(least), say(most)))
}
