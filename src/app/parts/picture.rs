//! A picture: prints the plain shapes of a drawing as SVG. One path per layer, so that a change moves few nodes.

use leptos::prelude::*;
use slantlight::draw::{Drawing, Label, Layer};

/// A drawing that says the same in words.
#[component]
pub fn Picture(
    /// What is drawn.
    #[prop(into)]
    drawing: Signal<Drawing>,
    /// Whether the words beside it say it already, so that a screen reader may pass it by.
    #[prop(optional)]
    decoration: bool,
) -> impl IntoView {
    let view_box = move || {
        let view = drawing.get().view;
        format!("{} {} {} {}", view.x, view.y, view.width, view.height)
    };
    let words = move || (!decoration).then(|| drawing.get().text);
    view! {
        <svg
            class="drawing"
            viewBox=view_box
            role=if decoration { "presentation" } else { "img" }
            aria-hidden=decoration.then_some("true")
            aria-label=words
        >
            {move || drawing.get().layers.into_iter().map(layer).collect_view()}
            {move || drawing.get().labels.into_iter().map(label).collect_view()}
        </svg>
    }
}

/// One layer.
fn layer(layer: Layer) -> impl IntoView {
    let width = (layer.width > 0.0).then(|| layer.width.to_string());
    view! { <path class=layer.paint.class() stroke-width=width d=layer.path.text().to_owned() /> }
}

/// One word on the paper.
fn label(label: Label) -> impl IntoView {
    let turn =
        (label.turned != 0.0).then(|| format!("rotate({} {} {})", label.turned, label.at.x, label.at.y));
    view! {
        <text
            class=label.ink.class()
            x=label.at.x.to_string()
            y=label.at.y.to_string()
            text-anchor=label.anchor.word()
            transform=turn
        >
            {label.text}
        </text>
    }
}
