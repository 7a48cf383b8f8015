//! A picture to look at: chosen by the person, shown, never read by the app, stored or sent. Call from inside a tap.

use js_sys::{Array, Uint8Array};
use web_sys::{Blob, Url};

use super::file::{self, Opened};

/// Lets the person choose a picture; `then` gets an address that an image can show. Nothing happens if they choose
/// none, or one that cannot be opened.
pub fn choose(then: impl FnOnce(String) + 'static) {
    file::open("image/*", move |opened| {
        if let Opened::Bytes(bytes) = opened
            && let Ok(blob) =
                Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes.as_slice()).into()))
            && let Ok(address) = Url::create_object_url_with_blob(&blob)
        {
            then(address);
        }
    });
}
