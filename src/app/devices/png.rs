//! A drawing as a PNG, made by the browser from the drawing's own SVG; no network.

use js_sys::{Array, Uint8Array};
use leptos::prelude::document;
use leptos::task::spawn_local;
use slantlight::draw::ViewBox;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement, Url};

use super::js;

/// Pixels a unit of the drawing. Our own choice: 1260 across for a plan, which stays far below 500 kB.
const PIXELS: f64 = 3.0;

/// Makes a PNG of the text of an SVG that shows `view`; hands over its bytes, or nothing if the browser refuses.
pub fn of_svg(svg: &str, view: ViewBox, then: impl FnOnce(Option<Vec<u8>>) + 'static) {
    let svg = svg.to_owned();
    spawn_local(async move { then(paint(&svg, view).await) });
}

async fn paint(svg: &str, view: ViewBox) -> Option<Vec<u8>> {
    let kind = BlobPropertyBag::new();
    kind.set_type("image/svg+xml");
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&svg.into()), &kind).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let image = HtmlImageElement::new().ok()?;
    image.set_src(&address);
    let drawn = js::settled(image.decode().into()).await;
    // An address that is gone already needs no revoking.
    drop(Url::revoke_object_url(&address));
    drawn.ok()?;
    let canvas: HtmlCanvasElement = document().create_element("canvas").ok()?.dyn_into().ok()?;
    let (width, height) = (view.width * PIXELS, view.height * PIXELS);
    canvas.set_width(width as u32);
    canvas.set_height(height as u32);
    let paper: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    paper.draw_image_with_html_image_element_and_dw_and_dh(&image, 0.0, 0.0, width, height).ok()?;
    let blob = js::settled(blob_of(&canvas).into()).await.ok()?;
    let buffer = js::settled(js::call(&blob, "arrayBuffer", &[])?).await.ok()?;
    Some(Uint8Array::new(&buffer).to_vec())
}

/// The canvas as a PNG file in memory.
fn blob_of(canvas: &HtmlCanvasElement) -> js_sys::Promise {
    js_sys::Promise::new(&mut |done, refused| {
        let take = Closure::once_into_js(move |blob: JsValue| {
            // Calling a resolver cannot fail.
            drop(done.call1(&JsValue::NULL, &blob));
        });
        if canvas.to_blob(take.unchecked_ref()).is_err() {
            drop(refused.call0(&JsValue::NULL));
        }
    })
}
