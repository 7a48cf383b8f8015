//! A photograph of the person's choice, made smaller: redrawn on a canvas, so that nothing of it stays but what is seen.

use js_sys::{Array, Uint8Array};
use leptos::prelude::document;
use slantlight::project::photograph::{LONGEST, smaller};
use wasm_bindgen::JsCast;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement, Url};

use super::js;

/// Qualities of the JPEG, tried in order until it is short enough. Our own choice.
const QUALITIES: [f64; 4] = [0.75, 0.6, 0.45, 0.3];

/// A picture file as JPEG in base64, upright, no larger than the project wants; `None` for what this browser cannot draw.
pub async fn reduced(bytes: &[u8]) -> Option<String> {
    let blob = Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes).into())).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let image = HtmlImageElement::new().ok()?;
    image.set_src(&address);
    let decoded = js::settled(image.decode().into()).await;
    let text = decoded.ok().and_then(|_| drawn(&image));
    // An address that is gone already needs no revoking.
    drop(Url::revoke_object_url(&address));
    text
}

/// The picture on a canvas of the right size, as text.
fn drawn(image: &HtmlImageElement) -> Option<String> {
    let canvas: HtmlCanvasElement = document().create_element("canvas").ok()?.dyn_into().ok()?;
    let (width, height) = smaller(image.natural_width(), image.natural_height());
    canvas.set_width(width);
    canvas.set_height(height);
    let paper: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    let (width, height) = (f64::from(width), f64::from(height));
    paper.draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width, height).ok()?;
    QUALITIES.into_iter().find_map(|quality| {
        let address = canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &quality.into()).ok()?;
        let text = address.strip_prefix("data:image/jpeg;base64,")?;
        (text.len() <= LONGEST).then(|| text.to_owned())
    })
}
