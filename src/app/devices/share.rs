//! The system's share sheet. Call from inside a tap: the sheet must be asked before anything is awaited.
//!
//! Engines differ in which files they let through, so several names and types of the same text are tried in
//! order, then the text itself.

use js_sys::{Array, Uint8Array};
use leptos::prelude::window;
use slantlight::project::send::Candidate;
use wasm_bindgen::JsValue;
use web_sys::{File, FilePropertyBag};

use super::js;

/// How it went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// The sheet took it.
    Sent,
    /// The person closed the sheet.
    Cancelled,
    /// No sheet, or it refused: offer copy or download.
    Unable,
}

/// Shares `text` as the first of `files` that the engine lets through, else as plain text.
pub fn share(title: &str, text: &str, files: &[Candidate], then: impl FnOnce(Shared) + 'static) {
    let plain = js::object(&[("title", title.into()), ("text", text.into())]);
    let files: Vec<_> = files.iter().filter_map(|file| with_file(title, None, file)).collect();
    first_of(files, plain, then);
}

/// Shares a picture with its caption, else the caption alone is not enough: nothing is sent.
pub fn share_picture(title: &str, caption: &str, file: &Candidate, then: impl FnOnce(Shared) + 'static) {
    let captioned = with_file(title, Some(caption), file).unwrap_or_else(|| js::object(&[]));
    first_of(Vec::new(), captioned, then);
}

/// Asks the sheet with the first of `files` that the engine says it takes, else with `last`.
fn first_of(files: Vec<JsValue>, last: JsValue, then: impl FnOnce(Shared) + 'static) {
    let navigator: JsValue = window().navigator().into();
    let data = files.into_iter().find(|data| can_share(&navigator, data)).unwrap_or(last);
    match js::call(&navigator, "share", &[data]) {
        Some(promised) => js::after(promised, |outcome| then(read(outcome))),
        None => then(Shared::Unable),
    }
}

/// Whether the engine says it would take `data`.
fn can_share(navigator: &JsValue, data: &JsValue) -> bool {
    js::call(navigator, "canShare", std::slice::from_ref(data)).is_some_and(|answer| answer.is_truthy())
}

/// Share data with one file, and a text beside it.
fn with_file(title: &str, caption: Option<&str>, candidate: &Candidate) -> Option<JsValue> {
    let kind = FilePropertyBag::new();
    kind.set_type(candidate.media_type);
    let parts = Array::of1(&Uint8Array::from(candidate.bytes.as_slice()).into());
    let file = File::new_with_u8_array_sequence_and_options(&parts, &candidate.name, &kind).ok()?;
    let mut members = vec![("title", title.into()), ("files", Array::of1(&file).into())];
    members.extend(caption.map(|caption| ("text", caption.into())));
    Some(js::object(&members))
}

/// A closed sheet is an error in name only.
fn read(outcome: Result<JsValue, JsValue>) -> Shared {
    match outcome {
        Ok(_) => Shared::Sent,
        Err(error) if js::error_name(&error) == "AbortError" => Shared::Cancelled,
        Err(_) => Shared::Unable,
    }
}
