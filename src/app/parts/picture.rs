//! A picture: prints the plain shapes of a drawing as SVG, then only what is another in the next one.
//!
//! One effect prints it all. An effect for each attribute would cost more than the attribute: a drawing has about a
//! hundred, and follows each move of a finger.

use leptos::prelude::*;
use leptos::svg;
use slantlight::draw::{Drawing, Label, Layer};
use web_sys::Element;

/// Where the elements of a drawing come from.
const SVG: &str = "http://www.w3.org/2000/svg";

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
    let (paper, ground, top) =
        (NodeRef::<svg::Svg>::new(), NodeRef::<svg::G>::new(), NodeRef::<svg::G>::new());
    Effect::new(move |printed: Option<Printed>| {
        let mut printed = printed.unwrap_or_default();
        if let (Some(paper), Some(ground), Some(top)) = (paper.get(), ground.get(), top.get()) {
            drawing.with(|drawing| {
                write(&paper, "viewBox", &mut printed.view, drawing.view.to_string());
                if !decoration {
                    write(&paper, "aria-label", &mut printed.text, drawing.text.clone());
                }
                print(&ground, "path", &mut printed.layers, &drawing.layers, of_layer);
                print(&top, "text", &mut printed.labels, &drawing.labels, of_label);
            });
        }
        printed
    });
    view! {
        <svg
            class="drawing"
            node_ref=paper
            role=if decoration { "presentation" } else { "img" }
            aria-hidden=decoration.then_some("true")
        >
            <g node_ref=ground></g>
            <g node_ref=top></g>
        </svg>
    }
}

/// What stands on the paper, and what each element was printed from.
#[derive(Default)]
struct Printed {
    view: String,
    text: String,
    layers: Vec<(Layer, Element)>,
    labels: Vec<(Label, Element)>,
}

/// Names and values of an element's attributes, always in the same order; the nameless one is its text.
type Attributes = Vec<(&'static str, Option<String>)>;

/// Prints the things of one kind, an element each.
fn print<T: Clone + PartialEq>(
    group: &Element,
    tag: &str,
    printed: &mut Vec<(T, Element)>,
    things: &[T],
    say: fn(&T) -> Attributes,
) {
    for (_, element) in printed.drain(things.len().min(printed.len())..) {
        element.remove();
    }
    for (place, thing) in things.iter().enumerate() {
        match printed.get_mut(place) {
            Some((before, _)) if before == thing => {}
            Some((before, element)) => {
                let changed = say(thing).into_iter().zip(say(before)).filter(|(now, before)| now != before);
                changed.for_each(|(now, _)| set(element, now));
                *before = thing.clone();
            }
            None => {
                // Refused only for a name that is no element's.
                let Ok(element) = document().create_element_ns(Some(SVG), tag) else { return };
                say(thing).into_iter().for_each(|one| set(&element, one));
                drop(group.append_child(&element));
                printed.push((thing.clone(), element));
            }
        }
    }
}

fn of_layer(layer: &Layer) -> Attributes {
    vec![
        ("class", Some(layer.paint.class().to_owned())),
        ("stroke-width", (layer.width > 0.0).then(|| layer.width.to_string())),
        ("d", Some(layer.path.text().to_owned())),
    ]
}

fn of_label(label: &Label) -> Attributes {
    let (x, y) = (label.at.x.to_string(), label.at.y.to_string());
    let turn = (label.turned != 0.0).then(|| format!("rotate({} {x} {y})", label.turned));
    vec![
        ("class", Some(label.ink.class().to_owned())),
        ("text-anchor", Some(label.anchor.word().to_owned())),
        ("transform", turn),
        ("x", Some(x)),
        ("y", Some(y)),
        ("", Some(label.text.clone())),
    ]
}

/// Sets an attribute that is another than before.
fn write(element: &Element, name: &'static str, before: &mut String, now: String) {
    if *before != now {
        before.clone_from(&now);
        set(element, (name, Some(now)));
    }
}

/// Sets one attribute, takes it away, or sets the text. The browser refuses none of these names.
fn set(element: &Element, (name, value): (&'static str, Option<String>)) {
    match value {
        Some(text) if name.is_empty() => element.set_text_content(Some(&text)),
        Some(value) => drop(element.set_attribute(name, &value)),
        None => drop(element.remove_attribute(name)),
    }
}
