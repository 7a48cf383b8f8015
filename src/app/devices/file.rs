//! Opening a file of the person's choice. Call from inside a tap.

use js_sys::Uint8Array;
use leptos::prelude::document;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::HtmlInputElement;

use super::js;

/// A file larger than this is not read at all; the project's own limits are checked as it is read.
const LARGEST: f64 = 64.0 * 1024.0 * 1024.0;

/// What came of opening a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Opened {
    /// All of it.
    Bytes(Vec<u8>),
    /// Too large to be one of ours.
    TooLarge,
    /// The browser could not read it.
    Unreadable,
}

/// Lets the person choose a file and reads it; nothing happens if they choose none.
pub fn open(accept: &str, then: impl FnOnce(Opened) + 'static) {
    let made =
        document().create_element("input").ok().and_then(|made| made.dyn_into::<HtmlInputElement>().ok());
    let Some(input) = made else { return then(Opened::Unreadable) };
    input.set_type("file");
    input.set_accept(accept);
    let chosen_in = input.clone();
    let chosen = Closure::once_into_js(move || {
        if let Some(file) = chosen_in.files().and_then(|files| files.get(0)) {
            read(file, then);
        }
    });
    input.set_onchange(Some(chosen.unchecked_ref()));
    input.click();
}

/// Reads all of a file.
pub fn read(file: web_sys::File, then: impl FnOnce(Opened) + 'static) {
    if file.size() > LARGEST {
        return then(Opened::TooLarge);
    }
    spawn_local(async move {
        let buffer = js::settled(file.array_buffer().into()).await;
        then(buffer.map_or(Opened::Unreadable, |buffer| Opened::Bytes(Uint8Array::new(&buffer).to_vec())));
    });
}
