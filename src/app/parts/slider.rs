//! Sliders: drag, arrow keys, ± buttons, or type the value.
//!
//! While the handle is held, `on_move` tells each value, so that a drawing can follow; `on_change` tells the
//! value that was chosen, once: one edit from pointer down to up.

use leptos::children::ViewFn;
use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::words;

use super::drag::Drag;
use super::fresh_id;

/// Steps of a page key. Our own choice.
const PAGE: f64 = 10.0;

/// A value on a scale.
#[component]
pub fn Slider(
    /// What is set.
    #[prop(into)]
    label: String,
    /// The scale.
    #[prop(into)]
    scale: Signal<Scale>,
    /// The value.
    #[prop(into)]
    value: Signal<f64>,
    /// The value in words: "25 min".
    #[prop(into)]
    say: Callback<f64, String>,
    /// Called with the value that was chosen.
    #[prop(into)]
    on_change: Callback<f64>,
    /// Called with each value on the way there.
    #[prop(into, optional)]
    on_move: Option<Callback<f64>>,
    /// Whether the value is written large.
    #[prop(optional)]
    large: bool,
) -> impl IntoView {
    let held = RwSignal::new(None::<f64>);
    let latest = Latest::of(value);
    let shown = Signal::derive(move || held.get().unwrap_or_else(|| value.get()));
    let id = fresh_id("slider");
    let drag = Drag::new();
    let hold = move |to: f64| {
        if held.get_untracked() != Some(to) {
            held.set(Some(to));
            if let Some(on_move) = on_move {
                on_move.run(to);
            }
        }
    };
    let finish = move || {
        let chosen = held.get_untracked().filter(|_| drag.is_held());
        drag.let_go();
        if let Some(to) = chosen {
            on_change.run(to);
        }
        held.set(None);
    };
    let cancel = move || {
        drag.let_go();
        if held.get_untracked().is_some() {
            held.set(None);
            if let Some(on_move) = on_move {
                on_move.run(value.get_untracked());
            }
        }
    };
    let share = move || scale.get().share(shown.get());
    view! {
        <div class="slider" class:large=large>
            <div class="slider-head">
                <span id=id.clone()>{label.clone()}</span>
                <TypedValue label=label shown=shown say=say on_type=move |to| on_change.run(scale.get_untracked().moved(to, 0.0)) />
            </div>
            <div class="slider-track" node_ref=drag.track>
                <div
                    class="slider-handle"
                    role="slider"
                    tabindex="0"
                    aria-labelledby=id
                    aria-orientation="horizontal"
                    aria-valuemin=move || scale.get().from
                    aria-valuemax=move || scale.get().last()
                    aria-valuenow=move || shown.get()
                    aria-valuetext=move || say.run(shown.get())
                    style:left=move || format!("{}%", share() * 100.0)
                    on:pointerdown=move |event| drag.take(&event, scale.get_untracked().share(value.get_untracked()))
                    on:pointermove=move |event| {
                        if let Some(to) = drag.moved(&event) {
                            hold(at_share(scale.get_untracked(), to));
                        }
                    }
                    on:pointerup=move |_| finish()
                    on:pointercancel=move |_| cancel()
                    on:keydown=move |event| {
                        if let Some(to) = by_key(scale.get_untracked(), latest.get(), &event.key()) {
                            event.prevent_default();
                            latest.send(to, on_change);
                        }
                    }
                ></div>
            </div>
        </div>
    }
}

/// A bearing: the slider around the compass with − 1° and + 1°, and room for one more button between them.
#[component]
pub fn BearingSlider(
    /// What is set.
    #[prop(into)]
    label: String,
    /// The bearing in degrees.
    #[prop(into)]
    value: Signal<f64>,
    /// The bearing in words: "248° WSW".
    #[prop(into)]
    say: Callback<f64, String>,
    /// Called with the bearing that was chosen.
    #[prop(into)]
    on_change: Callback<f64>,
    /// Called with each bearing on the way there.
    #[prop(into, optional)]
    on_move: Option<Callback<f64>>,
    /// Whether the value is written large.
    #[prop(optional)]
    large: bool,
    /// A button between the two: "Take from compass".
    #[prop(into, optional)]
    between: ViewFn,
) -> impl IntoView {
    let latest = Latest::of(value);
    let turn = move |by: f64| latest.send(Scale::BEARING.moved(latest.get(), by), on_change);
    let name = label.clone();
    view! {
        <div>
            {match on_move {
                Some(on_move) => {
                    view! { <Slider label=label scale=Scale::BEARING value=value say=say on_change=on_change on_move=on_move large=large /> }
                        .into_any()
                }
                None => {
                    view! { <Slider label=label scale=Scale::BEARING value=value say=say on_change=on_change large=large /> }
                        .into_any()
                }
            }}
            <div class="slider-buttons">
                <button type="button" class="button" aria-label=format!("{name}: −\u{a0}1°, one degree less") on:click=move |_| turn(-1.0)>
                    "−\u{a0}1°"
                </button>
                {between.run()}
                <button type="button" class="button" aria-label=format!("{name}: +\u{a0}1°, one degree more") on:click=move |_| turn(1.0)>
                    "+\u{a0}1°"
                </button>
            </div>
        </div>
    }
}

/// The value as it was sent last: keys and taps may come faster than the value comes back, once a frame.
#[derive(Clone, Copy)]
struct Latest {
    value: Signal<f64>,
    sent: StoredValue<Option<f64>>,
}

impl Latest {
    fn of(value: Signal<f64>) -> Self {
        let sent = StoredValue::new(None);
        Effect::new(move |_| {
            value.track();
            sent.set_value(None);
        });
        Self { value, sent }
    }

    fn get(self) -> f64 {
        self.sent.get_value().unwrap_or_else(|| self.value.get_untracked())
    }

    fn send(self, to: f64, on_change: Callback<f64>) {
        self.sent.set_value(Some(to));
        on_change.run(to);
    }
}

/// The value in words; a tap makes it a field to type into.
#[component]
fn TypedValue(
    label: String,
    shown: Signal<f64>,
    say: Callback<f64, String>,
    #[prop(into)] on_type: Callback<f64>,
) -> impl IntoView {
    let typing = RwSignal::new(false);
    let input = NodeRef::<leptos::html::Input>::new();
    Effect::new(move |_| {
        if let Some(input) = input.get() {
            // A field that has left the page again cannot take the focus.
            drop(input.focus());
            input.select();
        }
    });
    let take = move |text: String| {
        if let (true, Ok(number)) = (typing.get_untracked(), words::read_number(&text)) {
            on_type.run(number);
        }
        typing.set(false);
    };
    let (field_label, button_label) = (format!("{label}, typed"), label);
    view! {
        <Show
            when=move || typing.get()
            fallback=move || {
                let label = format!("{button_label}: ");
                view! {
                    <button type="button" class="slider-value" on:click=move |_| typing.set(true)>
                        <span class="unseen">{label}</span>
                        {move || say.run(shown.get())}
                        <span class="unseen">", tap to type"</span>
                    </button>
                }
            }
        >
            <input
                type="text"
                inputmode="decimal"
                class="slider-typed"
                node_ref=input
                aria-label=field_label.clone()
                prop:value=move || words::to_edit(shown.get_untracked(), 2)
                on:change=move |event| take(event_target_value(&event))
                on:blur=move |_| typing.set(false)
                on:keydown=move |event| if event.key() == "Escape" { typing.set(false) }
            />
        </Show>
    }
}

/// The value at a share of the line: a circle goes on, a line ends.
fn at_share(scale: Scale, share: f64) -> f64 {
    scale.at_share(if scale.wraps { share } else { share.clamp(0.0, 1.0) })
}

/// Where a key leads.
pub(super) fn by_key(scale: Scale, value: f64, key: &str) -> Option<f64> {
    Some(match key {
        "ArrowRight" | "ArrowUp" => scale.moved(value, 1.0),
        "ArrowLeft" | "ArrowDown" => scale.moved(value, -1.0),
        "PageUp" => scale.moved(value, PAGE),
        "PageDown" => scale.moved(value, -PAGE),
        "Home" => scale.from,
        "End" => scale.last(),
        _ => return None,
    })
}
