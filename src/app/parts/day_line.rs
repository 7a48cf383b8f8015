//! Day line: the hours of a day as a line, spans of light as boxes on it, and a handle at the instant shown.

use leptos::prelude::*;
use slantlight::draw::scale::Scale;

use super::drag::Drag;
use super::fresh_id;
use super::slider::by_key;

/// A span on the line, in hours from the scale's own zero, and what it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Box {
    /// Begin.
    pub from: f64,
    /// End.
    pub to: f64,
    /// "sun on mark 1, 15:54 to 18:14", read out.
    pub name: String,
}

/// A line of hours with a handle.
#[component]
pub fn DayLine(
    /// What is set, read out: "Time of day".
    #[prop(into)]
    label: String,
    /// The hours shown and the step of the handle.
    #[prop(into)]
    scale: Signal<Scale>,
    /// Hours that are named, with their names.
    #[prop(into)]
    hours: Signal<Vec<(f64, String)>>,
    /// Spans of light.
    #[prop(into)]
    boxes: Signal<Vec<Box>>,
    /// The hour at which the handle stands.
    #[prop(into)]
    value: Signal<f64>,
    /// An hour in words: "16:20".
    #[prop(into)]
    say: Callback<f64, String>,
    /// Called with each hour, held or chosen.
    #[prop(into)]
    on_change: Callback<f64>,
) -> impl IntoView {
    let drag = Drag::new();
    let id = fresh_id("day");
    let (group_label, spoken_id) = (label.clone(), id.clone());
    // Lists are made anew only when they are others; where a span lies follows by itself.
    let (scale, hours) = (Memo::new(move |_| scale.get()), Memo::new(move |_| hours.get()));
    let boxes = Memo::new(move |_| boxes.get());
    let left = move |hour: f64| format!("{}%", scale.get().share(hour) * 100.0);
    let spoken = move || boxes.get().into_iter().map(|span| span.name).collect::<Vec<_>>().join(", ");
    let count = Memo::new(move |_| boxes.with(Vec::len));
    let span = move |place: usize| {
        let ends =
            move || boxes.with(|boxes| boxes.get(place).map_or((0.0, 0.0), |span| (span.from, span.to)));
        let width = move || {
            let (from, to) = ends();
            format!("{}%", (scale.get().share(to) - scale.get().share(from)) * 100.0)
        };
        view! { <div class="day-line-span" style:left=move || left(ends().0) style:width=width></div> }
    };
    view! {
        <div class="day-line" node_ref=drag.track role="group" aria-label=group_label>
            <p class="unseen" id=spoken_id>{spoken}</p>
            <div class="day-line-axis"></div>
            {move || {
                hours.get().into_iter().map(|(hour, name)| view! {
                    <div class="day-line-hour" aria-hidden="true" style:left=move || left(hour)><span>{name}</span></div>
                }).collect_view()
            }}
            {move || (0..count.get()).map(span).collect_view()}
            <div
                class="day-line-handle"
                role="slider"
                tabindex="0"
                aria-label=label
                aria-describedby=id
                aria-valuemin=move || scale.get().from
                aria-valuemax=move || scale.get().to
                aria-valuenow=move || value.get()
                aria-valuetext=move || say.run(value.get())
                style:left=move || left(value.get())
                on:pointerdown=move |event| drag.take(&event, scale.get_untracked().share(value.get_untracked()))
                on:pointermove=move |event| {
                    if let Some(share) = drag.moved(&event) {
                        on_change.run(scale.get_untracked().at_share(share.clamp(0.0, 1.0)));
                    }
                }
                on:pointerup=move |_| drag.let_go()
                on:pointercancel=move |_| drag.let_go()
                on:keydown=move |event| {
                    if let Some(to) = by_key(scale.get_untracked(), value.get_untracked(), &event.key()) {
                        event.prevent_default();
                        on_change.run(to);
                    }
                }
            ></div>
        </div>
    }
}
