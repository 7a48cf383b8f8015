//! A number to type: comma or point, a unit behind it, and buttons for the sign, which many keypads lack.

use leptos::prelude::*;
use slantlight::words;
use web_sys::HtmlInputElement;

use super::fresh_id;

/// Names of the two signs: north and south, east and west, plus and minus.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hands {
    /// Of positive numbers.
    pub positive: &'static str,
    /// Of negative numbers.
    pub negative: &'static str,
}

impl Hands {
    /// Latitude.
    pub const NORTH_SOUTH: Self = Self { positive: "N", negative: "S" };
    /// Longitude.
    pub const EAST_WEST: Self = Self { positive: "E", negative: "W" };
    /// Any other number that may be negative.
    pub const PLUS_MINUS: Self = Self { positive: "+", negative: "−" };
}

/// A number with its limits. `on_change` is called only with a number that is allowed.
#[component]
pub fn NumberField(
    /// What is wanted.
    #[prop(into)]
    label: String,
    /// What stands there.
    #[prop(into)]
    value: Signal<f64>,
    /// Called with what was typed, if it is another number.
    #[prop(into)]
    on_change: Callback<f64>,
    /// Smallest and largest number allowed.
    limits: (f64, f64),
    /// Decimals shown at most.
    #[prop(default = 2)]
    decimals: usize,
    /// Unit behind the number; empty for none.
    #[prop(into, optional)]
    unit: String,
    /// Buttons for the sign.
    #[prop(optional)]
    hands: Option<Hands>,
) -> impl IntoView {
    let id = fresh_id("number");
    let error = RwSignal::new(String::new());
    let edited =
        move |number: f64| words::to_edit(if hands.is_some() { number.abs() } else { number }, decimals);
    // Written only when it says something else: what a page shows may change at each move of a finger.
    let shown = Memo::new(move |_| edited(value.get()));
    let take = move |input: HtmlInputElement| {
        let sign = if hands.is_some() && value.get_untracked().is_sign_negative() { -1.0 } else { 1.0 };
        match read(&input.value(), sign, limits) {
            Ok(number) => {
                error.set(String::new());
                // As it is understood, though nothing may follow from it.
                input.set_value(&edited(number));
                if number != value.get_untracked() {
                    on_change.run(number);
                }
            }
            Err(sentence) => error.set(sentence),
        }
    };
    let (described, is_wrong) = (format!("{id}-error"), move || error.with(|sentence| !sentence.is_empty()));
    let error_id = described.clone();
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <div class="field-line">
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    id=id
                    prop:value=shown
                    aria-invalid=move || is_wrong().then_some("true")
                    aria-describedby=move || is_wrong().then(|| described.clone())
                    on:change=move |event| take(event_target(&event))
                />
                {(!unit.is_empty()).then(|| view! { <span class="field-unit">{unit}</span> })}
                {hands.map(|hands| view! { <SignButton hands=hands value=value limits=limits on_change=on_change /> })}
            </div>
            <Show when=is_wrong>
                <p class="field-error" id=error_id.clone()>{error}</p>
            </Show>
        </div>
    }
}

/// Turns the sign; says the one that holds.
#[component]
fn SignButton(
    hands: Hands,
    value: Signal<f64>,
    limits: (f64, f64),
    on_change: Callback<f64>,
) -> impl IntoView {
    let word = move || if value.get().is_sign_negative() { hands.negative } else { hands.positive };
    view! {
        <button
            type="button"
            class="button small"
            aria-label=move || format!("{}, tap to turn", word())
            on:click=move |_| on_change.run((-value.get_untracked()).clamp(limits.0, limits.1))
        >
            {word}
        </button>
    }
}

/// The number typed, or the sentence that says what is wrong and what to do.
fn read(text: &str, sign: f64, (least, most): (f64, f64)) -> Result<f64, String> {
    let typed = words::read_number(text).map_err(|_| match text.trim() {
        "" => "Type a number here.".to_owned(),
        _ => format!("“{text}” is not one number. Type digits, with a point or a comma."),
    })?;
    // A sign that was typed counts; without one, the button's holds.
    let number = if typed < 0.0 { typed } else { typed * sign };
    if (least..=most).contains(&number) {
        Ok(number)
    } else {
        Err(format!("{text} is outside {} to {}.", words::to_edit(least, 4), words::to_edit(most, 4)))
    }
}
