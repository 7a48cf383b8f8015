//! Deflating and inflating (RFC 1951) by the browser's own streams. Engines that lack them give `None`.

use js_sys::{Array, Uint8Array};
use wasm_bindgen::JsValue;
use web_sys::Blob;

use super::js;

/// `bytes` made smaller.
pub async fn deflated(bytes: &[u8]) -> Option<Vec<u8>> {
    through("CompressionStream", bytes).await
}

/// What `bytes` were before they were deflated; `None` also for bytes that never were.
pub async fn inflated(bytes: &[u8]) -> Option<Vec<u8>> {
    through("DecompressionStream", bytes).await
}

/// Sends bytes through a stream of a class and gathers what comes out.
async fn through(class: &str, bytes: &[u8]) -> Option<Vec<u8>> {
    let global = js::global();
    let stream = js::construct(&js::member(&global, class)?, &["deflate-raw".into()]).ok()?;
    let blob: JsValue =
        Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes).into())).ok()?.into();
    let piped = js::call(&js::call(&blob, "stream", &[])?, "pipeThrough", &[stream])?;
    let response = js::construct(&js::member(&global, "Response")?, &[piped]).ok()?;
    let buffer = js::settled(js::call(&response, "arrayBuffer", &[])?).await.ok()?;
    Some(Uint8Array::new(&buffer).to_vec())
}
