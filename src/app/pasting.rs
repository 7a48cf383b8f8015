//! Pasting anywhere: a text that lands outside of every field, or comes from outside of the app, is looked at, and what
//! it is good for is offered.

use leptos::prelude::*;
use slantlight::project::edit::Edit;
use slantlight::project::paste::{self, Pasted};
use slantlight::project::route::Route;
use slantlight::project::scout_reply::Reply;
use slantlight::words;
use wasm_bindgen::JsValue;

use super::devices::bridge::{self, Received};
use super::devices::js;
use super::pages::here;
use super::pages::incoming::Incoming;
use super::parts::Notes;
use super::router;
use super::second::Second;
use super::store::Store;

/// Texts that were pasted elsewhere, on their way to the pages that read them.
#[derive(Clone, Copy)]
pub struct Forwarded {
    /// A shot list.
    pub list: RwSignal<String>,
    /// A position that must be asked about.
    pub place: RwSignal<String>,
}

impl Forwarded {
    /// Makes the way. Call once, at the app's root.
    fn provide() -> Self {
        let forwarded = Self { list: RwSignal::new(String::new()), place: RwSignal::new(String::new()) };
        provide_context(forwarded);
        forwarded
    }
}

/// Reads what is forwarded to a page, as soon as it comes; each once.
pub fn on_forwarded(forwarded: RwSignal<String>, read: impl Fn(String) + 'static) {
    Effect::new(move |_| {
        if forwarded.with(|text| !text.is_empty()) {
            let text = forwarded.get_untracked();
            forwarded.set(String::new());
            read(text);
        }
    });
}

/// Listens for pastes, and for what is received. Call once, at the app's root, when store and incoming are there.
pub fn listen(store: Store, incoming: Incoming, notes: Notes) {
    let forwarded = Forwarded::provide();
    let (second, pasting) = (Second::here(), Pasting { store, incoming, notes, forwarded });
    let offer = move |text: String| second.ask(move |table| (table.offer)(&text, pasting));
    window_event_listener_untyped("paste", move |event| {
        let event: JsValue = event.into();
        if let Some(text) = outside_of_fields(&event) {
            offer(text);
        }
    });
    bridge::on_received(move |received| match received {
        Received::Text(text) => offer(text),
        Received::File(file) => incoming.take_file(file),
    });
}

/// The pasted text, unless a field takes it.
fn outside_of_fields(event: &JsValue) -> Option<String> {
    let is_field = js::path(event, &["target", "tagName"])
        .and_then(|name| name.as_string())
        .is_some_and(|name| matches!(name.as_str(), "INPUT" | "TEXTAREA" | "SELECT"));
    let clipboard = js::member(event, "clipboardData").filter(|_| !is_field)?;
    js::call(&clipboard, "getData", &["text/plain".into()])?.as_string()
}

/// Where what was pasted may go.
#[derive(Clone, Copy)]
pub struct Pasting {
    store: Store,
    incoming: Incoming,
    notes: Notes,
    forwarded: Forwarded,
}

/// Looks at a text and offers what it is good for. In the second part.
pub fn offer(text: &str, Pasting { store, incoming, notes, forwarded }: Pasting) {
    match paste::what(text) {
        Pasted::Project => incoming.take(text),
        Pasted::Reply(reply) => answer(&reply, store, notes),
        Pasted::Position(site, accuracy) => {
            let says = format!("Pasted: {}", words::position(site));
            notes.say_with(says, "Add this place", move || {
                if let Some(id) = here::add(store, site, accuracy) {
                    router::go(&Route::Location(id));
                }
            });
        }
        Pasted::UnclearPosition => {
            forwarded.place.set(text.to_owned());
            router::go(&Route::Places);
        }
        Pasted::ShotList => {
            forwarded.list.set(text.to_owned());
            router::go(&Route::ShotList);
        }
        Pasted::Nothing => {
            notes.say("The pasted text is no project, no place, no shot list and no answer of a recce.");
        }
    }
}

/// Writes an answer into the scout sheet of its location.
fn answer(reply: &Reply, store: Store, notes: Notes) {
    let project = store.desk.latest();
    match project.location(&reply.location) {
        Some(location) => {
            let mut location = location.clone();
            reply.write_into(&mut location);
            let says = format!("The answer is in the scout sheet of {}", location.name);
            store.edit_with_undo(Edit::PutLocation(Box::new(location)), says);
        }
        None => notes.say("This answer is about a place that is not in the open project. Open its project, and paste it again."),
    }
}
