//! A picture: prints the plain shapes of a drawing as SVG. One path per layer, and each of its attributes follows the
//! drawing by itself: a list that is made anew would take all attributes off its elements and put them on again.

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
    // Asked for by many parts; worked out once.
    let drawing = Memo::new(move |_| drawing.get());
    let layers = Memo::new(move |_| drawing.with(|drawing| drawing.layers.len()));
    let labels = Memo::new(move |_| drawing.with(|drawing| drawing.labels.len()));
    let view_box = move || {
        let view = drawing.with(|drawing| drawing.view);
        format!("{} {} {} {}", view.x, view.y, view.width, view.height)
    };
    let words = move || (!decoration).then(|| drawing.with(|drawing| drawing.text.clone()));
    view! {
        <svg
            class="drawing"
            viewBox=view_box
            role=if decoration { "presentation" } else { "img" }
            aria-hidden=decoration.then_some("true")
            aria-label=words
        >
            {move || (0..layers.get()).map(|place| layer(drawing, place)).collect_view()}
            {move || (0..labels.get()).map(|place| label(drawing, place)).collect_view()}
        </svg>
    }
}

/// What one layer says; nothing once the drawing has fewer of them.
type OfLayer = fn(&Layer) -> Option<String>;

/// What one label says.
type OfLabel = fn(&Label) -> Option<String>;

/// One layer.
fn layer(drawing: Memo<Drawing>, place: usize) -> AnyView {
    let said = move |read: OfLayer| move || drawing.with(|drawing| drawing.layers.get(place).and_then(read));
    let class = said(|layer| Some(layer.paint.class().to_owned()));
    let width = said(|layer| (layer.width > 0.0).then(|| layer.width.to_string()));
    let path = said(|layer| Some(layer.path.text().to_owned()));
    view! { <path class=class stroke-width=width d=path /> }.into_any()
}

/// One word on the paper.
fn label(drawing: Memo<Drawing>, place: usize) -> AnyView {
    let said = move |read: OfLabel| move || drawing.with(|drawing| drawing.labels.get(place).and_then(read));
    let class = said(|label| Some(label.ink.class().to_owned()));
    let x = said(|label| Some(label.at.x.to_string()));
    let y = said(|label| Some(label.at.y.to_string()));
    let anchor = said(|label| Some(label.anchor.word().to_owned()));
    let turn = said(|label| {
        (label.turned != 0.0).then(|| format!("rotate({} {} {})", label.turned, label.at.x, label.at.y))
    });
    let text = said(|label| Some(label.text.clone()));
    view! { <text class=class x=x y=y text-anchor=anchor transform=turn>{text}</text> }.into_any()
}
