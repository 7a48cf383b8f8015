//! One writer: of all open tabs only one may write, and it tells the others what it wrote.
//!
//! Where an engine lacks locks, every tab may write, as before there were any.

use js_sys::Promise;
use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};

use super::js;

/// Name of the lock and of the channel.
const NAME: &str = "slantlight-writer";

/// Whether this tab may write, as a signal; it may until it learns otherwise.
pub fn claim() -> RwSignal<bool> {
    let may_write = RwSignal::new(true);
    request(&[("ifAvailable", true.into())], may_write);
    may_write
}

/// Takes the pen from the tab that has it.
pub fn take_over(may_write: RwSignal<bool>) {
    request(&[("steal", true.into())], may_write);
}

/// Asks for the lock and keeps it until the tab is closed or another tab takes it.
fn request(options: &[(&str, JsValue)], may_write: RwSignal<bool>) {
    let Some(locks) = js::member(&window().navigator().into(), "locks") else { return };
    let given = Closure::once_into_js(move |lock: JsValue| {
        may_write.set(!lock.is_null());
        // A promise that is never kept: the lock stays ours as long as the tab lives.
        if lock.is_null() { JsValue::NULL } else { Promise::new(&mut |_, _| {}).into() }
    });
    if let Some(held) = js::call(&locks, "request", &[NAME.into(), js::object(options), given]) {
        js::after(held, move |ended| {
            if ended.is_err() {
                may_write.set(false);
            }
        });
    }
}

/// The channel between the tabs.
#[derive(Clone)]
pub struct News(Option<BroadcastChannel>);

impl News {
    /// Opens the channel; `heard` is called with what another tab tells, for the life of the app.
    pub fn listen(heard: impl Fn(String) + 'static) -> Self {
        let Ok(channel) = BroadcastChannel::new(NAME) else { return Self(None) };
        let listener = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(text) = event.data().as_string() {
                heard(text);
            }
        });
        channel.set_onmessage(Some(listener.as_ref().unchecked_ref()));
        // Lives as long as the app does.
        listener.forget();
        Self(Some(channel))
    }

    /// Tells the other tabs.
    pub fn tell(&self, text: &str) {
        if let Some(channel) = &self.0 {
            // A closed channel has nobody to tell.
            drop(channel.post_message(&text.into()));
        }
    }
}
