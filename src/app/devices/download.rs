//! A file into the phone's downloads: the way that works when no other does.

use js_sys::{Array, Uint8Array};
use leptos::prelude::{document, set_timeout};
use wasm_bindgen::JsCast;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// How long the address of the file must live. Our own choice: some engines read it only after the tap is over.
const ADDRESS_LIFE: core::time::Duration = core::time::Duration::from_secs(60);

/// Offers `bytes` as a file called `name`; false if the browser refuses.
pub fn download(name: &str, media_type: &str, bytes: &[u8]) -> bool {
    offer(name, media_type, bytes).is_some()
}

fn offer(name: &str, media_type: &str, bytes: &[u8]) -> Option<()> {
    let kind = BlobPropertyBag::new();
    kind.set_type(media_type);
    let blob =
        Blob::new_with_u8_array_sequence_and_options(&Array::of1(&Uint8Array::from(bytes).into()), &kind)
            .ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let link: HtmlAnchorElement = document().create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    set_timeout(move || drop(Url::revoke_object_url(&address)), ADDRESS_LIFE);
    Some(())
}
