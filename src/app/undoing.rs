//! Undo and redo, in the corner of every page and by the keys that people expect.

use leptos::ev::{self, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::store::{Desk, Store};

/// An arrow back, and the same forth, each as one path on a 24 × 24 field.
const BACK: &str = "M9 5L4 10l5 5M4 10h10a5 5 0 0 1 0 10h-3";
const FORTH: &str = "M15 5l5 5-5 5M20 10H10a5 5 0 0 0 0 10h3";

/// The two buttons; each is there while there is something to do.
#[component]
pub fn Undoing() -> impl IntoView {
    let desk = Store::here().desk;
    window_event_listener(ev::keydown, move |event| on_key(desk, &event));
    let undo = move || desk.steps.get().undo.map(|what| button(desk, "Undo", what, BACK));
    let redo = move || desk.steps.get().redo.map(|what| button(desk, "Redo", what, FORTH));
    view! { <div class="undoing">{undo}{redo}</div> }
}

fn button(desk: Desk, word: &'static str, what: &str, icon: &'static str) -> impl IntoView + use<> {
    let step = move |_| {
        if word == "Undo" {
            desk.undo()
        } else {
            desk.redo()
        };
    };
    view! {
        <button type="button" class="button small" aria-label=format!("{word}: {what}") on:click=step>
            <svg viewBox="0 0 24 24" aria-hidden="true"><path d=icon /></svg>
        </button>
    }
}

/// Control or command with Z undoes, with shift as well it redoes. A field that is being typed in has an undo of its own.
fn on_key(desk: Desk, event: &KeyboardEvent) {
    let is_z = (event.ctrl_key() || event.meta_key()) && event.key().eq_ignore_ascii_case("z");
    if !is_z || is_typing() {
        return;
    }
    event.prevent_default();
    if event.shift_key() {
        desk.redo()
    } else {
        desk.undo()
    };
}

fn is_typing() -> bool {
    let focused = document().active_element().and_then(|element| element.dyn_into::<HtmlElement>().ok());
    focused.is_some_and(|element| ["INPUT", "TEXTAREA", "SELECT"].contains(&element.tag_name().as_str()))
}
